//! The committed schema files are those of the code.

use dewrun_document::{
    air_schema, answer_schema, limits, project_schema, troubles_schema, weather_schema,
};
use serde_json::Value;

#[test]
fn the_schema_of_the_project_is_published() {
    let committed = include_str!("../schema/dewrun-project-1.json");
    assert!(
        project_schema() == committed,
        "write it anew with `dewrun schema project`"
    );
}

#[test]
fn the_schema_of_answers_is_published() {
    let committed = include_str!("../schema/dewrun-answer-1.json");
    assert!(
        answer_schema() == committed,
        "write it anew with `dewrun schema answer`"
    );
}

#[test]
fn the_schema_of_an_air_is_published() {
    let committed = include_str!("../schema/dewrun-air-1.json");
    assert!(
        air_schema() == committed,
        "write it anew with `dewrun schema air`"
    );
}

#[test]
fn the_schema_of_a_weather_file_is_published() {
    let committed = include_str!("../schema/dewrun-weather-1.json");
    assert!(
        weather_schema() == committed,
        "write it anew with `dewrun schema weather`"
    );
}

#[test]
fn the_schema_of_troubles_is_published() {
    let committed = include_str!("../schema/dewrun-troubles-1.json");
    assert!(
        troubles_schema() == committed,
        "write it anew with `dewrun schema troubles`"
    );
}

#[test]
fn every_limit_stands_in_the_schema() {
    let schema: Value = serde_json::from_str(&project_schema()).unwrap_or_default();
    let text = schema.to_string();
    let with_origin = limits::FIELDS.iter().chain(&limits::READINGS);
    let with_origin = with_origin.chain(&limits::YEAR);
    let with_origin = with_origin.map(|one| (one, "\"value\":{"));
    let plain = limits::PLAIN
        .iter()
        .chain(&limits::YEAR_PLAIN)
        .map(|one| (one, ""));
    for ((name, limits), around) in with_origin.chain(plain) {
        let limited = format!(
            "{around}\"maximum\":{:?},\"minimum\":{:?}",
            limits.max, limits.min
        );
        let name = name.rsplit('.').next().unwrap_or(name);
        assert!(
            text.contains(&format!("\"{name}\":")) && text.contains(&limited),
            "{name} and {limited}"
        );
    }
}
