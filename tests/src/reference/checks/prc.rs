//! What is done to air on its way: rows `PRC-..`.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::process::{Coil, cooled, mixed, of_humidity, relative_humidity, warmed};
use dewrun_moist_air::fast::dew_point_of_c;
use dewrun_moist_air::mixture::{density_kg_m3, mole_fraction};
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("PRC-51", mixed_clear),
    ("PRC-52", mixed_into_fog),
    ("PRC-53", coil),
    ("PRC-54", detector),
];

fn dew_c(air: FogAir, p_pa: f64) -> Result<f64, String> {
    dew_point_of_c(mole_fraction(air.w), p_pa).ok_or_else(|| "no dew point".to_owned())
}

/// Two streams by their shares of dry air.
fn mixture(inputs: &Inputs<'_>) -> Result<(FogAir, f64), String> {
    let p_pa = inputs.number("p_Pa")?;
    let (t_c, rh) = (inputs.list("T_C")?, inputs.list("RH_pct")?);
    let shares = inputs.list("dry_air_share")?;
    let streams: Vec<(FogAir, f64)> = t_c
        .iter()
        .zip(&rh)
        .zip(&shares)
        .map(|((&t_c, rh), &share)| (of_humidity(t_c, rh / 100.0, p_pa), share))
        .collect();
    Ok((mixed(&streams, p_pa), p_pa))
}

fn mixed_clear(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (air, p_pa) = mixture(inputs)?;
    Ok(Computed::of([
        ("T_mix_C", json!(air.t_c)),
        ("W", json!(air.w)),
        ("RH_pct", json!(100.0 * relative_humidity(air, p_pa))),
        ("Tdp_C", json!(dew_c(air, p_pa)?)),
    ]))
}

fn mixed_into_fog(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (air, _) = mixture(inputs)?;
    Ok(Computed::of([
        ("T_mix_C", json!(air.t_c)),
        ("mist_g_per_kg_dry_air", json!(1e3 * air.mist)),
    ]))
}

fn coil(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let rh = inputs.number("RH_in_pct")? / 100.0;
    let air = of_humidity(inputs.number("T_in_C")?, rh, p_pa);
    let coil = Coil {
        apparatus_c: inputs.number("apparatus_dew_point_C")?,
        bypass: inputs.number("bypass")?,
    };
    let behind = cooled(air, coil, p_pa);
    Ok(Computed::of([
        ("T_out_C", json!(behind.air.t_c)),
        ("W_out", json!(behind.air.w)),
        ("Tdp_out_C", json!(dew_c(behind.air, p_pa)?)),
        (
            "condensate_g_per_kg_dry_air",
            json!(1e3 * behind.condensate),
        ),
    ]))
}

fn detector(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let air = of_humidity(
        inputs.number("T_C")?,
        inputs.number("RH_pct")? / 100.0,
        p_pa,
    );
    let volume = inputs.number("Q_L_min")? / 60_000.0;
    let dry_air = volume * density_kg_m3(air.t_c, air.w, p_pa) / (1.0 + air.w);
    let warm = warmed(air, inputs.number("P_W")?, dry_air, p_pa);
    Ok(Computed::of([
        ("T_out_C", json!(warm.t_c)),
        ("RH_out_pct", json!(100.0 * relative_humidity(warm, p_pa))),
    ]))
}
