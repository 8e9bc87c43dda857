//! Causes that last: from some day on trouble comes again and again, until somebody mends what is wrong, or what is cleaned loads anew.
//!
//! The chain of days that nobody sees is summed over all its ways, so that neither the first day nor the last need be known.

mod chain;
mod days;

use dewrun_numeric::elementary::ln;

use crate::comparison::{log_sum, normalised};
use crate::follows::{Follows, TURNS};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::Hours;
use crate::poisson::{count, ln_factorial};
use crate::shape::{KINDS, USUAL_KINDS, telling};
use crate::shown::Read;

use self::days::{DAY, DEEDS, Days};

/// Troubles a day while it lasts, as parts of what is usual, each with its weight.
const RATES: [(f64, f64); 4] = [(0.4, 0.2), (0.8, 0.32), (1.5, 0.32), (2.8, 0.16)];
/// Entries that have nothing to do with it, as parts of all, each with its weight: even steps of a logarithm, of which the middle ones are likelier.
const OTHERS: [(f64, f64); 4] = [(0.08, 0.2), (0.17, 0.5), (0.35, 0.65), (0.72, 0.25)];
/// What is less likely is left out.
const HARDLY: f64 = 0.02;
/// Ways that are less likely than the likeliest, by this factor, tell nothing of single entries, and nothing of what is left as some are left out.
const TELLS: f64 = 1e-3;
/// Ways that are less likely by the times alone are not looked at with what was read: for each of them all sizes of a fault are gone through.
const READ_FROM: f64 = 0.01;

/// How a cause that lasts comes and goes; times are common practice, no source.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spells {
    /// What its troubles look like.
    pub(crate) kinds: [f64; KINDS],
    /// Troubles a day while it lasts, usually.
    pub(crate) often: f64,
    /// Days until it comes, on the mean.
    pub(crate) comes_days: f64,
    /// It comes by degrees: not soon after it was mended.
    pub(crate) loads: bool,
    /// What is done as it comes, where something is.
    pub(crate) begins_with: Option<EventKind>,
    /// What mends it, and after how many days of trouble, on the mean.
    pub(crate) mended_by: (EventKind, f64),
    /// It comes again after it was mended.
    pub(crate) again: bool,
    /// What people try in vain, a year of trouble.
    pub(crate) tried_a_year: [f64; DEEDS.len()],
}

/// One way in which it may be.
#[derive(Debug, Clone, Copy)]
struct Way<'a> {
    /// Troubles a day while it lasts.
    rate: f64,
    /// Troubles a day that have nothing to do with it, and which of [`OTHERS`] that is.
    background: f64,
    others: usize,
    /// Which of the days' parts it trips in.
    trips: usize,
    /// By how much what was read raises the likelihood of each trouble.
    read: &'a [f64],
    /// The turn whose troubles are left out; 0 of none.
    turn: usize,
}

impl Spells {
    /// How well entries follow it.
    ///
    /// Where readings under the fault are modelled, they say how often it can trip; what was read of entries is summed over all that it may be.
    pub(crate) fn follows(
        &self,
        placed: &[Placed],
        hours: &Hours,
        readings: &[f64],
        reads: &[Read],
    ) -> Follows {
        let days = Days::of(self, placed, hours, readings);
        let mut ways = self.ways(&days);
        let logs = |ways: &[(Way<'_>, f64)]| -> Vec<f64> {
            let each = ways.iter();
            each.map(|(way, weight)| self.log(&days, way) + ln(*weight))
                .collect()
        };
        let mut found = logs(&ways);
        let unread = log_sum(&found);
        if !reads.is_empty() {
            let likely = ways.into_iter().zip(normalised(&found));
            let likely: Vec<(Way<'_>, f64)> = likely
                .filter(|(_, part)| READ_FROM < *part)
                .map(|(way, _)| way)
                .collect();
            let both = likely.iter().flat_map(|(way, weight)| {
                let each = reads.iter();
                each.map(move |(part, read)| (Way { read, ..*way }, weight * part))
            });
            ways = both.collect();
            found = logs(&ways);
        }
        let most = found.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let tells: Vec<((Way<'_>, f64), f64)> = (ways.iter().zip(&found))
            .filter(|(_, log)| most + ln(TELLS) <= **log)
            .map(|(way, log)| (*way, *log))
            .collect();
        let all = log_sum(&found);
        let kept: Vec<f64> = tells.iter().map(|(_, log)| *log).collect();
        // The others' part in all of them stays as it is.
        let others = all - log_sum(&kept);
        let turns = placed.iter().map(|one| one.turn).max().unwrap_or(0);
        let mut gains = [all; 1 + TURNS];
        for (turn, gain) in gains.iter_mut().enumerate().take(1 + turns).skip(1) {
            // With fewer troubles there are fewer of anything else as well.
            let fewer = days.left(turn).max(1.0) / days.left(0).max(1.0);
            let left = tells.iter().map(|((way, weight), _)| {
                let way = Way {
                    background: way.background * fewer,
                    turn,
                    ..*way
                };
                (way, *weight)
            });
            *gain = others + log_sum(&logs(&left.collect::<Vec<_>>()));
        }
        let told: Vec<(Way<'_>, f64, Vec<f64>)> = (tells.into_iter().zip(normalised(&kept)))
            .map(|(((way, _), _), part)| {
                let lasts = self.chain(&days, &way).lasts(&days.days, way.others);
                (way, part, lasts)
            })
            .collect();
        Follows {
            gains,
            unread,
            told: self.told(placed, &told),
        }
    }

    /// All ways in which it may be as far as the times of entries go, each with its weight.
    fn ways(&self, days: &Days) -> Vec<(Way<'static>, f64)> {
        let length = count(days.days.len());
        let mut ways = Vec::new();
        for (rate, weight) in RATES {
            for (place, (others, part_of)) in OTHERS.into_iter().enumerate() {
                let likely = days.likely.into_iter().enumerate();
                for (trips, part) in likely.filter(|(_, part)| HARDLY < *part) {
                    let way = Way {
                        rate: rate * self.often,
                        background: others * days.left(0).max(1.0) / length,
                        others: place,
                        trips,
                        read: &[],
                        turn: 0,
                    };
                    ways.push((way, part * part_of * weight));
                }
            }
        }
        ways
    }

    /// The logarithm of a way's likelihood, against that of entries at any time, of which there may be any number: equally likely in its logarithm.
    fn log(&self, days: &Days, way: &Way<'_>) -> f64 {
        let expected = way.background * count(days.days.len());
        let all = days.left(way.turn);
        let base = all * ln(expected) - expected - ln_factorial((all - 1.0).max(0.0));
        base + self.forwards(days, way, |_, _| ())
    }

    /// The chance that each trouble is of it, and how many times as likely it is as at any time; of ways, each with its part and the chance of trouble day by day.
    fn told(&self, placed: &[Placed], told: &[(Way<'_>, f64, Vec<f64>)]) -> Vec<(f64, f64)> {
        let troubles = placed
            .iter()
            .filter_map(|one| Some((one, telling(one.kind)?)));
        let each = troubles.enumerate().map(|(place, (one, kind))| {
            let (mut chance, mut factor) = (0.0, 0.0);
            for (way, part, lasts) in told {
                let lasts = lasts.get(one.hour / DAY).copied().unwrap_or(0.0);
                let ratio = 1.0 + self.more(way, kind, place);
                chance += part * lasts * (ratio - 1.0) / ratio;
                factor += part * (1.0 + lasts * (ratio - 1.0));
            }
            (chance, factor)
        });
        each.collect()
    }

    /// How many times as many troubles of a kind, and with what was read of one, it adds to those that come anyway.
    fn more(&self, way: &Way<'_>, kind: usize, place: usize) -> f64 {
        let of = |kinds: &[f64; KINDS]| kinds.get(kind).copied().unwrap_or(0.0);
        let more = way.rate * of(&self.kinds) / (way.background * of(&USUAL_KINDS));
        more * way.read.get(place).copied().unwrap_or(1.0)
    }
}
