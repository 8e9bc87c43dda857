//! Readings of the airflow that somebody wrote down off the panel: how many times as likely each is under a cause as in an entry of anything else.
//!
//! What nobody knows (the size of a fault, where the limit lies, the scale of the panel) is summed over; numbers are common practice, no source, unless said.

use dewrun_numeric::elementary::{exp, ln, pow};

use crate::comparison::{log_mean, normalised};
use crate::follows::{InTurns, logs};
use crate::groups::Alike;
use crate::hours_of_log::Placed;
use crate::loads::Loads;
use crate::log::EventKind;
use crate::modelled::Hours;
use crate::poisson::count;
use crate::shape::telling;

/// A reading is off by so much of that as fitted, and by so much of itself: standard deviations.
const OFF: (f64, f64) = (0.012, 0.03);
/// A panel's scale differs from the model's by so much: the standard deviation of a logarithm.
const SCALE: f64 = 0.06;
/// The same in three steps, each with its weight.
const SCALES: [(f64, f64); 3] = [(0.92, 0.25), (1.0, 0.5), (1.08, 0.25)];
/// So many readings are another's, or were written down wrongly.
const MISREAD: f64 = 0.06;
/// A fault is of another size than the ones that are modelled so often.
const OTHER_SIZE: f64 = 0.1;
/// Sizes of a fault lie so far apart, as a logarithm: not much farther than readings are off.
const SIZE_STEP: f64 = 0.06;
/// The least and the largest size, as logarithms in steps.
const SIZE_STEPS: (i32, i32) = (-38, 20);
/// A modelled fault of less does not show, and neither does one of any other size.
const SEEN: (f64, f64) = (0.03, 0.08);
/// What else shows lies evenly within the first span, and sometimes within the second: of low and of high airflow.
const ELSE_LOW: [(f64, f64, f64); 2] = [(0.2, 1.0, 0.8), (0.0, 1.3, 0.2)];
const ELSE_HIGH: [(f64, f64, f64); 2] = [(1.0, 1.8, 0.8), (0.7, 3.0, 0.2)];
/// Limits that a line which loads may trip, as parts of the least that a sound one reads: that trips none.
const LIMITS: [f64; 9] = [0.69, 0.72, 0.75, 0.78, 0.81, 0.84, 0.87, 0.9, 0.93];
/// What loads falls on by so much a day from its first trouble to when it is cleaned, each with its weight.
const FALLS_A_DAY: [(f64, f64); 5] = [
    (0.0006, 0.15),
    (0.0011, 0.25),
    (0.0017, 0.25),
    (0.0025, 0.2),
    (0.0034, 0.15),
];
/// As a log begins in the midst of it, it has fallen by so much already, each with its weight.
const FELL: [(f64, f64); 6] = [
    (0.0, 0.5),
    (0.06, 0.14),
    (0.14, 0.12),
    (0.23, 0.1),
    (0.33, 0.08),
    (0.44, 0.06),
];
/// Of what narrows the bore: which part of the airflow is lost as it trips, in even steps of a logarithm; how steeply it falls with more; how far a reading may be off, as a part of what is lost.
const LOST: (f64, f64, i32) = (0.06, 0.06, 46);
const BENDS: [f64; 4] = [0.3, 0.7, 1.1, 1.7];
const NARROWED_OFF: [f64; 3] = [0.0, 0.06, 0.2];
/// It trips in an hour around an entry, h before and after.
const AROUND_H: (usize, usize) = (3, 1);
/// How far a pool has gone as somebody looks, nobody knows: so many of its readings lie anywhere below the limit; of frost, whose hours are modelled, so many below the sound reading.
const ANYWHERE: f64 = 0.75;
const ANYWHERE_FROST: f64 = 0.05;
/// By how much a clock's jump moves the reading: each as likely.
pub(crate) const JUMPS: [f64; 8] = [0.06, 0.11, 0.17, 0.24, 0.32, 0.4, 0.48, 0.58];
/// Sizes that are less likely by so much, as a logarithm, are left out.
const HARDLY: f64 = 6.0;
/// Of the entries so many may be of the cause, as sizes are looked through.
const HALF: f64 = 0.5;

/// What is not known of readings, as one of several ways: its weight, and by how much it raises the likelihood of each entry that tells; 1 of an entry without a reading.
pub(crate) type Read = (f64, Vec<f64>);

/// A reading off the panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Reading {
    /// The airflow, as a part of that as fitted.
    pub(crate) shown: f64,
    /// Its density where it has nothing to do with any cause.
    usual: f64,
}

impl Reading {
    /// Of a kind of entry; none of a kind that says nothing of the airflow.
    pub(crate) fn of(kind: EventKind, shown: f64) -> Option<Self> {
        let usual = of_else(kind, shown)?;
        Some(Self { shown, usual })
    }
}

/// Whether any entry carries a reading.
pub(crate) fn any(placed: &[Placed]) -> bool {
    placed.iter().any(|one| one.shown.is_some())
}

/// The sound line's reading in each hour, on the mean of all members.
pub(crate) fn sound(hours: &Hours) -> Vec<f64> {
    let mut sound = vec![0.0; hours.len()];
    for group in &hours.groups {
        let weight = group.weight(Alike::Reading);
        for (sum, one) in sound.iter_mut().zip(&group.reading) {
            *sum += weight * f64::from(*one);
        }
    }
    sound
}

/// A fault that makes the reading so many times that of the sound line, with all sizes that it may have; of entries that tell.
pub(crate) fn of_fault(entries: &[Placed], sound: &[f64], sizes: &[(f64, f64)]) -> Vec<Read> {
    let ways = sizes.iter().map(|(size, weight)| {
        let density = |one: &Placed, shown: f64| near(shown, size * sound_at(one, sound));
        (*weight, factors(entries, density))
    });
    likely(entries, ways.collect())
}

/// What loads until it trips a limit, and falls on day by day until it is cleaned.
pub(crate) fn of_loading(entries: &[Placed], sound: &[f64], loads: &Loads) -> Vec<Read> {
    if !any(entries) {
        return Vec::new();
    }
    let least = least(sound);
    let fell: &[(f64, f64)] = if loads.has_begun() {
        &FELL
    } else {
        &[(0.0, 1.0)]
    };
    let of = |limit: f64, a_day: f64, fell: f64| {
        let density = |one: &Placed, shown: f64| {
            let (days, is_first) = loads.days(one.entry);
            let fell = if is_first { fell } else { 0.0 };
            let left = (limit - fell - a_day * days).max(0.0) * sound_at(one, sound);
            near(shown, left.min(limit * least))
        };
        factors(entries, density)
    };
    let mut ways = Vec::new();
    for limit in LIMITS {
        for (a_day, part) in FALLS_A_DAY {
            for (fell, begun) in fell {
                let weight = part * begun / count(LIMITS.len());
                ways.push((weight, of(limit, a_day, *fell)));
            }
        }
    }
    likely(entries, ways)
}

/// Water that narrows the bore: anywhere below a limit that nobody knows, or at it.
pub(crate) fn of_narrowing(entries: &[Placed], sound: &[f64]) -> Vec<Read> {
    let least = least(sound);
    let ways = LIMITS.iter().map(|limit| {
        let density = |_: &Placed, shown: f64| {
            let at_limit = near(shown, (limit - 0.02) * least);
            ANYWHERE * even(shown, (0.0, limit * least)) + (1.0 - ANYWHERE) * at_limit
        };
        (1.0 / count(LIMITS.len()), factors(entries, density))
    });
    likely(entries, ways.collect())
}

/// What narrows the bore by so much in each hour, as a part of that which trips a limit that nobody knows.
pub(crate) fn of_narrowed(entries: &[Placed], sound: &[f64], narrowed: &[f64]) -> Vec<Read> {
    if narrowed.is_empty() || !any(entries) {
        return Vec::new();
    }
    let entry = |one: &Placed| one.entry;
    let last = entries.iter().map(entry).max().unwrap_or(0);
    let mut around = vec![(1.0, 0.0, 0.0); last + 1];
    for one in entries {
        if let Some(around) = around.get_mut(one.entry) {
            let anywhere = one.shown.map(|read| even(read.shown, (0.0, 1.0)));
            let most = most_around(one, narrowed).max(0.05);
            *around = (sound_at(one, sound), most, anywhere.unwrap_or(0.0));
        }
    }
    let (least, step, number) = LOST;
    let weight = 1.0 / (f64::from(number) * count(BENDS.len() * NARROWED_OFF.len()));
    let mut ways = Vec::new();
    for bend in BENDS {
        let steep: Vec<(f64, f64, f64)> = (around.iter())
            .map(|(sound, most, anywhere)| (*sound, pow(*most, bend), *anywhere))
            .collect();
        for at in 0..number {
            let trips = least * exp(step * f64::from(at));
            for off in NARROWED_OFF {
                let density = |one: &Placed, shown: f64| {
                    let at = steep.get(one.entry).copied();
                    let (sound, most, anywhere) = at.unwrap_or((1.0, 0.0, 0.0));
                    let by_hour = narrowed_to(shown, (trips * most).min(1.0), (sound, off));
                    ANYWHERE_FROST * anywhere + (1.0 - ANYWHERE_FROST) * by_hour
                };
                ways.push((weight, factors(entries, density)));
            }
        }
    }
    likely(entries, ways)
}

fn most_around(one: &Placed, narrowed: &[f64]) -> f64 {
    let from = one.hour.saturating_sub(AROUND_H.0);
    let until = one.hour + if one.day_only { 24 } else { 1 + AROUND_H.1 };
    let around = narrowed.get(from..until.min(narrowed.len()));
    around
        .unwrap_or_default()
        .iter()
        .copied()
        .fold(0.0, f64::max)
}

/// The sound line, whatever the panel's scale.
pub(crate) fn of_sound(entries: &[Placed], sound: &[f64]) -> Vec<Read> {
    let ways = SCALES.iter().map(|(scale, weight)| {
        let density = |one: &Placed, shown: f64| near(shown, scale * sound_at(one, sound));
        (*weight, factors(entries, density))
    });
    likely(entries, ways.collect())
}

/// A clock that moves the reading, up or down, by the same each time: of low and of high airflow by itself.
pub(crate) fn of_jumps(entries: &[Placed], sound: &[f64]) -> [[Read; JUMPS.len()]; 2] {
    [(EventKind::AirflowLow, -1.0), (EventKind::AirflowHigh, 1.0)].map(|(kind, side)| {
        JUMPS.map(|jump| {
            let mut found = factors(entries, |one, shown| {
                near(shown, (1.0 + side * jump) * sound_at(one, sound))
            });
            for (factor, one) in found.iter_mut().zip(entries) {
                if one.kind != kind {
                    *factor = 1.0;
                }
            }
            (1.0 / count(JUMPS.len()), found)
        })
    })
}

/// What readings add to how well entries follow a cause, where each is of it with the chance that its time says.
pub(crate) fn added(
    gains: &mut InTurns,
    told: &mut [(f64, f64)],
    entries: &[Placed],
    ways: &[Read; JUMPS.len()],
) {
    let of = |chance: f64, factor: f64| 1.0 - chance + chance * factor;
    let found = logs(entries, |at| {
        let chance = told.get(at).map_or(0.0, |(chance, _)| *chance);
        let factor = |(_, factors): &Read| factors.get(at).copied().unwrap_or(1.0);
        ways.each_ref().map(|way| of(chance, factor(way)))
    });
    let weighted = |logs: &[f64; JUMPS.len()]| -> Vec<(f64, f64)> {
        let each = logs.iter().zip(ways);
        each.map(|(log, (weight, _))| (*log, *weight)).collect()
    };
    for (gain, logs) in gains.iter_mut().zip(&found) {
        *gain += log_mean(&weighted(logs));
    }
    let scores: Vec<f64> = (found.first().map(weighted).into_iter().flatten())
        .map(|(log, weight)| log + ln(weight))
        .collect();
    let parts = normalised(&scores);
    for (at, (chance, before)) in told.iter_mut().enumerate() {
        let each = ways.iter().zip(&parts);
        let factor: f64 = each
            .map(|((_, factors), part)| part * factors.get(at).copied().unwrap_or(1.0))
            .sum();
        let now = of(*chance, factor);
        *before *= now;
        *chance *= factor / now;
    }
}

/// Sizes that a fault may have, each with its weight, from those that are modelled: each of them and its parts, whatever the panel's scale; and now and then any other.
pub(crate) fn sizes(modelled: &[f64], parts: &[f64], is_high: bool) -> Vec<(f64, f64)> {
    let side = if is_high { 1.0 } else { -1.0 };
    let steps = SIZE_STEPS.0..=SIZE_STEPS.1;
    let all = steps.map(|step| exp(SIZE_STEP * f64::from(step)));
    let all: Vec<f64> = all.filter(|size| 0.0 < side * (size - 1.0)).collect();
    let mut weights = vec![0.0; all.len()];
    for reading in modelled {
        for part in parts {
            let under = 1.0 + part * (reading - 1.0);
            if side * (under - 1.0) < SEEN.0 || under < 0.05 {
                continue;
            }
            for (size, weight) in all.iter().zip(&mut weights) {
                let z = ln(size / under) / SCALE;
                *weight += exp(-0.5 * z * z);
            }
        }
    }
    let sum: f64 = weights.iter().sum();
    let other = if 0.0 < sum { OTHER_SIZE } else { 1.0 };
    let shows = |size: f64| SEEN.1 < side * (size - 1.0);
    let even = other / count(all.iter().filter(|size| shows(**size)).count().max(1));
    let each = all.into_iter().zip(weights);
    each.map(|(size, weight)| {
        let any = if shows(size) { even } else { 0.0 };
        (size, (1.0 - other) * weight / sum.max(1e-12) + any)
    })
    .collect()
}

/// Leaves out ways under which what was read is far less likely than under others; nothing is left where nothing was read.
fn likely(entries: &[Placed], ways: Vec<Read>) -> Vec<Read> {
    if !any(entries) {
        return Vec::new();
    }
    let ways: Vec<Read> = (ways.into_iter())
        .filter(|(weight, _)| 0.0 < *weight)
        .collect();
    let score = |(weight, factors): &Read| -> f64 {
        let half = |at: usize| 1.0 - HALF + HALF * factors.get(at).copied().unwrap_or(1.0);
        let [[all], ..] = logs(entries, |at| [half(at)]);
        ln(*weight) + all
    };
    let scores: Vec<f64> = ways.iter().map(score).collect();
    let best = scores.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let kept = ways.into_iter().zip(scores);
    kept.filter(|(_, score)| best - HARDLY < *score)
        .map(|(way, _)| way)
        .collect()
}

/// By how much a reading under a cause raises the likelihood of each entry that tells.
fn factors(entries: &[Placed], density: impl Fn(&Placed, f64) -> f64) -> Vec<f64> {
    let tells = entries.iter().filter(|one| telling(one.kind).is_some());
    tells
        .map(|one| {
            let Reading { shown, usual } = one.shown?;
            Some(MISREAD + (1.0 - MISREAD) * density(one, shown) / usual)
        })
        .map(|factor| factor.unwrap_or(1.0))
        .collect()
}

/// The least that a sound line reads; no limit is set by one that hardly flows.
fn least(sound: &[f64]) -> f64 {
    sound.iter().copied().fold(1.0, f64::min).max(0.4)
}

/// The density of a reading that has nothing to do with any cause.
fn of_else(kind: EventKind, shown: f64) -> Option<f64> {
    let spans = match kind {
        EventKind::AirflowLow => ELSE_LOW,
        EventKind::AirflowHigh => ELSE_HIGH,
        _ => return None,
    };
    let each = spans.map(|(from, until, weight)| weight * even(shown, (from, until)));
    Some(each.iter().sum::<f64>().max(1e-3))
}

/// Readings about one that is expected.
fn near(shown: f64, expected: f64) -> f64 {
    normal(shown - expected, OFF.0 + OFF.1 * expected.abs())
}

fn normal(by: f64, deviation: f64) -> f64 {
    let z = by / deviation;
    // One over the root of two pi.
    0.398_942_280_401_432_7 * exp(-0.5 * z * z) / deviation
}

/// The density of a reading about one with so much of the airflow lost, of as much as a sound line reads, and off by a part of what is lost.
fn narrowed_to(shown: f64, lost: f64, (sound, off): (f64, f64)) -> f64 {
    let expected = sound * (1.0 - lost);
    let deviation = OFF.0 + OFF.1 * expected + off * (sound - expected);
    normal(shown - expected, deviation)
}

/// The same density within a span, with ends as blurred as readings are.
fn even(shown: f64, (from, until): (f64, f64)) -> f64 {
    let over = |end: f64| 1.0 / (1.0 + exp((-(shown - end) / OFF.1).clamp(-50.0, 50.0)));
    (over(from) - over(until)).max(0.0) / (until - from)
}

fn sound_at(one: &Placed, sound: &[f64]) -> f64 {
    let until = one.hour + if one.day_only { 24 } else { 1 };
    let around = sound.get(one.hour..until.min(sound.len()));
    let around = around.unwrap_or_default();
    if around.is_empty() {
        return 1.0;
    }
    around.iter().sum::<f64>() / count(around.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Forty readings of a sound line, where no fault is modelled: sizes that do not show are none of its ways, however near they lie.
    #[test]
    fn sizes_that_do_not_show_are_left_out() {
        let one = |at: usize| Placed {
            entry: at,
            hour: at,
            shown: Reading::of(EventKind::AirflowLow, 0.99),
            ..Placed::EMPTY
        };
        let entries: Vec<Placed> = (0..40).map(one).collect();
        for modelled in [Vec::new(), vec![0.4]] {
            let sizes = sizes(&modelled, &[1.0], false);
            let ways = of_fault(&entries, &[1.0; 40], &sizes);
            assert!(!ways.is_empty(), "{modelled:?}");
            assert!(ways.iter().all(|(weight, _)| 0.0 < *weight), "{modelled:?}");
        }
    }
}
