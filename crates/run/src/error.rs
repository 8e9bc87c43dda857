//! Why a run has no answer, and what stands beside an answer.

use dewrun_moist_air::{AirError, AirNote};
use dewrun_quantity::format::entered;
use thiserror::Error;

/// Which of the two tubes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tube {
    /// From the duct to the detector.
    Intake,
    /// From the detector back to the duct.
    Exhaust,
}

/// The part of a run that an error or a note is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// The run as a whole.
    Run,
    /// The duct air.
    DuctAir,
    /// A space, by its position.
    Space(usize),
    /// A leg, by its tube and its position there.
    Leg(Tube, usize),
    /// The detector.
    Detector,
    /// The flow.
    Flow,
    /// The duct where a tube meets it.
    Duct(Tube),
    /// A trap, by its tube and its position there.
    Trap(Tube, usize),
}

/// Why a run has no answer.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum RunError {
    /// The state of an air cannot be made of its inputs: mend that air.
    #[error("{source}")]
    Air {
        /// Whose air.
        place: Place,
        /// What is wrong with it.
        source: AirError,
    },
    /// An input lies outside what the relations hold for: bring it within the limits.
    #[error("{quantity} is {}, must be from {} to {}", with_unit(*.value, .unit), entered(*.min), with_unit(*.max, .unit))]
    OutOfRange {
        /// Where.
        place: Place,
        /// The field, in the words of the project file without its unit.
        field: &'static str,
        /// What is out of range, in words.
        quantity: &'static str,
        /// The value given.
        value: f64,
        /// Unit of value and limits.
        unit: &'static str,
        /// Least value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
    },
    /// A leg names a space that is not in the list: name one that is.
    #[error("the leg lies in space number {space}, but there are only {spaces}")]
    NoSuchSpace {
        /// The leg.
        place: Place,
        /// The space it names, counted from 0.
        space: usize,
        /// How many there are.
        spaces: usize,
    },
    /// The intake tube has no legs: draw at least one.
    #[error("the intake tube has no legs, must have at least one")]
    NoLegs,
    /// What was asked for does not exist, or was not found: do what is proposed.
    #[error("{quantity} was not found: {remedy}")]
    NotSolved {
        /// Where.
        place: Place,
        /// What was looked for.
        quantity: &'static str,
        /// What would be right.
        remedy: &'static str,
    },
}

/// What stands beside an answer.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum RunNote {
    /// A note on the state of an air.
    Air {
        /// Whose air.
        place: Place,
        /// What was noted.
        note: AirNote,
    },
    /// The leg is so thin that more insulation up to this outside radius lets more heat through, not less.
    InsulationBelowCriticalRadius {
        /// The leg.
        place: Place,
        /// Outside radius up to which insulation makes things worse, m.
        critical_radius_m: f64,
        /// Outside radius as drawn, m.
        outside_radius_m: f64,
    },
    /// Air or wall gets hotter than the relations hold for; the answer past that place is an extrapolation.
    HotterThanRange {
        /// The first leg where that happens.
        place: Place,
        /// Highest temperature in it, °C.
        hottest_c: f64,
    },
    /// Air or wall gets colder than the relations hold for; the answer past that place is an extrapolation.
    ColderThanRange {
        /// The first leg where that happens.
        place: Place,
        /// Lowest temperature in it, °C.
        coldest_c: f64,
    },
    /// Hardly any air flows, or none: the detector samples nothing, and what is said of the tube holds for standing air.
    NoFlow,
    /// So small a flow that the air turns over by its own warmth as much as the fan moves it, which the film relations leave out.
    VerySmallFlow {
        /// The leg where that is strongest.
        place: Place,
        /// Buoyancy over inertia there, Gr / Re^2.
        richardson: f64,
    },
    /// So fast a flow that its own kinetic energy is worth a part of a kelvin, which the relations leave out.
    VeryFastFlow {
        /// The leg where it is fastest.
        place: Place,
        /// Mean velocity there, m/s.
        velocity_m_s: f64,
    },
}

/// A number with its unit, where it has one.
fn with_unit(value: f64, unit: &str) -> String {
    if unit.is_empty() {
        entered(value)
    } else {
        format!("{} {unit}", entered(value))
    }
}
