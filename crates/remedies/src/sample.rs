//! The worst hours of a year as the route is drawn, each with its run-up: what a search tries sizes on before a whole year confirms one.

use dewrun_season::told::{Hours, chamber_humidity, is_wet};
use dewrun_season::{Hourly, YearOutcome};

use crate::target::{Target, bound};

/// So many hours are looked at of each trouble.
const WORST: usize = 200;
/// So many hours are marched before each, since water that lies on a wall has come from somewhere.
const RUN_UP: usize = 12;

/// The worst hours, and what they may come to.
#[derive(Debug, Clone)]
pub(crate) struct Sample {
    /// All hours that are marched, rising.
    positions: Vec<usize>,
    /// Of these, by their place, those that are judged for water; and how many of them may be wet.
    wet: Option<(Vec<usize>, usize)>,
    /// Those judged for how much forms, and the most that may, kg.
    formed: Option<(Vec<usize>, f64)>,
    frost: bool,
    /// The highest relative humidity that is allowed around the sensor.
    chamber: Option<f64>,
}

impl Sample {
    /// The worst hours of a year for a target; none where it asks for nothing that single hours tell.
    pub(crate) fn of(target: &Target, year: &YearOutcome, rating: Option<f64>) -> Option<Self> {
        let sums = &year.sums;
        let rate = |at: usize| sums.get(at).map_or(0.0, |hour| hour.condensed_kg);
        let by_water = ranked(sums.len(), rate);
        let may_be_wet = target.hours_that_may_be_wet(year.sum.hours).map(|hours| {
            let each_h = year.sum.hours / count(sums.len()).max(1.0);
            let may = steps(hours / each_h).min(sums.len());
            let from = may.saturating_sub(WORST / 2);
            (window(&by_water, from), may - from)
        });
        let formed = target.formed_kg.map(|most_kg| {
            let worst = window(&by_water, 0);
            let here: f64 = worst.iter().map(|at| rate(*at)).sum();
            (worst, most_kg * here / year.sum.condensed_kg.max(1e-12))
        });
        let mut judged: Vec<usize> = Vec::new();
        judged.extend(may_be_wet.iter().flat_map(|(worst, _)| worst));
        judged.extend(formed.iter().flat_map(|(worst, _)| worst));
        if target.no_frost {
            let frost = ranked(sums.len(), |at| {
                sums.get(at).map_or(0.0, |hour| hour.frost_kg)
            });
            judged.extend(window(&frost, 0));
        }
        let chamber = target.chamber_margin.map(|margin| bound(rating, margin));
        if chamber.is_some() {
            let hours = &year.hourly.hours;
            let humid = |at: usize| {
                sums.get(at)
                    .map_or(0.0, |hour| chamber_humidity(hours, at, hour))
            };
            judged.extend(window(&ranked(sums.len(), humid), 0));
        }
        if judged.is_empty() {
            return None;
        }
        let positions = with_run_up(judged);
        let placed = |worst: Vec<usize>| -> Vec<usize> {
            let places = worst
                .iter()
                .filter_map(|at| positions.binary_search(at).ok());
            places.collect()
        };
        Some(Self {
            wet: may_be_wet.map(|(worst, may)| (placed(worst), may)),
            formed: formed.map(|(worst, most_kg)| (placed(worst), most_kg)),
            frost: target.no_frost,
            chamber,
            positions,
        })
    }

    /// These hours of a year.
    pub(crate) fn hours_of(&self, hourly: &Hourly) -> Hourly {
        let mut found = Hourly {
            hours: Hours::of_spaces(hourly.hours.spaces()),
            start_s: Vec::new(),
            rows: Vec::new(),
            left_out: 0,
            is_typical_year: hourly.is_typical_year,
        };
        for &at in &self.positions {
            let Some(hour) = hourly.hours.hour(at) else {
                continue;
            };
            let spaces = 0..hourly.hours.spaces();
            let around = spaces.filter_map(|space| hourly.hours.around(at, space).copied());
            found.hours.push(*hour, around);
            if !hourly.hours.duct_runs(at) {
                found.hours.duct_stands();
            }
            found.start_s.extend(hourly.start_s.get(at));
            found.rows.extend(hourly.rows.get(at));
        }
        found
    }

    /// Whether these hours, marched, let one expect that the whole year meets the target.
    pub(crate) fn is_met(&self, marched: &YearOutcome) -> bool {
        let hour = |at: &usize| marched.sums.get(*at);
        if let Some((judged, may)) = &self.wet {
            let wet = judged.iter().filter_map(hour).filter(|hour| is_wet(hour));
            if *may < wet.count() {
                return false;
            }
        }
        if let Some((judged, most_kg)) = &self.formed {
            let formed_kg: f64 = judged
                .iter()
                .filter_map(hour)
                .map(|hour| hour.condensed_kg)
                .sum();
            if *most_kg < formed_kg {
                return false;
            }
        }
        if self.frost && 0.0 < marched.sum.frost_hours {
            return false;
        }
        self.chamber
            .is_none_or(|most| marched.sum.most_humid_chamber <= most)
    }
}

/// Positions by what is told of them, the most first; of equals the earlier.
fn ranked(len: usize, of: impl Fn(usize) -> f64) -> Vec<usize> {
    let mut all: Vec<(f64, usize)> = (0..len).map(|at| (of(at), at)).collect();
    all.sort_by(|one, next| next.0.total_cmp(&one.0).then(one.1.cmp(&next.1)));
    all.into_iter().map(|(_, at)| at).collect()
}

fn window(ranked: &[usize], from: usize) -> Vec<usize> {
    ranked.iter().skip(from).take(WORST).copied().collect()
}

/// Hours with those before each, rising, each once.
fn with_run_up(judged: Vec<usize>) -> Vec<usize> {
    let mut all: Vec<usize> = judged
        .into_iter()
        .flat_map(|at| at.saturating_sub(RUN_UP)..=at)
        .collect();
    all.sort_unstable();
    all.dedup();
    all
}

#[expect(clippy::cast_precision_loss, reason = "hours of some years")]
const fn count(number: usize) -> f64 {
    number as f64
}

/// Whole steps in a length of time.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "hours of some years, and the cast saturates"
)]
const fn steps(number: f64) -> usize {
    number as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_are_marched_once_each() {
        assert_eq!(
            with_run_up(vec![20, 3]),
            (0..=3).chain(8..=20).collect::<Vec<_>>(),
            "twelve before each, none before the first"
        );
        assert_eq!(
            ranked(4, |at| [1.0, 3.0, 3.0, 0.0][at]),
            [1, 2, 0, 3],
            "the most first"
        );
    }
}
