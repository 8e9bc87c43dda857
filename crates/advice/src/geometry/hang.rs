//! Hangers closer together where legs sag so far that they hold water.

use dewrun_quantity::Length;
use dewrun_run::{HangerAdvice, Tube};

use super::change::Change;
use super::{Kind, Subject};

/// Nobody sets hangers finer than that, m.
const STEP_M: f64 = 0.05;

/// All legs that sag, each with the largest spacing at which it drains.
pub(super) fn tries(subject: &Subject<'_>) -> Vec<(Kind, Vec<Change>)> {
    let whole = subject.whole;
    let tubes = [
        (Tube::Intake, Some(&whole.intake)),
        (Tube::Exhaust, whole.exhaust.as_ref()),
    ];
    let mut changes = Vec::new();
    for (tube, water) in tubes {
        let legs = water.map(|water| water.legs.as_slice()).unwrap_or_default();
        for (leg, told) in legs.iter().enumerate() {
            if let HangerAdvice::Spacing { largest, .. } = told.hangers
                && told.hangers.sags()
            {
                changes.push(Change::Hangers {
                    tube,
                    leg,
                    spacing: down(largest),
                });
            }
        }
    }
    if changes.is_empty() {
        return Vec::new();
    }
    vec![(Kind::Hangers, changes)]
}

/// In steps that are set; as it is where it is smaller than one.
fn down(spacing: Length) -> Length {
    let steps = (spacing.to_metres() / STEP_M).floor();
    if steps < 1.0 {
        return spacing;
    }
    // From the whole number, so that 0.55 is not 0.5500000000000001.
    Length::metres(steps / (1.0 / STEP_M))
}
