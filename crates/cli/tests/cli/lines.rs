//! `lines`: one answer for each line, in order, whatever is on it.

use serde_json::Value;

use crate::running::{Said, dewrun, dewrun_reading};

const WET: &str = include_str!("../../../../demo/make-up-air.json");
const DRY: &str = include_str!("../../../../demo/chilled-supply.json");

/// A document on one line.
fn on_one_line(text: &str) -> String {
    let value: Value = serde_json::from_str(text).expect("an example is JSON");
    value.to_string()
}

#[track_caller]
fn answers(said: &Said) -> Vec<Value> {
    let read = |line: &str| serde_json::from_str(line).expect("every answer is JSON on one line");
    said.out.lines().map(read).collect()
}

#[test]
fn order_is_kept_and_a_bad_line_stops_nothing() {
    let text = format!(
        "{}\n\nnot a project\n{}\n{{\"format\":\"x\"}}\n{}",
        on_one_line(WET),
        on_one_line(DRY),
        on_one_line(WET)
    );
    let said = dewrun_reading(&["lines"], text.as_bytes());
    assert_eq!(said.status, 1, "a bad line is the worst");
    let answers = answers(&said);
    let seen: Vec<(u64, &str)> = answers
        .iter()
        .map(|answer| {
            let verdict = answer["runs"][0]["steady"]["verdict"].as_str();
            let what = verdict.or_else(|| answer["error"].is_object().then_some("error"));
            (
                answer["line"].as_u64().unwrap_or(0),
                what.unwrap_or("nothing"),
            )
        })
        .collect();
    assert_eq!(
        seen,
        [
            (1, "wet"),
            (3, "error"),
            (4, "dry"),
            (5, "error"),
            (6, "wet")
        ],
        "line by line"
    );
    for answer in &answers {
        assert_eq!(answer["format"], "dewrun-answer", "each names its format");
        assert_eq!(
            (answer["version"].as_u64(), answer["revision"].as_u64()),
            (Some(1), Some(8)),
            "and its version"
        );
    }
    assert_eq!(
        answers[1]["error"]["text_column"], 2,
        "where the text is wrong"
    );
}

#[test]
fn blind_lines_end_with_20_and_no_lines_with_0() {
    assert_eq!(
        dewrun_reading(&["lines"], on_one_line(WET).as_bytes()).status,
        20,
        "wet and blind"
    );
    assert_eq!(
        dewrun_reading(&["lines", "-"], on_one_line(DRY).as_bytes()).status,
        0,
        "dry"
    );
    assert_eq!(
        dewrun_reading(&["lines"], b"\n \n").status,
        0,
        "nothing to answer"
    );
    let said = dewrun(&["lines", "demo/nothing-there.jsonl"]);
    assert_eq!(said.status, 1, "no such file");
    assert!(
        said.complaint
            .starts_with("dewrun: demo/nothing-there.jsonl: "),
        "and says which: {}",
        said.complaint
    );
}

#[test]
fn a_line_longer_than_any_project_is_passed_over() {
    let mut text = vec![b'['; 9 * 1024 * 1024];
    text.push(b'\n');
    text.extend(on_one_line(DRY).into_bytes());
    let said = dewrun_reading(&["lines"], &text);
    let answers = answers(&said);
    assert_eq!(answers.len(), 2, "each line has its answer");
    let sentence = answers[0]["error"]["sentence"].as_str().unwrap_or("");
    assert!(
        sentence.contains("bytes long, must be at most"),
        "{sentence}"
    );
    assert_eq!(
        answers[1]["runs"][0]["steady"]["verdict"], "dry",
        "the next is answered"
    );
}

#[test]
fn a_profile_is_given_where_it_is_asked_for() {
    let line = on_one_line(WET);
    let points = |words: &[&str]| {
        let said = dewrun_reading(words, line.as_bytes());
        answers(&said)[0]["runs"][0]["steady"]["intake"]["profile"]
            .as_array()
            .map(Vec::len)
    };
    assert_eq!(points(&["lines"]), None, "not by itself");
    assert!(
        points(&["lines", "--profile"]).is_some_and(|points| 10 <= points),
        "two for each of five legs at least"
    );
}

#[test]
fn figures_are_those_of_assess() {
    let one = dewrun_reading(&["lines"], on_one_line(WET).as_bytes());
    let other = dewrun(&["assess", "demo/make-up-air.json", "--json"]);
    let whole: Value = serde_json::from_str(&other.out).expect("an answer is JSON");
    assert_eq!(answers(&one)[0]["runs"], whole["runs"], "the same runs");
    assert_eq!(
        whole["file"], "demo/make-up-air.json",
        "with the file it came from"
    );
}
