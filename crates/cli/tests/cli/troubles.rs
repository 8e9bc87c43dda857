//! `troubles`: the example's log to its cause and the next check, answers alone, what was seen, and how it ends.

use serde_json::Value;

use crate::running::{Said, dewrun, dewrun_reading};

const LOG: &str = "demo/laundry-exhaust-log.csv";
const PROJECT: [&str; 5] = [
    "--project",
    "demo/laundry-exhaust.json",
    "--members",
    "8",
    "--json",
];

#[track_caller]
fn answer(said: &Said) -> Value {
    assert_eq!(said.status, 0, "{}", said.complaint);
    let answer: Value = serde_json::from_str(&said.out).expect("it is JSON");
    answer["troubles"].clone()
}

fn troubles(words: &[&str]) -> Value {
    let words: Vec<&str> = core::iter::once("troubles")
        .chain(words.iter().copied())
        .chain(PROJECT)
        .collect();
    answer(&dewrun(&words))
}

fn share(troubles: &Value, cause: &str) -> f64 {
    let mut causes = troubles["causes"].as_array().expect("causes").iter();
    let cause = causes.find(|one| one["id"] == cause).expect("each cause");
    cause["share"].as_f64().expect("a number")
}

#[test]
fn the_example_is_water_in_its_low_point() {
    let troubles = troubles(&[LOG]);
    assert_eq!(troubles["causes"][0]["id"], "low_point_water", "{troubles}");
    assert_eq!(troubles["too_few"], false, "a season of them");
    let entries = troubles["entries"].as_array().expect("entries");
    assert_eq!(entries.len(), 17, "as many as the file has rows");
    assert_eq!(entries[0]["at"], "2001-09-12T07:20", "the day first");
    assert_eq!(entries[1]["water_g"], 95.0, "as the note says");
    assert_eq!(entries[3]["day_only"], true, "no hour beside it");
    let all: f64 = (troubles["causes"].as_array().expect("causes").iter())
        .map(|one| one["share"].as_f64().expect("a number"))
        .sum();
    assert!((all - 100.0).abs() < 1e-6, "{all}");
    let check = &troubles["next_checks"][0];
    assert!(
        check["outcomes"]
            .as_array()
            .is_some_and(|outcomes| 1 < outcomes.len()),
        "{check}"
    );
}

/// Without a log the project's note ranks; what is answered on the command line goes before it; what was seen moves the shares.
#[test]
fn answers_and_outcomes_move_shares() {
    let alone = troubles(&[]);
    assert_eq!(
        (&alone["troubles"], &alone["too_few"]),
        (&0.into(), &true.into()),
        "{alone}"
    );
    let high = troubles(&["--answer", "trouble=airflow-high"]);
    assert!(
        share(&alone, "filter_missing") < share(&high, "filter_missing"),
        "{high}"
    );
    let seen = troubles(&["--seen", "empty_and_measure=2"]);
    assert!(
        share(&seen, "low_point_water") < share(&alone, "low_point_water"),
        "{seen}"
    );
}

/// A clock that is put forward and back: 25 March and 28 October 2001 are Sundays.
#[test]
fn hours_that_never_were_and_came_twice_are_told() {
    let list = "2001-03-25 02:30;airflow low\n2001-10-28 02:30;airflow low\n2001-07-01 06:00;airflow low\nno date;x\n2001-07-02 07:00;hm\n";
    let clock = [
        "--clock-offset",
        "1",
        "--daylight-saving",
        "3,last,sun,2:10,last,sun,3",
    ];
    let words: Vec<&str> = ["troubles", "-"]
        .into_iter()
        .chain(PROJECT)
        .chain(clock)
        .collect();
    let told = answer(&dewrun_reading(&words, list.as_bytes()));
    let read = told["read"].to_string();
    for part in ["never was", "came twice", "line 4", "line 5"] {
        assert!(read.contains(part), "{part} in {read}");
    }
    let summer = &told["entries"][1]["at"];
    assert_eq!(
        summer, "2001-07-01T05:00",
        "an hour behind, on the clock of the weather"
    );
}

#[test]
fn what_is_wrong_is_told() {
    let ends = |words: &[&str], status: i32, part: &str| {
        let all: Vec<&str> = core::iter::once("troubles")
            .chain(words.iter().copied())
            .chain(PROJECT)
            .collect();
        let said = dewrun(&all);
        assert_eq!(said.status, status, "{words:?}: {}", said.complaint);
        assert!(
            said.complaint.contains(part),
            "{words:?}: {}",
            said.complaint
        );
    };
    ends(
        &["demo/README.md"],
        1,
        "no line of the list begins with a date",
    );
    ends(&["demo/no-such-log.csv"], 1, "no-such-log.csv");
    ends(&["--answer", "trouble=draught"], 2, "no such answer");
    ends(
        &["--seen", "empty_and_measure=9"],
        2,
        "outcomes count from 1",
    );
    ends(&["--means", "draught=wind"], 2, "no such kind");
    ends(&["--daylight-saving", "march"], 2, "3,last,sun,2");
}
