//! Causes that last, each with how it comes, what it looks like, and what mends it; all of it common practice, no source.

use crate::cause::Cause;
use crate::log::EventKind;
use crate::shape::KINDS;
use crate::signs::{FaultSigns, Sign};
use crate::spells::Spells;

const LOW: [f64; KINDS] = [1.0, 0.0, 0.0, 0.0, 0.0];
const HIGH: [f64; KINDS] = [0.0, 1.0, 0.0, 0.0, 0.0];

/// The ways in which a cause may last, each with its weight; none of a cause that follows weather or clock.
pub(crate) fn of(cause: Cause, signs: &FaultSigns) -> Vec<(Spells, f64)> {
    match cause {
        Cause::FilterLoading => vec![(filter_loading(), 1.0)],
        Cause::HolesFouled => vec![(holes_fouled(), 1.0)],
        Cause::FanWeak => vec![(fan_weak(), 1.0)],
        Cause::FilterMissing => vec![(filter_missing(), 1.0)],
        Cause::PartedTube => parted(signs.parted),
        _ => Vec::new(),
    }
}

const fn filter_loading() -> Spells {
    Spells {
        kinds: LOW,
        often: 0.25,
        comes_days: 105.0,
        loads: true,
        begins_with: None,
        mended_by: (EventKind::FilterChanged, 20.0),
        again: true,
        tried_a_year: [0.0, 0.5, 1.0],
    }
}

const fn holes_fouled() -> Spells {
    Spells {
        kinds: LOW,
        often: 0.25,
        comes_days: 190.0,
        loads: true,
        begins_with: None,
        mended_by: (EventKind::Other, 80.0),
        again: true,
        tried_a_year: [9.0, 1.0, 0.0],
    }
}

const fn fan_weak() -> Spells {
    Spells {
        kinds: LOW,
        often: 0.2,
        comes_days: 190.0,
        loads: false,
        begins_with: None,
        mended_by: (EventKind::DetectorReplaced, 120.0),
        again: false,
        tried_a_year: [2.5, 0.0, 1.0],
    }
}

const fn filter_missing() -> Spells {
    Spells {
        kinds: HIGH,
        often: 0.12,
        comes_days: 240.0,
        loads: false,
        begins_with: Some(EventKind::FilterChanged),
        mended_by: (EventKind::FilterChanged, 120.0),
        again: false,
        tried_a_year: [0.0, 1.0, 1.0],
    }
}

/// Which way the airflow goes depends on the joint and on the duct's pressure.
fn parted(sign: Sign) -> Vec<(Spells, f64)> {
    let of = |kinds: [f64; KINDS]| Spells {
        kinds,
        often: 0.12,
        comes_days: 240.0,
        loads: false,
        begins_with: None,
        mended_by: (EventKind::Other, 180.0),
        again: false,
        tried_a_year: [1.0, 0.6, 0.0],
    };
    let ways = [(of(LOW), sign.low), (of(HIGH), sign.high)];
    ways.into_iter().filter(|(_, share)| 0.0 < *share).collect()
}
