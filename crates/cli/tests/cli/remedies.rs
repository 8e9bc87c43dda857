//! `remedies`: cures first, a remedy that is made leaves what was claimed, and how it ends.

use std::fs;

use serde_json::Value;

use crate::running::ends;
use crate::wording::forty_days;

const PROJECT: &str = "demo/gull-harbour-roof.json";

#[track_caller]
fn answer(words: &[&str], status: i32) -> Value {
    serde_json::from_str(&ends(words, status).out).expect("it is JSON")
}

#[test]
fn a_remedy_that_is_made_leaves_what_was_claimed() {
    let days = forty_days("remedies");
    let remedies = ["remedies", PROJECT, "--weather", &days];
    let told = answer(&[&remedies[..], &["--json"]].concat(), 10);
    let told = &told["runs"][0]["remedies"];
    let first = &told["remedies"][0];
    assert_eq!(first["meets_target"], true, "cures come first");
    assert!(
        first["misses"].as_array().is_some_and(Vec::is_empty),
        "{first}"
    );
    let folder = std::env::temp_dir().join(format!("dewrun-remedies-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let out = folder.join("changed.json").display().to_string();
    ends(
        &[&remedies[..], &["--apply", "1", "--out", &out]].concat(),
        0,
    );
    let year = answer(&["year", &out, "--weather", &days, "--json"], 10);
    let sum = &year["runs"][0]["year"]["whole"];
    let close = |one: &Value, other: &Value| {
        let (one, other) = (
            one.as_f64().expect("a number"),
            other.as_f64().expect("a number"),
        );
        (one - other).abs() <= 1e-6 * other.abs().max(1e-3)
    };
    let left = &first["left"]["year"];
    assert!(
        close(&sum["wet_hours"], &left["wet_hours"]),
        "{sum} for {left}"
    );
    // The changed run meets the target, so that nothing has to be done any more.
    let again = answer(&["remedies", &out, "--weather", &days, "--json"], 0);
    let again = &again["runs"][0]["remedies"];
    assert_eq!(again["is_met"], true, "{again}");
    assert!(
        close(&again["before"]["year"]["water_kg"], &left["water_kg"]),
        "{again}"
    );
    fs::remove_dir_all(&folder).expect("it is ours");
}

#[test]
fn what_is_wrong_is_told() {
    let said = ends(&["remedies", PROJECT, "--target", "tea"], 2);
    assert!(
        said.complaint.contains("no part of a target"),
        "{}",
        said.complaint
    );
    ends(&["remedies", "demo/nothing-there.json"], 1);
    let days = forty_days("remedies-wrong");
    let said = ends(
        &["remedies", PROJECT, "--weather", &days, "--apply", "99"],
        2,
    );
    assert!(
        said.complaint.contains("no remedy 99"),
        "{}",
        said.complaint
    );
}
