//! The section Sheets as it is asked for: what is expected, what a form says, and the project with a visit more.

use dewrun_document::{Origin, Project, read};
use dewrun_workshop::{Answer, Workshop};

const DEMO: &str = include_str!("../../../demo/make-up-air.json");
const STYLE: [f64; 2] = [0.0, 0.0];

#[track_caller]
fn text(kind: &str, project: &str, numbers: &[f64]) -> String {
    match Workshop::default().ask(kind, project, 0, numbers) {
        Answer::Text(text) => text,
        other => panic!("{kind}: {other:?}"),
    }
}

/// A kind with the fields of a form behind it.
fn with(kind: &str, fields: &[(&str, &str)]) -> String {
    let fields: Vec<String> = fields
        .iter()
        .map(|(name, text)| format!("{name}\u{1e}{text}"))
        .collect();
    format!("{kind} {}", fields.join("\u{1f}"))
}

/// What is said under each field, and whether it is wrong.
#[track_caller]
fn told(fields: &[(&str, &str)]) -> Vec<(String, bool, String)> {
    let lines = text(&with("visit-told", fields), DEMO, &STYLE);
    let lines = lines.split('\u{1f}').map(|line| {
        let parts: Vec<&str> = line.split('\u{1e}').collect();
        let [name, sign, words] = parts.as_slice() else {
            panic!("three parts in {line:?}");
        };
        ((*name).to_owned(), *sign == "wrong", (*words).to_owned())
    });
    lines.collect()
}

#[track_caller]
fn said(fields: &[(&str, &str)], name: &str) -> (bool, String) {
    let found = told(fields).into_iter().find(|(known, ..)| known == name);
    let (_, is_wrong, words) = found.unwrap_or_else(|| panic!("{name} says something"));
    // What is expected opens to where it comes from; read as a person reads it.
    let plain = words
        .split('<')
        .filter_map(|piece| Some(piece.split_once('>')?.1));
    let plain: String = plain.collect();
    (is_wrong, if plain.is_empty() { words } else { plain })
}

#[test]
fn an_empty_field_says_what_is_expected_and_a_filled_one_what_it_means() {
    let (is_wrong, words) = said(&[], "airflow_l_min");
    assert!(!is_wrong && words.starts_with("Expected 29.3 ("), "{words}");
    let (is_wrong, words) = said(&[("airflow_l_min", "5")], "airflow_l_min");
    assert!(!is_wrong && words.starts_with("Below the span"), "{words}");
    let service = said(&[("airflow_l_min", "24")], "airflow_l_min");
    assert!(
        service.1.starts_with("Within"),
        "a filter in use: {service:?}"
    );
    let fitted = [("airflow_l_min", "24"), ("occasion", "as_fitted")];
    let fitted = said(&fitted, "airflow_l_min");
    assert!(fitted.1.starts_with("Below"), "a new one: {fitted:?}");
    let (is_wrong, words) = said(&[("water-0", "three cups")], "water-0");
    assert!(is_wrong, "{words}");
}

#[test]
fn a_visit_is_put_into_the_project() {
    let fields = [
        ("on", "2026-08-30"),
        ("by", "J. Orre"),
        ("occasion", "as_fitted"),
        ("airflow_l_min", "28.5"),
        ("duct_static_pa", "-62"),
    ];
    let project = text(&with("with-visit", &fields), DEMO, &STYLE);
    let project: Project = read(&project).expect("a project");
    let run = &project.runs[0];
    assert_eq!(run.visits.len(), 1, "one visit");
    let flow = &run.flow.volume_l_min;
    assert_eq!(flow.value, 28.5, "the airflow as fitted");
    assert!(
        matches!(&flow.origin, Origin::Measured { on, by } if on == "2026-08-30" && by == "J. Orre"),
        "measured"
    );
    assert_eq!(run.duct.static_pa.value, -62.0, "and the duct's pressure");
    let shown = text(
        "sheets",
        &dewrun_document::write(&project).expect("within limits"),
        &STYLE,
    );
    assert!(
        shown.contains("2026-08-30, J. Orre, fitted"),
        "it is listed"
    );
}

#[test]
fn what_is_wrong_in_a_form_comes_back_and_nothing_else_does() {
    let fields = [("on", "2026-08-30"), ("airflow_l_min", "much")];
    let answer = text(&with("with-visit", &fields), DEMO, &STYLE);
    assert!(
        answer.starts_with('\u{1f}') && answer.contains("airflow_l_min\u{1e}wrong\u{1e}"),
        "{answer:?}"
    );
    let fields = [("on", "30 August"), ("airflow_l_min", "29")];
    let answer = text(&with("with-visit", &fields), DEMO, &STYLE);
    assert!(
        answer.starts_with('\u{1f}') && answer.contains("30 August"),
        "no such day: {answer:?}"
    );
}

#[test]
fn the_stopwatch_is_told_with_its_moments() {
    let parts = |pressed: &[f64]| -> Vec<String> {
        let numbers = [&STYLE, pressed].concat();
        text("stopwatch ", DEMO, &numbers)
            .split('\u{1f}')
            .map(str::to_owned)
            .collect()
    };
    assert_eq!(
        parts(&[7.0])[..2],
        ["Smoke is at the duct", "0.0\u{a0}s"],
        "it stands"
    );
    let timed = parts(&[99.0, 10.0, 14.3, 22.0]);
    assert_eq!(timed[0], "Time again", "three presses");
    assert_eq!(timed[1], "12.0\u{a0}s", "the last time");
    assert!(
        timed[2].contains("First smoke after 4.3\u{a0}s: within"),
        "{}",
        timed[2]
    );
    assert_eq!(timed[3..], ["4.3", "12.0"], "for the form");
}

#[test]
fn the_card_is_made_for_the_paper_and_the_page_asked_for() {
    let fields = [
        ("paper", "letter"),
        ("page", "https://example.org/"),
        ("revision", "B"),
        ("date", "2026-08-30"),
    ];
    let body = text(&with("site-card", &fields), DEMO, &STYLE);
    assert!(
        body.contains("dw-card__sheet--letter") && body.contains("B 2026-08-30"),
        "as asked"
    );
    assert!(body.contains("Opens this run"), "the code has a page");
    assert!(
        !body.contains("style=\""),
        "the content policy refuses styles"
    );
    let whole = text(&with("site-document", &fields), DEMO, &STYLE);
    assert!(
        whole.starts_with("<!DOCTYPE html>") && whole.contains(&body),
        "the same, by itself"
    );
}
