//! Whole tubes, heat only.

use core::f64::consts::PI;

use dewrun_moist_air::transport::dry_air_viscosity_pa_s;
use serde_json::json;

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;
use crate::reference::steady;

pub(super) const ROWS: Rows = &[("CON-01", cooling_stream), ("CON-02", cooling_stream)];

/// A march of 400 steps with Nu 3.657 or Gnielinski inside, Churchill & Chu outside, grey radiation.
fn cooling_stream(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let (bore, t_in_c) = (inputs.number("ID_m")?, inputs.number("Tin_C")?);
    let case = json!({
        "p_pa": 101_325.0,
        "t_in_c": t_in_c,
        "w_in": 0.0,
        "q_lpm": inputs.number("Q_L_min_at_inlet")?,
        "segments": [{
            "length": inputs.number("L_m")?,
            "d_in": bore,
            "d_out": inputs.number("OD_m")?,
            "k_wall": inputs.number("k_wall")?,
            "ins": inputs.number("t_ins_m")?,
            "k_ins": inputs.number("k_ins")?,
            "t_amb": inputs.number("Tamb_C")?,
            "w_amb": 0.0,
            "emis": inputs.number("emissivity_outer")?,
            "wind": 0.0,
            "trace": 0.0,
            "vertical": false,
        }],
    });
    let values = steady::values(&case)?;
    let number = |key: &str| {
        values[key]
            .as_f64()
            .ok_or_else(|| format!("{key} is not a number"))
    };
    let flow = number("m_dry_air_kg_s")?;
    let reynolds = 4.0 * flow / (PI * bore * dry_air_viscosity_pa_s(t_in_c));
    Ok(Computed::of([
        ("Re_in", reynolds.into()),
        ("Tout_C", number("t_out_c")?.into()),
        ("m_kg_s", flow.into()),
    ]))
}
