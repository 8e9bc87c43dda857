//! Members that do alike, as one: what truly is at a site is like some of them, and not like the mean of all.

use dewrun_ensemble::{HourTold, Member, StateFlags};
use dewrun_run::WET_SENSOR_MIST;

use crate::modelled::{DAMP_FROM, Sum};
use crate::poisson::count;

/// So many groups; each has as many members as another, by their weights.
pub(crate) const GROUPS: usize = 10;
/// A pool that is shallower than this part of its bore does not show in the airflow.
const SHALLOW: f64 = 0.05;
/// Less frost is none, g.
const NO_FROST_G: f64 = 0.5;

/// What members are alike in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Alike {
    /// How much water runs down in a year.
    Water,
    /// How many hours are damp or misty at the sensor.
    Damp,
    /// How many hours frost lies.
    Frost,
    /// How far the reading of the sound line moves.
    Reading,
}

impl Alike {
    const ALL: [Self; 4] = [Self::Water, Self::Damp, Self::Frost, Self::Reading];

    /// What members are sorted by.
    fn key(self, member: &Member, readings: &[f64]) -> f64 {
        let hours = &member.hours.hours;
        match self {
            Self::Water => hours.iter().map(HourTold::drained_g).sum(),
            Self::Damp => hours.iter().map(|hour| damp(hour, DAMP_FROM[1])).sum(),
            Self::Frost => hours.iter().map(|hour| hour.frost_g().min(1.0)).sum(),
            Self::Reading => {
                let least = readings.iter().copied().fold(f64::INFINITY, f64::min);
                readings.iter().copied().fold(0.0, f64::max) - least
            }
        }
    }
}

/// The hours of a group, on the mean of its members; each column is of those that are alike in what it tells.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Group {
    /// Part of all members, by their weights, that are alike in water, damp, frost and reading.
    weights: [f64; Alike::ALL.len()],
    /// Water that runs down from the walls, g.
    pub(crate) runs_g: Vec<f32>,
    /// Chance that a trap's seal has dried out.
    pub(crate) leaks: Vec<f32>,
    /// Mist at the sensor, 1, or damp from the humidities of `DAMP_FROM` on, less than 1.
    pub(crate) damp: [Vec<f32>; DAMP_FROM.len()],
    /// Frost on the walls, as a part of the most of the year.
    pub(crate) frost: Vec<f32>,
    /// Chance that frost comes down.
    pub(crate) thaw: Vec<f32>,
    /// Reading of the line without standing water, as a part of that as fitted.
    pub(crate) reading: Vec<f32>,
}

impl Group {
    /// Which part of all members are in it, by what they are alike in.
    pub(crate) fn weight(&self, alike: Alike) -> f64 {
        let at = Alike::ALL.iter().position(|one| *one == alike);
        at.and_then(|at| self.weights.get(at).copied())
            .unwrap_or(0.0)
    }

    /// Where only the mean of all is known, and nothing of the reading.
    pub(crate) fn of_sums(year: &[Sum]) -> Self {
        let column = |of: &dyn Fn(&Sum) -> f64| year.iter().map(|sum| single(of(sum))).collect();
        Self {
            weights: [1.0; Alike::ALL.len()],
            runs_g: column(&|sum| sum.water_g),
            leaks: column(&|sum| sum.leaks),
            damp: [0, 1, 2].map(|at| column(&|sum| sum.mist.get(at).copied().unwrap_or(0.0))),
            frost: column(&|sum| sum.icy),
            thaw: column(&|_| 0.0),
            reading: column(&|_| 1.0),
        }
    }

    /// Of some hours only.
    pub(crate) fn at(&self, places: &[usize]) -> Self {
        let take = |column: &Vec<f32>| -> Vec<f32> {
            let at = |place: &usize| column.get(*place).copied().unwrap_or(0.0);
            places.iter().map(at).collect()
        };
        Self {
            weights: self.weights,
            runs_g: take(&self.runs_g),
            leaks: take(&self.leaks),
            damp: [0, 1, 2].map(|at| self.damp.get(at).map(take).unwrap_or_default()),
            frost: take(&self.frost),
            thaw: take(&self.thaw),
            reading: take(&self.reading),
        }
    }

    fn columns(&mut self, alike: Alike) -> Vec<&mut Vec<f32>> {
        match alike {
            Alike::Water => vec![&mut self.runs_g, &mut self.leaks],
            Alike::Damp => self.damp.iter_mut().collect(),
            Alike::Frost => vec![&mut self.frost, &mut self.thaw],
            Alike::Reading => vec![&mut self.reading],
        }
    }
}

/// Members, each with its weight, as groups of which each hour of a year is told.
pub(crate) fn groups(members: &[(&Member, f64)], hours: usize) -> Vec<Group> {
    let all: f64 = members.iter().map(|(_, weight)| weight).sum();
    let mut found = vec![Group::default(); GROUPS];
    let readings: Vec<Vec<f64>> = (members.iter())
        .map(|(member, _)| without_pools(&member.hours.hours))
        .collect();
    for (place, alike) in Alike::ALL.into_iter().enumerate() {
        let keyed = members.iter().zip(&readings).enumerate();
        let mut order: Vec<(usize, f64)> = keyed
            .map(|(at, ((member, _), readings))| (at, alike.key(member, readings)))
            .collect();
        order.sort_by(|one, other| one.1.total_cmp(&other.1));
        let mut before = 0.0;
        for (at, _) in order {
            let Some(((member, weight), readings)) = members.get(at).zip(readings.get(at)) else {
                continue;
            };
            let middle = (before + 0.5 * weight) / all;
            before += weight;
            let number = (0..GROUPS)
                .rev()
                .find(|one| count(*one) / count(GROUPS) <= middle);
            if let Some(group) = number.and_then(|number| found.get_mut(number)) {
                if let Some(sum) = group.weights.get_mut(place) {
                    *sum += weight / all;
                }
                add(group, alike, member, readings, *weight, hours);
            }
        }
        for group in &mut found {
            let all_of_it = all * group.weights.get(place).copied().unwrap_or(0.0);
            if 0.0 < all_of_it {
                let part = single(1.0 / all_of_it);
                let columns = group.columns(alike).into_iter();
                columns.flatten().for_each(|value| *value *= part);
            }
        }
    }
    found
}

fn add(
    group: &mut Group,
    alike: Alike,
    member: &Member,
    readings: &[f64],
    weight: f64,
    hours: usize,
) {
    let kept = &member.hours;
    let each = kept.rows_each.max(1);
    let most_g = (kept.hours.iter().map(HourTold::frost_g)).fold(NO_FROST_G, f64::max);
    let flag = |is: bool| if is { 1.0 } else { 0.0 };
    for column in group.columns(alike) {
        column.resize(hours, 0.0);
    }
    let mut columns = group.columns(alike);
    for place in 0..hours {
        let at = place / each;
        let (Some(hour), Some(reading)) = (kept.hours.get(at), readings.get(at)) else {
            continue;
        };
        let values = match alike {
            Alike::Water => [
                hour.drained_g() / count(each),
                flag(hour.states.has(StateFlags::TRAP_LEAKS)),
                0.0,
            ],
            Alike::Damp => DAMP_FROM.map(|from| damp(hour, from)),
            Alike::Frost => [
                hour.frost_g() / most_g,
                flag(hour.states.has(StateFlags::THAW)),
                0.0,
            ],
            Alike::Reading => [*reading, 0.0, 0.0],
        };
        for (column, value) in columns.iter_mut().zip(values) {
            if let Some(sum) = column.get_mut(place) {
                *sum += single(weight * value);
            }
        }
    }
}

/// Damp in the chamber from a humidity on, 0 to 1; mist is 1.
pub(crate) fn damp(hour: &HourTold, from: f64) -> f64 {
    if WET_SENSOR_MIST < hour.mist_kg_kg() {
        return 1.0;
    }
    let over = ((hour.humidity() - from) / (1.0 - from)).clamp(0.0, 1.0);
    over * over
}

/// The reading as it would be without water that stands: that of the last hour in which hardly any did.
fn without_pools(hours: &[HourTold]) -> Vec<f64> {
    let mut last = 1.0;
    (hours.iter())
        .map(|hour| {
            let [low, high] = hour.reading();
            if hour.deepest() < SHALLOW && 0.0 < low {
                last = 0.5 * (low + high);
            }
            last
        })
        .collect()
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "single precision is more than is known"
)]
const fn single(value: f64) -> f32 {
    value as f32
}
