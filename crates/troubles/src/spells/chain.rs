//! The chain of days that nobody sees: sound, nearly loaded, in trouble, mended; summed over all its ways.

use dewrun_numeric::elementary::{exp, ln};

use crate::log::EventKind;

use super::days::{DEEDS, Day, Days, YEAR};
use super::{Spells, Way};

/// States of a day: sound, nearly loaded, in trouble, mended.
pub(super) const STATES: usize = 4;
const NEARLY: usize = 1;
const TROUBLED: usize = 2;
const MENDED: usize = 3;
/// As it begins to load, it trips in the last of `TRIPS` only, and in so much of it.
const BEGINS: f64 = 0.7;
/// On days on which it should not trip it may do so yet.
const RARELY: f64 = 0.02;
/// What somebody did is written down so often.
const WRITTEN: f64 = 0.65;
/// A filter that is changed begins to load anew; of whatever else is done so much is that something was cleaned.
const ANEW: (f64, f64) = (0.6, 0.15);

/// The days of a way, summed up forwards.
pub(super) struct Chain {
    seen: Vec<[f64; STATES]>,
    ahead: Vec<[f64; STATES]>,
}

impl Chain {
    /// The chance of trouble for each day, with what came before and after.
    ///
    /// Forwards and backwards over the days: L. E. Baum et al., Ann. Math. Stat. 41 (1970) 164.
    pub(super) fn lasts(&self, days: &[Day], others: usize) -> Vec<f64> {
        let mut behind = [1.0; STATES];
        let mut lasts = Vec::with_capacity(self.seen.len());
        let days = self.ahead.iter().zip(days).zip(&self.seen).rev();
        for ((ahead, day), seen) in days {
            let both: f64 = ahead
                .iter()
                .zip(&behind)
                .map(|(one, other)| one * other)
                .sum();
            let troubled = at(ahead, TROUBLED) * at(&behind, TROUBLED);
            lasts.push(troubled / both.max(f64::MIN_POSITIVE));
            let mut before = [0.0; STATES];
            for (to, before) in day.done(others).step.iter().zip(&mut before) {
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

impl Spells {
    /// The days of a way.
    pub(super) fn chain(&self, days: &Days, way: &Way<'_>) -> Chain {
        let mut chain = Chain {
            seen: Vec::with_capacity(days.days.len()),
            ahead: Vec::with_capacity(days.days.len()),
        };
        self.forwards(days, way, |seen, ahead| {
            chain.seen.push(seen);
            chain.ahead.push(ahead);
        });
        chain
    }

    /// All ways through the days, summed up forwards: the logarithm of their likelihood against that of sound days. What is seen of each day, and where it may be then, is shown.
    pub(super) fn forwards(
        &self,
        days: &Days,
        way: &Way<'_>,
        mut show: impl FnMut([f64; STATES], [f64; STATES]),
    ) -> f64 {
        let always = Vec::new();
        let trips = days.trips.get(way.trips).unwrap_or(&always);
        let first = days.trips.last().unwrap_or(&always);
        let mut now = self.at_start();
        let mut log = 0.0;
        for ((day, trips), first) in days.days.iter().zip(trips).zip(first) {
            let (seen, most) = self.seen(day, way, (*trips, *first));
            log += most;
            let mut next = [0.0; STATES];
            for (state, next) in next.iter_mut().enumerate() {
                let from = now.iter().zip(&day.done(way.others).step);
                let sum: f64 = from.map(|(chance, to)| chance * at(to, state)).sum();
                *next = sum * at(&seen, state);
            }
            log += scale(&mut next);
            now = next;
            show(seen, now);
        }
        log
    }

    /// Where it may be as the log begins.
    fn at_start(&self) -> [f64; STATES] {
        let lasts = self.mended_by.1 / (self.mended_by.1 + self.comes_days);
        let lasts = if self.again { lasts } else { 0.35 * lasts };
        let sound = 1.0 - lasts;
        if self.loads {
            [0.5 * sound, 0.5 * sound, lasts, 0.0]
        } else {
            [0.0, sound, lasts, 0.0]
        }
    }

    /// From each state to each in a day; what was done that day is told against how often it is done anyway.
    pub(super) fn steps(
        &self,
        near: &[f64; DEEDS.len()],
        usual: &[f64; DEEDS.len()],
    ) -> [[f64; STATES]; STATES] {
        let stages = if self.loads { 2.0 } else { 1.0 };
        let comes = stages / self.comes_days;
        let written = |chance: f64, deed: Option<EventKind>| match deed {
            Some(deed) => chance * speaks(near, usual, deed),
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
            let was = (speaks(near, usual, self.mended_by.0) - (1.0 - WRITTEN)).min(1.0);
            let anew = if self.mended_by.0 == EventKind::FilterChanged {
                ANEW.0 * was
            } else {
                ANEW.1 * was
            };
            *nearly = nearly.map(|one| (1.0 - anew) * one);
            nearly[0] += anew;
            *sound = sound.map(|one| (1.0 - anew) * one);
            sound[0] += anew;
        }
        *done = [0.0; STATES];
        if let Some(stays) = done.get_mut(MENDED) {
            *stays = 1.0;
        }
        steps
    }

    /// By how much what was done on a day speaks for trouble, a logarithm.
    pub(super) fn deeds(&self, on: &[f64; DEEDS.len()], usual: &[f64; DEEDS.len()]) -> f64 {
        let each = on.iter().zip(self.tried_a_year).zip(usual);
        each.map(|((number, tried), usual)| number * ln(1.0 + tried / usual) - tried / YEAR)
            .sum()
    }

    /// How likely what was seen of a day is in each state, against the state in which it is likeliest; and the logarithm of that against a sound day.
    fn seen(&self, day: &Day, way: &Way<'_>, (trips, first): (f64, f64)) -> ([f64; STATES], f64) {
        let troubles = || day.troubles.iter().filter(|one| one.is_left(way.turn));
        let mut log = day.done(way.others).deeds - way.rate * trips;
        for one in troubles() {
            let trips = one.trips.get(way.trips).copied().unwrap_or(1.0).max(RARELY);
            log += ln(1.0 + trips * self.more(way, one.kind, one.place));
        }
        let mut seen = [0.0; STATES];
        if let Some(troubled) = seen.get_mut(TROUBLED) {
            *troubled = log;
        }
        if self.loads
            && let Some(nearly) = seen.get_mut(NEARLY)
        {
            *nearly = -way.rate * BEGINS * first;
            for one in troubles() {
                let trips = BEGINS * one.trips.last().copied().unwrap_or(1.0);
                *nearly += ln(1.0 + trips * self.more(way, one.kind, one.place));
            }
        }
        // A contact that chatters makes hundreds of troubles in a day.
        let most = seen.iter().copied().fold(0.0, f64::max);
        (seen.map(|log| exp(log - most)), most)
    }
}

/// By how much a deed that was written down on a day, or was not, speaks for what it belongs to.
fn speaks(near: &[f64; DEEDS.len()], usual: &[f64; DEEDS.len()], deed: EventKind) -> f64 {
    let Some(place) = DEEDS.iter().position(|one| *one == deed) else {
        return 1.0;
    };
    let usual = usual.get(place).copied().unwrap_or(1.0) / YEAR;
    let done = near.get(place).copied().unwrap_or(0.0);
    1.0 - WRITTEN + WRITTEN * done.min(1.0) / usual
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
