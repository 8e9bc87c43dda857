//! A duct fan or a damper that goes on and off by the clock: entries that come at the same hours of the day.

use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::count;
use crate::shape::{Follows, USUAL_KINDS, averaged, telling};
use crate::shown::{Read, added};

/// Hours of a day.
const DAY: u8 = 24;
/// Of what is switched at an hour so much is written down in that hour, one, two and three hours later, and an hour before.
const LATE: [(u8, f64); 5] = [(0, 0.68), (1, 0.13), (2, 0.07), (3, 0.05), (23, 0.07)];
/// Of a week of hours, those of five days count where weekends are quiet.
const WORKING: f64 = 5.0 / 7.0;
/// A switching hour that the project knows is so many times as plausible as another.
const KNOWN: f64 = 12.0;

/// What is switched: at which hour, and what the airflow does then.
#[derive(Debug, Clone, Copy)]
struct Switch {
    hour: u8,
    kind: EventKind,
}

/// How well troubles follow a clock, for each clock with its weight.
///
/// Each time it moves the reading by the same, up and down by itself.
pub(crate) fn follows(
    troubles: &[Placed],
    known: &[u8],
    jumps: Option<&[Vec<Read>; 2]>,
) -> Vec<(Follows, f64)> {
    let mut found = Vec::new();
    for working_only in [false, true] {
        let days: Vec<bool> = troubles
            .iter()
            .map(|one| !working_only || !one.weekend)
            .collect();
        for hour in 0..DAY {
            for (kind, other) in [
                (EventKind::AirflowLow, EventKind::AirflowHigh),
                (EventKind::AirflowHigh, EventKind::AirflowLow),
            ] {
                let first = Switch { hour, kind };
                let mut take = |switches: &[Switch], weight: f64| {
                    let mut follows = one_clock(troubles, &days, working_only, switches);
                    for reads in jumps.into_iter().flatten() {
                        added(&mut follows, reads);
                    }
                    found.push((follows, weight));
                };
                let plausible = |hour: u8| if known.contains(&hour) { KNOWN } else { 1.0 };
                take(&[first], plausible(hour));
                for second in (0..DAY).filter(|second| *second != hour) {
                    let weight = plausible(hour) * plausible(second) / f64::from(DAY);
                    take(
                        &[
                            first,
                            Switch {
                                hour: second,
                                kind: other,
                            },
                        ],
                        weight,
                    );
                }
            }
        }
    }
    found
}

fn one_clock(
    troubles: &[Placed],
    days: &[bool],
    working_only: bool,
    switches: &[Switch],
) -> Follows {
    let per_day = f64::from(DAY) / if working_only { WORKING } else { 1.0 };
    let each = 1.0 / count(switches.len());
    let ratio = |(one, is_day): (&Placed, &bool)| -> f64 {
        let Some(kind) = telling(one.kind) else {
            return 1.0;
        };
        if !is_day {
            return 0.0;
        }
        let usual = USUAL_KINDS.get(kind).copied().unwrap_or(1.0);
        let of_kind = switches.iter().filter(|switch| switch.kind == one.kind);
        let of_hour = |switch: &Switch| -> f64 {
            let Some(hour) = one.wall_hour else {
                // Any hour of that day.
                return each / f64::from(DAY);
            };
            let late = (hour + DAY - switch.hour) % DAY;
            let part = LATE.iter().find(|(after, _)| *after == late);
            part.map_or(0.0, |(_, part)| each * part)
        };
        of_kind.map(of_hour).sum::<f64>() * per_day / usual
    };
    let ratios: Vec<f64> = troubles.iter().zip(days).map(ratio).collect();
    averaged(&ratios)
}
