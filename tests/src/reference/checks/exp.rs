//! Experiments.

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP, vaporisation_j_kg};
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio, mole_fraction};
use dewrun_moist_air::transport::{conductivity_w_mk, diffusivity_m2_s, viscosity_pa_s};
use dewrun_tube::film_inside::local;
use dewrun_tube::vapour_flux::stefan_flux_kg_sm;
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("EXP-01", cooled_channel),
    ("EXP-02", cooled_channel),
    ("EXP-05", dew_points),
];

/// SETCOM channel, Forschungszentrum Jülich (NIST `firemodels/exp`): mean heat flux of one cooled wall, the bulk as at the inlet.
fn cooled_channel(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let [side, _] = inputs.list("channel_m")?[..] else {
        return Err("two sides are expected".to_owned());
    };
    let (t_c, p_pa) = (inputs.number("Tin_C")?, inputs.number("p_Pa")?);
    let y = inputs.number("Y_vapour_in")?;
    let w = y / (1.0 - y);
    let x = mole_fraction(w);
    let (mu, k) = (viscosity_pa_s(t_c, x), conductivity_w_mk(t_c, x));
    let (rho, diffusivity) = (density_kg_m3(t_c, w, p_pa), diffusivity_m2_s(t_c, p_pa));
    let cp = (DRY_AIR_CP + VAPOUR_CP * w) / (1.0 + w);
    let reynolds = inputs.number("V_m_s")? * side * rho / mu;
    let heat_flux = |distance: f64, wall_c: f64| {
        let bores = distance / side;
        let h = local(reynolds, mu * cp / k, bores) * k / side;
        let k_mass = rho * diffusivity * local(reynolds, mu / (rho * diffusivity), bores) / side;
        let wall_w = humidity_ratio(saturated_over_water(wall_c, p_pa));
        let vapour = stefan_flux_kg_sm(k_mass, w, wall_w);
        let cooled = vaporisation_j_kg(wall_c) + 0.5 * VAPOUR_CP * (t_c - wall_c);
        h * (t_c - wall_c) + vapour * cooled
    };
    let fluxes: Vec<f64> = inputs
        .list("x_m")?
        .into_iter()
        .zip(inputs.list("Tw_C")?)
        .filter(|(distance, _)| (0.55..=3.35).contains(distance))
        .map(|(distance, wall_c)| heat_flux(distance, wall_c) / 1000.0)
        .collect();
    let count = u32::try_from(fluxes.len()).map_err(|error| error.to_string())?;
    let mean = fluxes.iter().sum::<f64>() / f64::from(count);
    Ok(Computed::of([("mean_x0.55-3.35", mean.into())]))
}

/// Vertical flat channel at Re 2080, Chrias75/condensation-model, `data_rH_2000_{27,31}_5.dat`: the balance of the vapour.
fn dew_points(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let p_pa = inputs.number("p_Pa")?;
    let w = |dew_c: f64| humidity_ratio(saturated_over_water(dew_c, p_pa));
    let dew_points: Vec<(f64, f64)> = inputs
        .list("Tdp_in_C")?
        .into_iter()
        .zip(inputs.list("Tdp_out_C")?)
        .collect();
    let condensate: Vec<f64> = inputs
        .list("m_air_kg_s")?
        .into_iter()
        .zip(dew_points)
        .map(|(air, (dew_in, dew_out))| air / (1.0 + w(dew_in)) * (w(dew_in) - w(dew_out)) * 1e6)
        .collect();
    Ok(Computed::of([("condensate_mg_s", json!(condensate))]))
}
