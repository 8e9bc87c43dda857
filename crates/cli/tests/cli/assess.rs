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

/// A trap that drains itself, at the low point of the humid make-up air.
const TRAP: &str = "\"traps\": [{\"at_m\": {\"value\": 5.2, \"origin\": \"typed\"}, \"kind\": \"self_draining\"}], \"legs\": [";

#[test]
fn a_blind_run_ends_with_20_a_wet_one_with_10_and_a_dry_one_with_0() {
    let said = ends(&["assess", "-"], WET, 20);
    assert!(
        said.out
            .starts_with("This detector may not be sampling the duct: the low point at 5.2"),
        "blindness leads: {}",
        said.out
    );
    assert!(said.complaint.is_empty(), "nothing to complain of");
    ends(&["assess", "-", "--json"], WET, 20);
    ends(&["assess", "-", "--run", "mu-1"], WET, 20);
    let drained = with(WET, "\"legs\": [", TRAP);
    let said = ends(&["assess", "-"], &drained, 10);
    assert!(
        !said.out.contains("may not be sampling"),
        "wet alone: {}",
        said.out
    );
    ends(&["assess", "-"], DRY, 0);
}

#[test]
fn of_several_the_worst_counts() {
    let (wet, dry) = ("demo/make-up-air.json", "demo/chilled-supply.json");
    ends(&["assess", dry, wet], "", 20);
    ends(&["assess", wet, dry], "", 20);
    ends(&["assess", dry, "demo/README.md", wet], "", 1);
}

/// Where nothing flows as fitted no reading is a part of it, and the answer stands all the same.
#[test]
fn a_run_without_flow_is_blind_and_written() {
    let still = with(
        WET,
        "\"value\": 30.0,\n          \"origin\": {\n            \"measured\"",
        "\"value\": 0.0,\n          \"origin\": {\n            \"measured\"",
    );
    for words in [&["assess", "-"][..], &["assess", "-", "--json"]] {
        let said = dewrun_reading(words, still.as_bytes());
        assert!(
            said.status == 20,
            "{words:?}: {} {}",
            said.status,
            said.complaint
        );
        assert!(said.complaint.is_empty(), "{words:?}: {}", said.complaint);
    }
}

/// What keeps water and air from being answered is said at its field, and the rest is answered all the same.
#[test]
fn wrong_geometry_is_told_at_its_field() {
    let fails = |text: &str, sentence: &str| {
        let said = ends(&["assess", "-"], text, 1);
        assert!(said.complaint.contains(sentence), "{}", said.complaint);
        said
    };
    let off = TRAP.replace("5.2", "50");
    let said = fails(
        &with(WET, "\"legs\": [", &off),
        "runs[0].intake.traps[0].at_m: the trap lies at 50 m, must be from 0 to 12.1 m",
    );
    assert!(
        said.out.contains("g/h of water forms"),
        "the water that forms is told: {}",
        said.out
    );
    let point = |q: f64, p: f64| {
        format!(
            "{{\"flow_l_min\": {{\"value\": {q}, \"origin\": \"typed\"}}, \"pressure_pa\": {{\"value\": {p}, \"origin\": \"typed\"}}}}"
        )
    };
    let fan = |points: [(f64, f64); 6]| {
        let points = points.map(|(q, p)| point(q, p)).join(", ");
        with(
            WET,
            "\"intake\": {",
            &format!("\"air_path\": {{\"fan\": [{points}]}}, \"intake\": {{"),
        )
    };
    fails(
        &fan([
            (0.0, 300.0),
            (20.0, 200.0),
            (20.0, 150.0),
            (30.0, 100.0),
            (40.0, 50.0),
            (50.0, 0.0),
        ]),
        "runs[0].air_path.fan: the flows of the fan curve must rise: 20 L/min follows 20 L/min",
    );
    fails(
        &fan([
            (0.0, 40.0),
            (8.0, 15.0),
            (15.0, 20.0),
            (22.0, 300.0),
            (30.0, 280.0),
            (60.0, 0.0),
        ]),
        "runs[0].air_path.fan: the fan can settle at",
    );
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
