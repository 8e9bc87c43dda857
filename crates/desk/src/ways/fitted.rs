//! The tube that is being fitted, leg by leg: which way each goes.

use dewrun_document::{Leg, Origin};

use crate::field::{leg, leg_mut, route};
use crate::first_visit::tidy;
use crate::{OpenProject, TubeName, add_leg, rows};

/// Which way a leg may go.
pub(super) const WAY_WORDS: [&str; 5] = [
    "level",
    "down 1:50",
    "up 1:50",
    "straight down",
    "straight up",
];

/// For each: its row, the rise per length, and the length with which it begins, m.
const WAYS: [(&str, f64, f64); 5] = [
    ("route-level", 0.0, 5.0),
    ("route-fall", -0.02, 5.0),
    ("route-rise", 0.02, 5.0),
    ("route-drop", -1.0, 1.2),
    ("route-riser", 1.0, 1.2),
];

/// A slope that differs by no more than this is the same, rise per length.
const SAME_SLOPE: f64 = 1e-6;

/// Which way a leg goes; none where its fall is another.
pub(super) fn way_of(project: &OpenProject, at: usize) -> Option<usize> {
    let leg = leg(project, TubeName::Intake, at)?;
    let slope = leg.rise_m.value / leg.length_m.value;
    WAYS.iter()
        .position(|(_, way, _)| (slope - way).abs() <= SAME_SLOPE)
}

/// Lays a leg another way; a length that somebody has given stays.
pub(super) fn lay(project: &mut OpenProject, at: usize, way: usize) -> Option<()> {
    lay_leg(leg_mut(project, TubeName::Intake, at)?, way)
}

fn lay_leg(leg: &mut Leg, way: usize) -> Option<()> {
    let (row, slope, length_m) = *WAYS.get(way)?;
    if matches!(leg.length_m.origin, Origin::Assumed { .. }) {
        leg.length_m = rows::within(row, "length_m", length_m)?;
    }
    leg.rise_m = rows::within(row, "rise_m", tidy(leg.length_m.value * slope))?;
    Some(())
}

/// Goes on with one leg more, in the space of the last.
pub(super) fn go_on(project: &mut OpenProject, way: usize) -> Option<()> {
    let last = route(project, TubeName::Intake)?
        .legs
        .len()
        .checked_sub(1)?;
    add_leg(project, TubeName::Intake, last);
    let added = leg_mut(project, TubeName::Intake, last + 1)?;
    // Nobody has measured it yet.
    added.length_m = rows::usual_of(WAYS.get(way)?.0, "length_m")?;
    lay_leg(added, way)
}
