//! The benches that run in a browser; `tests/e2e/bench.mjs` calls and times them there.

use std::cell::OnceCell;
use std::hint::black_box;

use dewrun_advice::SteadyDoubts;
use dewrun_bench_page::{
    AirState, air_states, full_route, steady_route, year_full_route, year_route,
};
use dewrun_moist_air::fast;
use dewrun_run::figure::{Figure, Given, Origin};
use dewrun_run::{Place, evaluate, water_and_air};
use dewrun_year::{Grid, Hours, March, Route, Steps, Water};
use wasm_bindgen::prelude::wasm_bindgen;

/// States before the list begins anew.
const STATES: u32 = 1_000_000;

thread_local! {
    static AIR: OnceCell<Vec<AirState>> = const { OnceCell::new() };
    static YEAR_FULL: OnceCell<Option<(Route, Hours, Water)>> = const { OnceCell::new() };
    static YEAR: OnceCell<Option<(Route, Hours)>> = const { OnceCell::new() };
}

/// Computes `count` dew points and returns their sum, so that none is optimised away.
#[wasm_bindgen]
pub fn dew_point_wasm(count: u32) -> f64 {
    AIR.with(|air| {
        let states = air.get_or_init(|| air_states(STATES));
        let computed = states.iter().cycle().zip(0..count);
        computed
            .filter_map(|(state, _)| fast::dew_point_c(state.t_c, state.rh, state.p_pa))
            .sum()
    })
}

/// Evaluates the steady route `count` times and returns the sum of the chamber's temperatures, so that none is
/// optimised away; not a number when an evaluation fails.
#[wasm_bindgen]
pub fn steady_wasm(count: u32) -> f64 {
    let run = steady_route();
    let chamber = |_| match evaluate(black_box(&run)) {
        Ok(outcome) => outcome.value.chamber.temperature.to_celsius(),
        Err(_) => f64::NAN,
    };
    (0..count).map(chamber).sum()
}

/// Takes a thousand cases of the steady route `count` times, its spaces within 4 K and all relations within their spread,
/// and returns how many are wet, so that none is optimised away.
#[wasm_bindgen]
pub fn doubt_steady_wasm(count: u32) -> f64 {
    let run = steady_route();
    let spaces = run.spaces.iter().enumerate();
    let givens: Vec<Given> = spaces
        .map(|(at, space)| {
            let value = space.temperature.to_celsius();
            Given {
                figure: Figure::SpaceTemperature,
                place: Place::Space(at),
                value,
                origin: Origin::Assumed {
                    row: format!("space-{at}"),
                    low: value - 4.0,
                    high: value + 4.0,
                },
            }
        })
        .collect();
    let wet = |_| {
        let mut doubts = SteadyDoubts::new(black_box(&run), &givens, 1);
        doubts.take(1000);
        doubts
            .so_far()
            .map_or(f64::NAN, |doubt| f64::from(doubt.wet))
    };
    (0..count).map(wet).sum()
}

/// Marches the year `count` times and returns the sum of what ran off, so that none is optimised away; not a number
/// when the route can't be evaluated.
#[wasm_bindgen]
pub fn year_wasm(count: u32) -> f64 {
    YEAR.with(|year| {
        let Some((route, hours)) = year.get_or_init(year_route) else {
            return f64::NAN;
        };
        let drained = |_| {
            let mut march = March::new(black_box(route), hours, Grid::PRODUCT, Steps::Whole);
            march.advance(hours, usize::MAX);
            march
                .hours()
                .iter()
                .map(|hour| hour.drained_kg)
                .sum::<f64>()
        };
        (0..count).map(drained).sum()
    })
}

/// Marches the year of the ten-leg route with its water and air `count` times and returns the sum of what ran down, so
/// that none is optimised away; not a number when the route can't be evaluated.
#[wasm_bindgen]
pub fn year_full_wasm(count: u32) -> f64 {
    YEAR_FULL.with(|year| {
        let Some((route, hours, water)) = year.get_or_init(year_full_route) else {
            return f64::NAN;
        };
        let ran_down = |_| {
            let how = (Grid::PRODUCT, Steps::Whole);
            let mut march = March::with_water(black_box(route), hours, how, water.clone());
            march.advance(hours, usize::MAX);
            let each = march.water_hours().iter();
            each.map(|hour| hour.went.ran_down_kg).sum::<f64>()
        };
        (0..count).map(ran_down).sum()
    })
}

/// Evaluates the ten-leg route with its water, airflow, states and faults `count` times and returns the sum of the
/// flows at the sensor, so that none is optimised away; not a number when an evaluation fails.
#[wasm_bindgen]
pub fn steady_full_wasm(count: u32) -> f64 {
    let Ok((run, installation)) = full_route() else {
        return f64::NAN;
    };
    let flow = |_| {
        let run = black_box(&run);
        let steady = evaluate(run).ok()?.value;
        let whole = water_and_air(run, &installation, &steady).ok()?;
        Some(whole.airflow.now.sensor.to_litres_per_minute())
    };
    (0..count).map(|at| flow(at).unwrap_or(f64::NAN)).sum()
}

fn main() {}
