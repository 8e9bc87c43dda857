//! Sizes of remedies by relations turned round; doubt: chances and shares of a spread from even points.

use core::f64::consts::PI;

use dewrun_advice::first_order_shares;
use dewrun_moist_air::fast::dew_point_c;
use dewrun_moist_air::latent::DRY_AIR_CP;
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_moist_air::transport::{dry_air_conductivity_w_mk, dry_air_viscosity_pa_s};
use dewrun_numeric::elementary::sin;
use dewrun_numeric::quantile::normal;
use dewrun_numeric::sobol::Sobol;
use dewrun_quantity::{Conductivity, Length, Pressure, Temperature};
use dewrun_remedies::inverse::{StillTube, least_insulation, shedding_length, trace_power};
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("ADV-51", least_insulation_against_sweat),
    ("ADV-52", tracing_that_keeps_warm),
    ("ADV-53", length_that_sheds),
    ("ADV-54", chance_of_wet),
    ("ADV-55", shares_of_ishigami),
];

/// The row asks for so many points.
const POINTS: u32 = 256;
/// At least so many for shares.
const SHARE_POINTS: u32 = 4096;

/// Still air around a tube that the row describes; without insulation.
fn still_tube(inputs: &Inputs<'_>) -> Result<StillTube, String> {
    Ok(StillTube {
        outside_diameter: Length::metres(inputs.number("do_m")?),
        insulation: Length::ZERO,
        conductivity: Conductivity::watts_per_metre_kelvin(inputs.number("k_ins")?),
        emissivity: inputs.number("emissivity")?,
        around: Temperature::celsius(inputs.number("Ta_C")?),
        pressure: Pressure::pascals(inputs.number("p_Pa")?),
    })
}

fn least_insulation_against_sweat(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let tube = still_tube(inputs)?;
    let face = Temperature::celsius(inputs.number("T_tube_C")?);
    let mut found = Vec::new();
    for percent in inputs.list("RH_pct")? {
        let (around_c, p_pa) = (tube.around.to_celsius(), tube.pressure.to_pascals());
        let dew_c = dew_point_c(around_c, 0.01 * percent, p_pa);
        let dew_c = dew_c.ok_or_else(|| format!("no dew point at {percent} %"))?;
        let least = least_insulation(&tube, face, Temperature::celsius(dew_c));
        let least = least.ok_or_else(|| format!("no thickness at {percent} %"))?;
        found.push(least.to_millimetres());
    }
    Ok(Computed::of([("thickness_mm", json!(found))]))
}

fn tracing_that_keeps_warm(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let bare = still_tube(inputs)?;
    let insulated = StillTube {
        insulation: Length::metres(inputs.number("ins_m")?),
        ..bare
    };
    let kept = Temperature::celsius(inputs.number("T_tube_C")?);
    let power = |tube: &StillTube| {
        let power = trace_power(tube, kept).ok_or("no power keeps it")?;
        Ok::<f64, String>(power.to_watts_per_metre())
    };
    Ok(Computed::of([
        ("W_per_m", power(&insulated)?.into()),
        ("W_per_m_bare", power(&bare)?.into()),
    ]))
}

fn length_that_sheds(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let bore_m = inputs.number("D_m")?;
    let (t_c, p_pa) = (inputs.number("T_C")?, inputs.number("p_Pa")?);
    let viscosity = dry_air_viscosity_pa_s(t_c);
    let flow_kg_s = inputs.number("Q_L_min")? / 60_000.0 * density_kg_m3(t_c, 0.0, p_pa);
    let reynolds = 4.0 * flow_kg_s / (PI * bore_m * viscosity);
    let prandtl = viscosity * DRY_AIR_CP / dry_air_conductivity_w_mk(t_c);
    let bore = Length::metres(bore_m);
    let length = shedding_length(bore, reynolds, prandtl, inputs.number("theta")?);
    let length = length.ok_or("no length sheds it")?;
    Ok(Computed::of([("L_m", length.to_metres().into())]))
}

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
