//! `year`, `pack`, `unpack`, and years in lines: what is answered with the weather file, and what without.

use std::fs;
use std::path::PathBuf;

use serde_json::Value;

use crate::running::{Said, dewrun, dewrun_reading, ends};

const PROJECT: &str = "demo/gull-harbour-roof.json";

fn json(said: &Said) -> Value {
    serde_json::from_str(&said.out).expect("it is JSON")
}

/// A folder of its own with a copy of the example.
fn folder(name: &str) -> (PathBuf, String) {
    let folder = std::env::temp_dir().join(format!("dewrun-year-{name}-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    let project = folder.join("project.json");
    fs::copy(root.join(PROJECT), &project).expect("a copy");
    (folder, project.display().to_string())
}

/// The hours are those of the file, and every sum is the sum of the hours.
#[test]
fn sums_are_those_of_the_hours() {
    let answer = json(&ends(&["year", PROJECT, "--json"], 10));
    let whole = &answer["runs"][0]["year"]["whole"];
    let csv = ends(&["year", PROJECT, "--csv"], 10).out;
    let mut lines = csv.lines();
    let heads: Vec<&str> = lines.next().expect("a head").split(',').collect();
    let rows: Vec<Vec<&str>> = lines.map(|line| line.split(',').collect()).collect();
    assert_eq!(rows.len(), 8760, "an hour a line");
    let column = |name: &str| {
        let at = heads
            .iter()
            .position(|head| *head == name)
            .expect("a column");
        rows.iter()
            .map(move |row| row[at].parse::<f64>().expect("a number"))
    };
    for (name, field) in [
        ("condensed_g", "condensed_g"),
        ("evaporated_g", "evaporated_g"),
        ("ran_off_g", "drained_g"),
    ] {
        let sum: f64 = column(name).sum();
        let told = whole[field].as_f64().expect("a number");
        assert!(
            (sum - told).abs() <= 1e-9 * told,
            "{field}: {sum} and {told}"
        );
    }
    // By definition: more than 0.01 g in the hour.
    let wet = column("condensed_g").filter(|grams| 0.01 < *grams).count();
    assert_eq!(
        whole["wet_hours"].as_f64(),
        u32::try_from(wet).ok().map(f64::from),
        "wet hours"
    );
    let months = whole["months"].as_array().expect("months");
    let of_months: f64 = months
        .iter()
        .filter_map(|month| month["hours"].as_f64())
        .sum();
    assert_eq!((months.len(), of_months), (12, 8760.0), "all of them");
    // The fan is off from 22 to 5 in every night: seven hours of 365 days.
    assert_eq!(
        column("duct_fan_off").sum::<f64>(),
        7.0 * 365.0,
        "by the schedule"
    );
}

#[test]
fn every_number_of_a_year_has_a_figure() {
    let answer = json(&ends(
        &["year", PROJECT, "--json", "--series", "--stress"],
        10,
    ));
    let entries = answer["figures"].as_array().expect("figures");
    let named: Vec<&str> = entries
        .iter()
        .flat_map(|entry| entry["fields"].as_array().into_iter().flatten())
        .filter_map(Value::as_str)
        .collect();
    let mut seen = 0;
    walk("runs[].year", &answer["runs"][0]["year"], &mut |path| {
        seen += 1;
        assert!(named.contains(&path), "{path} has no figure");
    });
    assert!(8760 < seen, "every hour of it: {seen}");
}

fn walk(path: &str, value: &Value, see: &mut impl FnMut(&str)) {
    match value {
        Value::Number(_) => see(path),
        Value::Array(entries) => {
            for entry in entries {
                walk(&format!("{path}[]"), entry, see);
            }
        }
        Value::Object(members) => {
            for (name, member) in members {
                walk(&format!("{path}.{name}"), member, see);
            }
        }
        _ => {}
    }
}

#[test]
fn without_its_file_the_design_states_answer_and_the_file_is_named() {
    let (folder, project) = folder("alone");
    let said = ends(&["year", &project], 1);
    assert!(
        said.out
            .starts_with("The weather file gull-harbour.csv is missing, so there is no year."),
        "{}",
        said.out
    );
    assert!(
        said.out.contains("In the 0.4 % design dew point"),
        "{}",
        said.out
    );
    assert!(
        said.complaint
            .contains("the weather file gull-harbour.csv is missing"),
        "{}",
        said.complaint
    );
    let answer = json(&ends(&["year", &project, "--json"], 1));
    let year = &answer["runs"][0]["year"];
    assert_eq!(year["missing_file"], "gull-harbour.csv", "{year}");
    assert_eq!(
        year["design_states"].as_array().map(Vec::len),
        Some(5),
        "{year}"
    );
    assert!(year["whole"].is_null(), "no year");
    let named = ends(
        &["year", &project, "--weather", "demo/gull-harbour.csv"],
        10,
    );
    assert!(
        named.out.contains("In the weather of Gull Harbour"),
        "{}",
        named.out
    );
    fs::write(
        folder.join("gull-harbour.csv"),
        "time,temperature (C),dew point (C)\n2001-01-01T00:00,5.0,4.0\n2001-01-01T01:00,5.0,4.0\n",
    )
    .expect("another file");
    let other = ends(&["year", &project], 1);
    assert!(
        other
            .complaint
            .contains("is another one than the project names"),
        "{}",
        other.complaint
    );
    fs::remove_dir_all(folder).expect("the folder goes");
}

#[test]
fn a_packed_project_has_its_year_wherever_it_lies() {
    let (folder, project) = folder("packed");
    let packed = folder.join("packed.json").display().to_string();
    let weather = "demo/gull-harbour.csv";
    ends(
        &["pack", &project, "--weather", weather, "--out", &packed],
        0,
    );
    let one = json(&ends(&["year", &packed, "--json"], 10));
    let other = json(&ends(&["year", PROJECT, "--json"], 10));
    assert_eq!(one["runs"], other["runs"], "the same year");
    ends(&["assess", &packed], json_status(&project));
    let into = folder.join("apart");
    fs::create_dir(&into).expect("a folder");
    let into = into.display().to_string();
    ends(&["unpack", &packed, "--into", &into], 0);
    let bytes = fs::read(folder.join("apart/gull-harbour.csv")).expect("the weather file");
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    assert_eq!(
        Ok(bytes),
        fs::read(root.join(weather)).map_err(drop),
        "byte for byte"
    );
    let again = ends(&["unpack", &packed, "--into", &into], 1);
    assert!(!again.complaint.is_empty(), "nothing is written over");
    fs::remove_dir_all(folder).expect("the folder goes");
}

/// How `assess` ends for a project.
fn json_status(project: &str) -> i32 {
    dewrun(&["assess", project]).status
}

#[test]
fn a_line_with_a_weather_file_answers_its_year() {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    let text = fs::read_to_string(root.join(PROJECT)).expect("the example");
    let line: Value = serde_json::from_str(&text).expect("it is JSON");
    let plain = fs::read_to_string(root.join("demo/chilled-supply.json")).expect("an example");
    let plain: Value = serde_json::from_str(&plain).expect("it is JSON");
    let input = format!("{line}\n{plain}\n");
    let said = dewrun_reading(&["lines", "--weather-in", "demo"], input.as_bytes());
    let answers: Vec<Value> = said
        .out
        .lines()
        .map(|line| serde_json::from_str(line).expect("an answer a line"))
        .collect();
    let [first, second] = answers.as_slice() else {
        panic!("two answers: {}", said.complaint);
    };
    let year = json(&ends(&["year", PROJECT, "--json"], 10));
    assert_eq!(
        first["runs"][0]["year"], year["runs"][0]["year"],
        "the same year"
    );
    assert!(
        first["runs"][0]["steady"].is_object(),
        "beside the steady answer"
    );
    assert!(
        second["runs"][0]["year"].is_null(),
        "it names no weather file"
    );
}

/// A more humid year holds more water in every hour, so that none of it may be drier.
#[test]
fn harder_weather_is_told_where_it_is_asked_for() {
    let answer = json(&ends(&["year", PROJECT, "--json", "--stress"], 10));
    let year = &answer["runs"][0]["year"];
    let stress = year["stress"].as_array().expect("two of them");
    assert_eq!(stress.len(), 2, "more humid, and colder");
    let usual = year["whole"]["condensed_g"].as_f64();
    let humid = stress[0]["condensed_g"].as_f64();
    assert!(usual < humid, "{usual:?} g and {humid:?} g");
    assert_eq!(stress[1]["weather"], "air 5 K colder", "{stress:?}");
}

#[test]
fn a_project_that_names_no_file_is_told_so() {
    let said = ends(&["year", "demo/chilled-supply.json"], 1);
    assert!(
        said.complaint
            .contains("the project names no weather file; name one by --weather"),
        "{}",
        said.complaint
    );
    ends(&["year", "demo/chilled-supply.json", "--run", "nobody"], 1);
}

/// Two days of 14 and 15 February, dates as an American writes them, at -10 °C and 80 %.
fn cold_days() -> String {
    let mut text = "date,time,T (C),RH (%)\n".to_owned();
    for hour in 0..48 {
        let (day, hour) = (14 + hour / 24, hour % 24);
        text.push_str(&format!("02/{day}/2024,{hour:02}:00,-10.0,80.0\n"));
    }
    text
}

/// A column of the hours that a command writes.
fn hours(words: &[&str], name: &str) -> Vec<String> {
    let said = dewrun(words);
    let mut lines = said.out.lines();
    let heads = lines.next().unwrap_or_else(|| panic!("{}", said.complaint));
    let at = heads.split(',').position(|head| head == name);
    let at = at.expect("a column");
    lines
        .filter_map(|line| line.split(',').nth(at).map(ToOwned::to_owned))
        .collect()
}

fn first_number(words: &[&str], name: &str) -> f64 {
    let all = hours(words, name);
    let first = all.first().and_then(|text| text.parse().ok());
    first.expect("a number")
}

/// Saturation at -10 °C: 259.9 Pa over ice, 286.5 Pa over water (WMO-No. 8, 2018, annex 4.B; Sonntag 1990), 0.907 apart.
#[test]
fn a_file_is_read_as_is_said_and_the_project_keeps_what_was_said() {
    let (folder, project) = folder("said");
    let weather = folder.join("cold.csv");
    fs::write(&weather, cold_days()).expect("a file");
    let weather = weather.display().to_string();
    let water = ["year", &project, "--weather", &weather, "--csv"];
    let ice = [&water[..], &["--relative-humidity-over", "ice"]].concat();
    let ratio = first_number(&ice, "duct_kg_kg") / first_number(&water, "duct_kg_kg");
    assert!((ratio - 259.9 / 286.5).abs() < 0.002, "{ratio}");
    assert_eq!(
        hours(&water, "time").first().map(String::as_str),
        Some("2024-02-14T00:00"),
        "there is no month 14"
    );
    let offset = ["--stamps", "end"];
    let ended = hours(&[&water[..], &offset].concat(), "time");
    assert!(
        ended.first().is_some_and(|time| time != "2024-02-14T00:00"),
        "{:?}",
        ended.first()
    );

    let packed = folder.join("packed.json").display().to_string();
    let over = ["--relative-humidity-over", "ice", "--date-order", "mdy"];
    let pack = ["pack", &project, "--weather", &weather, "--out", &packed];
    ends(&[&pack[..], &over].concat(), 0);
    let kept = json(&Said {
        out: fs::read_to_string(&packed).expect("a packed project"),
        status: 0,
        complaint: String::new(),
    });
    let kept: Value = kept["project"]
        .as_str()
        .and_then(|text| serde_json::from_str(text).ok())
        .expect("the project in it");
    let reading = &kept["weather"]["reading"];
    assert_eq!(
        (&reading["relative_humidities_over"], &reading["date_order"]),
        (&Value::from("ice"), &Value::from("month_day_year")),
        "{reading}"
    );
    let alone = ["year", &packed, "--csv"];
    let told = ice.as_slice();
    assert_eq!(
        first_number(&alone, "duct_kg_kg"),
        first_number(told, "duct_kg_kg"),
        "as the project says"
    );
    let named = ["year", &packed, "--weather", &weather, "--csv"];
    assert_eq!(
        first_number(&named, "duct_kg_kg"),
        first_number(told, "duct_kg_kg"),
        "the same file by its bytes, wherever it lies"
    );
    let back = [&alone[..], &["--relative-humidity-over", "water"]].concat();
    assert_eq!(
        first_number(&back, "duct_kg_kg"),
        first_number(&water, "duct_kg_kg"),
        "the command line counts before the project"
    );
    fs::remove_dir_all(folder).expect("the folder goes");
}

#[test]
fn what_is_said_of_a_file_must_be_known() {
    let wrong = dewrun(&["year", PROJECT, "--column", "3=warmth"]);
    assert_eq!(wrong.status, 2, "{}", wrong.complaint);
    assert!(
        wrong.complaint.contains("`warmth` is none of"),
        "{}",
        wrong.complaint
    );
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    let text = fs::read_to_string(root.join(PROJECT)).expect("the example");
    let said = "\"reading\": {\"columns\": [{\"number\": 3, \"holds\": \"warmth\"}]}, \"design\":";
    let text = text.replacen("\"design\":", said, 1);
    let refused = dewrun_reading(&["year", "-"], text.as_bytes());
    assert_eq!(refused.status, 1, "{}", refused.complaint);
    assert!(
        refused
            .complaint
            .contains("weather.reading.columns[0].holds"),
        "{}",
        refused.complaint
    );
}

/// A project at sea level in air of 82 kPa: that of some 1750 m (ISO 2533).
#[test]
fn weather_from_another_height_is_told_and_what_to_do() {
    let high = ["year", PROJECT, "--pressure", "82000Pa"];
    let told = dewrun(&high).out;
    for words in [
        "Note: The pressure of the project is 101",
        "that of the weather file 82",
        "its station lies too high for this site",
        "Set the pressure or altitude of the project to that of the site",
    ] {
        assert!(told.contains(words), "{words} in {told}");
    }
    let answer = json(&dewrun(&[&high[..], &["--json"]].concat()));
    let notes = answer["runs"][0]["year"]["notes"].as_array();
    assert_eq!(notes.map(Vec::len), Some(1), "{answer}");
    let usual = dewrun(&["year", PROJECT]).out;
    assert!(!usual.contains("Note:"), "{usual}");
}
