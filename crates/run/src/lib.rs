//! One run: intake tube, detector and exhaust tube, evaluated.

mod course;
mod error;
pub mod figure;
mod input;
mod installation;
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
mod whole;

pub use course::course;
pub use dewrun_moist_air as air;
pub use dewrun_tube::Factors;
pub use error::{Place, RunError, RunNote, Tube};
pub use input::{Detector, Flow, FlowAt, Insulation, Leg, Run, Space, TubeWall};
pub use installation::{
    DetectorPath, Drain, DuctEnd, DuctEnds, Fan, Installation, LegInstallation, Trap,
    TubeInstallation,
};
pub use outcome::{
    AirPoint, Balance, Grade, LegOutcome, NearWallMist, Outcome, ProfilePoint, Stretch,
    TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H, WallPoint,
};
pub use prepare::segments_of;
pub use reading::{Reading, reading};
pub use runs_past::runs_past;
pub use steady::{evaluate, evaluate_fine, evaluate_with};
pub use whole::{
    AirflowOutcome, Blind, Change, ExpectedOnSite, FaultOutcome, FilterOnSite, Finding,
    GivenLimits, HangerAdvice, IceOutcome, LegWater, LowPoint, OnSite, PoolLevel, Proposal, Remark,
    Standing, StandingAir, StandingTube, StateKind, StateOutcome, TrapOutcome, TubeWater, Whole,
    WholeError, fault_words, on_site, standing_of, water_and_air,
};

/// What the crates of water and airflow call things, for those who tell an answer and compute none.
pub mod told {
    pub use dewrun_airflow::{
        AirflowError, AirflowLimits, AirflowNote, CoursePoint, Direction, Expected, FanCurve,
        Fault, FlowSensor, Hole, Place as AirPlace, Reads, Side, TransportTime, Trip, Verdict,
    };
    pub use dewrun_water::drainage::{Course, Destination, DrainageError};
    pub use dewrun_water::duct_entry::{Entry, FromDuct};
    pub use dewrun_water::ice::Freezes;
    pub use dewrun_water::time_to_trouble::{Trouble, TroubleAt, TroubleTime};
    pub use dewrun_water::trap::TrapKind;
    pub use dewrun_water::water_lock::Lock;
}
