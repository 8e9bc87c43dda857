//! Causes that last: from some day on trouble comes again and again, until somebody mends what is wrong, or what is cleaned loads anew.
//!
//! The chain of days that nobody sees is summed over all its ways, so that neither the first day nor the last need be known.

use dewrun_numeric::elementary::{exp, ln};

use crate::comparison::{log_sum, normalised};
use crate::follows::{Follows, InTurns, TURNS};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::Hours;
use crate::poisson::{count, ln_factorial};
use crate::shape::{KINDS, USUAL_KINDS, telling};
use crate::shown::{Read, sound};
use crate::weather_causes::at_share;

/// Hours of a day.
const DAY: usize = 24;
/// States of a day: sound, nearly loaded, in trouble, mended.
const STATES: usize = 4;
const NEARLY: usize = 1;
const TROUBLED: usize = 2;
const MENDED: usize = 3;
/// Troubles a day while it lasts, as parts of what is usual, each with its weight.
const RATES: [(f64, f64); 4] = [(0.4, 0.2), (0.8, 0.32), (1.5, 0.32), (2.8, 0.16)];
/// Entries that have nothing to do with it, as parts of all, each with its weight: even steps of a logarithm, of which the middle ones are likelier.
const OTHERS: [(f64, f64); 4] = [(0.08, 0.2), (0.17, 0.5), (0.35, 0.65), (0.72, 0.25)];
/// A fault trips at all times, or only while the sound line reads in so much of its lower, or higher, part of the log's time.
const TRIPS: [f64; 4] = [1.0, 0.75, 0.4, 0.12];
/// How often each of them is so where nothing is modelled of the fault: common practice, no source.
const TRIPS_USUAL: [f64; TRIPS.len()] = [0.55, 0.25, 0.12, 0.08];
/// A limit lies at such parts of the way from what is usual to the reading under the fault: common practice, no source.
const LIMITS: [f64; 4] = [0.35, 0.5, 0.65, 0.8];
/// As it begins to load, it trips in the last of `TRIPS` only, and in so much of it.
const BEGINS: f64 = 0.7;
/// On days on which it should not trip it may do so yet.
const RARELY: f64 = 0.02;
/// What somebody did is written down so often.
const WRITTEN: f64 = 0.65;
/// A filter that is changed begins to load anew; of whatever else is done so much is that something was cleaned.
const ANEW: (f64, f64) = (0.6, 0.15);
/// Of deeds so many are written down on their day, and so many on each of the days beside it.
const NEAR: (f64, f64) = (0.6, 0.2);
/// What is less likely is left out.
const HARDLY: f64 = 0.02;
/// Ways of less weight tell nothing of single entries.
const TELLS: f64 = 1e-3;
/// Ways that are less likely by the times alone are not looked at with what was read: for each of them all sizes of a fault are gone through.
const READ_FROM: f64 = 0.01;
/// Days in a year.
const YEAR: f64 = 365.0;

/// What somebody does beside looking at troubles.
const DEEDS: [EventKind; 3] = [
    EventKind::FilterChanged,
    EventKind::DetectorReplaced,
    EventKind::Other,
];
/// How often they are done whatever is wrong: so often a year, and so often for each trouble that has nothing to do with the cause, for who writes much down writes down all kinds; common practice, no source.
const DEEDS_A_YEAR: [(f64, f64); DEEDS.len()] = [(0.8, 0.2), (0.2, 0.02), (1.6, 0.4)];

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

/// The days of a log.
struct Days {
    /// For each way in which the reading of a sound line may matter, which part of a day the fault can trip.
    trips: [Vec<f64>; TRIPS.len()],
    /// How likely each of these ways is.
    likely: [f64; TRIPS.len()],
    days: Vec<Day>,
    /// Troubles of all, and of those that each turn leaves.
    all: InTurns,
}

/// What was seen of a day.
#[derive(Clone)]
struct Day {
    troubles: Vec<Trouble>,
    /// What was done, for each of [`OTHERS`].
    done: [Done; OTHERS.len()],
}

/// What was done on a day.
#[derive(Clone, Copy)]
struct Done {
    /// By how much it speaks for trouble, a logarithm.
    deeds: f64,
    /// From each state to each.
    step: [[f64; STATES]; STATES],
}

/// A trouble on its day.
#[derive(Debug, Clone)]
struct Trouble {
    kind: usize,
    /// Its place among all that tell.
    place: usize,
    /// The turn that leaves it out.
    turn: usize,
    /// Which part of the time around it the fault can trip, way by way.
    trips: [f64; TRIPS.len()],
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

/// The days of a way, summed up forwards.
struct Chain {
    seen: Vec<[f64; STATES]>,
    ahead: Vec<[f64; STATES]>,
}

impl Chain {
    /// The chance of trouble for each day, with what came before and after.
    ///
    /// Forwards and backwards over the days: L. E. Baum et al., Ann. Math. Stat. 41 (1970) 164.
    fn lasts(&self, days: &[Day], others: usize) -> Vec<f64> {
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

impl Days {
    fn of(spells: &Spells, placed: &[Placed], hours: &Hours, readings: &[f64]) -> Self {
        let number = hours.len().div_ceil(DAY).max(1);
        let (by_hour, likely) = trips(hours, 0.0 < spells.kinds[1], readings);
        let deeds = deeds(placed, number);
        let all = count(
            placed
                .iter()
                .filter(|one| telling(one.kind).is_some())
                .count(),
        );
        let years = count(number) / YEAR;
        let usual = OTHERS.map(|(others, _)| {
            DEEDS_A_YEAR.map(|(a_year, each)| a_year + each * others * all.max(1.0) / years)
        });
        let each = deeds.iter().map(|day| Day {
            troubles: Vec::new(),
            done: usual.map(|usual| Done {
                deeds: spells.deeds(&day.on, &usual),
                step: spells.steps(&day.near, &usual),
            }),
        });
        let mut days: Vec<Day> = each.collect();
        let telling = placed
            .iter()
            .filter_map(|one| Some((one, telling(one.kind)?)));
        for (place, (one, kind)) in telling.enumerate() {
            if let Some(day) = days.get_mut(one.hour / DAY) {
                day.troubles.push(Trouble {
                    kind,
                    place,
                    turn: one.turn,
                    trips: [0, 1, 2, 3].map(|way| around(by_hour.get(way), one)),
                });
            }
        }
        let troubles = || days.iter().flat_map(|day| &day.troubles);
        let left = |turn| troubles().filter(|one| one.is_left(turn)).count();
        Self {
            trips: [0, 1, 2, 3].map(|way| by_day(by_hour.get(way), number)),
            likely,
            all: core::array::from_fn(|turn| count(left(turn))),
            days,
        }
    }

    /// How many troubles a turn leaves.
    fn left(&self, turn: usize) -> f64 {
        self.all.get(turn).copied().unwrap_or(0.0)
    }
}

impl Day {
    fn done(&self, others: usize) -> &Done {
        let [first, ..] = &self.done;
        self.done.get(others).unwrap_or(first)
    }
}

impl Trouble {
    const fn is_left(&self, turn: usize) -> bool {
        turn == 0 || self.turn != turn
    }
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
        let tells = ways.iter().zip(normalised(&found));
        let tells: Vec<((Way<'_>, f64), f64)> = tells
            .filter(|(_, part)| TELLS < *part)
            .map(|(way, part)| (*way, part))
            .collect();
        let turns = placed.iter().map(|one| one.turn).max().unwrap_or(0);
        let mut gains = [log_sum(&found); 1 + TURNS];
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
            *gain = log_sum(&logs(&left.collect::<Vec<_>>()));
        }
        let told: Vec<(Way<'_>, f64, Vec<f64>)> = (tells.into_iter())
            .map(|((way, _), part)| {
                (
                    way,
                    part,
                    self.chain(&days, &way).lasts(&days.days, way.others),
                )
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

    /// The days of a way.
    fn chain(&self, days: &Days, way: &Way<'_>) -> Chain {
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

    /// The chance that each trouble is of it, and how many times as likely it is as at any time; of ways, each with its part and the chance of trouble day by day.
    fn told(&self, placed: &[Placed], told: &[(Way<'_>, f64, Vec<f64>)]) -> Vec<(f64, f64)> {
        let all: f64 = told.iter().map(|(_, part, _)| part).sum();
        let troubles = placed
            .iter()
            .filter_map(|one| Some((one, telling(one.kind)?)));
        let each = troubles.enumerate().map(|(place, (one, kind))| {
            let (mut chance, mut factor) = (0.0, 0.0);
            for (way, part, lasts) in told {
                let part = part / all;
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

    /// All ways through the days, summed up forwards: the logarithm of their likelihood against that of sound days. What is seen of each day, and where it may be then, is shown.
    fn forwards(
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
            let seen = self.seen(day, way, (*trips, *first));
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
    fn steps(
        &self,
        near: &[f64; DEEDS.len()],
        usual: &[f64; DEEDS.len()],
    ) -> [[f64; STATES]; STATES] {
        let stages = if self.loads { 2.0 } else { 1.0 };
        let comes = stages / self.comes_days;
        let written = |chance: f64, deed: Option<EventKind>| match deed {
            Some(deed) => chance * told(near, usual, deed),
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
            let was = (told(near, usual, self.mended_by.0) - (1.0 - WRITTEN)).min(1.0);
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
    fn deeds(&self, on: &[f64; DEEDS.len()], usual: &[f64; DEEDS.len()]) -> f64 {
        let each = on.iter().zip(self.tried_a_year).zip(usual);
        each.map(|((number, tried), usual)| number * ln(1.0 + tried / usual) - tried / YEAR)
            .sum()
    }

    /// How likely what was seen of a day is in each state, against a sound one.
    fn seen(&self, day: &Day, way: &Way<'_>, (trips, first): (f64, f64)) -> [f64; STATES] {
        let troubles = || day.troubles.iter().filter(|one| one.is_left(way.turn));
        let mut log = day.done(way.others).deeds - way.rate * trips;
        for one in troubles() {
            let trips = one.trips.get(way.trips).copied().unwrap_or(1.0).max(RARELY);
            log += ln(1.0 + trips * self.more(way, one.kind, one.place));
        }
        let mut seen = [1.0; STATES];
        if let Some(troubled) = seen.get_mut(TROUBLED) {
            *troubled = exp(log);
        }
        if self.loads
            && let Some(nearly) = seen.get_mut(NEARLY)
        {
            let mut log = -way.rate * BEGINS * first;
            for one in troubles() {
                let trips = BEGINS * one.trips.last().copied().unwrap_or(1.0);
                log += ln(1.0 + trips * self.more(way, one.kind, one.place));
            }
            *nearly = exp(log);
        }
        seen
    }
}

/// What was done on a day.
#[derive(Clone, Default)]
struct Deeds {
    on: [f64; DEEDS.len()],
    /// How plainly it stands on that day or beside it.
    near: [f64; DEEDS.len()],
}

/// What was done day by day.
fn deeds(placed: &[Placed], days: usize) -> Vec<Deeds> {
    let mut found = vec![Deeds::default(); days];
    for one in placed {
        let Some(deed) = DEEDS.iter().position(|deed| *deed == one.kind) else {
            continue;
        };
        let day = one.hour / DAY;
        for (beside, part) in [
            (day, NEAR.0),
            (day + 1, NEAR.1),
            (day.wrapping_sub(1), NEAR.1),
        ] {
            if let Some(sum) = (found.get_mut(beside)).and_then(|day| day.near.get_mut(deed)) {
                *sum += part;
            }
        }
        if let Some(sum) = (found.get_mut(day)).and_then(|day| day.on.get_mut(deed)) {
            *sum += 1.0;
        }
    }
    found
}

/// Whether a fault can trip in each hour, for each of the ways in which the reading of the sound line may matter; and how likely each way is.
fn trips(
    hours: &Hours,
    is_high: bool,
    readings: &[f64],
) -> ([Vec<f64>; TRIPS.len()], [f64; TRIPS.len()]) {
    let side = if is_high { -1.0 } else { 1.0 };
    let reading: Vec<f64> = sound(hours).into_iter().map(|one| side * one).collect();
    let mut sorted = reading.clone();
    sorted.sort_unstable_by(f64::total_cmp);
    let by_hour = TRIPS.map(|share| {
        let end = if share < 1.0 {
            at_share(&sorted, share).unwrap_or(f64::INFINITY)
        } else {
            f64::INFINITY
        };
        let is_below = |one: &f64| if *one <= end { 1.0 } else { 0.0 };
        reading.iter().map(is_below).collect()
    });
    let mut likely = [0.0; TRIPS.len()];
    for under in readings.iter().filter(|one| side * **one < side) {
        for part in LIMITS {
            // With the fault the reading is that of the sound line, as much lower or higher as it was made.
            let trips_at = side * (1.0 + part * (under - 1.0)) / under.max(0.05);
            let share =
                count(sorted.partition_point(|one| *one <= trips_at)) / count(sorted.len().max(1));
            let near = |one: &f64| (one - share).abs();
            let way = (0..TRIPS.len()).min_by(|one, other| {
                let of = |way: &usize| TRIPS.get(*way).map_or(f64::INFINITY, near);
                of(one).total_cmp(&of(other))
            });
            if let Some(sum) = way
                .filter(|_| HARDLY < share)
                .and_then(|way| likely.get_mut(way))
            {
                *sum += 1.0;
            }
        }
    }
    let all: f64 = likely.iter().sum();
    let likely = if 0.0 < all {
        let mut usual = TRIPS_USUAL.iter();
        // What is modelled is not all there is.
        likely.map(|one| 0.8 * one / all + 0.2 * usual.next().copied().unwrap_or(0.0))
    } else {
        TRIPS_USUAL
    };
    (by_hour, likely)
}

fn by_day(hours: Option<&Vec<f64>>, days: usize) -> Vec<f64> {
    let mut found: Vec<f64> = (hours.into_iter().flat_map(|hours| hours.chunks(DAY)))
        .map(|day| day.iter().sum::<f64>() / count(day.len()))
        .collect();
    found.resize(days, 1.0);
    found
}

/// The mean around an entry: it is written down some hours later, or only its day is.
fn around(hours: Option<&Vec<f64>>, one: &Placed) -> f64 {
    let Some(hours) = hours else { return 1.0 };
    let (from, until) = if one.day_only {
        (one.hour, one.hour + DAY)
    } else {
        (one.hour.saturating_sub(2), one.hour + 1)
    };
    let part = hours.get(from..until.min(hours.len())).unwrap_or_default();
    part.iter().sum::<f64>() / count(part.len().max(1))
}

/// By how much a deed that was written down on a day, or was not, speaks for what it belongs to.
fn told(near: &[f64; DEEDS.len()], usual: &[f64; DEEDS.len()], deed: EventKind) -> f64 {
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
