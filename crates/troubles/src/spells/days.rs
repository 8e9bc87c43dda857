//! What was seen day by day of a log.

use crate::follows::{InTurns, is_left};
use crate::hours_of_log::Placed;
use crate::log::EventKind;
use crate::modelled::Hours;
use crate::poisson::count;
use crate::shape::telling;
use crate::shown::sound;
use crate::weather_causes::at_share;

use super::chain::STATES;
use super::{HARDLY, OTHERS, Spells};

/// Hours of a day.
pub(super) const DAY: usize = 24;
/// A fault trips at all times, or only while the sound line reads in so much of its lower, or higher, part of the log's time.
pub(super) const TRIPS: [f64; 4] = [1.0, 0.75, 0.4, 0.12];
/// How often each of them is so where nothing is modelled of the fault: common practice, no source.
const TRIPS_USUAL: [f64; TRIPS.len()] = [0.55, 0.25, 0.12, 0.08];
/// A limit lies at such parts of the way from what is usual to the reading under the fault: common practice, no source.
const LIMITS: [f64; 4] = [0.35, 0.5, 0.65, 0.8];
/// Of deeds so many are written down on their day, and so many on each of the days beside it.
const NEAR: (f64, f64) = (0.6, 0.2);
/// Days in a year.
pub(super) const YEAR: f64 = 365.0;

/// What somebody does beside looking at troubles.
pub(super) const DEEDS: [EventKind; 3] = [
    EventKind::FilterChanged,
    EventKind::DetectorReplaced,
    EventKind::Other,
];
/// How often they are done whatever is wrong: so often a year, and so often for each trouble that has nothing to do with the cause, for who writes much down writes down all kinds; common practice, no source. What is averaged over the second is how likely entries are where deeds are known, not how likely so many deeds are: too little is known of how often somebody does something.
const DEEDS_A_YEAR: [(f64, f64); DEEDS.len()] = [(0.8, 0.2), (0.2, 0.02), (1.6, 0.4)];

/// The days of a log.
pub(super) struct Days {
    /// For each way in which the reading of a sound line may matter, which part of a day the fault can trip.
    pub(super) trips: [Vec<f64>; TRIPS.len()],
    /// How likely each of these ways is.
    pub(super) likely: [f64; TRIPS.len()],
    pub(super) days: Vec<Day>,
    /// Troubles of all, and of those that each turn leaves.
    all: InTurns,
}

/// What was seen of a day.
pub(super) struct Day {
    pub(super) troubles: Vec<Trouble>,
    /// What was done, for each of [`OTHERS`].
    done: [Done; OTHERS.len()],
}

/// What was done on a day.
#[derive(Clone, Copy)]
pub(super) struct Done {
    /// By how much it speaks for trouble, a logarithm.
    pub(super) deeds: f64,
    /// From each state to each.
    pub(super) step: [[f64; STATES]; STATES],
}

/// A trouble on its day.
pub(super) struct Trouble {
    pub(super) kind: usize,
    /// Its place among all that tell.
    pub(super) place: usize,
    /// The turn that leaves it out.
    turn: usize,
    /// Which part of the time around it the fault can trip, way by way.
    pub(super) trips: [f64; TRIPS.len()],
}

impl Days {
    pub(super) fn of(spells: &Spells, placed: &[Placed], hours: &Hours, readings: &[f64]) -> Self {
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
    pub(super) fn left(&self, turn: usize) -> f64 {
        self.all.get(turn).copied().unwrap_or(0.0)
    }
}

impl Day {
    pub(super) fn done(&self, others: usize) -> &Done {
        let [first, ..] = &self.done;
        self.done.get(others).unwrap_or(first)
    }
}

impl Trouble {
    pub(super) const fn is_left(&self, turn: usize) -> bool {
        is_left(self.turn, turn)
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
