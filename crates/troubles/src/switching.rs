//! A duct fan or a damper that goes on and off by the clock: entries that come at the same hours of the day.

use crate::follows::{Mixed, Ways};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::shape::{USUAL_KINDS, telling};
use crate::shown::{JUMPS, Read, added};

/// Hours of a day.
const DAY: u8 = 24;
/// Of what is switched at an hour so much is written down in that hour, one, two and three hours later, and an hour before.
const LATE: [(u8, f64); 5] = [(0, 0.68), (1, 0.13), (2, 0.07), (3, 0.05), (23, 0.07)];
/// Of a week of hours, those of five days count where weekends are quiet.
const WORKING: f64 = 5.0 / 7.0;
/// A switching hour that the project knows is so many times as plausible as another.
const KNOWN: f64 = 12.0;

/// Takes each clock that troubles may follow.
///
/// Each time it moves the reading by the same, up and down by itself.
pub(crate) fn ways(
    troubles: &[Placed],
    known: &[u8],
    jumps: Option<&[[Read; JUMPS.len()]; 2]>,
    ways: &mut Ways,
) {
    let plausible = |hour: u8| if known.contains(&hour) { KNOWN } else { 1.0 };
    let mut take = |ratios: &[f64], weight: f64| {
        let mixed = Mixed::of(troubles, ratios);
        let mut gains = mixed.gains();
        ways.weigh(weight);
        ways.take_unread(gains.first().copied().unwrap_or(0.0), weight);
        match jumps {
            None => ways.take(&gains, weight, || mixed.told(ratios)),
            Some(jumps) => {
                let mut told: Vec<(f64, f64)> = mixed.told(ratios).collect();
                for reads in jumps {
                    added(&mut gains, &mut told, troubles, reads);
                }
                ways.take(&gains, weight, || told);
            }
        }
    };
    for working_only in [false, true] {
        let switched = |kind: EventKind| -> Vec<Vec<f64>> {
            let at = |hour| switched_at(troubles, working_only, (hour, kind));
            (0..DAY).map(at).collect()
        };
        let (lows, highs) = (
            switched(EventKind::AirflowLow),
            switched(EventKind::AirflowHigh),
        );
        for (hour, low) in (0..DAY).zip(&lows) {
            take(low, plausible(hour));
            for (other, high) in (0..DAY).zip(&highs).filter(|(other, _)| *other != hour) {
                // Half of what is switched is switched at each, on at one and off at the other, or the other way round.
                let both = low.iter().zip(high);
                let both: Vec<f64> = both.map(|(one, other)| 0.5 * (one + other)).collect();
                take(
                    &both,
                    2.0 * plausible(hour) * plausible(other) / f64::from(DAY),
                );
            }
        }
        for (hour, high) in (0..DAY).zip(&highs) {
            take(high, plausible(hour));
        }
    }
}

/// How many times as likely each trouble is as at any time, where one kind is switched at one hour.
fn switched_at(troubles: &[Placed], working_only: bool, (hour, kind): (u8, EventKind)) -> Vec<f64> {
    let per_day = f64::from(DAY) / if working_only { WORKING } else { 1.0 };
    let usual = telling(kind).and_then(|kind| USUAL_KINDS.get(kind).copied());
    let once = per_day / usual.unwrap_or(1.0);
    let ratio = |one: &Placed| -> f64 {
        if telling(one.kind).is_none() {
            return 1.0;
        }
        if one.kind != kind || working_only && one.weekend {
            return 0.0;
        }
        let Some(wall_hour) = one.wall_hour else {
            // Any hour of that day.
            return once / f64::from(DAY);
        };
        let late = (wall_hour + DAY - hour) % DAY;
        let part = LATE.iter().find(|(after, _)| *after == late);
        part.map_or(0.0, |(_, part)| once * part)
    };
    troubles.iter().map(ratio).collect()
}
