//! The benches that run in a browser; `tests/e2e/bench.mjs` calls and times them there.

use std::cell::OnceCell;
use std::hint::black_box;

use dewrun_bench_page::{AirState, air_states, steady_route};
use dewrun_moist_air::fast;
use dewrun_run::evaluate;
use wasm_bindgen::prelude::wasm_bindgen;

/// States before the list begins anew.
const STATES: u32 = 1_000_000;

thread_local! {
    static AIR: OnceCell<Vec<AirState>> = const { OnceCell::new() };
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

fn main() {}
