//! Properties of air and water.

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::latent::{DRY_AIR_CP, FUSION, sublimation_j_kg, vaporisation_j_kg};
use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_moist_air::transport::{
    conductivity_w_mk, diffusivity_m2_s, dry_air_conductivity_w_mk, dry_air_viscosity_pa_s,
    steam_conductivity_w_mk, steam_viscosity_pa_s, viscosity_pa_s,
};
use dewrun_moist_air::{ZERO_CELSIUS_K, fast, liquid};
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("AIR-01", lemmon_jacobsen_2004),
    ("AIR-02", incropera_table_a4),
    ("AIR-03", incropera_table_a8),
    ("AIR-04", diffusivity_at_one_atmosphere),
    ("AIR-05", diffusivity_at_one_atmosphere),
    ("AIR-06", steam_tables),
    ("AIR-07", sublimation),
    ("AIR-08", iapws_r1_76),
    ("AIR-09", liquid_density),
    ("AIR-10", iapws_r12_08_and_r15_11),
    ("AIR-11", wilke_1950),
    ("AIR-12", conductivity_of_moist_air),
    ("AIR-51", ice),
];

const ATMOSPHERE_PA: f64 = 101_325.0;

fn celsius(t_k: f64) -> f64 {
    t_k - ZERO_CELSIUS_K
}

/// Lemmon & Jacobsen, Int. J. Thermophys. 25 (2004) 21, table V.
fn lemmon_jacobsen_2004(inputs: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([
        (
            "mu_Pa_s",
            inputs.each("T_K", |t| dry_air_viscosity_pa_s(celsius(t)))?,
        ),
        (
            "k_W_mK",
            inputs.each("T_K", |t| dry_air_conductivity_w_mk(celsius(t)))?,
        ),
    ]))
}

/// Incropera et al., 6th ed. (2007), table A.4.
fn incropera_table_a4(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let prandtl = |t_k: f64| {
        dry_air_viscosity_pa_s(celsius(t_k)) * DRY_AIR_CP / dry_air_conductivity_w_mk(celsius(t_k))
    };
    Ok(Computed::of([
        (
            "rho",
            inputs.each("T_K", |t| density_kg_m3(celsius(t), 0.0, p_pa))?,
        ),
        ("cp_J", inputs.each("T_K", |_| DRY_AIR_CP)?),
        (
            "mu",
            inputs.each("T_K", |t| dry_air_viscosity_pa_s(celsius(t)))?,
        ),
        (
            "k",
            inputs.each("T_K", |t| dry_air_conductivity_w_mk(celsius(t)))?,
        ),
        ("Pr", inputs.each("T_K", prandtl)?),
    ]))
}

/// Incropera et al., 6th ed. (2007), table A.8.
fn incropera_table_a8(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_atm")? * ATMOSPHERE_PA;
    let d = diffusivity_m2_s(celsius(inputs.number("T_K")?), p_pa);
    Ok(Computed::of([("D_m2_s", d.into())]))
}

/// AIR-04: Marrero & Mason, J. Phys. Chem. Ref. Data 1 (1972) 3; AIR-05: Massman, Atmos. Environ. 32 (1998) 1111.
fn diffusivity_at_one_atmosphere(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let d = inputs.each("T_K", |t| diffusivity_m2_s(celsius(t), ATMOSPHERE_PA))?;
    Ok(Computed::of([("D_m2_s", d)]))
}

/// IAPWS-95 steam tables.
fn steam_tables(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let heat = inputs.each("T_C", |t| vaporisation_j_kg(t) / 1000.0)?;
    Ok(Computed::of([("hfg_kJ_kg", heat)]))
}

/// Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, and the Smithsonian tables.
fn sublimation(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let heat = inputs.each("T_C", |t| sublimation_j_kg(t) / 1000.0)?;
    Ok(Computed::of([("hsub_kJ_kg", heat)]))
}

/// IAPWS R1-76(2014), table 1.
fn iapws_r1_76(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let tension = inputs.each("T_C", |t| liquid::surface_tension_n_m(t) * 1000.0)?;
    Ok(Computed::of([("sigma_mN_m", tension)]))
}

/// Wagner & Pruss 2002 (IAPWS-95).
fn liquid_density(inputs: &Inputs<'_>) -> Result<Computed, String> {
    Ok(Computed::of([(
        "rho",
        inputs.each("T_C", liquid::density_kg_m3)?,
    )]))
}

/// IAPWS R12-08, table 4 (first temperature), and R15-11, table 4 (second).
fn iapws_r12_08_and_r15_11(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let [viscosity_k, conductivity_k] = inputs.list("T_K")?[..] else {
        return Err("two temperatures are expected".to_owned());
    };
    Ok(Computed::of([
        (
            "mu_uPa_s",
            (steam_viscosity_pa_s(celsius(viscosity_k)) * 1e6).into(),
        ),
        (
            "k_mW_mK",
            (steam_conductivity_w_mk(celsius(conductivity_k)) * 1e3).into(),
        ),
    ]))
}

/// Wilke 1950 with Lemmon & Jacobsen air and IAPWS R12-08 vapour; the fit that the march uses is held too.
fn wilke_1950(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let states: Vec<(f64, f64)> = inputs
        .list("T_C")?
        .into_iter()
        .zip(inputs.list("x_w")?)
        .collect();
    let of = |property: fn(f64, f64) -> f64| -> Vec<f64> {
        states.iter().map(|&(t, x)| property(t, x)).collect()
    };
    Ok(
        Computed::of([("mu_Pa_s", json!(of(viscosity_pa_s)))]).route(
            "mu_Pa_s",
            "the fit",
            of(fast::viscosity_pa_s),
        ),
    )
}

/// CoolProp 8.0.0, `HAPropsSI`; the fit that the march uses is held too.
fn conductivity_of_moist_air(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let humidities = inputs.list("RH_pct")?;
    let states: Vec<(f64, f64)> = inputs
        .list("T_C")?
        .into_iter()
        .zip(humidities)
        .map(|(t, rh)| (t, rh / 100.0 * saturated_over_water(t, ATMOSPHERE_PA)))
        .collect();
    let of = |property: fn(f64, f64) -> f64| -> Vec<f64> {
        states.iter().map(|&(t, x)| property(t, x)).collect()
    };
    Ok(
        Computed::of([("k_W_mK", json!(of(conductivity_w_mk)))]).route(
            "k_W_mK",
            "the fit",
            of(fast::conductivity_w_mk),
        ),
    )
}

/// IAPWS R10-06 (ice Ih) and IAPWS-95 (liquid).
fn ice(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let t_c = inputs.number("T_C")?;
    let fusion = sublimation_j_kg(t_c) - vaporisation_j_kg(t_c);
    Ok(Computed::of([
        ("hfus_kJ_kg", (FUSION / 1000.0).into()),
        ("rho_ice_kg_m3", liquid::ICE_DENSITY_KG_M3.into()),
    ])
    .route("hfus_kJ_kg", "the heats of vapour", fusion / 1000.0))
}
