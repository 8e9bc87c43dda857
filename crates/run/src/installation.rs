//! What water and air meet in a run beside its heat: hangers, traps, holes, fan, filter, pressures, limits.

use dewrun_airflow::{DuctPressures, FanCurve, FlowSensor, Hole};
use dewrun_quantity::{
    Density, FlowResistance, Length, Mass, MassPerArea, MassPerLength, Modulus, Pressure,
    TemperatureDifference, Time, Volume, VolumeFlow,
};
use dewrun_water::duct_entry::Entry;
use dewrun_water::trap::TrapKind;

/// How a run is installed; its legs, traps and spaces are in the order of those of the [`Run`](crate::Run).
#[derive(Debug, Clone, PartialEq)]
pub struct Installation {
    /// The intake tube.
    pub intake: TubeInstallation,
    /// The exhaust tube.
    pub exhaust: TubeInstallation,
    /// Sampling holes of the intake in the duct.
    pub holes: Vec<Hole>,
    /// The duct where the intake begins and where the exhaust ends.
    pub duct: DuctEnds,
    /// What the air meets between both tubes.
    pub detector: DetectorPath,
    /// Pressure in each space against the detector's room.
    pub spaces: Vec<Pressure>,
    /// What the airflow sensor answers to.
    pub sensor: FlowSensor,
    /// The airflow limits in use, low and high, as parts of the reading as fitted.
    pub limits: Option<[f64; 2]>,
    /// What a limit keeps from the states that must not trip it, as a part of the reading as fitted.
    pub limit_margin: f64,
    /// How often traps are emptied.
    pub drain_interval: Time,
    /// Film that stays on the walls.
    pub film: MassPerArea,
    /// How much colder, and how much warmer, the air in the line gets in the course of a year.
    pub season: [TemperatureDifference; 2],
    /// What friction of the air is multiplied by where its flow is neither laminar nor turbulent, to carry its known spread; 1 as published.
    pub transition: f64,
    /// What a year of dust makes of the filter's resistance.
    pub dust_after_year: f64,
}

/// The duct at both ends of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DuctEnds {
    /// Where the intake begins.
    pub intake: DuctEnd,
    /// Where the exhaust ends.
    pub exhaust: DuctEnd,
}

/// The duct where a tube meets it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DuctEnd {
    /// Static pressure against the detector's room.
    pub static_pressure: Pressure,
    /// Velocity pressure.
    pub velocity_pressure: Pressure,
    /// Share of the velocity pressure that the tube meets.
    pub catch: f64,
}

impl DuctEnds {
    /// A duct in which no air moves, at these pressures.
    #[must_use]
    pub const fn still(intake: Pressure, exhaust: Pressure) -> Self {
        Self {
            intake: DuctEnd::still(intake),
            exhaust: DuctEnd::still(exhaust),
        }
    }

    /// Total pressures that the tubes meet.
    ///
    /// ```
    /// use dewrun_quantity::Pressure;
    /// use dewrun_run::{DuctEnd, DuctEnds};
    /// let against = DuctEnd { static_pressure: Pressure::pascals(-50.0), velocity_pressure: Pressure::pascals(30.0), catch: 1.0 };
    /// let ends = DuctEnds { intake: against, exhaust: DuctEnd { catch: 0.0, ..against } };
    /// assert_eq!(ends.total().intake.to_pascals(), -20.0);
    /// assert_eq!(ends.total().exhaust.to_pascals(), -50.0);
    /// ```
    #[must_use]
    pub fn total(&self) -> DuctPressures {
        DuctPressures {
            intake: self.intake.total(),
            exhaust: self.exhaust.total(),
        }
    }
}

impl DuctEnd {
    const fn still(static_pressure: Pressure) -> Self {
        Self {
            static_pressure,
            velocity_pressure: Pressure::ZERO,
            catch: 0.0,
        }
    }

    fn total(self) -> Pressure {
        self.static_pressure + self.velocity_pressure * self.catch
    }
}

/// How a tube is installed.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeInstallation {
    /// By which side of the duct it enters.
    pub entry: Entry,
    /// One for each leg.
    pub legs: Vec<LegInstallation>,
    /// Its traps and drains.
    pub traps: Vec<Trap>,
}

/// How a leg is installed, and what it is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct LegInstallation {
    /// Roughness of the bore.
    pub roughness: Length,
    /// What its ribs hold, in a corrugated bore.
    pub corrugations: MassPerLength,
    /// From a coil: no beam, it wants support all along.
    pub coiled: bool,
    /// Density of the wall.
    pub density: Density,
    /// Modulus of elasticity under a load of decades.
    pub long_term_modulus: Modulus,
    /// Distance between hangers, where known.
    pub hanger_spacing: Option<Length>,
    /// Bends, tees, valves: distance from the leg's start, loss coefficient.
    pub fittings: Vec<(Length, f64)>,
    /// A person can reach it to empty a trap.
    pub reachable: bool,
}

/// How a trap is emptied.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drain {
    /// By hand, at a visit.
    ByHand,
    /// By itself, over a standing seal.
    ByItself,
    /// A bare stub that is open below.
    OpenStub,
}

/// A trap or drain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trap {
    /// Along the tube.
    pub at: Length,
    /// How it is emptied.
    pub drain: Drain,
    /// Dry, or its valve stands open: air passes.
    pub open: bool,
    /// How its seal stands.
    pub kind: TrapKind,
    /// What it takes until it has to be emptied.
    pub capacity: Mass,
    /// Height of its standing seal.
    pub seal: Length,
    /// Height of the tube's floor over its outlet.
    pub outlet_drop: Length,
    /// Bore of the drain.
    pub bore: Length,
}

/// What the air meets between both tubes.
#[derive(Debug, Clone, PartialEq)]
pub struct DetectorPath {
    /// Resistance of the clean filter.
    pub filter: FlowResistance,
    /// Loss coefficient of the chamber, on the velocity in the intake's bore.
    pub chamber_loss: f64,
    /// Volume of filter housing and chamber.
    pub chamber_volume: Volume,
    /// The fan.
    pub fan: Fan,
    /// Its suction as it starts.
    pub start_suction: Pressure,
}

/// A detector's fan.
#[derive(Debug, Clone, PartialEq)]
pub enum Fan {
    /// Its own curve, at the speed at which it was measured.
    Curve(FanCurve),
    /// A falling curve of usual form, at the speed that gives the flow of the run.
    Generic {
        /// Pressure at no flow.
        standing: Pressure,
        /// Flow at no pressure.
        free: VolumeFlow,
    },
}
