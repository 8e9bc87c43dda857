//! Sheets: the site card as a document, with the ending of `assess`.

use std::fs;

use crate::running::{dewrun, dewrun_reading};

const DEMO: &str = "demo/make-up-air.json";

#[test]
fn a_card_is_a_whole_document_and_ends_as_assess_does() {
    for demo in [DEMO, "demo/chilled-supply.json", "demo/sagging-tube.json"] {
        let said = dewrun(&["sheet", "site", demo, "--page", "https://example.org/"]);
        let assessed = dewrun(&["assess", demo]);
        assert_eq!(said.status, assessed.status, "{demo}: {}", said.complaint);
        assert!(
            said.out.starts_with("<!DOCTYPE html>") && said.out.ends_with("</html>\n"),
            "{demo}: from head to foot"
        );
        assert!(!said.out.contains("<script"), "{demo}: nothing runs in it");
        assert!(
            said.out.contains("data:font/woff2;base64,"),
            "{demo}: with its typeface"
        );
    }
}

#[test]
fn a_card_is_written_where_it_is_wanted() {
    let path = std::env::temp_dir().join(format!("dewrun-card-{}.html", std::process::id()));
    let name = path.to_string_lossy().into_owned();
    let said = dewrun(&["sheet", "site", DEMO, "--out", &name, "--paper", "letter"]);
    let written = fs::read_to_string(&path);
    let _ = fs::remove_file(&path);
    assert_eq!(
        (said.status, said.out.as_str()),
        (20, ""),
        "{}",
        said.complaint
    );
    let written = written.expect("the file is there");
    assert!(written.contains("size: letter"), "on the paper asked for");
    let nowhere = dewrun(&["sheet", "site", DEMO, "--out", "no/such/folder/card.html"]);
    assert_eq!(nowhere.status, 1, "a file that can't be written");
    assert!(
        nowhere
            .complaint
            .starts_with("dewrun: no/such/folder/card.html: "),
        "is named: {}",
        nowhere.complaint
    );
}

#[test]
fn the_run_asked_for_has_its_card_alone() {
    let text = fs::read_to_string(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../",
        "demo/make-up-air.json"
    ));
    let text = text.expect("the example is there");
    let (before, runs) = text.split_once("\"runs\": [").expect("it has runs");
    let run = runs
        .trim_end()
        .trim_end_matches('}')
        .trim_end()
        .trim_end_matches(']');
    let second = run.replacen("\"id\": \"mu-1\"", "\"id\": \"mu-2\"", 1);
    let two = format!("{before}\"runs\": [{run},{second}]\n}}\n");
    let sheets = |words: &[&str]| {
        let said = dewrun_reading(words, two.as_bytes());
        said.out.matches("<article").count()
    };
    assert_eq!(sheets(&["sheet", "site", "-"]), 2, "each run has a card");
    assert_eq!(
        sheets(&["sheet", "site", "-", "--run", "mu-2"]),
        1,
        "one alone"
    );
    let none = dewrun_reading(&["sheet", "site", "-", "--run", "mu-3"], two.as_bytes());
    assert_eq!(none.status, 1, "no such run");
    assert_eq!(none.out, "", "no card");
    assert!(
        none.complaint.contains("there is no run `mu-3`"),
        "{}",
        none.complaint
    );
}

#[test]
fn what_has_no_answer_has_no_card() {
    let wrong = fs::read_to_string(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../",
        "demo/make-up-air.json"
    ));
    let wrong = wrong
        .expect("the example is there")
        .replacen("\"value\": 4.2", "\"value\": 0", 1);
    let said = dewrun_reading(&["sheet", "site", "-"], wrong.as_bytes());
    assert_eq!((said.status, said.out.as_str()), (1, ""), "nothing half");
    assert!(
        said.complaint
            .contains("runs[0].intake.legs[1].length_m: length is 0 m"),
        "at its field: {}",
        said.complaint
    );
}
