//! The smallest change of each kind that makes a run dry enough through its year.
//!
//! No physics of its own: years are those of [`dewrun_season`], steady answers those of [`dewrun_run`].
//! A [`Subject`] is the run with what is wanted of it, [`searches`] are the remedies to be tried, each by itself and in turns,
//! so that as many threads as there are share them; [`pairs`] are tried where one alone does not do.

mod alteration;
pub mod inverse;
mod kind;
mod ladder;
mod left;
mod powered;
mod ranking;
mod sample;
mod search;
mod subject;
mod target;
mod trap_days;
mod walk;

pub use alteration::{Alteration, INSULATION_ROW, altered};
pub use dewrun_ensemble::{Climate, Inputs};
pub use kind::{Kind, Work};
pub use left::{AirLeft, EnteredLeft, Left, YearLeft};
pub use powered::{Powered, Thermostat};
pub use ranking::{RankBy, rank};
pub use search::{Search, Tried};
pub use subject::Subject;
pub use target::{DesignHour, Miss, Target};

/// The remedies to be tried; none where the target is met as it is.
#[must_use]
pub fn searches(subject: &Subject) -> Vec<Search> {
    if subject.is_met() {
        return Vec::new();
    }
    ladder::ladders(subject)
        .into_iter()
        .map(Search::new)
        .collect()
}

/// Two remedies together, of those that do not do alone.
#[must_use]
pub fn pairs(tried: &[Tried]) -> Vec<Search> {
    ladder::pairs(tried).into_iter().map(Search::new).collect()
}
