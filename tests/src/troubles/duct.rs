//! Airs that a duct can carry, and spaces that a tube can pass, as the project file says them; every span is that of a row of the library.

use serde_json::{Value, json};

use crate::routes::Draw;

fn assumed(row: &str, [low, usual, high]: [f64; 3]) -> Value {
    json!({ "value": usual, "origin": { "assumed": { "row": row, "low": low, "high": high } } })
}

/// Where a duct's air comes from: outdoors as it is, warmed in the heating season, from a laundry, a pool hall or showers, or past a coil.
pub(super) fn source(draw: &mut Draw) -> Value {
    let winter = json!([{ "months": ["jan", "feb", "mar", "nov", "dec"] }]);
    let summer = json!([{ "months": ["jun", "jul", "aug", "sep"] }]);
    match draw.below(6) {
        0 => json!({ "from": "outdoors" }),
        1 => json!({ "from": "outdoors", "steps": [
            { "kind": "heated", "temperature_c": assumed("make-up-heated", [15.0, 20.0, 30.0]), "when": winter }] }),
        2 => room(draw, "laundry", [24.0, 30.0, 38.0], [45.0, 60.0, 80.0]),
        3 => room(draw, "pool-hall", [28.0, 30.0, 32.0], [50.0, 58.0, 65.0]),
        4 => room(draw, "shower", [24.0, 27.0, 31.0], [60.0, 80.0, 100.0]),
        _ => json!({ "from": "outdoors", "steps": [
            { "kind": "cooled", "temperature_c": assumed("after-coil", [8.0, 13.0, 16.0]),
              "share": { "value": 0.15, "origin": "typed" }, "when": summer }] }),
    }
}

/// A room that is in use all day and drier at night, or for a few hours only.
fn room(draw: &mut Draw, row: &str, celsius: [f64; 3], percent: [f64; 3]) -> Value {
    let first = [20.0, 9.0, 11.0][draw.below(3)];
    json!({
        "from": "room",
        "temperature_c": assumed(row, celsius),
        "percent": assumed(row, percent),
        "settings": [{
            "when": { "from_h": first, "until_h": 6.0 },
            "percent": { "value": draw.between(25.0, 50.0), "origin": "typed" },
        }],
    })
}

/// What the first space of the route follows: a roof, a loft, a shaft, or a plant room.
pub(super) fn space_year(draw: &mut Draw) -> Value {
    let partly = |row: &str, share: [f64; 3]| {
        json!({
            "follows": "partly",
            "share": assumed(row, share),
            "room_c": assumed("year-room-temperature", [16.0, 20.0, 24.0]),
            "room_percent": assumed("year-room-humidity", [30.0, 50.0, 65.0]),
        })
    };
    match draw.below(4) {
        0 => json!({
            "follows": "outdoors",
            "sky_share": assumed("year-sky-share", [0.2, 0.5, 0.7]),
            "wind_share": assumed("year-wind-share", [0.1, 0.3, 0.8]),
        }),
        1 => partly("loft-ventilated", [0.9, 0.97, 1.0]),
        2 => partly("plant-room-unheated", [0.5, 0.6, 0.8]),
        _ => partly("shaft", [0.0, 0.4, 0.8]),
    }
}
