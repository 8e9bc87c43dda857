//! When and in which kinds a cause makes trouble: a density over the hours of a log, and how well entries follow it.

use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::{best_share, count};

/// Kinds of trouble.
pub(crate) const KINDS: usize = EventKind::TROUBLES.len();
/// Of what has nothing to do with any cause so much is of each kind: airflow low, airflow high, alarm, water; common practice, no source.
pub(crate) const USUAL_KINDS: [f64; KINDS] = [0.32, 0.2, 0.36, 0.12];
/// What is modelled may lie off by days: so much of every density is spread over them.
const SPREAD: f64 = 0.15;
/// Hours to either side.
const SPREAD_H: usize = 48;
/// Somebody writes it down some hours later, and a clock may be an hour off.
const BEFORE_H: usize = 3;
const AFTER_H: usize = 1;

/// A density over hours and kinds; all of it is one.
#[derive(Debug, Clone)]
pub(crate) struct Shape {
    /// How plausible it is beforehand, against the others of its cause.
    pub(crate) weight: f64,
    /// Sums up to each hour, kind by kind.
    sums: [Option<Vec<f64>>; KINDS],
    hours: usize,
}

/// How well a log follows a cause.
#[derive(Debug, Clone)]
pub(crate) struct Follows {
    /// By how much the logarithm of the likelihood lies above that of entries at any time.
    pub(crate) gain: f64,
    /// The chance that each trouble is of this cause.
    pub(crate) explained: Vec<f64>,
    /// How many times as likely each trouble is than at any time.
    pub(crate) factors: Vec<f64>,
}

impl Shape {
    /// Of hazards over the hours, each of a kind that has a share of all; none where all are zero.
    pub(crate) fn new(weight: f64, parts: &[(EventKind, f64, &[f64])]) -> Option<Self> {
        let mut kinds: [Option<Vec<f64>>; KINDS] = Default::default();
        let mut all = 0.0;
        let hours = parts.first().map_or(0, |(_, _, hazard)| hazard.len());
        for (kind, share, hazard) in parts {
            let sum: f64 = hazard.iter().sum();
            if sum <= 0.0 || *share <= 0.0 {
                continue;
            }
            all += share;
            let part = spread(hazard).into_iter().map(|one| share * one / sum);
            let kind = kinds.get_mut(kind.trouble()?)?;
            match kind {
                Some(known) => known
                    .iter_mut()
                    .zip(part)
                    .for_each(|(one, more)| *one += more),
                None => *kind = Some(part.collect()),
            }
        }
        let sums = kinds.map(|kind| {
            kind.map(|kind| {
                let mut sum = 0.0;
                let up_to = kind.iter().map(|one| {
                    sum += one / all;
                    sum
                });
                core::iter::once(0.0).chain(up_to).collect()
            })
        });
        (0.0 < all).then_some(Self {
            weight,
            sums,
            hours,
        })
    }

    /// How many times as likely a trouble is under it as at any time.
    fn ratio(&self, placed: &Placed) -> f64 {
        let Some(kind) = placed.kind.trouble() else {
            return 1.0;
        };
        let usual = USUAL_KINDS.get(kind).copied().unwrap_or(1.0);
        let Some(sums) = self.sums.get(kind).and_then(Option::as_ref) else {
            return 0.0;
        };
        let (from, until) = if placed.day_only {
            (placed.hour, placed.hour + 24)
        } else {
            (
                placed.hour.saturating_sub(BEFORE_H),
                placed.hour + 1 + AFTER_H,
            )
        };
        let until = until.min(self.hours);
        let at = |hour: usize| sums.get(hour).copied().unwrap_or(1.0);
        let width = count(until.saturating_sub(from).max(1));
        (at(until) - at(from)) / width * count(self.hours) / usual
    }

    /// How well troubles follow it.
    pub(crate) fn follows(&self, troubles: &[Placed]) -> Follows {
        let ratios: Vec<f64> = troubles.iter().map(|one| self.ratio(one)).collect();
        let counted: Vec<(f64, f64)> = ratios.iter().map(|ratio| (*ratio, 1.0)).collect();
        let (share, gain) = best_share(&counted);
        let factors: Vec<f64> = ratios
            .iter()
            .map(|ratio| 1.0 + share * (ratio - 1.0))
            .collect();
        let explained = ratios.iter().zip(&factors);
        Follows {
            gain,
            explained: explained
                .map(|(ratio, factor)| share * ratio / factor)
                .collect(),
            factors,
        }
    }
}

/// With a part of it spread over the days around.
fn spread(hazard: &[f64]) -> Vec<f64> {
    let mut sums = vec![0.0];
    let mut sum = 0.0;
    for one in hazard {
        sum += one;
        sums.push(sum);
    }
    let at = |hour: usize| sums.get(hour).copied().unwrap_or(sum);
    let around = |hour: usize| {
        let (from, until) = (
            hour.saturating_sub(SPREAD_H),
            (hour + 1 + SPREAD_H).min(hazard.len()),
        );
        (at(until) - at(from)) / count((until - from).max(1))
    };
    (hazard.iter().enumerate())
        .map(|(hour, one)| (1.0 - SPREAD) * one + SPREAD * around(hour))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn low(hour: usize) -> Placed {
        Placed {
            entry: 0,
            hour,
            wall_hour: Some(0),
            weekend: false,
            day_only: false,
            kind: EventKind::AirflowLow,
            grams: None,
        }
    }

    /// A hundred days, all hazard in the fifth hour of each: entries there are many times as likely, others are less.
    #[test]
    fn entries_that_follow_gain() {
        let hazard: Vec<f64> = (0..2400)
            .map(|hour| if hour % 24 == 5 { 1.0 } else { 0.0 })
            .collect();
        let shape = Shape::new(1.0, &[(EventKind::AirflowLow, 1.0, &hazard)]).expect("a hazard");
        let at_five: Vec<Placed> = (0..6).map(|day| low(240 * day + 6)).collect();
        let at_noon: Vec<Placed> = (0..6).map(|day| low(240 * day + 15)).collect();
        let (five, noon) = (shape.follows(&at_five), shape.follows(&at_noon));
        assert!(6.0 < five.gain, "{five:?}");
        assert!(
            five.explained.iter().all(|chance| 0.99 < *chance),
            "{five:?}"
        );
        assert_eq!(
            noon.gain, 0.0,
            "a fifth of a usual hour each: none is explained"
        );
        assert!(
            Shape::new(1.0, &[(EventKind::Alarm, 1.0, &[0.0; 24])]).is_none(),
            "no hour at all"
        );
    }
}
