//! Faults of front ends in so far as they lie beneath the page; the browser tests hold the rest of each.

use dewrun_document::{Input, Project, read, write};
use dewrun_quantity::Units;
use dewrun_quantity::measure::TEMPERATURE;
use serde_json::{Value, json};

use super::compare::Comparison;
use super::inputs::Inputs;
use super::report::{Answer, Values};

/// Cases that only a browser can hold, and where it does.
const IN_BROWSER: [(&str, &str); 3] = [
    ("F03", "tests/e2e/keep.test.mjs"),
    ("F07", "tests/e2e/looks.test.mjs"),
    ("F12", "tests/e2e/smoke.test.mjs"),
];

/// The id of a case, with the browser test that holds it where one does.
pub(super) fn with_its_browser_test(id: &str) -> String {
    let found = IN_BROWSER.iter().find(|(known, _)| *known == id);
    found.map_or_else(
        || id.to_owned(),
        |(_, test)| format!("{id} (held by {test})"),
    )
}

const DEMO: &str = include_str!("../../../demo/make-up-air.json");

/// What is made of each text on the way to -1.5 and back; that the text stays as it is typed is held by `tests/e2e/page.test.mjs`.
pub(super) fn half_typed(expected: &Inputs<'_>) -> Result<Answer, String> {
    let texts = expected.raw()["field_text"].as_array();
    let texts = texts.ok_or("the texts are missing")?.iter();
    let parsed: Vec<Value> = texts
        .filter_map(Value::as_str)
        .map(|text| TEMPERATURE.parse(text, Units::Si).ok())
        .map(|taken| json!(taken.map(|taken| (taken.to_celsius() * 1e9).round() / 1e9)))
        .collect();
    let wanted: Vec<Value> = expected.raw()["parsed"]
        .as_array()
        .ok_or("what is made of them is missing")?
        .iter()
        .map(|wanted| json!(wanted.as_f64()))
        .collect();
    let is_it = parsed == wanted;
    Ok(told("parsed", json!(parsed), is_it))
}

/// What is missing stays missing, and what is no number is never written.
pub(super) fn missing_in_a_file(_: &Inputs<'_>) -> Result<Answer, String> {
    let said = |error: dewrun_document::DocumentError| error.sentence();
    let mut project = read(DEMO).map_err(said)?;
    for run in &mut project.runs {
        run.detector.humidity_rating_percent = None;
    }
    let text = write(&project).map_err(said)?;
    let back = read(&text).map_err(said)?;
    let has_words = |text: &str| text.contains("NaN") || text.contains("nfinity");
    let with = |value: f64| -> Option<String> {
        let mut odd: Project = back.clone();
        odd.spaces.first_mut()?.temperature_c = Input::typed(value);
        write(&odd).ok()
    };
    let odd = [f64::NAN, f64::INFINITY].into_iter().filter_map(with);
    let stays = back == project;
    let is_written = has_words(&text) || odd.count() != 0;
    let mut answer = told("round_trip", json!(stays), stays);
    let key = "NaN_or_Infinity_text_in_JSON";
    answer.values.insert(key.to_owned(), json!(is_written));
    answer.comparisons.push(Comparison::fact(key, !is_written));
    Ok(answer)
}

fn told(key: &str, value: Value, holds: bool) -> Answer {
    Answer {
        values: Values::from_iter([(key.to_owned(), value)]),
        comparisons: vec![Comparison::fact(key, holds)],
    }
}
