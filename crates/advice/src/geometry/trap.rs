//! Traps where they are missing: each as small as it may be until it is next emptied.

use dewrun_quantity::{Length, Mass};
use dewrun_run::{Drain, Proposal, Tube};

use super::change::Change;
use super::{Kind, Subject};

/// More than this in one drain interval is too much to carry away by hand; common practice, no source.
const BY_HAND: Mass = Mass::grams(2_000.0);
/// Traps are sold and made in such steps, g.
const STEP_G: f64 = 50.0;
/// Seals and drops are measured in such steps, mm.
const STEP_MM: f64 = 5.0;

/// The trap to which most water comes, and all that are missing.
pub(super) fn tries(subject: &Subject<'_>) -> Vec<(Kind, Vec<Change>)> {
    let all = missing_traps(subject);
    let mut tries = Vec::new();
    if let Some(first) = all.first() {
        tries.push((Kind::Traps, vec![*first]));
    }
    if 1 < all.len() {
        tries.push((Kind::Traps, all));
    }
    tries
}

/// The traps that a run lacks, each as small as it may be in the conditions entered; that to which most water comes first.
///
/// # Range
/// As [`dewrun_run::water_and_air`].
///
/// # Source
/// The places and sizes are those that the answer proposes, in steps that are sold.
#[must_use]
pub fn missing_traps(subject: &Subject<'_>) -> Vec<Change> {
    let whole = subject.whole;
    let tubes = [
        (Tube::Intake, Some(&whole.intake)),
        (Tube::Exhaust, whole.exhaust.as_ref()),
    ];
    let mut missing: Vec<(f64, Change)> = Vec::new();
    for (tube, water) in tubes {
        let proposals = water.map(|water| water.proposals.as_slice());
        for proposal in proposals.unwrap_or_default() {
            let rate = proposal.trap.rate.to_grams_per_hour();
            missing.extend(trap(tube, proposal).map(|trap| (rate, trap)));
        }
    }
    missing.sort_by(|(one, _), (next, _)| next.total_cmp(one));
    missing.into_iter().map(|(_, change)| change).collect()
}

fn trap(tube: Tube, proposal: &Proposal) -> Option<Change> {
    let at = proposal.trap.at?;
    let by_itself = BY_HAND < proposal.capacity;
    let up = |value: f64, step: f64| (value / step).ceil() * step;
    let up_mm = |length: Length| Length::millimetres(up(length.to_millimetres(), STEP_MM));
    // One that drains itself takes what its seal holds and passes the rest on.
    let capacity_g = up(proposal.capacity.to_grams(), STEP_G);
    Some(Change::Trap {
        tube,
        at,
        drain: if by_itself {
            Drain::ByItself
        } else {
            Drain::ByHand
        },
        capacity: Mass::grams(if by_itself { 0.0 } else { capacity_g }),
        seal: up_mm(proposal.needs.seal),
        outlet_drop: up_mm(proposal.needs.outlet_drop),
    })
}
