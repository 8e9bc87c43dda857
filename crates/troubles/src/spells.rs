//! Causes that last: from some day on trouble comes again and again, until somebody mends what is wrong, or what is cleaned loads anew.
//!
//! The chain of days that nobody sees is summed over all its ways, so that neither the first day nor the last need be known.

use dewrun_numeric::elementary::{exp, ln};

use crate::comparison::{log_mean, normalised};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::poisson::count;
use crate::shape::{Follows, KINDS, USUAL_KINDS};

/// Hours of a day.
const DAY: usize = 24;
/// States of a day: sound, nearly loaded, in trouble, mended.
const STATES: usize = 4;
const TROUBLED: usize = 2;
const MENDED: usize = 3;
/// Troubles a day while it lasts.
const RATES: [f64; 4] = [0.5, 0.2, 0.08, 0.035];
/// Shares of all troubles that have nothing to do with it.
const OTHERS: [f64; 3] = [0.2, 0.4, 0.7];
/// What somebody did is written down so often.
const WRITTEN: f64 = 0.65;
/// Ways of less weight tell nothing of single entries.
const TELLS: f64 = 1e-3;
/// Days in a year.
const YEAR: f64 = 365.0;

/// What somebody does beside looking at troubles.
const DEEDS: [EventKind; 3] = [
    EventKind::FilterChanged,
    EventKind::DetectorReplaced,
    EventKind::Other,
];
/// How often they are done a year whatever is wrong; common practice, no source.
const DEEDS_A_YEAR: [f64; DEEDS.len()] = [2.0, 0.4, 4.0];

/// How a cause that lasts comes and goes; times are common practice, no source.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spells {
    /// What its troubles look like.
    pub(crate) kinds: [f64; KINDS],
    /// Days until it comes, on the mean; each of them is tried.
    pub(crate) comes_days: [f64; 2],
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

/// The days of a log.
struct Days {
    /// Troubles of each, kind by kind.
    troubles: Vec<[f64; KINDS]>,
    /// Deeds of each.
    deeds: Vec<[f64; DEEDS.len()]>,
    all: f64,
}

/// One way in which it may be.
#[derive(Debug, Clone, Copy)]
struct Way {
    /// Troubles a day while it lasts.
    rate: f64,
    /// Troubles a day that have nothing to do with it.
    background: f64,
    comes_days: f64,
}

/// The days of a way, summed up forwards.
struct Chain {
    /// The logarithm of the likelihood against that of sound days.
    log: f64,
    steps: Vec<[[f64; STATES]; STATES]>,
    seen: Vec<[f64; STATES]>,
    ahead: Vec<[f64; STATES]>,
}

impl Chain {
    /// The chance of trouble for each day, with what came before and after.
    ///
    /// Forwards and backwards over the days: L. E. Baum et al., Ann. Math. Stat. 41 (1970) 164.
    fn lasts(&self) -> Vec<f64> {
        let mut behind = [1.0; STATES];
        let mut lasts = Vec::with_capacity(self.seen.len());
        let days = self.ahead.iter().zip(&self.steps).zip(&self.seen).rev();
        for ((ahead, step), seen) in days {
            let both: f64 = ahead
                .iter()
                .zip(&behind)
                .map(|(one, other)| one * other)
                .sum();
            let troubled = at(ahead, TROUBLED) * at(&behind, TROUBLED);
            lasts.push(troubled / both.max(f64::MIN_POSITIVE));
            let mut before = [0.0; STATES];
            for (to, before) in step.iter().zip(&mut before) {
                let ways =
                    (0..STATES).map(|next| at(to, next) * at(seen, next) * at(&behind, next));
                *before = ways.sum();
            }
            scale(&mut before);
            behind = before;
        }
        lasts.reverse();
        lasts
    }
}

impl Days {
    fn of(placed: &[Placed], hours: usize) -> Self {
        let days = hours.div_ceil(DAY).max(1);
        let mut found = Self {
            troubles: vec![[0.0; KINDS]; days],
            deeds: vec![[0.0; DEEDS.len()]; days],
            all: 0.0,
        };
        for one in placed {
            let day = one.hour / DAY;
            let deed = DEEDS.iter().position(|deed| *deed == one.kind);
            if let Some(sum) = one
                .kind
                .trouble()
                .and_then(|kind| found.troubles.get_mut(day)?.get_mut(kind))
            {
                *sum += 1.0;
                found.all += 1.0;
            }
            if let Some(sum) = deed.and_then(|deed| found.deeds.get_mut(day)?.get_mut(deed)) {
                *sum += 1.0;
            }
        }
        found
    }
}

impl Spells {
    /// How well entries follow it.
    pub(crate) fn follows(&self, placed: &[Placed], hours: usize) -> Follows {
        let days = Days::of(placed, hours);
        let length = count(days.troubles.len());
        let mut ways = Vec::new();
        for rate in RATES {
            for others in OTHERS {
                for comes_days in self.comes_days {
                    ways.push(Way {
                        rate,
                        background: (others * days.all).max(0.5) / length,
                        comes_days,
                    });
                }
            }
        }
        let usual = days.all.max(0.5) / length;
        let found: Vec<(f64, Chain)> = ways
            .iter()
            .map(|way| {
                // Against all troubles at any time.
                let base =
                    days.all * ln(way.background / usual) - (way.background - usual) * length;
                let chain = self.forwards(&days, way);
                (base + chain.log, chain)
            })
            .collect();
        let logs: Vec<f64> = found.iter().map(|(log, _)| *log).collect();
        let gain = log_mean(&logs.iter().map(|log| (*log, 1.0)).collect::<Vec<_>>());
        let weights = normalised(&logs);
        let tells = ways.iter().zip(weights).zip(found);
        let tells = tells.filter(|((_, weight), _)| TELLS < *weight);
        let told: Vec<(Way, f64, Vec<f64>)> = tells
            .map(|((way, weight), (_, chain))| (*way, weight, chain.lasts()))
            .collect();
        self.explained(placed, gain, &told)
    }

    fn explained(&self, placed: &[Placed], gain: f64, told: &[(Way, f64, Vec<f64>)]) -> Follows {
        let all: f64 = told.iter().map(|(_, weight, _)| weight).sum();
        let troubles = placed
            .iter()
            .filter_map(|one| Some((one, one.kind.trouble()?)));
        let each = troubles.map(|(one, kind)| {
            let (mut chance, mut factor) = (0.0, 0.0);
            for (way, weight, lasts) in told {
                let weight = weight / all;
                let lasts = lasts.get(one.hour / DAY).copied().unwrap_or(0.0);
                let ratio = self.ratio(way, kind);
                chance += weight * lasts * (ratio - 1.0) / ratio;
                factor += weight * (1.0 + lasts * (ratio - 1.0));
            }
            (chance, factor)
        });
        let (explained, factors) = each.unzip();
        Follows {
            gain,
            explained,
            factors,
        }
    }

    /// How many times as many troubles of a kind come while it lasts.
    fn ratio(&self, way: &Way, kind: usize) -> f64 {
        let of = |kinds: &[f64; KINDS]| kinds.get(kind).copied().unwrap_or(0.0);
        1.0 + way.rate * of(&self.kinds) / (way.background * of(&USUAL_KINDS))
    }

    /// All ways through the days, summed up forwards.
    fn forwards(&self, days: &Days, way: &Way) -> Chain {
        let usual = self.steps(&[0.0; DEEDS.len()], way);
        let mut chain = Chain {
            log: 0.0,
            steps: Vec::with_capacity(days.deeds.len()),
            seen: Vec::with_capacity(days.deeds.len()),
            ahead: Vec::with_capacity(days.deeds.len()),
        };
        let quiet = self.seen(&[0.0; KINDS], &[0.0; DEEDS.len()], way);
        let mut now = self.at_start(way);
        for (troubles, deeds) in days.troubles.iter().zip(&days.deeds) {
            let was_done = deeds.iter().any(|number| 0.0 < *number);
            let came = troubles.iter().any(|number| 0.0 < *number);
            let step = if was_done {
                self.steps(deeds, way)
            } else {
                usual
            };
            let seen = if was_done || came {
                self.seen(troubles, deeds, way)
            } else {
                quiet
            };
            let mut next = [0.0; STATES];
            for (state, next) in next.iter_mut().enumerate() {
                let from = now.iter().zip(&step);
                let sum: f64 = from.map(|(chance, to)| chance * at(to, state)).sum();
                *next = sum * at(&seen, state);
            }
            chain.log += scale(&mut next);
            now = next;
            chain.steps.push(step);
            chain.seen.push(seen);
            chain.ahead.push(now);
        }
        chain
    }

    /// Where it may be as the log begins.
    fn at_start(&self, way: &Way) -> [f64; STATES] {
        let lasts = self.mended_by.1 / (self.mended_by.1 + way.comes_days);
        let lasts = if self.again { lasts } else { 0.35 * lasts };
        let sound = 1.0 - lasts;
        if self.loads {
            [0.5 * sound, 0.5 * sound, lasts, 0.0]
        } else {
            [0.0, sound, lasts, 0.0]
        }
    }

    /// From each state to each in a day; what was done that day is told against how often it is done anyway.
    fn steps(&self, deeds: &[f64; DEEDS.len()], way: &Way) -> [[f64; STATES]; STATES] {
        let stages = if self.loads { 2.0 } else { 1.0 };
        let comes = stages / way.comes_days;
        let written = |chance: f64, deed: Option<EventKind>| match deed {
            Some(deed) => chance * told(deeds, deed),
            None => chance,
        };
        let mended = 1.0 / self.mended_by.1;
        let to_mended = written(mended, Some(self.mended_by.0));
        let begins = written(comes, self.begins_with);
        let mut steps = [[0.0; STATES]; STATES];
        let [sound, nearly, troubled, done] = &mut steps;
        *sound = [1.0 - comes, comes, 0.0, 0.0];
        *nearly = [0.0, 1.0 - comes, begins, 0.0];
        *troubled = if self.again {
            [to_mended, 0.0, 1.0 - mended, 0.0]
        } else {
            [0.0, 0.0, 1.0 - mended, to_mended]
        };
        if self.loads {
            // What mends it is done before there is trouble as well, and it begins anew.
            let anew = told(deeds, self.mended_by.0) - (1.0 - WRITTEN);
            if 0.0 < anew {
                *nearly = [0.8, 0.2 * (1.0 - comes), 0.2 * begins, 0.0];
                *sound = [1.0, 0.0, 0.0, 0.0];
            }
        }
        *done = [0.0; STATES];
        if let Some(stays) = done.get_mut(MENDED) {
            *stays = 1.0;
        }
        steps
    }

    /// How likely what was seen of a day is in each state, against a sound one.
    fn seen(
        &self,
        troubles: &[f64; KINDS],
        deeds: &[f64; DEEDS.len()],
        way: &Way,
    ) -> [f64; STATES] {
        let mut log = -way.rate;
        for (kind, number) in troubles.iter().enumerate() {
            log += number * ln(self.ratio(way, kind));
        }
        for ((number, tried), usual) in deeds.iter().zip(self.tried_a_year).zip(DEEDS_A_YEAR) {
            log += number * ln(1.0 + tried / usual) - tried / YEAR;
        }
        let mut seen = [1.0; STATES];
        if let Some(troubled) = seen.get_mut(TROUBLED) {
            *troubled = exp(log);
        }
        seen
    }
}

/// By how much a deed that was written down on a day, or was not, speaks for what it belongs to.
fn told(deeds: &[f64; DEEDS.len()], deed: EventKind) -> f64 {
    let Some(place) = DEEDS.iter().position(|one| *one == deed) else {
        return 1.0;
    };
    let usual = DEEDS_A_YEAR.get(place).copied().unwrap_or(1.0) / YEAR;
    let done = deeds.get(place).copied().unwrap_or(0.0);
    // It may stand a day or two off.
    let near = 0.5 * done.min(1.0) / usual;
    1.0 - WRITTEN + WRITTEN * near
}

fn at(values: &[f64; STATES], place: usize) -> f64 {
    values.get(place).copied().unwrap_or(0.0)
}

/// Divides by the sum, and says its logarithm.
fn scale(values: &mut [f64; STATES]) -> f64 {
    let sum: f64 = values.iter().sum();
    let sum = sum.max(f64::MIN_POSITIVE);
    for value in values.iter_mut() {
        *value /= sum;
    }
    ln(sum)
}
