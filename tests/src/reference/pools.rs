//! Solved low points: any case of the form of `pools.json` as a pool shape, and its answers by the same keys.

use dewrun_quantity::{Density, Length, Volume, VolumeFlow};
use dewrun_water::{GRAVITY_M_S2, Incline, pool::PoolShape};
use serde_json::{Value, json};

use super::compare::Tolerance;
use super::inputs::Inputs;
use super::report::{FileReport, Values};
use super::solved;

/// How near each key has to be; `tests/cases/README.md` has the same in words.
const TOLERANCES: [(&str, Tolerance); 14] = [
    ("sealed", Tolerance::absolute(0.0)),
    ("slugs", Tolerance::absolute(0.0)),
    ("depth_mm", LENGTH),
    ("depth_rel", LENGTH),
    ("wetted_1_m", LENGTH),
    ("wetted_2_m", LENGTH),
    ("plug_m", LENGTH),
    // 0.1 mm2.
    ("surface_cm2", Tolerance::either(0.001, 0.001)),
    ("free_area_mm2", Tolerance::either(0.001, 0.1)),
    ("v_seal_ml", Tolerance::relative(1e-4)),
    ("slug_depth_mm", LENGTH),
    ("slug_depth_rel", LENGTH),
    ("slug_volume_ml", Tolerance::relative(0.003)),
    ("bubbling_pa", Tolerance::either(0.001, 0.1)),
];
const LENGTH: Tolerance = Tolerance::relative(0.001);

/// Holds every case of a file.
#[must_use]
pub fn hold(name: &str, cases: &[Value]) -> FileReport {
    solved::hold(name, cases, &TOLERANCES, values)
}

/// The slopes of a case.
fn slope(inputs: &Inputs<'_>, name: &str) -> Result<Incline, String> {
    let slope = inputs.number(name)?;
    match inputs.raw()["slope_kind"].as_str() {
        Some("per_horizontal") => Ok(Incline::per_horizontal(slope)),
        Some("per_tube") => Incline::per_length(slope).ok_or(format!("{name} is beyond upright")),
        other => Err(format!("slope_kind {other:?} is not known")),
    }
}

fn values(inputs: &Inputs<'_>) -> Result<Values, String> {
    standard_gravity(inputs)?;
    let density = |name| Ok::<_, String>(Density::kilograms_per_cubic_metre(inputs.number(name)?));
    let bore = Length::millimetres(inputs.number("bore_mm")?);
    let shape = PoolShape::between(bore, slope(inputs, "s1")?, slope(inputs, "s2")?)
        .map_err(|error| error.to_string())?;
    let volume = Volume::millilitres(inputs.number("volume_ml")?);
    let stand = shape.stand(volume).map_err(|error| error.to_string())?;
    let flow = VolumeFlow::litres_per_minute(inputs.number("q_lpm")?);
    let water = density("rho_water")?;
    let slugs = shape.first_slugs(flow, density("rho_air")?, water);
    let [before, after] = stand.wetted.map(Length::to_metres);
    let mut values = Values::new();
    for (key, value) in [
        ("sealed", json!(stand.sealed)),
        ("depth_mm", json!(stand.depth.to_millimetres())),
        ("depth_rel", json!(stand.share)),
        ("wetted_1_m", json!(before)),
        ("wetted_2_m", json!(after)),
        ("surface_cm2", json!(stand.surface.to_square_centimetres())),
        (
            "free_area_mm2",
            json!(stand.free_area.to_square_millimetres()),
        ),
        ("v_seal_ml", json!(shape.seal_volume().to_millilitres())),
        ("slug_depth_mm", json!(slugs.depth.to_millimetres())),
        ("slug_depth_rel", json!(slugs.depth / bore)),
        ("slug_volume_ml", json!(slugs.volume.to_millilitres())),
        ("slugs", json!(slugs.volume <= volume)),
        ("plug_m", json!(stand.plug.to_metres())),
        (
            "bubbling_pa",
            json!(shape.bubbling(volume, water).to_pascals()),
        ),
    ] {
        values.insert(key.to_owned(), value);
    }
    Ok(values)
}

/// The product knows one acceleration of free fall; a case with another cannot be held.
///
/// # Errors
/// A sentence where the case has another.
pub fn standard_gravity(inputs: &Inputs<'_>) -> Result<(), String> {
    let given = inputs.number("g")?;
    if (given - GRAVITY_M_S2).abs() <= 1e-9 {
        return Ok(());
    }
    Err(format!("g is {given}, the product has {GRAVITY_M_S2}"))
}
