//! Drawings and sentences about a run, as SVG and text, made without a browser.
//!
//! Everything here is a function of a run and its answer; colours and sizes of type come from the page's style sheets by class.

#[cfg(feature = "water-and-air")]
pub mod airflow;
mod answer;
mod block;
mod compared;
mod dew_square;
#[cfg(feature = "doubt")]
mod doubt_words;
mod elevation;
#[cfg(feature = "year")]
mod extremes;
mod frame;
mod geometry;
mod grips;
pub mod html;
mod measure;
mod path;
mod pattern;
mod place;
mod pointer;
mod profile;
#[cfg(feature = "year")]
pub mod remedy;
mod scale;
mod scene;
mod shape;
mod states;
mod staying_dry;
mod svg;
mod text;
mod ticks;
#[cfg(feature = "troubles")]
pub mod troubles;
mod view;
mod wording;
mod worked_case;
#[cfg(feature = "year")]
pub mod year;

pub use answer::{
    Answer, Emphasis, Part, Rests, answer, assumed_name, first_answer, grade, rests,
    weather_answer, whole_answer,
};
pub use compared::{compare_elevation, compare_profile};
pub use dew_square::{DewSquare, SquareHours, boundary_temperatures, dew_square};
#[cfg(feature = "doubt")]
pub use doubt_words::DoubtWords;
pub use elevation::{
    DrawnTrap, Elevation, Handle, Held, Label, LabelKind, Sheet, elevation, elevation_for_site,
    elevation_held, elevation_on_paper, elevation_undrawn, level, site_length, site_place,
};
#[cfg(feature = "water-and-air")]
pub use elevation::{elevation_of_whole, elevation_of_whole_on_paper};
pub use frame::{Frame, Margins, Room};
pub use geometry::{Point, Rect};
pub use grips::{DIAMOND, Grips, Pull, TRAP, Touched, leg_name, leg_shape, trap_name};
pub use measure::text_width;
pub use path::Path;
pub use pattern::Hatch;
pub use place::{Board, Placed, Wanted};
pub use pointer::{BigStep, HANDLE, Mark, Rail, Step, big_steps};
pub use profile::{Profile, profile};
pub use scale::Scale;
pub use scene::{Item, Scene};
pub use shape::{Shape, snapped_place};
pub use states::{State, StateStretch, states};
pub use staying_dry::{DryLimit, dry_limits};
pub use svg::{escaped, svg};
pub use text::{Anchor, Size, Text, Tone};
pub use ticks::{Ticks, rounded_span, ticks};
pub use view::{Fitted, Names, View};
pub use wording::fall_number;
pub use worked_case::worked_case;
