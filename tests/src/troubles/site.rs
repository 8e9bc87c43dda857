//! A run that is drawn: other lengths, falls, tubes, air, spaces and traps, as a project that somebody entered.

use std::fs;
use std::path::Path;

use dewrun_document::{EnsembleSaid, read, to_ensemble};
use dewrun_quantity::Length;
use dewrun_run::library::{Span, TubeRow, tubes};
use dewrun_weather::Series;
use serde_json::{Value, json};

use super::duct::{source, space_year};
use crate::routes::Draw;

/// Bores below this hold water by themselves and are no tubes of aspirating detectors.
const LEAST_BORE_MM: f64 = 13.0;

/// What the sky gives less for each kelvin, near 0 degC: four times the Stefan-Boltzmann constant times the cube of 273 K.
const SKY_W_M2_K: f64 = 4.6;

/// A run as somebody entered it.
#[derive(Debug, Clone)]
pub struct Site {
    /// The project file.
    pub project: String,
    /// What its ensemble is made of.
    pub said: EnsembleSaid,
    /// Whether it has a trap.
    pub has_trap: bool,
    /// By how much its place is colder than that of the weather, K.
    pub colder_k: f64,
}

impl Site {
    /// The weather at its place: colder by the same at all hours, as humid as it was.
    #[must_use]
    pub fn climate(&self, weather: &Series) -> Series {
        let mut weather = weather.clone();
        for celsius in (weather.temperature_c.iter_mut()).chain(&mut weather.dew_point_c) {
            *celsius -= self.colder_k;
        }
        for from_sky in weather.infrared_w_m2.iter_mut().flatten() {
            *from_sky -= SKY_W_M2_K * self.colder_k;
        }
        weather
    }
}

/// A run, drawn.
///
/// # Errors
/// A sentence where the project can't be made.
pub fn site(seed: u64) -> Result<Site, String> {
    let mut draw = Draw::new(seed ^ 0x0517_e000);
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo/gull-harbour-roof.json");
    let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
    let mut project: Value = serde_json::from_str(&text).map_err(|error| error.to_string())?;
    project["spaces"][0]["year"] = space_year(&mut draw);
    let (cold_corridor, cold_lobby) = (draw.chance(0.6), draw.chance(0.35));
    let trapped = draw.chance(0.6);
    let run = &mut project["runs"][0];
    run["duct"]["source"] = source(&mut draw);
    run["duct"]["static_pa"] = match draw.below(3) {
        0 => assumed("duct-static", -50.0, [-300.0, 300.0]),
        1 => assumed("duct-static-suction", -120.0, [-400.0, -20.0]),
        _ => assumed("duct-static-pressure", 150.0, [20.0, 400.0]),
    };
    if draw.chance(0.5) {
        run["duct"]["fan_off"] = json!([]);
    }
    if cold_lobby && draw.chance(0.7) {
        // A sensor that is hardly warmed.
        run["detector"]["heat_w"] = json!({ "value": draw.between(0.1, 0.6), "origin": "typed" });
    }
    let tube = tube(&mut draw)?;
    for part in ["intake", "exhaust"] {
        let legs = run[part]["legs"].as_array_mut().ok_or("no legs")?;
        for leg in legs {
            leg["tube"]["bore_mm"] = millimetres(tube, tube.bore);
            leg["tube"]["outside_diameter_mm"] = millimetres(tube, tube.outside_diameter);
            let longer = draw.between(0.5, 1.6);
            scale(&mut leg["length_m"]["value"], longer);
            // A fall stays less than its leg.
            scale(
                &mut leg["rise_m"]["value"],
                longer * draw.between(0.5, 0.99),
            );
            if (cold_corridor && leg["space"] == "corridor")
                || (cold_lobby && leg["space"] == "lobby")
            {
                leg["space"] = json!("plant");
            }
        }
    }
    if trapped {
        let kind = if draw.chance(0.5) {
            "hand_drained"
        } else {
            "self_draining"
        };
        let metres = |leg: usize| run["intake"]["legs"][leg]["length_m"]["value"].as_f64();
        let at = metres(0).zip(metres(1)).map(|(one, other)| one + other);
        run["intake"]["traps"] = json!([{
            "at_m": { "value": at.ok_or("no length")?, "origin": "typed" },
            "kind": kind,
        }]);
    }
    // Frost needs winters that the invented place does not have.
    let colder_k = if draw.chance(0.4) {
        draw.between(6.0, 14.0)
    } else {
        0.0
    };
    let project = project.to_string();
    let said = read(&project).and_then(|project| to_ensemble(&project, 0));
    Ok(Site {
        said: said.map_err(|error| error.sentence())?,
        project,
        has_trap: trapped,
        colder_k,
    })
}

fn tube(draw: &mut Draw) -> Result<&'static TubeRow, String> {
    let wide: Vec<&TubeRow> = tubes()
        .iter()
        .filter(|tube| LEAST_BORE_MM <= tube.bore.low.to_millimetres())
        .collect();
    let tube = wide.get(draw.below(wide.len()));
    tube.copied()
        .ok_or_else(|| "no tube is wide enough".to_owned())
}

fn assumed(row: &str, value: f64, [low, high]: [f64; 2]) -> Value {
    json!({ "value": value, "origin": { "assumed": { "row": row, "low": low, "high": high } } })
}

fn millimetres(tube: &TubeRow, span: Span<Length>) -> Value {
    let ends = [span.low, span.high].map(|end| end.to_millimetres());
    assumed(tube.id, span.usual.to_millimetres(), ends)
}

fn scale(value: &mut Value, by: f64) {
    if let Some(number) = value.as_f64() {
        *value = json!(number * by);
    }
}
