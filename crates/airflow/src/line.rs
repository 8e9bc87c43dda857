//! What an airflow line is made of, from the holes in the duct through the detector back to the duct.

use core::fmt;

use dewrun_quantity::{Density, FlowResistance, Length, Pressure, Viscosity, Volume};

use crate::error::AirflowError;
use crate::fan::FanCurve;
use crate::range;

/// One of the two tubes of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// From the duct to the detector.
    Intake,
    /// From the detector back to the duct.
    Exhaust,
}

impl fmt::Display for Side {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Intake => "intake tube",
            Self::Exhaust => "exhaust tube",
        })
    }
}

/// What of the air counts for its flow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Its density.
    pub density: Density,
    /// Its dynamic viscosity.
    pub viscosity: Viscosity,
}

/// A whole line as it was built; everything against the detector's room.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// How air enters from the duct.
    pub inlet: Inlet,
    /// From the inlet to the detector; places count from the inlet.
    pub intake: Tube,
    /// What lies between the two tubes.
    pub detector: Detector,
    /// From the detector to the duct; places count from the detector.
    pub exhaust: Tube,
    /// How air leaves into the duct.
    pub outlet: OpenEnd,
    /// Total pressures that both ends meet in the duct.
    pub duct: DuctPressures,
    /// Density of the air in the detector's room, for the lift of lighter or heavier air in a tube that rises.
    pub room: Density,
}

/// How air enters from the duct.
#[derive(Debug, Clone, PartialEq)]
pub enum Inlet {
    /// Holes that all open into the one place where the tube begins.
    Holes(Vec<Hole>),
    /// The bare end of the tube.
    OpenEnd(OpenEnd),
}

/// A sharp-edged hole, the same in both directions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// Its diameter.
    pub diameter: Length,
    /// Its discharge coefficient (-), about 0.6.
    pub discharge: f64,
}

/// Loss coefficients of an open end, on the velocity in the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OpenEnd {
    /// Where air enters the tube (-).
    pub inward: f64,
    /// Where air leaves the tube (-).
    pub outward: f64,
}

impl OpenEnd {
    /// Sharp and square-cut: half a velocity pressure inwards, one outwards.
    pub const SHARP: Self = Self {
        inward: 0.5,
        outward: 1.0,
    };
}

/// A tube: stretches one after the other, with what is fitted in them.
#[derive(Debug, Clone, PartialEq)]
pub struct Tube {
    /// In the direction of the normal flow; at least one, which may have no length.
    pub stretches: Vec<Stretch>,
    /// Bends, tees, valves, changes of bore.
    pub fittings: Vec<Fitting>,
    /// Volumes beside the bore that the air has to fill.
    pub traps: Vec<Trap>,
}

/// A stretch of tube of one bore, one roughness and one air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Along the tube.
    pub length: Length,
    /// Inner diameter.
    pub bore: Length,
    /// Of the inner wall.
    pub roughness: Length,
    /// What friction is multiplied by where the flow is neither laminar nor turbulent; 1 as published.
    pub transition: f64,
    /// Rise from its start to its end; negative where it falls.
    pub rise: Length,
    /// The air in it.
    pub air: Air,
}

/// A loss coefficient at a place, on the velocity in the bore there, the same in both directions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitting {
    /// From the tube's start.
    pub at: Length,
    /// Loss coefficient (-).
    pub loss_coefficient: f64,
}

/// The air in a trap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trap {
    /// From the tube's start.
    pub at: Length,
    /// What the air has to fill.
    pub volume: Volume,
}

/// What the air meets between the tubes, in this order: filter, chamber with the sensor at its outlet, fan.
#[derive(Debug, Clone, PartialEq)]
pub struct Detector {
    /// Resistance of the clean filter.
    pub filter: FlowResistance,
    /// Volume of the filter's housing.
    pub filter_volume: Volume,
    /// Loss coefficient of the chamber (-), on the velocity in `chamber_bore`.
    pub chamber_loss_coefficient: f64,
    /// The bore that the chamber's coefficient counts on.
    pub chamber_bore: Length,
    /// Volume of the chamber.
    pub chamber_volume: Volume,
    /// The fan.
    pub fan: FanCurve,
    /// The air in filter, chamber and fan.
    pub air: Air,
}

/// Total pressures in the duct at both ends: static pressure, and a share of the velocity pressure as the end catches it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DuctPressures {
    /// At the intake's end.
    pub intake: Pressure,
    /// At the exhaust's end.
    pub exhaust: Pressure,
}

impl Tube {
    /// Length of all its stretches.
    #[must_use]
    pub fn length(&self) -> Length {
        self.stretches.iter().map(|stretch| stretch.length).sum()
    }
}

impl Line {
    /// # Errors
    /// The first number that makes no sense.
    pub(crate) fn check(&self) -> Result<(), AirflowError> {
        match &self.inlet {
            Inlet::Holes(holes) => holes.iter().try_for_each(check_hole)?,
            Inlet::OpenEnd(end) => check_end(end)?,
        }
        check_tube(&self.intake, Side::Intake)?;
        check_detector(&self.detector)?;
        check_tube(&self.exhaust, Side::Exhaust)?;
        check_end(&self.outlet)?;
        range::PRESSURE.check(self.duct.intake.to_pascals())?;
        range::PRESSURE.check(self.duct.exhaust.to_pascals())?;
        range::DENSITY.check(self.room.to_kilograms_per_cubic_metre())?;
        Ok(())
    }
}

/// # Errors
/// Where the place lies beside the tube.
pub(crate) fn check_place(
    what: &'static str,
    tube: &Tube,
    side: Side,
    at: Length,
) -> Result<(), AirflowError> {
    /// Places are typed in other units than the stretches they are measured along.
    const ROUNDING_M: f64 = 1e-6;
    let (at_m, length_m) = (at.to_metres(), tube.length().to_metres());
    if 0.0 <= at_m && at_m <= length_m + ROUNDING_M {
        return Ok(());
    }
    Err(AirflowError::OffTube {
        what,
        side,
        at_m,
        length_m,
    })
}

fn check_tube(tube: &Tube, side: Side) -> Result<(), AirflowError> {
    if tube.stretches.is_empty() {
        return Err(AirflowError::NoStretch { side });
    }
    for stretch in &tube.stretches {
        range::LENGTH.check(stretch.length.to_metres())?;
        range::BORE.check(stretch.bore.to_millimetres())?;
        range::ROUGHNESS.check(stretch.roughness / stretch.bore)?;
        range::TRANSITION.check(stretch.transition)?;
        range::LENGTH.check(stretch.rise.to_metres().abs())?;
        check_air(&stretch.air)?;
    }
    for fitting in &tube.fittings {
        range::LOSS_COEFFICIENT.check(fitting.loss_coefficient)?;
        check_place("a fitting", tube, side, fitting.at)?;
    }
    for trap in &tube.traps {
        range::VOLUME.check(trap.volume.to_millilitres())?;
        check_place("a trap", tube, side, trap.at)?;
    }
    Ok(())
}

fn check_detector(detector: &Detector) -> Result<(), AirflowError> {
    range::FILTER.check(detector.filter.to_pascals_per_litre_per_minute())?;
    range::VOLUME.check(detector.filter_volume.to_millilitres())?;
    range::LOSS_COEFFICIENT.check(detector.chamber_loss_coefficient)?;
    range::BORE.check(detector.chamber_bore.to_millimetres())?;
    range::VOLUME.check(detector.chamber_volume.to_millilitres())?;
    check_air(&detector.air)
}

fn check_air(air: &Air) -> Result<(), AirflowError> {
    range::DENSITY.check(air.density.to_kilograms_per_cubic_metre())?;
    range::VISCOSITY.check(air.viscosity.to_micropascal_seconds())?;
    Ok(())
}

fn check_end(end: &OpenEnd) -> Result<(), AirflowError> {
    range::LOSS_COEFFICIENT.check(end.inward)?;
    range::LOSS_COEFFICIENT.check(end.outward)?;
    Ok(())
}

pub(crate) fn check_hole(hole: &Hole) -> Result<(), AirflowError> {
    range::HOLE.check(hole.diameter.to_millimetres())?;
    range::DISCHARGE.check(hole.discharge)?;
    Ok(())
}
