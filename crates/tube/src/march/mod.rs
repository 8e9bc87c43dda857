//! The march of the air along a tube: condensate, frost, mist and sweat, converged with few cells.
//!
//! Cells are as long as their correction allows, and are cut where the wall begins or ceases to be wet
//! and where mist begins or ends; see [`Accuracy`] for how far the answer is from that of fine cells.

pub(crate) mod air;
mod cell;
pub(crate) mod fluxes;
mod near_wall;
mod phi;
mod record;
pub(crate) mod regime;
mod stepper;
mod sum;
mod walk;

use dewrun_moist_air::fast::SaturationCurve;

use crate::wall_balance::Wall;
use air::Content;
use walk::Walk;

pub use near_wall::{NearWall, fog_film_1992_bound_kg_sm, highest_saturation_ratio};
pub use sum::{SegmentSum, Station, Trace};

/// A stretch of tube that is alike all along.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// Length, m.
    pub length_m: f64,
    /// Inside diameter, m.
    pub bore_m: f64,
    /// Outside diameter of the tube, m.
    pub tube_outside_m: f64,
    /// Conductivity of the tube, W/(m K).
    pub tube_w_mk: f64,
    /// Thickness of the insulation, m; zero for none.
    pub insulation_m: f64,
    /// Conductivity of the insulation, W/(m K).
    pub insulation_w_mk: f64,
    /// Emissivity of the outermost surface.
    pub emissivity: f64,
    /// Heat tracing at the tube's outer face, W/m.
    pub tracing_w_m: f64,
    /// Height along the tube of the riser that the segment is part of, m; none where it is flatter than 45 degrees.
    pub riser_m: Option<f64>,
    /// Temperature of the air around it, °C.
    pub air_c: f64,
    /// Humidity ratio of that air, kg/kg.
    pub air_w: f64,
    /// Temperature of the surfaces around it, °C.
    pub radiant_c: f64,
    /// Air speed across it, m/s.
    pub wind_m_s: f64,
}

/// What the relations are multiplied by to carry their known spread through an answer; 1 each is the relation as published.
///
/// # Source
/// Known spreads: outside natural convection of thin tubes 20 % (Morgan 1975 against Churchill & Chu 1975), mixed convection inside at low speed 25 %, diffusivity 3 % (Marrero & Mason 1972).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factors {
    /// On the inside film's Nusselt and Sherwood numbers.
    pub inside: f64,
    /// On the outside film's coefficient of natural convection.
    pub outside: f64,
    /// On the diffusivity of vapour in air, inside the tube.
    pub diffusivity: f64,
}

impl Factors {
    /// The relations as published.
    pub const PUBLISHED: Self = Self {
        inside: 1.0,
        outside: 1.0,
        diffusivity: 1.0,
    };
}

/// The air that flows: its content per kg of dry air, its amount and its pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stream {
    content: Content,
    near_c: f64,
    factors: Factors,
    /// Dry air, kg/s.
    pub dry_air_kg_s: f64,
    /// Pressure, Pa.
    pub p_pa: f64,
}

/// The state of the air in a stream.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StreamState {
    /// Temperature, °C.
    pub t_c: f64,
    /// Vapour, kg per kg of dry air.
    pub w: f64,
    /// Suspended water, kg per kg of dry air.
    pub mist: f64,
    /// Enthalpy of air, vapour and mist, J per kg of dry air.
    pub enthalpy_j_kg: f64,
}

impl Stream {
    /// Air of a temperature, °C, and a humidity ratio, kg/kg; what exceeds saturation becomes mist at constant enthalpy.
    #[must_use]
    pub fn new(t_c: f64, w: f64, dry_air_kg_s: f64, p_pa: f64) -> Self {
        Self {
            content: Content::of_vapour(t_c, w),
            near_c: t_c,
            factors: Factors::PUBLISHED,
            dry_air_kg_s,
            p_pa,
        }
    }

    /// The same air, whose exchange with walls is multiplied by factors.
    #[must_use]
    pub const fn with_factors(self, factors: Factors) -> Self {
        Self { factors, ..self }
    }

    /// The same air after it has taken up a power, W. Nothing changes where no air flows.
    #[must_use]
    pub fn warmed(self, power_w: f64) -> Self {
        if self.dry_air_kg_s <= STAGNANT_KG_S {
            return self;
        }
        let content = Content {
            enthalpy: self.content.enthalpy + power_w / self.dry_air_kg_s,
            ..self.content
        };
        Self { content, ..self }
    }

    /// What its exchange with walls is multiplied by.
    pub(crate) const fn factors(&self) -> Factors {
        self.factors
    }

    /// Its state.
    #[must_use]
    pub fn state(&self) -> StreamState {
        let curve = SaturationCurve::at(self.p_pa);
        let clear = self.content.clear(&curve);
        let air = if 0.0 < clear.excess {
            self.content.misty(&curve, clear.t_c)
        } else {
            clear
        };
        StreamState {
            t_c: air.t_c,
            w: air.w,
            mist: air.mist(),
            enthalpy_j_kg: self.content.enthalpy,
        }
    }
}

/// No more dry air than this, kg/s, counts as standing: a ten-thousandth of a litre a minute.
///
/// Such air takes the wall's temperature within a hundredth of a bore, which is what is told of it;
/// what it could deposit is left out, and is below 0.003 g/h however humid it is.
pub const STAGNANT_KG_S: f64 = 2e-9;

/// No more dry air than this, kg/s, creeps: a hundredth of a litre a minute, which takes the wall's state within a millimetre.
///
/// Each leg then leaves it saturated at the wall at the most, and deposits the rest, whatever the film is.
const CREEPING_KG_S: f64 = 2e-7;

/// How fine the march is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Largest correction of a cell, K of temperature.
    correction_k: f64,
    /// Longest cell, m.
    longest_m: f64,
    /// Bound on the cells of a segment, after which the rest of it is one implicit cell.
    most_cells: u32,
}

impl Accuracy {
    /// For answers: condensate within 0.3 % and sweat within 1 % of the limit of fine cells, or within 0.005 g/h where there is little.
    ///
    /// The correction that is limited is the difference between a second-order cell and the one used,
    /// several times the error that is left; the value was chosen on random routes, see `tests/tests/laws.rs`.
    pub const PRODUCT: Self = Self {
        correction_k: 0.03,
        longest_m: f64::INFINITY,
        most_cells: 200,
    };

    /// To hold answers against: a hundred times finer, cells of 50 mm at most.
    pub const FINE: Self = Self {
        correction_k: 2e-4,
        longest_m: 0.05,
        most_cells: 50_000,
    };
}

/// Marches a stream through segments from an inlet, where the film begins anew.
///
/// Walls are dry at the start; nothing is carried over from earlier hours.
///
/// # Range
/// Air from -60 to 95 °C and up to saturation or above, 50 to 120 kPa, any flow from none on.
///
/// # Accuracy
/// That of the relations, see `crate`; the march itself as [`Accuracy`] says. Water and energy close to 1e-12 of what is turned over.
///
/// # Errors
/// None for finite input in range.
///
/// # Source
/// The relations of this crate; the cell is an exponential one about its middle with a Simpson correction (own).
///
/// ```
/// use dewrun_tube::{Accuracy, Segment, Stream, march};
/// let segment = Segment {
///     length_m: 5.0, bore_m: 0.019, tube_outside_m: 0.022, tube_w_mk: 0.19,
///     insulation_m: 0.0, insulation_w_mk: 0.036, emissivity: 0.9, tracing_w_m: 0.0,
///     riser_m: None, air_c: 12.0, air_w: 0.004, radiant_c: 12.0, wind_m_s: 0.0,
/// };
/// let duct_air = Stream::new(32.0, 0.0214, 5.6e-4, 101_325.0);
/// let trace = march(&duct_air, &[segment], Accuracy::PRODUCT);
/// assert!(0.0 < trace.condensate_kg_s() && trace.end.state().t_c < 32.0);
/// ```
#[must_use]
pub fn march(inlet: &Stream, segments: &[Segment], accuracy: Accuracy) -> Trace {
    let curve = SaturationCurve::at(inlet.p_pa);
    let mut walk = Walk::new(inlet, accuracy);
    for (position, segment) in segments.iter().enumerate() {
        let wall = Wall::new(&curve, segment, inlet);
        if inlet.dry_air_kg_s <= CREEPING_KG_S {
            walk.creep(&wall, position, segment.length_m);
        } else {
            walk.through(&wall, position, segment.length_m);
        }
    }
    walk.finish()
}
