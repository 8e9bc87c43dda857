//! What the members of a run's ensemble say of each hour that a log speaks of, on the mean of all under their weights.

use dewrun_ensemble::{Gathered, Member, Plan, StateFlags};
use dewrun_run::{Tube, evaluate, water_and_air};
use dewrun_weather::Civil;

use crate::groups::{Group, damp, groups};
use crate::log::Log;
use crate::poisson::count;
use crate::signs::{FaultReadings, FaultSigns};

/// Seconds of an hour.
const HOUR_S: i64 = 3600;
/// Hours of a leap year.
const HOURS_OF_LEAP_YEAR: usize = 8784;
/// Humidities from which on damp in the chamber may look like smoke; common practice, no source.
pub(crate) const DAMP_FROM: [f64; 3] = [0.85, 0.92, 0.97];

/// What is known of the run that a log is of.
#[derive(Debug, Clone, Copy)]
pub struct Known<'a> {
    /// What its ensemble is made of.
    pub plan: &'a Plan,
    /// The members.
    pub gathered: &'a Gathered,
    /// Weights of the members, in their order; none counts all alike.
    pub weights: Option<&'a [f64]>,
    /// Start of each hour of the members' year, s since 1970 on the clock of the weather.
    pub start_s: &'a [i64],
}

/// The run that a log is of, as its ensemble knows it: summed up once for all logs.
#[derive(Debug, Clone)]
pub struct Modelled {
    pub(crate) year: Vec<Sum>,
    pub(crate) groups: Vec<Group>,
    pub(crate) start_s: Vec<i64>,
    pub(crate) signs: FaultSigns,
    pub(crate) faults: FaultReadings,
    pub(crate) has_trap: bool,
    pub(crate) low_point: Option<LowPoint>,
    pub(crate) switching_hours: Vec<u8>,
}

/// A low point that water comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LowPoint {
    /// The tube that it lies in.
    pub tube: Tube,
    /// Where along that, m from its start.
    pub at_m: f64,
    /// Water that closes it, g.
    pub closes_g: f64,
}

/// Hour by hour of the time that a log speaks of.
#[derive(Debug, Clone, PartialEq)]
pub struct Hours {
    /// Start of the first, s since 1970.
    pub first_s: i64,
    /// Water that deposits as liquid, g.
    pub water_g: Vec<f64>,
    /// The airflow as a part of that as fitted, pools included.
    pub reading: Vec<f64>,
    /// Whether hours are those of the same days in another year: the climate, and not what was.
    pub is_climate: bool,
    /// The same hours of members that do alike.
    pub(crate) groups: Vec<Group>,
}

/// An hour of a member with what is remembered of those before.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Sum {
    pub(crate) water_g: f64,
    pub(crate) mist: [f64; DAMP_FROM.len()],
    /// Chance of ice on a wall.
    pub(crate) icy: f64,
    /// Chance that hardly anything deposits.
    pub(crate) dry: f64,
    pub(crate) leaks: f64,
    pub(crate) reading: f64,
}

impl Modelled {
    /// Sums up the members of a run; none where there is none, or no hour.
    #[must_use]
    pub fn of(known: &Known<'_>) -> Option<Self> {
        let usual = known.plan.usual();
        let fan_off = usual.season.fan_off.iter();
        let members = members(known);
        let (signs, faults) = FaultSigns::with_readings(known.plan);
        Some(Self {
            year: year(&members, known.start_s.len())?,
            groups: groups(&members, known.start_s.len()),
            start_s: known.start_s.to_vec(),
            signs,
            faults,
            has_trap: has_trap(known.plan),
            low_point: low_point(known.plan),
            switching_hours: fan_off
                .flat_map(|rule| [rule.hours.0, rule.hours.1])
                .collect(),
        })
    }

    /// The low point that the least water closes; none where there is none that water comes to.
    #[must_use]
    pub const fn low_point(&self) -> Option<LowPoint> {
        self.low_point
    }

    /// Whether it has a trap.
    #[must_use]
    pub const fn has_trap(&self) -> bool {
        self.has_trap
    }

    /// The hours of the members' year, with their starts.
    pub(crate) fn year(&self) -> impl Iterator<Item = (i64, &Sum)> {
        self.start_s.iter().copied().zip(&self.year)
    }
}

impl Hours {
    /// Of a log's time; none where there is no member or no hour.
    #[must_use]
    pub fn of(modelled: &Modelled, log: &Log) -> Option<Self> {
        let year = &modelled.year;
        let (from_s, until_s) = log.period();
        let first_s = from_s.div_euclid(HOUR_S) * HOUR_S;
        let (places, is_climate) = places_in(&modelled.start_s, first_s, until_s)?;
        let column = |of: &dyn Fn(&Sum) -> f64| -> Vec<f64> {
            let at = |place: &usize| year.get(*place).map_or(0.0, of);
            places.iter().map(at).collect()
        };
        Some(Self {
            first_s,
            water_g: column(&|sum| sum.water_g),
            reading: column(&|sum| sum.reading),
            is_climate,
            groups: modelled.groups.iter().map(|one| one.at(&places)).collect(),
        })
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.water_g.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.water_g.is_empty()
    }

    /// The hour that a moment lies in; none outside.
    #[must_use]
    pub fn place(&self, at_s: i64) -> Option<usize> {
        let place = usize::try_from((at_s - self.first_s).div_euclid(HOUR_S)).ok()?;
        (place < self.len()).then_some(place)
    }
}

pub(crate) fn has_trap(plan: &Plan) -> bool {
    let installation = &plan.usual().installation;
    let tubes = [&installation.intake, &installation.exhaust];
    tubes.iter().any(|tube| !tube.traps.is_empty())
}

/// The low point that the least water closes; none where there is none that water comes to.
pub(crate) fn low_point(plan: &Plan) -> Option<LowPoint> {
    let usual = plan.usual();
    let steady = evaluate(&usual.run).ok()?.value;
    let whole = water_and_air(&usual.run, &usual.installation, &steady).ok()?;
    let intake = core::iter::once((Tube::Intake, &whole.intake));
    let tubes = intake.chain(whole.exhaust.iter().map(|tube| (Tube::Exhaust, tube)));
    let low_points = tubes.flat_map(|(tube, drained)| {
        let each = drained.low_points.iter();
        each.map(move |one| LowPoint {
            tube,
            at_m: one.at.to_metres(),
            // A millilitre of water is a gram.
            closes_g: one.seal_volume.to_millilitres(),
        })
    });
    let closing = low_points.filter(|one| 0.0 < one.closes_g);
    closing.min_by(|one, other| one.closes_g.total_cmp(&other.closes_g))
}

/// Members that count, with their weights.
fn members<'a>(known: &Known<'a>) -> Vec<(&'a Member, f64)> {
    let weight = |at: usize| {
        known
            .weights
            .map_or(1.0, |weights| weights.get(at).copied().unwrap_or(0.0))
    };
    let each = known.gathered.members().enumerate();
    each.map(|(at, member)| (member, weight(at)))
        .filter(|(_, weight)| 0.0 < *weight)
        .collect()
}

/// The mean of all members, hour by hour of their year.
fn year(members: &[(&Member, f64)], hours: usize) -> Option<Vec<Sum>> {
    let mut year = vec![Sum::default(); hours];
    let all: f64 = members.iter().map(|(_, weight)| weight).sum();
    for (member, weight) in members {
        add(&mut year, member, *weight);
    }
    if all <= 0.0 || year.is_empty() {
        return None;
    }
    for sum in &mut year {
        for part in sum.parts() {
            *part /= all;
        }
    }
    Some(year)
}

fn add(year: &mut [Sum], member: &Member, weight: f64) {
    let kept = &member.hours;
    let each = count(kept.rows_each.max(1));
    for (place, sum) in year.iter_mut().enumerate() {
        let Some(hour) = kept.hours.get(place / kept.rows_each.max(1)) else {
            continue;
        };
        let has = |flag| if hour.states.has(flag) { 1.0 } else { 0.0 };
        if !hour.states.has(StateFlags::FROST) {
            sum.water_g += weight * hour.condensed_g() / each;
        }
        for (sum, from) in sum.mist.iter_mut().zip(DAMP_FROM) {
            *sum += weight * damp(hour, from);
        }
        sum.icy += weight * has(StateFlags::FROST);
        sum.dry += weight * (1.0 - has(StateFlags::WET));
        sum.leaks += weight * has(StateFlags::TRAP_LEAKS);
        sum.reading += weight * 0.5 * (hour.reading()[0] + hour.reading()[1]);
    }
}

impl Sum {
    fn parts(&mut self) -> impl Iterator<Item = &mut f64> {
        let single = [
            &mut self.water_g,
            &mut self.icy,
            &mut self.dry,
            &mut self.leaks,
            &mut self.reading,
        ];
        single.into_iter().chain(&mut self.mist)
    }
}

/// The place among rising starts for each hour of a time: its own, or else the same hour of another year, and then it is the climate; none where there is no start or no hour.
#[must_use]
pub fn places_in(start_s: &[i64], first_s: i64, until_s: i64) -> Option<(Vec<usize>, bool)> {
    let mut of_year = vec![None; HOURS_OF_LEAP_YEAR];
    for (at, start) in start_s.iter().enumerate() {
        let hour = Civil::of(*start).and_then(|civil| usize::try_from(civil.hour_of_year()).ok());
        if let Some(slot) = hour.and_then(|hour| of_year.get_mut(hour)) {
            *slot = Some(at);
        }
    }
    let first = of_year.iter().find_map(|slot| *slot)?;
    let mut is_climate = false;
    let mut places = Vec::new();
    let mut at_s = first_s;
    while at_s < until_s {
        let place = match start_s.binary_search(&at_s) {
            Ok(place) => place,
            Err(_) => {
                is_climate = true;
                let hour = usize::try_from(Civil::of(at_s)?.hour_of_year()).ok()?;
                let mut before = of_year.iter().take(hour + 1).rev();
                before.find_map(|slot| *slot).unwrap_or(first)
            }
        };
        places.push(place);
        at_s += HOUR_S;
    }
    (!places.is_empty()).then_some((places, is_climate))
}
