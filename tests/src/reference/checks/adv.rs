//! Doubt: chances and shares of a spread from even points.

use core::f64::consts::PI;

use dewrun_advice::first_order_shares;
use dewrun_numeric::elementary::sin;
use dewrun_numeric::quantile::normal;
use dewrun_numeric::sobol::Sobol;
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[("ADV-54", chance_of_wet), ("ADV-55", shares_of_ishigami)];

/// The row asks for so many points.
const POINTS: u32 = 256;
/// At least so many for shares.
const SHARE_POINTS: u32 = 4096;

fn chance_of_wet(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (wall_c, wall_k) = (inputs.number("T_wall_C")?, inputs.number("sd_wall_K")?);
    let (dew_c, dew_k) = (inputs.number("Tdp_C")?, inputs.number("sd_dp_K")?);
    let points = Sobol::new(1);
    let is_wet = |point: &u32| {
        let wall = wall_c + wall_k * normal(points.at(*point, 0));
        let dew = dew_c + dew_k * normal(points.at(*point, 1));
        wall < dew
    };
    let wet = (0..POINTS).filter(is_wet).count();
    Ok(Computed::of([(
        "chance",
        (wet as f64 / f64::from(POINTS)).into(),
    )]))
}

/// First-order shares, the measure of the product; total shares are let go, as the row allows.
fn shares_of_ishigami(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (a, b) = (inputs.number("a")?, inputs.number("b")?);
    let sequence = Sobol::new(1);
    let points: Vec<Vec<f64>> = (0..SHARE_POINTS)
        .map(|point| (0..3).map(|at| sequence.at(point, at)).collect())
        .collect();
    let results: Vec<f64> = points
        .iter()
        .map(|point| {
            let [x1, x2, x3] = [0, 1, 2].map(|at| PI * (2.0 * point[at] - 1.0));
            let second = sin(x2);
            sin(x1) * (1.0 + b * x3 * x3 * x3 * x3) + a * second * second
        })
        .collect();
    let shares = first_order_shares(&points, &results);
    Ok(Computed::of([("S_first", json!(shares))]).let_go("S_total"))
}
