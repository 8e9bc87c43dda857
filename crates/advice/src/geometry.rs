//! Remedies of geometry: a trap where one is missing, legs with another fall, hangers closer together.
//!
//! Each is searched for its smallest size by the whole model and told with what is left before and after it.

mod change;
mod hang;
mod left;
mod regrade;
mod trap;

pub use change::{Change, changed};
pub use left::Left;
pub use regrade::{Regrade, regrades};
pub use trap::missing_traps;

use dewrun_run::{Installation, Outcome, Run, Whole, evaluate, water_and_air};

/// So many remedies are offered, no more.
pub(crate) const MOST: usize = 3;

/// A run with all that is answered of it.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// The run.
    pub run: &'a Run,
    /// How it is installed.
    pub installation: &'a Installation,
    /// Its steady answer.
    pub outcome: &'a Outcome,
    /// What water and air do in it.
    pub whole: &'a Whole,
}

/// What a remedy changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Traps where they are missing.
    Traps,
    /// Hangers closer together.
    Hangers,
    /// Legs with another fall.
    Regrade,
}

/// A remedy with what is left.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// Of what kind it is.
    pub kind: Kind,
    /// What it changes.
    pub changes: Vec<Change>,
    /// What there is now.
    pub before: Left,
    /// What is left with it.
    pub after: Left,
}

/// The remedies of geometry that help a run, at most three, those that leave least first.
///
/// # Range
/// As [`dewrun_run::water_and_air`].
///
/// # Accuracy
/// What is left is that of a fresh answer of the changed run.
///
/// # Errors
/// None: what has no answer is not offered.
///
/// # Source
/// By search over the whole model; no relation of its own.
#[must_use]
pub fn remedies_of_geometry(subject: &Subject<'_>) -> Vec<Remedy> {
    let before = Left::of(subject.outcome, subject.whole);
    let mut found: Vec<Remedy> = trap::tries(subject)
        .into_iter()
        .chain(hang::tries(subject))
        .chain(regrade::tries(subject))
        .filter_map(|(kind, changes)| {
            let after = left_after(subject, &changes)?;
            after.is_better_than(&before).then(|| Remedy {
                kind,
                changes,
                before: before.clone(),
                after,
            })
        })
        .collect();
    // The sort keeps equals in the order of the work that they are.
    found.sort_by(|one, next| one.after.weighed(&next.after));
    found.truncate(MOST);
    found
}

/// What is left of a run with such changes; none where it has no answer.
fn left_after(subject: &Subject<'_>, changes: &[Change]) -> Option<Left> {
    let (run, installation) = changed(subject.run, subject.installation, changes);
    let outcome = evaluate(&run).ok()?.value;
    let whole = water_and_air(&run, &installation, &outcome).ok()?;
    Some(Left::of(&outcome, &whole))
}
