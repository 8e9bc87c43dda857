//! The project file and the answers as JSON.
//!
//! The only crate that knows serde: documents are types of their own, converted by hand to and from the engine's,
//! so that the engine may change without breaking a file and a file without breaking the engine.
//!
//! ```
//! use dewrun_document::{located, read, to_run, write};
//! let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
//! let project = read(text)?;
//! assert_eq!(write(&project)?, text);
//! let (run, names) = to_run(&project, 0)?;
//! assert_eq!(names.spaces, ["Plant room", "Service corridor", "Lobby"]);
//! let outcome = dewrun_run::evaluate(&run).map_err(|error| located(0, error))?;
//! assert!(outcome.value.intake.first_wet().is_some());
//! # Ok::<(), dewrun_document::DocumentError>(())
//! ```

mod air_answer;
mod alterations;
mod answer;
mod answer_file;
mod convert;
mod doubt_answer;
mod ensemble;
mod ensemble_answer;
mod error;
mod field_path;
mod figures;
mod givens;
mod installation;
mod json;
pub mod limits;
mod located_whole;
mod names;
mod note;
mod packed;
mod place;
mod remark;
mod remedies_answer;
mod schema;
mod season;
mod share_link;
mod target;
mod troubles_answer;
mod troubles_said;
mod v1;
mod visited;
mod weather_answer;
mod whole_answer;
mod year_answer;

pub use air_answer::air_answer;
pub use alterations::{make_alterations, make_changes};
pub use answer::{Telling, answer, whole_notes};
pub use convert::to_run;
pub use ensemble::{EnsembleSaid, day_of, measurements, to_ensemble};
pub use ensemble_answer::{EnsembleTelling, ensemble_answer};
pub use error::DocumentError;
pub use field_path::FieldPath;
pub use figures::{figure_entry, figure_entry_in, figures, figures_json, year_figures};
pub use givens::givens;
pub use installation::{Assumed, Installed, installed, to_installation};
pub use located_whole::located_whole;
pub use names::{Names, called};
pub use note::note;
pub use packed::{FILE_BYTES, PACKED_FORMAT, Packed, PackedFile, is_packed, pack, unpack};
pub use place::{given_path, located, path_of};
pub use remedies_answer::{RemediesTelling, access_of, hour_name, remedies_answer};
pub use schema::{
    air_schema, answer_schema, doubt_schema, project_schema, remedies_schema, troubles_schema,
    weather_schema,
};
pub use season::{YearAssumed, YearSaid, to_season, weather_reference};
pub use share_link::{
    LINK_MARK, fingerprint, from_link, is_link, link_letters, link_text, share_link, within_limit,
};
pub use target::target_of;
pub use troubles_answer::{TroublesTelling, troubles_answer};
pub use troubles_said::{TroublesAsked, TroublesFound, TroublesSaid, troubles_found};
pub use v1::output;
pub use v1::{
    Access, AirFrom, AirPair, AirPath, AirSource, AirStep, AirStepKind, AirflowSensor, BoreForm,
    ClockChange, DaylightChanges, DesignBy, DesignState, Detector, DryEnough, DryIn, Duct,
    DuctEntry, ExpectedReading, FORMAT, FallForm, FanPoint, FileColumn, FileDates, FileDelimiter,
    FileForm, FileHumidity, FileMark, FileReading, FileStamps, Fitting, FittingKind, Flow, FlowAt,
    Follows, Humidity, Input, Insulation, Kept, Leg, LogReading, LogReference, LogWords, MonthName,
    Occasion, Origin, Over, Period, Pressure, Project, REVISION, Reading, Relative, Route, Run,
    SeenAtCheck, Setting, Side, Space, SpaceYear, Trap, TrapCondition, TrapForm, TrapKind,
    TroublesKept, TubeStuff, TubeSupply, TubeWall, VERSION, Visit, VisitedTube, WaterFound,
    WeatherReference, Weekday, check, read, read_bytes, read_keeping_years, write,
};
pub use visited::visited;
pub use weather_answer::weather_answer;
pub use year_answer::{
    DesignAnswer, SeriesColumn, YearTelling, design_answers, series_columns, stamp,
    taken_for_granted, year_answer, year_verdict,
};
