//! What every command says, word for word, with its numbers masked.

use std::fs;

use crate::masked::masked;
use crate::running::{Said, dewrun, dewrun_reading};

/// Holds what was said against the snapshot of that name.
#[track_caller]
fn hold(name: &str, said: &Said) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/cli"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    let Said {
        status,
        out,
        complaint,
    } = said;
    let text = format!(
        "status {status}\n--- out\n{}--- complaint\n{}",
        masked(out),
        masked(complaint)
    );
    settings.bind(|| insta::assert_snapshot!(name, text));
}

#[test]
fn help() {
    hold("help", &dewrun(&["--help"]));
    hold("help_assess", &dewrun(&["assess", "--help"]));
    hold("help_air", &dewrun(&["air", "--help"]));
    hold("help_figures", &dewrun(&["figures", "--help"]));
    hold("help_lines", &dewrun(&["lines", "--help"]));
    hold("help_link", &dewrun(&["link", "--help"]));
    hold("help_sheet", &dewrun(&["sheet", "site", "--help"]));
    let calculation = dewrun(&["sheet", "calculation", "--help"]);
    hold("help_sheet_calculation", &calculation);
    hold("help_diagram", &dewrun(&["diagram", "--help"]));
    hold("help_year", &dewrun(&["year", "--help"]));
    hold("help_doubt", &dewrun(&["doubt", "--help"]));
    hold("help_remedies", &dewrun(&["remedies", "--help"]));
    hold("help_troubles", &dewrun(&["troubles", "--help"]));
    hold("help_pack", &dewrun(&["pack", "--help"]));
    hold("help_unpack", &dewrun(&["unpack", "--help"]));
    hold("help_weather", &dewrun(&["weather", "--help"]));
    hold("help_schema", &dewrun(&["schema", "--help"]));
}

#[test]
fn answers() {
    hold(
        "assess_make_up_air",
        &dewrun(&["assess", "demo/make-up-air.json"]),
    );
    hold(
        "assess_pool_hall_exhaust",
        &dewrun(&["assess", "demo/pool-hall-exhaust.json"]),
    );
    hold(
        "assess_chilled_supply",
        &dewrun(&["assess", "demo/chilled-supply.json"]),
    );
    hold(
        "assess_sagging_tube",
        &dewrun(&["assess", "demo/sagging-tube.json"]),
    );
    hold(
        "assess_inch_pound",
        &dewrun(&["assess", "demo/make-up-air.json", "--units", "ip"]),
    );
    hold(
        "assess_json",
        &dewrun(&["assess", "demo/chilled-supply.json", "--json"]),
    );
}

#[test]
fn years() {
    let project = "demo/gull-harbour-roof.json";
    hold("year", &dewrun(&["year", project]));
    hold(
        "year_inch_pound",
        &dewrun(&["year", project, "--units", "ip"]),
    );
    hold("year_json", &dewrun(&["year", project, "--json"]));
    hold("year_no_file", &dewrun(&["year", "demo/make-up-air.json"]));
    hold("figure_year", &dewrun(&["figure", "year-water"]));
}

/// So many members tell what decides; forty days are enough for the words.
#[test]
fn doubts() {
    let project = "demo/gull-harbour-roof.json";
    let days = forty_days("doubt");
    let members = ["doubt", project, "--weather", &days, "--members", "128"];
    hold("doubt", &dewrun(&members));
    let few = ["doubt", project, "--weather", &days, "--members", "16"];
    let read = ["--measured", "airflow=29.5", "--measured", "suction=900"];
    let read: Vec<&str> = few.iter().chain(&read).copied().collect();
    hold("doubt_measured", &dewrun(&read));
    hold(
        "doubt_no_file",
        &dewrun(&["doubt", "demo/make-up-air.json"]),
    );
}

#[test]
fn remedies() {
    let days = forty_days("remedies-words");
    let project = "demo/gull-harbour-roof.json";
    hold(
        "remedies",
        &dewrun(&["remedies", project, "--weather", &days]),
    );
    hold(
        "remedies_as_entered",
        &dewrun(&["remedies", "demo/make-up-air.json", "--rank", "work"]),
    );
    let met = ["--target", "wet-hours=900"];
    let met = [&["remedies", project, "--weather", &days][..], &met].concat();
    hold("remedies_met", &dewrun(&met));
}

#[test]
fn troubles() {
    let log = "demo/laundry-exhaust-log.csv";
    let of = ["--project", "demo/laundry-exhaust.json", "--members", "8"];
    let words = ["troubles", log].into_iter().chain(of);
    hold("troubles", &dewrun(&words.collect::<Vec<_>>()));
    let words = ["troubles"].into_iter().chain(of);
    hold("troubles_answers", &dewrun(&words.collect::<Vec<_>>()));
}

/// The head of the invented weather and its readings from 1 July on.
pub(crate) fn forty_days(for_whom: &str) -> String {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/../..");
    let text = fs::read_to_string(format!("{root}/demo/gull-harbour.csv")).expect("the weather");
    let readings = |line: &&str| line.as_bytes().first().is_some_and(u8::is_ascii_digit);
    let head = text.lines().take_while(|line| !readings(line));
    let july = text
        .lines()
        .skip_while(|line| !line.starts_with("2001-07-01"));
    let kept: Vec<&str> = head.chain(july.take(960)).collect();
    let folder = std::env::temp_dir().join(format!("dewrun-{for_whom}-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let path = folder.join("forty-days.csv");
    fs::write(&path, kept.join("\n")).expect("it can be written");
    path.display().to_string()
}

#[test]
fn figures() {
    hold("figures", &dewrun(&["figures"]));
    hold(
        "figure",
        &dewrun(&["figure", "leg-water", "space-temperature"]),
    );
    hold("figure_json", &dewrun(&["figure", "deposit", "--json"]));
    hold("figure_unknown", &dewrun(&["figure", "wetness"]));
}

#[test]
fn airs() {
    hold(
        "air",
        &dewrun(&["air", "--temperature", "32C", "--dew-point", "26C"]),
    );
    hold(
        "air_inch_pound",
        &dewrun(&[
            "air",
            "-t",
            "90",
            "-b",
            "75",
            "--altitude",
            "5000ft",
            "--units",
            "ip",
        ]),
    );
    hold(
        "air_json",
        &dewrun(&["air", "-t", "-5C", "-r", "80%", "--over", "ice", "--json"]),
    );
    hold("air_clipped", &dewrun(&["air", "-t", "20", "-r", "101"]));
}

#[test]
fn complaints() {
    hold("air_same_twice", &dewrun(&["air", "-d", "9", "-w", "7"]));
    hold(
        "air_ill_conditioned",
        &dewrun(&["air", "-b", "9", "-e", "27"]),
    );
    hold("air_above", &dewrun(&["air", "-t", "12", "-d", "16"]));
    hold("air_one_quantity", &dewrun(&["air", "-t", "20"]));
    hold("air_no_number", &dewrun(&["air", "-t", "warm", "-d", "9"]));
    hold("air_wrong_unit", &dewrun(&["air", "-t", "20Pa", "-d", "9"]));
    hold("no_command", &dewrun(&["asess"]));
    hold("no_project", &dewrun(&["assess"]));
    hold("no_file", &dewrun(&["assess", "demo/nothing-there.json"]));
    hold(
        "no_run",
        &dewrun(&["assess", "demo/make-up-air.json", "--run", "mu-9"]),
    );
    hold(
        "not_json",
        &dewrun_reading(&["assess", "-"], b"{\n  \"format\": oops\n}"),
    );
    hold(
        "not_a_project",
        &dewrun_reading(&["assess", "-"], b"{\"format\": \"somebody-else\"}"),
    );
    hold(
        "not_text",
        &dewrun_reading(&["assess", "-"], b"{\"format\": \"\xff\"}"),
    );
}

#[test]
fn weather_files() {
    let file = |name: &str| format!("tests/cases/fixtures/{name}");
    let events = file("L11_events_and_placeholders.csv");
    hold("weather_logger", &dewrun(&["weather", &events]));
    hold("weather_json", &dewrun(&["weather", &events, "--json"]));
    hold("weather_rows", &dewrun(&["weather", &events, "--rows"]));
    hold(
        "weather_epw",
        &dewrun(&["weather", &file("W21_column_counts.epw")]),
    );
    hold(
        "weather_inch_pound",
        &dewrun(&["weather", &file("W08_dew_above_dry.epw"), "--units", "ip"]),
    );
}

#[test]
fn weather_files_that_are_not_read() {
    let complaint = |words: &[&str], input: &[u8]| dewrun_reading(words, input);
    hold("weather_no_file", &dewrun(&["weather", "nowhere.epw"]));
    hold("weather_empty", &complaint(&["weather", "-"], b""));
    hold(
        "weather_no_readings",
        &complaint(&["weather", "-"], b"a,b,c\nd,e,f\n"),
    );
    hold(
        "weather_workbook",
        &complaint(&["weather", "-"], b"PK\x03\x04 and so on"),
    );
    hold(
        "weather_no_air",
        &complaint(
            &["weather", "-"],
            b"time,battery (V)\n2024-06-01 00:00,3.5\n2024-06-01 01:00,3.5\n",
        ),
    );
    hold(
        "weather_no_column",
        &complaint(
            &["weather", "-", "--column", "9=temperature"],
            b"time,t,rh\n2024-06-01 00:00,3.5,80\n2024-06-01 01:00,3.5,80\n",
        ),
    );
    hold(
        "weather_wrong_column",
        &complaint(&["weather", "-", "--column", "3=warmth"], b""),
    );
}
