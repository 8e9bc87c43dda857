//! Where along the tubes a member is wet in its wettest hours.

use dewrun_quantity::Length;
use dewrun_run::{Leg, TubeOutcome, evaluate_with};
use dewrun_season::{Source, YearOutcome, air_in_duct, moment, outdoors, run_at};

use crate::plan::{Climate, Inputs};

/// Places along a tube at which the chance of water is counted lie so far apart, m.
const STEP_M: f64 = 0.1;

/// At which places of both tubes it is wet in the wettest hour of a month, from the inlet on, a decimetre from one to the next.
pub(crate) fn wet_along(
    inputs: &Inputs,
    year: &YearOutcome,
    climate: Climate<'_>,
) -> [Vec<bool>; 2] {
    let mut along = [places(&inputs.run.intake), places(&inputs.run.exhaust)];
    for hour in wettest_of_months(year) {
        let Some((row, start_s)) = row_of(year, hour) else {
            continue;
        };
        let (Some(outdoors), Some(moment)) = (outdoors(climate.weather, row), moment(start_s))
        else {
            continue;
        };
        let step = (start_s, climate.weather.timing.step_s);
        let measured = climate
            .measured
            .filter(|_| inputs.season.source == Source::Measured);
        let read = measured.and_then(|series| air_in_duct(series, step, outdoors.p_pa));
        let run = run_at(&inputs.run, &inputs.season, moment, &outdoors, read);
        let Ok(outcome) = evaluate_with(&run, inputs.factors) else {
            continue;
        };
        let [intake, exhaust] = &mut along;
        mark(intake, &outcome.value.intake);
        if let Some(tube) = &outcome.value.exhaust {
            mark(exhaust, tube);
        }
    }
    along
}

fn row_of(year: &YearOutcome, hour: usize) -> Option<(usize, i64)> {
    Some((
        *year.hourly.rows.get(hour)?,
        *year.hourly.start_s.get(hour)?,
    ))
}

/// The wettest hour of each month that has a wet one.
fn wettest_of_months(year: &YearOutcome) -> Vec<usize> {
    let mut wettest: [Option<(usize, f64)>; 12] = [None; 12];
    for (at, hour) in year.sums.iter().enumerate() {
        let month = year.hourly.month(at).map_or(0, usize::from);
        let Some(most) = wettest.get_mut(month.saturating_sub(1)) else {
            continue;
        };
        let known = most.map_or(0.0, |(_, kg)| kg);
        if known < hour.condensed_kg {
            *most = Some((at, hour.condensed_kg));
        }
    }
    wettest.into_iter().flatten().map(|(at, _)| at).collect()
}

fn places(legs: &[Leg]) -> Vec<bool> {
    let length: f64 = legs.iter().map(|leg| leg.length.to_metres()).sum();
    let mut places = Vec::new();
    let mut at_m = 0.0;
    while at_m <= length && !legs.is_empty() {
        places.push(false);
        at_m += STEP_M;
    }
    places
}

fn mark(places: &mut [bool], tube: &TubeOutcome) {
    let mut at_m = 0.0;
    for place in places {
        let at = Length::metres(at_m);
        *place |= tube.wet.iter().any(|wet| wet.from <= at && at <= wet.to);
        at_m += STEP_M;
    }
}
