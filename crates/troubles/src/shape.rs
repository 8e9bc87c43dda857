//! When and in which kinds a cause makes trouble: a density over the hours of a log, and how well entries follow it.

use crate::comparison::{log_mean, normalised};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::count;
use crate::shown::Read;

use dewrun_numeric::elementary::ln;

/// Kinds of entry that tell by when they come.
pub(crate) const KINDS: usize = 5;
const TELLING: [EventKind; KINDS] = [
    EventKind::AirflowLow,
    EventKind::AirflowHigh,
    EventKind::Alarm,
    EventKind::WaterFound,
    EventKind::Emptied,
];
/// Of what has nothing to do with any cause so much is of each of them; common practice, no source.
pub(crate) const USUAL_KINDS: [f64; KINDS] = [0.36, 0.19, 0.35, 0.05, 0.05];
/// So many of all entries may have nothing to do with the cause, each with its weight: common practice, no source.
const OTHERS: [(f64, f64); 6] = [
    (0.08, 0.1),
    (0.16, 0.2),
    (0.26, 0.25),
    (0.38, 0.25),
    (0.52, 0.15),
    (0.72, 0.05),
];
/// What is modelled may lie off: so much of every density is spread over so many hours to either side; each of these is as likely as its weight, for nobody knows how well the weather is known.
const SPREADS: [(f64, usize, f64); 2] = [(0.15, 48, 0.65), (0.5, 240, 0.35)];
/// Somebody writes it down some hours later, and a clock may be an hour off.
const BEFORE_H: usize = 3;
const AFTER_H: usize = 1;

/// A density over hours and kinds; all of it is one.
#[derive(Debug, Clone)]
pub(crate) struct Shape {
    /// How plausible it is beforehand, against the others of its cause.
    pub(crate) weight: f64,
    parts: Vec<Part>,
    /// Of all parts together.
    all: f64,
    hours: usize,
}

/// A hazard over the hours, of a kind.
#[derive(Debug, Clone)]
struct Part {
    kind: usize,
    share: f64,
    /// Sums up to each hour.
    sums: Vec<f64>,
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

/// The position of a kind among those that tell; none of what is done whatever the cause.
pub(crate) fn telling(kind: EventKind) -> Option<usize> {
    TELLING.iter().position(|one| *one == kind)
}

/// How well entries follow a cause under which each is so many times as likely as at any time.
///
/// The share of entries that have nothing to do with the cause is averaged over, and so is how many there are: equally likely in its logarithm, which is alike for all causes.
pub(crate) fn averaged(ratios: &[f64]) -> Follows {
    let of = |others: f64, ratio: f64| others + (1.0 - others) * ratio;
    let logs = OTHERS.map(|(others, weight)| {
        let log: f64 = ratios.iter().map(|ratio| ln(of(others, *ratio))).sum();
        (log, weight)
    });
    let scores = logs.map(|(log, weight)| log + ln(weight));
    let parts = normalised(&scores);
    let mean = |value: &dyn Fn(f64) -> f64| -> f64 {
        let each = OTHERS.iter().zip(&parts);
        each.map(|((others, _), part)| part * value(*others)).sum()
    };
    let explained = ratios
        .iter()
        .map(|ratio| mean(&|others| (1.0 - others) * ratio / of(others, *ratio)));
    Follows {
        gain: log_mean(&logs),
        explained: explained.collect(),
        factors: ratios
            .iter()
            .map(|ratio| mean(&|others| of(others, *ratio)))
            .collect(),
    }
}

impl Shape {
    /// Of hazards over the hours, each of a kind that has a share of all; none where all are zero.
    pub(crate) fn new(weight: f64, parts: &[(EventKind, f64, &[f64])]) -> Option<Self> {
        let hours = parts.first().map_or(0, |(_, _, hazard)| hazard.len());
        let parts = parts.iter().filter(|(_, share, _)| 0.0 < *share);
        let parts =
            parts.filter_map(|(kind, share, hazard)| Part::new(telling(*kind)?, *share, hazard));
        let parts: Vec<Part> = parts.collect();
        let all: f64 = parts.iter().map(|part| part.share).sum();
        (0.0 < all).then_some(Self {
            weight,
            parts,
            all,
            hours,
        })
    }

    /// How many times as likely an entry is under it as at any time.
    fn ratio(&self, placed: &Placed, (spread, spread_h): (f64, usize)) -> f64 {
        let Some(kind) = telling(placed.kind) else {
            return 1.0;
        };
        let usual = USUAL_KINDS.get(kind).copied().unwrap_or(1.0);
        let window = if placed.day_only {
            (placed.hour, placed.hour + 24)
        } else {
            (
                placed.hour.saturating_sub(BEFORE_H),
                placed.hour + 1 + AFTER_H,
            )
        };
        let around = (
            placed.hour.saturating_sub(spread_h),
            placed.hour + 1 + spread_h,
        );
        let of_kind = self.parts.iter().filter(|part| part.kind == kind);
        let densities = of_kind.map(|part| {
            part.share * ((1.0 - spread) * part.mean(window) + spread * part.mean(around))
        });
        densities.sum::<f64>() / self.all * count(self.hours) / usual
    }

    /// Whether it shows as high airflow, and as nothing else.
    pub(crate) fn is_high(&self) -> bool {
        let high = telling(EventKind::AirflowHigh);
        self.parts.iter().all(|part| Some(part.kind) == high)
    }

    /// How well entries follow it, with what may be read of them; nothing where nothing was read.
    pub(crate) fn follows(&self, entries: &[Placed], reads: &[Read]) -> Follows {
        let mut ways = Vec::with_capacity(SPREADS.len() * reads.len().max(1));
        for (spread, spread_h, weight) in SPREADS {
            let each = entries.iter();
            let ratios: Vec<f64> = each
                .map(|one| self.ratio(one, (spread, spread_h)))
                .collect();
            for (part, factors) in reads {
                let both = ratios.iter().zip(factors);
                let read: Vec<f64> = both.map(|(ratio, factor)| ratio * factor).collect();
                ways.push((averaged(&read), weight * part));
            }
            if reads.is_empty() {
                ways.push((averaged(&ratios), weight));
            }
        }
        let mut follows = mean(&ways).unwrap_or_else(|| averaged(&[]));
        if !reads.is_empty() {
            // Those that were left out as too unlikely had their part as well.
            follows.gain += ln(reads.iter().map(|(part, _)| part).sum());
        }
        follows
    }
}

/// The mean over the ways in which a cause may be; entries are told by each way's part in it.
pub(crate) fn mean(ways: &[(Follows, f64)]) -> Option<Follows> {
    let (first, _) = ways.first()?;
    let logs: Vec<(f64, f64)> = ways
        .iter()
        .map(|(way, weight)| (way.gain, *weight))
        .collect();
    let scores: Vec<f64> = logs.iter().map(|(log, weight)| log + ln(*weight)).collect();
    let parts = normalised(&scores);
    let mut sum = Follows {
        gain: log_mean(&logs),
        explained: vec![0.0; first.explained.len()],
        factors: vec![0.0; first.factors.len()],
    };
    for ((way, _), part) in ways.iter().zip(parts) {
        let add = |sum: &mut [f64], values: &[f64]| {
            sum.iter_mut()
                .zip(values)
                .for_each(|(sum, value)| *sum += part * value);
        };
        add(&mut sum.explained, &way.explained);
        add(&mut sum.factors, &way.factors);
    }
    Some(sum)
}

impl Part {
    /// None where all hours are zero.
    fn new(kind: usize, share: f64, hazard: &[f64]) -> Option<Self> {
        let mut sum = 0.0;
        let up_to = hazard.iter().map(|one| {
            sum += one;
            sum
        });
        let sums: Vec<f64> = core::iter::once(0.0).chain(up_to).collect();
        (0.0 < sum).then_some(Self { kind, share, sums })
    }

    /// Its mean over some hours, as a part of the sum of all.
    fn mean(&self, (from, until): (usize, usize)) -> f64 {
        let all = self.sums.last().copied().unwrap_or(1.0);
        let until = until.min(self.sums.len() - 1);
        let at = |hour: usize| self.sums.get(hour).copied().unwrap_or(all);
        (at(until) - at(from)) / all / count(until.saturating_sub(from).max(1))
    }
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
            shown: None,
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
        let (five, noon) = (shape.follows(&at_five, &[]), shape.follows(&at_noon, &[]));
        assert!(6.0 < five.gain, "{five:?}");
        assert!(
            five.explained.iter().all(|chance| 0.95 < *chance),
            "{five:?}"
        );
        // That all are low speaks for it by as much; that none is at its hour takes most of that away.
        let by_kind = 6.0 * ln(1.0 / USUAL_KINDS[0]);
        assert!(noon.gain < 0.2 * by_kind, "{noon:?}");
        assert!(
            Shape::new(1.0, &[(EventKind::Alarm, 1.0, &[0.0; 24])]).is_none(),
            "no hour at all"
        );
    }
}
