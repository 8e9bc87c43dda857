//! When and in which kinds a cause makes trouble: a density over the hours of a log, and how well entries follow it.

use std::rc::Rc;

use crate::follows::{InTurns, Mixed, Ways};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::count;
use crate::shown::Read;

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
    hazard: Hazard,
}

/// A hazard over hours, by its sums up to each of them; shared by all that follow it.
#[derive(Debug, Clone)]
pub(crate) struct Hazard(Rc<[f64]>);

/// The position of a kind among those that tell; none of what is done whatever the cause.
pub(crate) fn telling(kind: EventKind) -> Option<usize> {
    TELLING.iter().position(|one| *one == kind)
}

impl Shape {
    /// Of hazards over the hours, each of a kind that has a share of all; none where all are zero.
    pub(crate) fn new(weight: f64, parts: &[(EventKind, f64, &Hazard)]) -> Option<Self> {
        let hours = parts.first().map_or(0, |(_, _, hazard)| hazard.hours());
        let parts = parts
            .iter()
            .filter(|(_, share, hazard)| 0.0 < *share && 0.0 < hazard.all());
        let parts = parts.filter_map(|(kind, share, hazard)| {
            Some(Part {
                kind: telling(*kind)?,
                share: *share,
                hazard: (*hazard).clone(),
            })
        });
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
            let mean = |hours| part.hazard.mean(hours);
            part.share * ((1.0 - spread) * mean(window) + spread * mean(around))
        });
        densities.sum::<f64>() / self.all * count(self.hours) / usual
    }

    /// Whether it shows as high airflow, and as nothing else.
    pub(crate) fn is_high(&self) -> bool {
        let high = telling(EventKind::AirflowHigh);
        self.parts.iter().all(|part| Some(part.kind) == high)
    }

    /// The ways in which entries may follow it, with what may be read of them; nothing where nothing was read. Beside times, `beside` says so much for it.
    pub(crate) fn ways(
        &self,
        entries: &[Placed],
        reads: &[Read],
        beside: &InTurns,
        ways: &mut Ways,
    ) {
        ways.weigh(self.weight);
        for (spread, spread_h, part) in SPREADS {
            let weight = self.weight * part;
            let each = entries.iter();
            let ratios: Vec<f64> = each
                .map(|one| self.ratio(one, (spread, spread_h)))
                .collect();
            let gains_of = |mixed: &Mixed| {
                let mut gains = mixed.gains();
                gains
                    .iter_mut()
                    .zip(beside)
                    .for_each(|(gain, more)| *gain += more);
                gains
            };
            let mixed = Mixed::of(entries, &ratios);
            let gains = gains_of(&mixed);
            ways.take_unread(gains.first().copied().unwrap_or(0.0), weight);
            if reads.is_empty() {
                ways.take(&gains, weight, || mixed.told(&ratios));
            }
            for (part, factors) in reads {
                let both = ratios.iter().zip(factors);
                let read: Vec<f64> = both.map(|(ratio, factor)| ratio * factor).collect();
                let mixed = Mixed::of(entries, &read);
                ways.take(&gains_of(&mixed), weight * part, || mixed.told(&read));
            }
        }
    }
}

impl Hazard {
    /// Of its hours, one by one.
    pub(crate) fn new(hours: impl Iterator<Item = f64>) -> Self {
        let mut sum = 0.0;
        let up_to = hours.map(|one| {
            sum += one;
            sum
        });
        Self(core::iter::once(0.0).chain(up_to).collect())
    }

    fn hours(&self) -> usize {
        self.0.len().saturating_sub(1)
    }

    fn all(&self) -> f64 {
        self.0.last().copied().unwrap_or(0.0)
    }

    /// Its mean over some hours, as a part of the sum of all.
    fn mean(&self, (from, until): (usize, usize)) -> f64 {
        let all = self.all();
        let until = until.min(self.hours());
        let at = |hour: usize| self.0.get(hour).copied().unwrap_or(all);
        (at(until) - at(from)) / all / count(until.saturating_sub(from).max(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::follows::TURNS;
    use dewrun_numeric::elementary::ln;

    fn low(hour: usize) -> Placed {
        Placed {
            hour,
            ..Placed::EMPTY
        }
    }

    /// A hundred days, all hazard in the fifth hour of each: entries there are many times as likely, others are less.
    #[test]
    fn entries_that_follow_gain() {
        let hazard = (0..2400).map(|hour| if hour % 24 == 5 { 1.0 } else { 0.0 });
        let parts = [(EventKind::AirflowLow, 1.0, &Hazard::new(hazard))];
        let shape = Shape::new(1.0, &parts).expect("a hazard");
        let follows = |entries: &[Placed]| {
            let mut ways = Ways::none(entries.len());
            shape.ways(entries, &[], &[0.0; 1 + TURNS], &mut ways);
            ways.all().expect("a shape")
        };
        let at_five: Vec<Placed> = (0..6).map(|day| low(240 * day + 6)).collect();
        let at_noon: Vec<Placed> = (0..6).map(|day| low(240 * day + 15)).collect();
        let (five, noon) = (follows(&at_five), follows(&at_noon));
        assert!(6.0 < five.gains[0], "{five:?}");
        assert!(
            five.told.iter().all(|(chance, _)| 0.95 < *chance),
            "{five:?}"
        );
        // That all are low speaks for it by as much; that none is at its hour takes most of that away.
        let by_kind = 6.0 * ln(1.0 / USUAL_KINDS[0]);
        assert!(noon.gains[0] < 0.2 * by_kind, "{noon:?}");
        assert!(
            Shape::new(
                1.0,
                &[(EventKind::Alarm, 1.0, &Hazard::new([0.0; 24].into_iter()))]
            )
            .is_none(),
            "no hour at all"
        );
    }
}
