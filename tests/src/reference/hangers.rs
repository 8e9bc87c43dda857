//! Solved spans: any case of the form of `hangers.json` as a hung tube, and its answers by the same keys.

use dewrun_quantity::{Density, Length, Modulus};
use dewrun_water::Incline;
use dewrun_water::hanger::{
    HangerError, HungTube, Support, drains, largest_spacing, load, sag, second_moment_m4,
};
use serde_json::{Value, json};

use super::compare::Tolerance;
use super::inputs::Inputs;
use super::pools::standard_gravity;
use super::report::{FileReport, Values};
use super::solved;

/// How near each key has to be; `tests/cases/README.md` has the same in words.
const TOLERANCES: [(&str, Tolerance); 7] = [
    ("w_n_per_m", Tolerance::relative(0.001)),
    ("inertia_mm4", Tolerance::relative(0.001)),
    ("sag_mm", SAG),
    ("steepest_mm_per_m", Tolerance::relative(0.001)),
    ("drains", Tolerance::absolute(0.0)),
    ("l_max_m", Tolerance::relative(0.001)),
    ("sag_at_l_max_mm", SAG),
];
/// The end span of two has 184.6 or, rounded, 185.
const SAG: Tolerance = Tolerance::relative(0.003);

/// Holds every case of a file.
#[must_use]
pub fn hold(name: &str, cases: &[Value]) -> FileReport {
    solved::hold(name, cases, &TOLERANCES, values)
}

fn support(inputs: &Inputs<'_>) -> Result<Support, String> {
    match inputs.raw()["support"].as_str() {
        Some("simple") => Ok(Support::Simple),
        Some("clamped") => Ok(Support::Clamped),
        Some("end_span") => Ok(Support::EndSpanOfTwo),
        other => Err(format!("support {other:?} is not known")),
    }
}

fn values(inputs: &Inputs<'_>) -> Result<Values, String> {
    standard_gravity(inputs)?;
    let density = |name| Ok::<_, String>(Density::kilograms_per_cubic_metre(inputs.number(name)?));
    let tube = HungTube {
        bore: Length::millimetres(inputs.number("id_mm")?),
        outside_diameter: Length::millimetres(inputs.number("od_mm")?),
        density: density("rho_tube")?,
        long_term_modulus: Modulus::megapascals(inputs.number("e_long_mpa")?),
        water: density("rho_water")?,
    };
    let spacing = Length::metres(inputs.number("spacing_m")?);
    let fall = Incline::per_horizontal(inputs.number("fall")?);
    of_span(&tube, support(inputs)?, spacing, fall).map_err(|error| error.to_string())
}

fn of_span(
    tube: &HungTube,
    support: Support,
    spacing: Length,
    fall: Incline,
) -> Result<Values, HangerError> {
    let span = sag(tube, support, spacing)?;
    let largest = largest_spacing(tube, support, fall)?;
    let at_largest = sag(tube, support, largest)?;
    let mut values = Values::new();
    for (key, value) in [
        ("w_n_per_m", json!(load(tube)?.to_newtons_per_metre())),
        ("inertia_mm4", json!(second_moment_m4(tube)? * 1e12)),
        ("sag_mm", json!(span.depth.to_millimetres())),
        ("steepest_mm_per_m", json!(span.steepest.tangent() * 1000.0)),
        ("drains", json!(drains(tube, support, spacing, fall)?)),
        ("l_max_m", json!(largest.to_metres())),
        ("sag_at_l_max_mm", json!(at_largest.depth.to_millimetres())),
    ] {
        values.insert(key.to_owned(), value);
    }
    Ok(values)
}
