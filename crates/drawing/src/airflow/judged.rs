//! What a pair of limits makes of a state or fault.

use dewrun_advice::OverDuct;
use dewrun_quantity::{Pressure, Style};

use super::Shown;
use super::head::percent;
use crate::wording;

/// Duct air above this share counts as all of it.
const ALL: f64 = 0.995;

/// Whether a reading lies outside a pair of limits; on a limit it does not.
pub(super) fn trips([low, high]: [f64; 2], reading: f64) -> bool {
    reading < low || high < reading
}

/// What of the air at the sensor is not from the duct, in words.
fn room_air(share: f64, style: Style) -> String {
    if ALL <= share {
        "all duct air".to_owned()
    } else if share <= 1.0 - ALL {
        "all room air".to_owned()
    } else {
        format!("{} room air", percent(1.0 - share, style))
    }
}

/// What is said of a fault that the limits do not see.
pub(super) fn unseen(share: f64, style: Style) -> String {
    format!("not seen: {}", room_air(share, style))
}

/// What is said of a fault that they see.
pub(super) fn seen(share: f64, style: Style) -> String {
    format!("caught; {} from the duct", percent(share, style))
}

/// The duct pressure nearest to none at which a fault goes unseen, with what is then drawn.
pub(super) fn unseen_elsewhere<'a>(
    over: impl Iterator<Item = &'a OverDuct>,
    limits: [f64; 2],
    style: Style,
) -> Option<String> {
    let size = |one: &OverDuct| one.duct.to_pascals().abs();
    let missed = over.filter(|one| !trips(limits, one.reading));
    let nearest = missed.min_by(|one, next| size(one).total_cmp(&size(next)))?;
    let what = unseen(nearest.share, style);
    Some(format!("at {} {what}", signed(nearest.duct, style)))
}

/// A pressure with its sign.
pub(super) fn signed(pressure: Pressure, style: Style) -> String {
    let plus = if 0.5 < pressure.to_pascals() { "+" } else { "" };
    format!("{plus}{}", wording::gauge(pressure, style))
}

/// How many faults of all a pair of limits catches.
pub(super) fn caught(shown: &Shown<'_>, limits: [f64; 2]) -> (usize, usize) {
    let faults = &shown.whole.airflow.faults;
    let seen = faults.iter().filter(|fault| trips(limits, fault.reading));
    (seen.count(), faults.len())
}

/// How many expected states of all trip a pair of limits.
pub(super) fn false_alarms(shown: &Shown<'_>, limits: [f64; 2]) -> (usize, usize) {
    let states = &shown.whole.airflow.states;
    let trip = states.iter().filter(|state| trips(limits, state.reading));
    (trip.count(), states.len())
}
