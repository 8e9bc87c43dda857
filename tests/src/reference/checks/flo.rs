//! Flow inside a tube: film and friction.

use core::f64::consts::PI;

use dewrun_airflow::friction::{churchill_1977, mean_speed_m_s, straight_tube_pa};
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_moist_air::transport::dry_air_viscosity_pa_s;
use dewrun_numeric::elementary::exp;
use dewrun_tube::film_inside::local;
use serde_json::json;

use super::held_wall::mean_from_inlet;
use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("FLO-01", churchill_rough),
    ("FLO-02", churchill_smooth),
    ("FLO-05", graetz),
    ("FLO-06", developed_laminar),
    ("FLO-08", gnielinski_2013),
    ("FLO-14", lienhard_example_7_5),
    ("FLO-19", pressure_drop),
];

/// `fluids` 1.3.1, friction.py.
fn churchill_rough(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let f = churchill_1977(inputs.number("Re")?, inputs.number("eps_over_D")?);
    Ok(Computed::of([("Churchill1977", f.into())]))
}

/// Churchill, Chem. Eng. 84 (24) (1977) 91.
fn churchill_smooth(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let roughness = inputs.number("eps")?;
    Ok(Computed::of([(
        "f",
        inputs.each("Re", |re| churchill_1977(re, roughness))?,
    )]))
}

/// Graetz series of 60 terms, in agreement with Kays & Crawford; `x_star = x / (D Re Pr)`.
fn graetz(inputs: &Inputs<'_>) -> Result<Computed, String> {
    const REYNOLDS: f64 = 1000.0;
    const PRANDTL: f64 = 0.71;
    let bores = |x_star: f64| x_star * REYNOLDS * PRANDTL;
    let nu = |x_over_d: f64| local(REYNOLDS, PRANDTL, x_over_d);
    let mean = |x_star: f64| mean_from_inlet(nu, bores(x_star));
    Ok(Computed::of([
        ("Nu_x", inputs.each("x_star", |x_star| nu(bores(x_star)))?),
        ("Nu_m", inputs.each("x_star", mean)?),
        (
            "theta_m",
            inputs.each("x_star", |x_star| exp(-4.0 * mean(x_star) * x_star))?,
        ),
    ]))
}

/// Shah & London 1978: far from the entry, uniform wall temperature.
fn developed_laminar(_: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([("Nu_T", local(1000.0, 0.71, 1e9).into())]))
}

/// VDI Heat Atlas, 2nd ed. (2010), G1, and Gnielinski 2013: mean over the length of a tube.
fn gnielinski_2013(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let prandtl = inputs.number("Pr")?;
    let bores = 1.0 / inputs.number("d_over_l")?;
    let mean =
        |reynolds: f64| mean_from_inlet(|x_over_d| local(reynolds, prandtl, x_over_d), bores);
    Ok(Computed::of([("Nu_m", inputs.each("Re", mean)?)]))
}

/// Lienhard & Lienhard, A Heat Transfer Textbook, 4th ed., example 7.5.
fn lienhard_example_7_5(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d, v, l) = (
        inputs.number("D_m")?,
        inputs.number("V_m_s")?,
        inputs.number("L_m")?,
    );
    let prandtl = inputs.number("Pr")?;
    let reynolds = v * d / inputs.number("nu")?;
    let nu = mean_from_inlet(|x_over_d| local(reynolds, prandtl, x_over_d), l / d);
    let flow = inputs.number("rho")? * v * PI * d * d / 4.0;
    let units = PI * l * nu * inputs.number("k")? / (flow * inputs.number("cp")?);
    let (inlet, wall) = (inputs.number("Tin_C")?, inputs.number("Tw_C")?);
    Ok(Computed::of([(
        "Tout_C",
        (wall + (inlet - wall) * exp(-units)).into(),
    )]))
}

/// 64/Re or Colebrook's smooth tube with CoolProp air at 20 °C and 101.325 kPa.
fn pressure_drop(inputs: &Inputs<'_>) -> Result<Computed, String> {
    const AIR_C: f64 = 20.0;
    let density = density_kg_m3(AIR_C, 0.0, 101_325.0);
    let viscosity = dry_air_viscosity_pa_s(AIR_C);
    let (bores, lengths) = (inputs.list("D_m")?, inputs.list("L_m")?);
    let (mut reynolds, mut speeds, mut losses) = (Vec::new(), Vec::new(), Vec::new());
    for ((d, l), q) in bores.into_iter().zip(lengths).zip(inputs.list("Q_L_min")?) {
        let speed = mean_speed_m_s(q / 60_000.0, d);
        let re = speed * d * density / viscosity;
        reynolds.push(re);
        speeds.push(speed);
        losses.push(straight_tube_pa(
            churchill_1977(re, 0.0),
            l,
            d,
            density,
            speed,
        ));
    }
    Ok(Computed::of([
        ("Re", json!(reynolds)),
        ("V_m_s", json!(speeds)),
        ("dp_Pa", json!(losses)),
    ]))
}
