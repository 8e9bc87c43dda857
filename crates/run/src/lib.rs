//! One run: intake tube, detector and exhaust tube, evaluated.

mod course;
mod error;
pub mod figure;
mod input;
mod insulation_note;
pub mod library;
mod outcome;
pub mod phone_level;
mod prepare;
pub mod range;
mod reading;
mod report;
mod reserves;
mod runs_past;
mod steady;

pub use course::course;
pub use dewrun_moist_air as air;
pub use error::{Place, RunError, RunNote, Tube};
pub use input::{Detector, Flow, FlowAt, Insulation, Leg, Run, Space, TubeWall};
pub use outcome::{
    AirPoint, Balance, Grade, LegOutcome, NearWallMist, Outcome, ProfilePoint, Stretch,
    TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H, WallPoint,
};
pub use reading::{Reading, reading};
pub use runs_past::runs_past;
pub use steady::{evaluate, evaluate_fine};
