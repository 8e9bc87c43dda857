//! Another place for the detector: at the end of an earlier leg, where the exhaust passes too.

use dewrun_run::Leg;

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// Nearer and nearer to the duct.
pub(super) fn places(subject: &Subject) -> Option<Ladder> {
    let (intake, exhaust) = (&subject.inputs.run.intake, &subject.inputs.run.exhaust);
    let rungs = (1..intake.len()).rev().filter_map(|kept| {
        let last = intake.get(kept - 1)?;
        let exhaust_gone = exhaust_from(exhaust, last.space)?;
        Some(vec![Alteration::DetectorAt {
            intake_legs: kept,
            exhaust_gone,
        }])
    });
    Ladder::in_order(Kind::DetectorPlace, rungs.collect())
}

/// So many legs of the exhaust go, so that it begins in a space; none where it does not pass it.
fn exhaust_from(exhaust: &[Leg], space: usize) -> Option<usize> {
    if exhaust.is_empty() {
        return Some(0);
    }
    exhaust.iter().position(|leg| leg.space == space)
}
