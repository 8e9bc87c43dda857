//! `diagram`: every drawing by itself as SVG, and what is drawn as CSV with the figures of the answer.

use serde_json::Value;

use crate::running::{Said, dewrun};

const YEAR: &str = "demo/gull-harbour-roof.json";
const KINDS: [&str; 6] = [
    "elevation",
    "profile",
    "dew-square",
    "pressure",
    "limits",
    "year",
];

#[track_caller]
fn drawn(words: &[&str]) -> Said {
    let words: Vec<&str> = ["diagram"].iter().chain(words).copied().collect();
    let said = dewrun(&words);
    assert_eq!(said.status, 0, "{words:?}: {}", said.complaint);
    said
}

/// The rows of a table by column.
#[track_caller]
fn columns(csv: &str) -> Vec<(String, Vec<String>)> {
    let mut lines = csv.lines();
    let heads = lines.next().expect("a head").split(',');
    let mut found: Vec<(String, Vec<String>)> =
        heads.map(|head| (head.to_owned(), Vec::new())).collect();
    for line in lines {
        let cells: Vec<&str> = line.split(',').collect();
        assert_eq!(cells.len(), found.len(), "a cell for each column: {line}");
        for ((_, column), cell) in found.iter_mut().zip(cells) {
            column.push(cell.to_owned());
        }
    }
    found
}

#[test]
fn every_drawing_stands_by_itself() {
    for kind in KINDS {
        let svg = drawn(&[kind, YEAR]).out;
        assert!(
            svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""),
            "{kind}"
        );
        assert!(svg.trim_end().ends_with("</svg>"), "{kind} is whole");
        assert!(
            svg.contains("<title") && svg.contains("<desc"),
            "{kind} says what it shows"
        );
        let styled = svg.split_once("<style>").expect("its style").1;
        assert!(
            styled.contains("--water:#03426b"),
            "{kind} brings its colours"
        );
        assert!(styled.contains("@font-face"), "{kind} brings its letters");
        assert!(!svg.contains("href="), "{kind} fetches nothing");
        assert_eq!(svg.matches("<svg").count(), 1, "{kind} is one drawing");
    }
    let exhaust = drawn(&["profile", YEAR, "--tube", "exhaust"]).out;
    assert_ne!(exhaust, drawn(&["profile", YEAR]).out, "of the other tube");
}

#[test]
fn what_is_drawn_is_that_of_the_answer() {
    let said = dewrun(&["assess", YEAR, "--json", "--profile"]);
    let answer: Value = serde_json::from_str(&said.out).expect("it is JSON");
    let steady = &answer["runs"][0]["steady"];
    let number = |value: &Value| value.as_f64().expect("a number");
    let parsed = |cells: &[String]| -> Vec<f64> {
        cells
            .iter()
            .map(|cell| cell.parse().expect("a number"))
            .collect()
    };
    let check = |kind: &str, name: &str, expected: Vec<f64>| {
        let all = columns(&drawn(&[kind, YEAR, "--csv"]).out);
        let (_, cells) = all.iter().find(|(head, _)| head == name).expect(name);
        assert_eq!(parsed(cells), expected, "{kind}, {name}");
    };
    let points = steady["intake"]["profile"].as_array().expect("points");
    let of = |name: &str| {
        points
            .iter()
            .map(|point| number(&point[name]))
            .collect::<Vec<f64>>()
    };
    check("profile", "x_m", of("x_m"));
    check("profile", "air_c", of("air_c"));
    check("profile", "inner_wall_c", of("inner_wall_c"));
    let legs = steady["intake"]["legs"].as_array().expect("legs");
    let water = legs
        .iter()
        .map(|leg| number(&leg["condensate_g_h"]))
        .collect();
    check("elevation", "water_g_h", water);
    let air = &steady["airflow"];
    let both = ["states", "faults"]
        .iter()
        .flat_map(|kind| air[kind].as_array().expect("a list"));
    check(
        "limits",
        "flow_l_min",
        both.map(|one| number(&one["flow_l_min"])).collect(),
    );
}

#[test]
fn columns_of_a_year_are_those_of_the_year() {
    let hours = dewrun(&["year", YEAR, "--csv"]).out;
    assert_eq!(drawn(&["year", YEAR, "--csv"]).out, hours, "every hour");
    for kind in ["dew-square", "pressure"] {
        let all = columns(&drawn(&[kind, YEAR, "--csv"]).out);
        assert!(
            all.iter().all(|(_, cells)| 5 < cells.len()),
            "{kind} has rows"
        );
    }
}

#[test]
fn what_can_not_be_drawn_is_said() {
    let no_weather = dewrun(&["diagram", "year", "demo/make-up-air.json"]);
    assert_eq!(no_weather.status, 1, "a year needs weather");
    assert!(!no_weather.complaint.is_empty(), "and that is said");
    let nowhere = dewrun(&[
        "diagram",
        "profile",
        YEAR,
        "--out",
        "no/such/folder/profile.svg",
    ]);
    assert_eq!(nowhere.status, 1, "no such folder");
    assert!(
        nowhere.complaint.contains("profile.svg"),
        "{}",
        nowhere.complaint
    );
}
