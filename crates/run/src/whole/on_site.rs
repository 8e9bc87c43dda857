//! What a person who measures on site is expected to find, and what a reading says against it.

use core::ops::{Add, Sub};

use dewrun_airflow::{Airflow, Expected, Side, TransportTime};
use dewrun_quantity::{Length, Pressure, Time, VolumeFlow};

use super::outcome::{AirflowOutcome, StateKind, StateOutcome};
use super::trap::total;

/// What is expected of a reading: as fitted, and the least and the most that a good installation gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExpectedOnSite<T> {
    /// The least.
    pub low: T,
    /// As fitted.
    pub usual: T,
    /// The most.
    pub high: T,
}

/// What a reading says against what was expected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Finding {
    /// Less than any state of a good installation gives.
    Below,
    /// As a good installation gives.
    Within,
    /// More than any gives.
    Above,
}

/// How loaded the filter may be that readings are taken with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FilterOnSite {
    /// New, as at hand-over.
    New,
    /// Up to a year in use.
    InUse,
}

/// What is expected of readings on site while the duct's own fan runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnSite {
    /// Flow at the sensor.
    pub airflow: ExpectedOnSite<VolumeFlow>,
    /// How far the pressure in the intake tube lies below the detector's room.
    pub suction: ExpectedOnSite<Pressure>,
    /// From the holes to the first trace at the sensor; none where no duct air arrives.
    pub first_smoke: Option<ExpectedOnSite<Time>>,
    /// From the holes until nine tenths have arrived.
    pub ninety_percent: Option<ExpectedOnSite<Time>>,
}

impl<T: Copy + PartialOrd> ExpectedOnSite<T> {
    /// What a reading says against it; both ends are within.
    pub fn finding(&self, reading: T) -> Finding {
        if reading < self.low {
            Finding::Below
        } else if self.high < reading {
            Finding::Above
        } else {
            Finding::Within
        }
    }

    /// The same three through one door, such as `Time::to_seconds`.
    pub fn map<U>(self, door: impl Fn(T) -> U) -> ExpectedOnSite<U> {
        ExpectedOnSite {
            low: door(self.low),
            usual: door(self.usual),
            high: door(self.high),
        }
    }
}

/// What is expected of readings on site, the suction at a place along the intake tube or, where none is named, at the detector.
///
/// Fan speed, season and, in use, the filter each carry a reading off by themselves; the span is what all of them together may do.
///
/// # Range
/// The duct's own fan runs, traps are shut, no water stands in the tube.
///
/// # Accuracy
/// Sums of changes that are taken one by one: a few percent of the span. Suction is that of the total pressure; a tap in the wall reads the velocity pressure more (1.7 Pa at 1.7 m/s).
///
/// # Errors
/// None.
///
/// # Source
/// Differences of the solved states; which states belong to a good installation is common practice, no source.
#[must_use]
pub fn on_site(
    outcome: &AirflowOutcome,
    filter: FilterOnSite,
    suction_at: Option<Length>,
) -> OnSite {
    let suction = |airflow: &Airflow| Pressure::ZERO - in_intake(airflow, suction_at);
    let fitted = &outcome.fitted;
    let times = |door: fn(TransportTime) -> Time| {
        let usual = door(fitted.transport?);
        Some(span(outcome, filter, usual, |airflow| {
            airflow.transport.map(door)
        }))
    };
    OnSite {
        airflow: span(outcome, filter, fitted.sensor, |airflow| {
            Some(airflow.sensor)
        }),
        suction: span(outcome, filter, suction(fitted), |airflow| {
            Some(suction(airflow))
        }),
        first_smoke: times(|time| time.first),
        ninety_percent: times(|time| time.ninety_percent),
    }
}

/// The span that all states of a good installation together may give; each that carries a reading down counts by its own step, and so upwards.
fn span<T>(
    outcome: &AirflowOutcome,
    filter: FilterOnSite,
    usual: T,
    reading: impl Fn(&Airflow) -> Option<T>,
) -> ExpectedOnSite<T>
where
    T: Copy + PartialOrd + Add<Output = T> + Sub<Output = T>,
{
    let ends = |of: fn(&StateKind, FilterOnSite) -> bool| {
        let states = outcome.states.iter();
        let states = states.filter(move |state| of(&state.state, filter));
        let readings = states.filter_map(|state: &StateOutcome| reading(&state.airflow));
        readings.fold((usual, usual), |(low, high), value| {
            let low = if value < low { value } else { low };
            (low, if high < value { value } else { high })
        })
    };
    let mut expected = ExpectedOnSite {
        low: usual,
        usual,
        high: usual,
    };
    for of in [is_fan, is_season, is_filter] {
        let (low, high) = ends(of);
        expected.low = expected.low - (usual - low);
        expected.high = expected.high + (high - usual);
    }
    expected
}

fn is_fan(state: &StateKind, _: FilterOnSite) -> bool {
    matches!(state, StateKind::Usual(Expected::FanSpeed(_)))
}

fn is_season(state: &StateKind, _: FilterOnSite) -> bool {
    matches!(state, StateKind::Cold | StateKind::Warm)
}

fn is_filter(state: &StateKind, filter: FilterOnSite) -> bool {
    let loads = matches!(state, StateKind::Usual(Expected::FilterAfter(_)));
    loads && filter == FilterOnSite::InUse
}

/// Total pressure at a place of the intake tube, or at its end.
fn in_intake(airflow: &Airflow, at: Option<Length>) -> Pressure {
    let points = airflow.course.iter();
    let ends = points.filter(|point| point.side == Side::Intake);
    let end = ends.map(|point| point.at).fold(Length::ZERO, Length::max);
    total(airflow, Side::Intake, at.unwrap_or(end).min(end))
}
