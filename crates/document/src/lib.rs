//! The project file and the answers as JSON.
//!
//! The only crate that knows serde: documents are types of their own, converted by hand to and from the engine's,
//! so that the engine may change without breaking a file and a file without breaking the engine.

mod v1;

pub use v1::{
    Access, AirPair, Detector, Duct, DuctEntry, FallForm, Fitting, FittingKind, Flow, FlowAt,
    Humidity, Input, Insulation, Leg, Origin, Over, Pressure, Project, Relative, Route, Run, Side,
    Space, TubeWall,
};
