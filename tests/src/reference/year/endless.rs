//! A tube so long, and so well cooled, that its air leaves as at the wall: what a year deposits in it is known from dew points alone.

use std::path::Path;

use dewrun_year::{Around, Grid, Leg, March, Route, Steps};
use serde_json::{Value, json};

use super::input;
use crate::reference::compare::{Comparison, Tolerance};
use crate::reference::report::{Answer, Values};

/// The key of what is expected, g a year for each kg of dry air an hour.
const KEY: &str = "annual_condensate_g_per_(kg_dryair/h)_wall_10C";
const WALL_C: f64 = 10.0;
/// Dry air that flows, kg an hour.
const FLOW_KG_H: f64 = 1.0;

/// Whether a case says what it would be.
pub(super) fn asks(case: &Value) -> bool {
    let weather = case["fixture"][0].as_str().unwrap_or_default();
    weather.ends_with(".epw") && !case["expected"][KEY].is_null()
}

/// Holds a case's yearly condensate within 1 %.
pub(super) fn answer(case: &Value, folder: &Path) -> Result<Answer, String> {
    let file = case["fixture"][0].as_str().ok_or("a case without file")?;
    let around = Around {
        air_c: WALL_C,
        w: 0.005,
        radiant_c: WALL_C,
        wind_m_s: 5.0,
    };
    let hours = input::of_weather(&folder.join(file), FLOW_KG_H / 3600.0, around)?;
    let leg = Leg {
        length_m: 40.0,
        bore_m: 0.019,
        tube_outside_m: 0.022,
        tube_w_mk: 390.0,
        insulation_m: 0.0,
        insulation_w_mk: 1.0,
        emissivity: 0.9,
        tracing_w_m: 0.0,
        riser_m: None,
        space: 0,
        retained_kg_m2: 0.05,
    };
    let route = Route {
        intake: vec![leg],
        detector_w: 0.0,
        exhaust: Vec::new(),
    };
    let march = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole);
    let mut march = march.without_carry_over();
    march.advance(&hours, usize::MAX);
    let grams: f64 = march
        .hours()
        .iter()
        .map(|hour| 1e3 * hour.condensed_kg)
        .sum();
    let expected = case["expected"][KEY].as_f64().ok_or("not a number")?;
    let comparison =
        Comparison::number(KEY, grams / FLOW_KG_H, expected, Tolerance::relative(0.01));
    Ok(Answer {
        values: Values::from_iter([(KEY.to_owned(), json!(grams / FLOW_KG_H))]),
        comparisons: vec![comparison],
    })
}
