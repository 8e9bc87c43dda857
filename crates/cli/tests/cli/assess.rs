//! How `assess` ends: dry, wet, failed, wrong command line.

use crate::running::{Said, dewrun, dewrun_reading};

const WET: &str = include_str!("../../../../demo/make-up-air.json");
const DRY: &str = include_str!("../../../../demo/chilled-supply.json");

#[track_caller]
fn ends(words: &[&str], input: &str, status: i32) -> Said {
    let said = dewrun_reading(words, input.as_bytes());
    assert_eq!(
        said.status, status,
        "dewrun {words:?}: {}{}",
        said.out, said.complaint
    );
    said
}

/// A copy of an example with some of its text replaced.
#[track_caller]
fn with(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "the example holds `{from}`");
    text.replacen(from, to, 1)
}

#[test]
fn a_wet_run_ends_with_10_and_a_dry_one_with_0() {
    let said = ends(&["assess", "-"], WET, 10);
    assert!(said.complaint.is_empty(), "nothing to complain of");
    ends(&["assess", "-"], DRY, 0);
    ends(&["assess", "-", "--json"], WET, 10);
    ends(&["assess", "-", "--run", "mu-1"], WET, 10);
}

#[test]
fn of_several_the_worst_counts() {
    let (wet, dry) = ("demo/make-up-air.json", "demo/chilled-supply.json");
    ends(&["assess", dry, wet], "", 10);
    ends(&["assess", wet, dry], "", 10);
    ends(&["assess", dry, "demo/README.md", wet], "", 1);
}

#[test]
fn a_bad_project_does_not_stop_the_others() {
    let said = ends(
        &["assess", "demo/README.md", "demo/chilled-supply.json"],
        "",
        1,
    );
    assert!(
        said.out.contains("Supply duct") || said.out.contains("Chilled supply"),
        "the second is answered: {}",
        said.out
    );
    assert!(
        said.complaint.contains("demo/README.md:1:1: not JSON"),
        "the first is named with line and column: {}",
        said.complaint
    );
}

#[test]
fn what_the_physics_refuses_is_named_at_its_field() {
    let steep = with(
        WET,
        "\"rise_m\": {\n              \"value\": -1.5,",
        "\"rise_m\": {\n              \"value\": -1.7,",
    );
    let said = ends(&["assess", "-"], &steep, 1);
    assert!(
        said.complaint
            .starts_with("dewrun: standard input: runs[0].intake.legs[4].rise_m: "),
        "{}",
        said.complaint
    );
    let foggy = with(WET, "\"value\": 26.0", "\"value\": 36.0");
    let said = ends(&["assess", "-"], &foggy, 1);
    assert!(
        said.complaint.starts_with(
            "dewrun: standard input: runs[0].duct.air: dew point of 36 \u{b0}C is above"
        ),
        "{}",
        said.complaint
    );
}

#[test]
fn a_project_without_a_run_says_so() {
    let (head, _) = WET.split_once("\"runs\": [").expect("the example has runs");
    let said = ends(&["assess", "-"], &format!("{head}\"runs\": []}}"), 1);
    assert_eq!(
        said.complaint,
        "dewrun: standard input: runs: has no entries, must have at least one run\n",
        "and what would be right"
    );
}

#[test]
fn wrong_command_lines_end_with_2() {
    for words in [
        &["assess"][..],
        &[],
        &["assess", "x", "--units", "metric"],
        &["air", "-t", "20"],
        &["lines", "--quick"],
    ] {
        ends(words, "", 2);
    }
}

#[test]
fn nothing_is_computed_for_help_and_version() {
    assert_eq!(
        dewrun(&["--version"]).status,
        0,
        "the version is no failure"
    );
    assert_eq!(dewrun(&["lines", "--help"]).status, 0, "nor is help");
}
