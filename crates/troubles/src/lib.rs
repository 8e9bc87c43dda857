//! Which cause explains a log of troubles best, and what to look at next.
//!
//! No physics of its own: hours are those of [`dewrun_ensemble`]'s members, signs those of the run's airflow.
//! A log is an inhomogeneous Poisson process of entries that have nothing to do with the cause, and of those that follow the cause's hazard; hours without an entry count as well.

mod answers;
mod cause;
mod comparison;
mod evidence;
mod feasible;
mod follows;
mod groups;
mod hours_of_log;
mod in_weathers;
mod lasting_causes;
mod loads;
mod local_time;
mod log;
mod modelled;
mod next_check;
mod note;
mod poisson;
mod rank;
mod reading;
mod readings_told;
mod shape;
mod shown;
mod signs;
mod spells;
mod switching;
mod weather_causes;
mod weights;
mod words;

pub use answers::{
    Answers, TouchedAnswer, TrapAnswer, TroubleAnswer, WhenAnswer, shares_of_answers,
};
pub use cause::Cause;
pub use comparison::{Penalty, shares};
pub use evidence::{Evidence, cannot_tell, contradiction, evidence};
pub use in_weathers::InWeather;
pub use local_time::{ChangeDay, DaylightSaving, OnWall, WallClock};
pub use log::{Entry, EventKind, Log};
pub use modelled::{Hours, Known, LowPoint, Modelled, places_in};
pub use next_check::{Check, NextCheck, OutcomeTold, next_checks, take_outcome};
pub use note::Asked;
pub use poisson::{Fitted, best_background_and_scale, best_scale, log_likelihood};
pub use rank::{Ranked, Ranking, rank, rank_with_spans};
pub use reading::{ListRead, ListSaid, read_list};
pub use signs::{FaultSigns, Sign};
pub use weights::Weight;
pub use words::{grams_of, kind_of, percent_of};
