//! Readings of the airflow that somebody wrote down off the panel: how many times as likely each is under a cause as in an entry of anything else.
//!
//! What nobody knows (the size of a fault, where the limit lies, the scale of the panel) is summed over; numbers are common practice, no source, unless said.

use dewrun_numeric::elementary::{exp, ln};

use crate::comparison::log_mean;
use crate::groups::Alike;
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::Hours;
use crate::poisson::count;
use crate::shape::{Follows, telling};

/// A reading is off by so much of that as fitted, and by so much of itself: standard deviations.
const OFF: (f64, f64) = (0.012, 0.03);
/// A panel's scale differs from the model's by so much: the standard deviation of a logarithm.
const SCALE: f64 = 0.06;
/// The same in three steps, each with its weight.
const SCALES: [(f64, f64); 3] = [(0.92, 0.25), (1.0, 0.5), (1.08, 0.25)];
/// So many readings are another's, or were written down wrongly.
const MISREAD: f64 = 0.06;
/// A fault is of another size than the ones that are modelled so often.
const OTHER_SIZE: f64 = 0.2;
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
const LIMITS: [f64; 6] = [0.68, 0.73, 0.78, 0.83, 0.88, 0.93];
/// How far below the limit a reading falls until somebody cleans what is loaded: so many parts of the mean fall, each with its weight.
const FALLS: [(f64, f64); 4] = [(0.15, 0.3), (0.55, 0.3), (1.2, 0.25), (2.6, 0.15)];
/// How far a pool or frost has gone as somebody looks, nobody knows: so many of their readings lie anywhere below the sound one.
const ANYWHERE: f64 = 0.75;
/// By how much a clock's jump moves the reading: each as likely.
const JUMPS: [f64; 8] = [0.06, 0.11, 0.17, 0.24, 0.32, 0.4, 0.48, 0.58];
/// Sizes that are less likely by so much, as a logarithm, are left out.
const HARDLY: f64 = 6.0;
/// Of the entries so many may be of the cause, as sizes are looked through.
const HALF: f64 = 0.5;

/// What is not known of readings, as one of several ways: its weight, and by how much it raises the likelihood of each entry that tells; 1 of an entry without a reading.
pub(crate) type Read = (f64, Vec<f64>);

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

/// What loads until it trips a limit, and falls on by about so much until it is cleaned.
pub(crate) fn of_loading(entries: &[Placed], sound: &[f64], falls_by: f64) -> Vec<Read> {
    let least = least(sound);
    let ways = LIMITS.iter().map(|limit| {
        let density = |_: &Placed, shown: f64| fallen(shown, limit * least, falls_by);
        (1.0 / count(LIMITS.len()), factors(entries, density))
    });
    likely(entries, ways.collect())
}

/// Water or ice that narrows the bore: anywhere, or at a limit that nobody knows.
pub(crate) fn of_narrowing(entries: &[Placed], sound: &[f64]) -> Vec<Read> {
    let least = least(sound);
    let density = |_: &Placed, shown: f64| {
        let at_limit = LIMITS.iter().map(|limit| fallen(shown, limit * least, 0.1));
        ANYWHERE * even(shown, (0.0, 1.0))
            + (1.0 - ANYWHERE) * at_limit.sum::<f64>() / count(LIMITS.len())
    };
    likely(entries, vec![(1.0, factors(entries, density))])
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
pub(crate) fn of_jumps(entries: &[Placed], sound: &[f64]) -> [Vec<Read>; 2] {
    [(EventKind::AirflowLow, -1.0), (EventKind::AirflowHigh, 1.0)].map(|(kind, side)| {
        let ways = JUMPS.iter().map(|jump| {
            let mut found = factors(entries, |one, shown| {
                near(shown, (1.0 + side * jump) * sound_at(one, sound))
            });
            for (factor, one) in found.iter_mut().zip(entries) {
                if one.kind != kind {
                    *factor = 1.0;
                }
            }
            (1.0 / count(JUMPS.len()), found)
        });
        ways.collect()
    })
}

/// What readings add to how well entries follow a cause, where each is of it with the chance that its time says.
pub(crate) fn added(follows: &mut Follows, ways: &[Read]) {
    let of = |chance: f64, factor: f64| 1.0 - chance + chance * factor;
    let logs: Vec<(f64, f64)> = ways
        .iter()
        .map(|(weight, factors)| {
            let each = follows.explained.iter().zip(factors);
            let log: f64 = each.map(|(chance, factor)| ln(of(*chance, *factor))).sum();
            (log, *weight)
        })
        .collect();
    let scores: Vec<f64> = logs.iter().map(|(log, weight)| log + ln(*weight)).collect();
    let parts = crate::comparison::normalised(&scores);
    follows.gain += log_mean(&logs);
    let both = follows.explained.iter_mut().zip(&mut follows.factors);
    for (at, (chance, before)) in both.enumerate() {
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
    let score = |(weight, factors): &Read| -> f64 {
        let each = factors.iter().map(|one| ln(1.0 - HALF + HALF * one));
        ln(weight.max(1e-12)) + each.sum::<f64>()
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
            let shown = one.shown?;
            let usual = of_else(one.kind, shown)?;
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
    let deviation = OFF.0 + OFF.1 * expected.abs();
    let z = (shown - expected) / deviation;
    // One over the root of two pi.
    0.398_942_280_401_432_7 * exp(-0.5 * z * z) / deviation
}

/// Readings that have fallen below a limit.
fn fallen(shown: f64, limit: f64, falls_by: f64) -> f64 {
    let each = FALLS.map(|(part, weight)| weight * near(shown, limit - part * falls_by));
    each.iter().sum()
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
