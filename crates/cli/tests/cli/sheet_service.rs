//! The service card: with the cause that `troubles` tells, or with room for one.

use serde_json::Value;

use crate::running::{Said, dewrun, dewrun_reading};

const LAUNDRY: &str = "demo/laundry-exhaust.json";
const LOG: &str = "demo/laundry-exhaust-log.csv";
/// What every card has, whatever was found.
const PARTS: [&str; 9] = [
    "Service card",
    "Cause",
    "Trap and drain",
    "Intervals and limits",
    "History of visits",
    "Order of checks",
    "Access",
    "Measure and write down",
    "Advice for competent people.",
];

#[track_caller]
fn card(said: &Said) -> &str {
    assert!([0, 10, 20].contains(&said.status), "{}", said.complaint);
    for part in PARTS {
        assert!(said.out.contains(part), "{part}");
    }
    assert!(!said.out.contains("<script"), "nothing runs in it");
    &said.out
}

/// The cause and its share are those of `troubles` for the same log and as many members.
#[test]
fn a_card_says_what_troubles_says() {
    let members = ["--members", "8"];
    let troubles = ["troubles", LOG, "--project", LAUNDRY, "--json"];
    let told = dewrun(&[&troubles[..], &members].concat());
    let told: Value = serde_json::from_str(&told.out).expect("it is JSON");
    let first = &told["troubles"]["causes"][0];
    let said = dewrun(&[&["sheet", "service", LAUNDRY, "--log", LOG][..], &members].concat());
    let card = card(&said);
    let share = first["share"].as_f64().expect("a number");
    let share_told = if 99.0 < share {
        "over 99".to_owned()
    } else {
        format!("{share:.0}")
    };
    // It falls for 1.2 and 3.5 m, and rises from there on.
    let what = "Water in the low point at 4.7\u{a0}m";
    let sentence = format!("{what} explains this log best, {share_told} of 100");
    assert_eq!(first["id"], "low_point_water", "{first}");
    assert!(card.contains(&sentence), "{sentence}: {}", cause_in(card));
    for evidence in first["for"].as_array().expect("sentences").iter().take(3) {
        let evidence = evidence.as_str().expect("a sentence");
        assert!(card.contains(evidence), "{evidence}: {}", cause_in(card));
    }
    let check = told["troubles"]["next_checks"][0]["name"].as_str();
    let check = check.expect("a check has a name");
    assert!(card.contains(check), "{check}: {}", cause_in(card));
}

/// What stands from the head of the cause on.
fn cause_in(card: &str) -> &str {
    let from = card.find(">Cause<").unwrap_or(0);
    let until = card.len().min(from + 1500);
    card.get(from..until).unwrap_or(card)
}

#[test]
fn without_weather_the_cause_is_left_open() {
    let said = dewrun(&["sheet", "service", "demo/make-up-air.json"]);
    let card = card(&said);
    assert!(
        card.contains("No cause has been looked for yet"),
        "{}",
        cause_in(card)
    );
}

#[test]
fn a_log_that_is_not_there_is_named() {
    let said = dewrun(&["sheet", "service", LAUNDRY, "--log", "no/such/log.csv"]);
    assert_eq!((said.status, said.out.as_str()), (1, ""), "no card");
    assert!(
        said.complaint.contains("no/such/log.csv"),
        "{}",
        said.complaint
    );
}

/// The standard input is read once, for the cards and for what is found of their causes.
#[test]
fn a_project_from_standard_input_has_its_card() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json");
    let text = std::fs::read(path).expect("the example is there");
    let said = dewrun_reading(&["sheet", "service", "-"], &text);
    assert_eq!(card(&said).matches("<article").count(), 1, "of its run");
}
