//! What the worked examples assume stands in the library, with the same low, usual and high.

use dewrun_run::library;
use serde_json::Value;

const DEMOS: [(&str, &str); 4] = [
    (
        "make-up-air",
        include_str!("../../../demo/make-up-air.json"),
    ),
    (
        "pool-hall-exhaust",
        include_str!("../../../demo/pool-hall-exhaust.json"),
    ),
    (
        "chilled-supply",
        include_str!("../../../demo/chilled-supply.json"),
    ),
    (
        "sagging-tube",
        include_str!("../../../demo/sagging-tube.json"),
    ),
];

/// Where an example takes another value than the usual one, within the span: example, row, field.
///
/// Which side of a fan a duct is on, and how fast its air is, is part of each example's story.
const CHOSEN: [(&str, &str, &str); 6] = [
    ("make-up-air", "duct-static", "static_pa"),
    ("make-up-air", "duct-velocity", "velocity_pa"),
    ("make-up-air", "plant-room-heated", "percent"),
    ("pool-hall-exhaust", "duct-static", "static_pa"),
    ("chilled-supply", "duct-static", "static_pa"),
    ("chilled-supply", "duct-velocity", "velocity_pa"),
];

/// An assumed value of a file: its field, and what stands there.
struct Assumed {
    field: String,
    row: String,
    value: f64,
    low: f64,
    high: f64,
}

/// Every assumed value of a file, wherever it stands.
fn assumed(field: &str, value: &Value) -> Vec<Assumed> {
    let origin = value.get("origin").and_then(|origin| origin.get("assumed"));
    if let Some(origin) = origin {
        let number = |value: &Value| value.as_f64().expect("a number");
        return vec![Assumed {
            field: field.to_owned(),
            row: origin["row"].as_str().expect("the id of a row").to_owned(),
            value: number(&value["value"]),
            low: number(&origin["low"]),
            high: number(&origin["high"]),
        }];
    }
    match value {
        Value::Object(fields) => fields
            .iter()
            .flat_map(|(name, value)| assumed(name, value))
            .collect(),
        Value::Array(values) => values
            .iter()
            .flat_map(|value| assumed(field, value))
            .collect(),
        _ => Vec::new(),
    }
}

#[test]
fn every_row_that_an_example_names_is_in_the_library() {
    let mut chosen = Vec::new();
    for (demo, text) in DEMOS {
        let file: Value = serde_json::from_str(text).expect("an example is JSON");
        let all = assumed("", &file);
        assert!(!all.is_empty(), "{demo} assumes something");
        for Assumed {
            field,
            row,
            value,
            low,
            high,
        } in all
        {
            let place = format!("{demo}: `{field}` of `{row}`");
            let entry = library::row(&row).and_then(|row| row.entry(&field));
            let span = entry.map(|entry| entry.span);
            assert_eq!(
                span.map(|span| (span.low, span.high)),
                Some((low, high)),
                "{place}: low and high"
            );
            let usual = span.map(|span| span.usual);
            if usual != Some(value) {
                assert!(
                    low <= value && value <= high,
                    "{place}: {value} is in the span"
                );
                chosen.push((demo, row, field));
            }
        }
    }
    let mut chosen: Vec<(&str, &str, &str)> = chosen
        .iter()
        .map(|(demo, row, field)| (*demo, row.as_str(), field.as_str()))
        .collect();
    chosen.sort_unstable();
    chosen.dedup();
    let mut known = CHOSEN;
    known.sort_unstable();
    assert_eq!(chosen, known, "where the usual value is not taken");
}
