//! What can be measured on a run, and what each member says that it would be.

use std::collections::BTreeMap;

use dewrun_quantity::{Length, Time};
use dewrun_run::{FilterOnSite, Run, Whole, on_site};
use dewrun_season::YearOutcome;
use dewrun_weather::Civil;

/// Seconds of a day.
const DAY_S: i64 = 86_400;
/// The suction is kept at so many even places along the intake.
const PLACES: u32 = 8;

/// What is measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measured {
    /// Airflow at the sensor as fitted, L/min.
    Airflow,
    /// From the smoke at the duct to its first trace at the sensor, s.
    FirstSmoke,
    /// From the smoke at the duct until the sensor has nine tenths of it, s.
    NinetyPercent,
    /// How far the pressure in the intake lies below the detector's room, Pa.
    Suction {
        /// Where along the intake; none at the detector.
        at: Option<Length>,
    },
    /// What was let out of traps, g.
    Drained {
        /// Since this day, counted from 1 January 1970; none from the start of the hours on.
        since: Option<i64>,
        /// Until the start of this day.
        until: i64,
    },
}

/// A reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measurement {
    /// Of what.
    pub what: Measured,
    /// The value read.
    pub value: f64,
    /// Its standard error, in the same unit; above zero.
    pub error: f64,
}

/// What a member says of readings on site.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OnSiteTold {
    pub(crate) airflow_l_min: f64,
    pub(crate) first_s: Option<f64>,
    pub(crate) ninety_s: Option<f64>,
    /// Place, m, and suction there, Pa, along the intake.
    pub(crate) suction: Vec<(f64, f64)>,
    /// Day from 1970 on, and what all traps had taken up until its end, g.
    pub(crate) trapped: Vec<(i64, f64)>,
    pub(crate) has_trap: bool,
}

/// The standard error of a reading as people take it: `climate` says that the hours are of a typical year and not those of the reading.
///
/// # Source
/// Hand-held anemometers, gauges, stopwatches and kitchen scales, common practice, no source; a tenth of what is drained stays in the trap;
/// the dew of one year is within a third of that of another.
#[must_use]
pub fn usual_error(what: Measured, value: f64, climate: bool) -> f64 {
    let part = |share: f64, least: f64| (share * value.abs()).max(least);
    match what {
        Measured::Airflow => part(0.03, 0.3),
        Measured::FirstSmoke | Measured::NinetyPercent => part(0.05, 1.0),
        Measured::Suction { .. } => part(0.03, 5.0),
        Measured::Drained { .. } => part(if climate { 0.35 } else { 0.1 }, 5.0),
    }
}

impl OnSiteTold {
    pub(crate) fn of(run: &Run, whole: Option<&Whole>, year: &YearOutcome) -> Self {
        let mut told = Self {
            trapped: trapped(year),
            has_trap: (year.water.as_ref()).is_ok_and(|water| {
                let kinds = water.stores.iter().map(|store| store.kind);
                kinds
                    .into_iter()
                    .any(|kind| matches!(kind, dewrun_season::told::StoreKind::Trap(_)))
            }),
            ..Self::default()
        };
        let Some(whole) = whole else {
            return told;
        };
        let length_m: f64 = run.intake.iter().map(|leg| leg.length.to_metres()).sum();
        let site = |at: f64| on_site(&whole.airflow, FilterOnSite::New, Some(Length::metres(at)));
        let end = site(length_m);
        told.airflow_l_min = end.airflow.usual.to_litres_per_minute();
        let usual = |time: Option<dewrun_run::ExpectedOnSite<Time>>| {
            time.map(|time| time.usual.to_seconds())
        };
        told.first_s = usual(end.first_smoke);
        told.ninety_s = usual(end.ninety_percent);
        told.suction = (0..=PLACES)
            .map(|place| length_m * f64::from(place) / f64::from(PLACES))
            .map(|at| (at, site(at).suction.usual.to_pascals()))
            .collect();
        told
    }

    /// What it says that a reading would be; none where it has no such thing.
    #[must_use]
    pub fn expects(&self, what: Measured) -> Option<f64> {
        match what {
            Measured::Airflow => (0.0 < self.airflow_l_min).then_some(self.airflow_l_min),
            Measured::FirstSmoke => self.first_s,
            Measured::NinetyPercent => self.ninety_s,
            Measured::Suction { at } => {
                let (end_m, end_pa) = *self.suction.last()?;
                at.map_or(Some(end_pa), |at| {
                    between(&self.suction, at.to_metres().min(end_m))
                })
            }
            Measured::Drained { since, until } => {
                if !self.has_trap {
                    return None;
                }
                let at = |day: i64| self.trapped.get(position(&self.trapped, day)?);
                let start = self.trapped.first()?.1;
                let (_, end) = *at(until)?;
                let begin = match since {
                    Some(since) => at(since)?.1,
                    None => start,
                };
                let whole = self.trapped.last()?.1 - start;
                // Over the turn of a year that begins anew.
                Some(if begin <= end {
                    end - begin
                } else {
                    end - begin + whole
                })
            }
        }
    }

    /// Whether a day is one of the hours' own; else it is told by the same day of their year.
    #[must_use]
    pub fn has_day(&self, day: i64) -> bool {
        self.trapped.iter().any(|(known, _)| *known == day)
    }
}

/// Linear between places.
fn between(places: &[(f64, f64)], at_m: f64) -> Option<f64> {
    let pairs = places.iter().zip(places.iter().skip(1));
    let mut pairs = pairs.filter(|(one, next)| one.0 <= at_m && at_m <= next.0);
    let (one, next) = pairs.next()?;
    let width = next.0 - one.0;
    let share = if 0.0 < width {
        (at_m - one.0) / width
    } else {
        0.0
    };
    Some(one.1 + share * (next.1 - one.1))
}

/// The position of a day, or of the same day of another year.
fn position(days: &[(i64, f64)], day: i64) -> Option<usize> {
    let same = |one: i64| Civil::of(one * DAY_S).map(|civil| (civil.month, civil.day));
    let exact = days.iter().position(|(known, _)| *known == day);
    exact.or_else(|| days.iter().position(|(known, _)| same(*known) == same(day)))
}

/// What all traps had taken up until the start of each day, g.
fn trapped(year: &YearOutcome) -> Vec<(i64, f64)> {
    let Ok(water) = &year.water else {
        return Vec::new();
    };
    let mut let_out_kg = 0.0;
    let mut held_kg = 0.0;
    let mut days = BTreeMap::new();
    let mut order: Vec<(i64, f64)> = Vec::new();
    for (hour, start_s) in water.hours.iter().zip(&year.hourly.start_s) {
        let day = start_s.div_euclid(DAY_S);
        if days.insert(day, ()).is_none() {
            order.push((day, 1e3 * (let_out_kg + held_kg)));
        }
        let_out_kg += hour.went.let_out_kg;
        held_kg = hour.trapped_kg;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 20 g a day; from the third day to the fifth 40 g, over the turn of a typical year 20 g less than from the first to the last.
    #[test]
    fn what_is_drained_is_counted_between_days() {
        let day = |number: i64| {
            (
                20_000 + number,
                20.0 * [0.0, 1.0, 2.0, 3.0, 4.0, 5.0][usize::try_from(number).expect("a day")],
            )
        };
        let told = OnSiteTold {
            trapped: (0..6).map(day).collect(),
            has_trap: true,
            ..OnSiteTold::default()
        };
        let drained = |since, until| {
            told.expects(Measured::Drained {
                since: Some(since),
                until,
            })
        };
        assert_eq!(drained(20_002, 20_004), Some(40.0), "two days");
        assert_eq!(
            drained(20_004, 20_001),
            Some(40.0),
            "20 to the end and 20 from the start"
        );
        assert!(
            told.has_day(20_003) && !told.has_day(19_000),
            "its own days"
        );
        let none = OnSiteTold {
            has_trap: false,
            ..told
        };
        let all = Measured::Drained {
            since: None,
            until: 20_005,
        };
        assert_eq!(none.expects(all), None, "nothing is drained without a trap");
    }

    #[test]
    fn suction_is_linear_between_places() {
        let told = OnSiteTold {
            suction: vec![(0.0, 10.0), (2.0, 20.0), (4.0, 40.0)],
            ..OnSiteTold::default()
        };
        let at = |at: Option<f64>| {
            told.expects(Measured::Suction {
                at: at.map(Length::metres),
            })
        };
        assert_eq!(at(Some(3.0)), Some(30.0), "half way");
        assert_eq!(
            (at(None), at(Some(9.0))),
            (Some(40.0), Some(40.0)),
            "at the detector"
        );
    }
}
