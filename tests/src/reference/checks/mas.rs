//! Mass transfer, and walls that are wet.

use core::f64::consts::PI;

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::latent::DRY_AIR_CP;
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio, mole_fraction};
use dewrun_moist_air::transport::{diffusivity_m2_s, dry_air_conductivity_w_mk};
use dewrun_numeric::elementary::pow;
use dewrun_tube::film_inside::local;
use dewrun_tube::vapour_flux::{stefan_factor, stefan_flux_kg_sm};
use serde_json::json;

use super::held_wall::{HeldWall, State, mean_from_inlet, saturated_w};
use super::{Computed, Rows};
use crate::reference::inputs::Inputs;
use crate::reference::steady;

pub(super) const ROWS: Rows = &[
    ("MAS-01", incropera_example_8_8),
    ("MAS-03", lewis),
    ("MAS-05", stefan_flow),
    ("MAS-06", wet_wall),
    ("MAS-07", wet_wall),
    ("MAS-09", wetted_tube),
    ("MAS-51", evaporation),
    ("MAS-52", mist),
];

const ATMOSPHERE_PA: f64 = 101_325.0;
const GRAMS_PER_HOUR: f64 = 3.6e6;

/// Incropera et al., 6th ed. (2007), example 8.8.
fn incropera_example_8_8(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (d, l, schmidt) = (
        inputs.number("D_m")?,
        inputs.number("L_m")?,
        inputs.number("Sc")?,
    );
    let reynolds = 4.0 * inputs.number("m_kg_s")? / (PI * d * inputs.number("mu")?);
    let sh = mean_from_inlet(|x_over_d| local(reynolds, schmidt, x_over_d), l / d);
    let h_m = sh * inputs.number("D_AB")? / d;
    Ok(Computed::of([
        ("Re", reynolds.into()),
        ("Sh", sh.into()),
        ("h_m_m_s", h_m.into()),
    ]))
}

/// CoolProp air and Marrero & Mason's diffusivity at one atmosphere.
fn lewis(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let le = |t_c: f64| {
        let heat =
            dry_air_conductivity_w_mk(t_c) / (density_kg_m3(t_c, 0.0, ATMOSPHERE_PA) * DRY_AIR_CP);
        heat / diffusivity_m2_s(t_c, ATMOSPHERE_PA)
    };
    Ok(Computed::of([
        ("Le", inputs.each("T_C", le)?),
        ("Le_2_3", inputs.each("T_C", |t| pow(le(t), 2.0 / 3.0))?),
    ]))
}

/// Spalding 1963, Mills; Bird, Stewart & Lightfoot, section 22.8.
fn stefan_flow(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (bulk, wall) = (inputs.list("Y_bulk")?, inputs.list("Y_wall")?);
    let (mut forces, mut factors, mut by_flux) = (Vec::new(), Vec::new(), Vec::new());
    for (yb, yw) in bulk.into_iter().zip(wall) {
        let force = (yw - yb) / (1.0 - yw);
        let flux = stefan_flux_kg_sm(1.0, yb / (1.0 - yb), yw / (1.0 - yw));
        forces.push(force);
        factors.push(stefan_factor(force));
        by_flux.push(flux / -force);
    }
    Ok(
        Computed::of([("B", json!(forces)), ("factor", json!(factors))])
            .route("factor", "the flux", by_flux),
    )
}

/// Graetz series of 60 terms for heat and mass, constant properties.
fn wet_wall(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let t_c = inputs.number("Tin_C")?;
    let w = humidity_ratio(inputs.number("RH_in")? * saturated_over_water(t_c, ATMOSPHERE_PA));
    let tube = HeldWall {
        bore_m: inputs.number("D_m")?,
        length_m: inputs.number("L_m")?,
        wall_c: inputs.number("Tw_C")?,
        p_pa: ATMOSPHERE_PA,
        dry_air_kg_s: inputs.number("Q_L_min")? / 60_000.0 * density_kg_m3(t_c, w, ATMOSPHERE_PA)
            / (1.0 + w),
    };
    let out = tube.outlet(State { t_c, w });
    Ok(Computed::of([
        ("Tout_C", out.t_c.into()),
        ("W_out", out.w.into()),
        (
            "condensate_g_h",
            (tube.dry_air_kg_s * (w - out.w) * GRAMS_PER_HOUR).into(),
        ),
        (
            "RH_out_nominal",
            (out.w / saturated_w(out.t_c, ATMOSPHERE_PA)).into(),
        ),
    ]))
}

/// Incropera et al., 6th ed. (2007), chapter 8 problem; the answer by the exact Graetz series.
fn wetted_tube(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let t_c = inputs.number("T_C")?;
    let tube = HeldWall {
        bore_m: inputs.number("D_m")?,
        length_m: inputs.number("L_m")?,
        wall_c: t_c,
        p_pa: ATMOSPHERE_PA,
        dry_air_kg_s: inputs.number("m_kg_s")?,
    };
    let out = tube.outlet(State { t_c, w: 0.0 });
    let vapour = out.w / (1.0 + out.w) * density_kg_m3(out.t_c, out.w, ATMOSPHERE_PA);
    Ok(Computed::of([
        ("rho_v_out_kg_m3", vapour.into()),
        ("evap_kg_s", (tube.dry_air_kg_s * out.w).into()),
    ]))
}

/// Exact Graetz series without Stefan flow, CoolProp moist air, Massman's diffusivity.
fn evaporation(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (t_c, p_pa) = (inputs.number("T_C")?, inputs.number("p_Pa")?);
    let saturated = saturated_over_water(t_c, p_pa);
    let w = humidity_ratio(inputs.number("RH_in_pct")? / 100.0 * saturated);
    let (mut rates, mut humidities) = (Vec::new(), Vec::new());
    for length_m in inputs.list("L_m")? {
        let tube = HeldWall {
            bore_m: inputs.number("D_m")?,
            length_m,
            wall_c: t_c,
            p_pa,
            dry_air_kg_s: inputs.number("Q_L_min")? / 60_000.0 * density_kg_m3(t_c, w, p_pa)
                / (1.0 + w),
        };
        let out = tube.outlet(State { t_c, w });
        rates.push(tube.dry_air_kg_s * (out.w - w) * GRAMS_PER_HOUR);
        humidities.push(100.0 * mole_fraction(out.w) / saturated);
    }
    Ok(Computed::of([
        ("evaporation_g_h", json!(rates)),
        ("RH_out_pct", json!(humidities)),
    ]))
}

/// The integrator of `steady.json`.
fn mist(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let values = steady::values(inputs.raw())?;
    let number = |key: &str| {
        values[key]
            .as_f64()
            .ok_or_else(|| format!("{key} is not a number"))
    };
    let mist = number("mist_out")? * number("m_dry_air_kg_s")? * GRAMS_PER_HOUR;
    Ok(Computed::of([
        ("condensate_g_h", number("condensate_g_h")?.into()),
        ("mist_g_h", mist.into()),
        ("t_out_c", number("t_out_c")?.into()),
        ("w_out", number("w_out")?.into()),
    ]))
}
