//! One run: intake tube, detector and exhaust tube, evaluated.

mod error;
mod input;
mod outcome;

pub use dewrun_moist_air as air;
pub use error::{Place, RunError, RunNote, Tube};
pub use input::{Detector, Flow, FlowAt, Insulation, Leg, Run, Space, TubeWall};
pub use outcome::{
    AirPoint, Balance, Grade, LegOutcome, NearWallMist, Outcome, ProfilePoint, Stretch,
    TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H, WallPoint,
};

use dewrun_quantity::Noted;

/// Evaluates a run in steady state, all walls dry at the start.
///
/// # Errors
/// [`RunError`] says what keeps the run from being evaluated, and where.
pub fn evaluate(_run: &Run) -> Result<Noted<Outcome, RunNote>, RunError> {
    Err(RunError::NoLegs)
}
