//! Version 1 of the documents: what a project file and an answer hold, field by field.

mod air;
mod air_output;
mod air_path;
mod airflow_output;
mod check;
mod doubt_output;
mod dry_enough;
mod dry_output;
mod ensemble_output;
mod file;
mod file_reading;
mod input;
mod kept;
mod origin;
pub mod output;
mod period;
mod remedies_output;
mod route;
mod trap;
mod troubles;
mod troubles_output;
mod tube_stuff;
mod visit;
mod water_output;
mod weather_output;
mod year;
mod year_output;

pub use air::{AirPair, Humidity, Over, Pressure, Relative};
pub use air_path::{AirPath, AirflowSensor, FanPoint};
pub use check::check;
pub use dry_enough::{DryEnough, DryIn};
pub(crate) use file::File;
pub use file::{FORMAT, REVISION, VERSION, read, read_bytes, read_keeping_years, write};
pub use file_reading::{
    FileColumn, FileDates, FileDelimiter, FileForm, FileHumidity, FileMark, FileReading, FileStamps,
};
pub use input::{Detector, Duct, Flow, FlowAt, Project, Run, Space};
pub use kept::Kept;
pub use origin::{Input, Origin};
pub use period::{MonthName, Period, Setting, Weekday};
pub use route::{
    Access, DuctEntry, FallForm, Fitting, FittingKind, Insulation, Leg, Route, Side, TubeWall,
};
pub use trap::{Trap, TrapCondition, TrapForm, TrapKind};
pub use troubles::{
    ClockChange, DaylightChanges, LogReading, LogReference, LogWords, SeenAtCheck, TroublesKept,
};
pub use tube_stuff::{BoreForm, TubeStuff, TubeSupply};
pub use visit::{ExpectedReading, Occasion, Reading, Visit, VisitedTube, WaterFound};
pub use year::{
    AirFrom, AirSource, AirStep, AirStepKind, DesignBy, DesignState, Follows, SpaceYear,
    WeatherReference,
};
