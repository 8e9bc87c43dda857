//! Every fault of a project file gets a sentence that says what, where, and what would be right.

use dewrun_document::{DocumentError, limits, read};

const DEMO: &str = include_str!("../../../demo/make-up-air.json");

/// The error for the demo with the first such text replaced.
#[track_caller]
fn fault(from: &str, to: &str) -> DocumentError {
    assert!(DEMO.contains(from), "the example holds `{from}`");
    match read(&DEMO.replacen(from, to, 1)) {
        Ok(_) => panic!("`{to}` in place of `{from}` must be refused"),
        Err(error) => error,
    }
}

#[track_caller]
fn check(from: &str, to: &str, sentence: &str) {
    assert_eq!(
        fault(from, to).sentence(),
        sentence,
        "`{to}` in place of `{from}`"
    );
}

#[test]
fn broken_json_is_named_by_line_and_column() {
    let error = fault("\"version\": 1,", "\"version\": 1");
    assert_eq!(
        error.line_column(),
        Some((4, 3)),
        "where the comma is missed"
    );
    assert_eq!(
        error.sentence(),
        "not JSON: expected `,` or `}`",
        "and what would be right"
    );
    assert!(
        matches!(read(""), Err(DocumentError::Syntax { .. })),
        "nothing is no JSON"
    );
    assert!(
        matches!(read("{\"format\""), Err(DocumentError::Syntax { .. })),
        "cut short"
    );
    let twice = format!("{DEMO}{DEMO}");
    assert!(
        matches!(read(&twice), Err(DocumentError::Syntax { .. })),
        "something follows"
    );
}

#[test]
fn another_format_is_named() {
    check(
        "\"dewrun-project\"",
        "\"dewrun-answer\"",
        "not a Dewrun project: `format` is \"dewrun-answer\", must be \"dewrun-project\"",
    );
    assert_eq!(
        read("{}").map_err(|error| error.sentence()).map(|_| ()),
        Err("not a Dewrun project: `format` is missing, must be \"dewrun-project\"".to_owned()),
        "an empty object"
    );
    assert!(
        matches!(read("[]"), Err(DocumentError::Shape { .. })),
        "a list is no project"
    );
}

#[test]
fn a_newer_file_opens_nothing() {
    check(
        "\"revision\": 6,",
        "\"revision\": 7, \"unheard_of\": {},",
        "written by a newer Dewrun (version 1, revision 7); this one reads up to version 1, revision 6",
    );
    assert!(
        matches!(
            fault("\"version\": 1", "\"version\": 2"),
            DocumentError::Newer { version: 2, .. }
        ),
        "a newer version"
    );
    check(
        "\"revision\": 6",
        "\"revision\": 0",
        "revision: is 0, must be a whole number from 1",
    );
    check(
        "\"revision\": 6,",
        "",
        "revision: missing field `revision`, must be a whole number from 1",
    );
}

#[test]
fn unknown_missing_and_doubled_fields_are_named() {
    let error = fault("\"length_m\"", "\"lenght_m\"");
    assert_eq!(
        error.path().map(|path| path.as_str()),
        Some("runs[0].intake.legs[0].lenght_m"),
        "the field itself"
    );
    assert!(
        error
            .to_string()
            .starts_with("unknown field `lenght_m`, expected one of `id`, `space`, `length_m`"),
        "{error}"
    );
    check(
        "\"static_pa\"",
        "\"velocity_pa\"",
        "runs[0].duct: duplicate field `velocity_pa`",
    );
    check(
        "\"wind_m_s\": {",
        "\"radiant_c\": {",
        "spaces[0]: missing field `wind_m_s`",
    );
}

#[test]
fn values_of_the_wrong_kind_are_named() {
    check(
        "\"value\": 28.0",
        "\"value\": \"28\"",
        "spaces[0].temperature_c.value: invalid type: string \"28\", expected a number",
    );
    check(
        "\"value\": 28.0",
        "\"value\": null",
        "spaces[0].temperature_c.value: invalid type: null, expected a number",
    );
    check(
        "\"origin\": \"typed\"",
        "\"origin\": \"guessed\"",
        "spaces[0].temperature_c.origin: unknown variant `guessed`, expected one of `typed`, `assumed`, `measured`",
    );
    let error = fault(
        "\"length_m\": {\n              \"value\": 1.0,\n              \"origin\": \"typed\"\n            }",
        "\"length_m\": -0.02",
    );
    assert_eq!(
        error.sentence(),
        "runs[0].intake.legs[0].length_m: invalid type: the number `-0.02`, expected a value with its origin, such as {\"value\": 4.2, \"origin\": \"typed\"}",
        "a bare number"
    );
    assert!(error.line_column().is_some(), "with its line and column");
    assert!(
        matches!(
            fault("\"value\": 28.0", "\"value\": 1e999"),
            DocumentError::Syntax { .. } | DocumentError::Shape { .. }
        ),
        "beyond counting"
    );
    assert!(
        matches!(
            fault("\"value\": 28.0", "\"value\": NaN"),
            DocumentError::Syntax { .. }
        ),
        "JSON has no NaN"
    );
}

#[test]
fn limits_are_given() {
    check(
        "\"value\": 28.0",
        "\"value\": 280",
        "spaces[0].temperature_c: temperature is 280 °C, must be from \u{2212}60 to 95 °C",
    );
    check(
        "\"value\": 1.0",
        "\"value\": 0",
        "runs[0].intake.legs[0].length_m: length is 0 m, must be from 0.001 to 1\u{2009}000 m",
    );
    check(
        "\"low\": 16.0",
        "\"low\": 21",
        "spaces[1].temperature_c.origin.assumed: the value 20 lies outside its span from 21 to 24",
    );
}

#[test]
fn ids_and_references_must_fit() {
    check(
        "\"id\": \"corridor\"",
        "\"id\": \"plant\"",
        "spaces[1].id: the id `plant` is given twice, each must have its own",
    );
    check(
        "\"id\": \"out-1\"",
        "\"id\": \"in-1\"",
        "runs[0].exhaust.legs[0].id: the id `in-1` is given twice, each must have its own",
    );
    check(
        "\"id\": \"in-1\"",
        "\"id\": \"\"",
        "runs[0].intake.legs[0].id: is 0 characters long, must be from 1 to 64",
    );
    check(
        "\"space\": \"plant\"",
        "\"space\": \"attic\"",
        "runs[0].intake.legs[0].space: there is no space `attic`, must be one of corridor, lobby, plant",
    );
    // No run is a variant of one that is not there, nor of itself.
    for id in ["mu-2", "mu-1"] {
        check(
            "\"id\": \"mu-1\",",
            &format!("\"id\": \"mu-1\", \"variant_of\": \"{id}\","),
            &format!(
                "runs[0].variant_of: there is no run `{id}` that is no variant itself; left out, this is a run of its own"
            ),
        );
    }
}

#[test]
fn a_day_must_be_in_the_calendar() {
    for day in [
        "2026-02-29",
        "2026-13-01",
        "2026-00-10",
        "2026-06-31",
        "12.05.2026",
        "2026-5-12",
        "2026-05-12-01",
        "+026-05-12",
    ] {
        let error = fault("2026-05-12", day);
        assert!(
            matches!(error, DocumentError::NoSuchDay { .. }),
            "`{day}` is no day: {error}"
        );
    }
    for day in ["2024-02-29", "2000-02-29", "2026-12-31"] {
        let project = read(&DEMO.replacen("2026-05-12", day, 1));
        assert!(project.is_ok(), "`{day}` is a day");
    }
}

#[test]
fn hostile_files_are_refused_by_their_size() {
    let long = " ".repeat(limits::TEXT_BYTES + 1);
    assert!(
        matches!(read(&long), Err(DocumentError::TooLong { .. })),
        "too long a text"
    );
    let deep = format!("{{\"format\": {}", "[".repeat(1_000_000));
    assert!(read(&deep).is_err(), "too deep a nest");
    let ignored = format!(
        "{{\"format\": \"dewrun-project\", \"version\": 1, \"revision\": 1, \"x\": {}{}}}",
        "[".repeat(1_000_000),
        "]".repeat(1_000_000)
    );
    assert!(
        read(&ignored).is_err(),
        "too deep a nest in a field nobody knows"
    );
    let note = "n".repeat(limits::NOTE + 1);
    let error = fault("\"note\": \"", &format!("\"note\": \"{note}"));
    assert!(
        matches!(error, DocumentError::TextLength { .. }),
        "too long a note: {error}"
    );
}

#[test]
fn too_many_entries_are_refused_before_they_are_looked_at() {
    let refused = read(DEMO).map(|mut project| {
        let leg = project.runs[0].intake.legs[0].clone();
        project.runs[0].intake.legs = vec![leg; limits::LEGS + 1];
        dewrun_document::check(&project)
    });
    let expected = DocumentError::TooMany {
        path: dewrun_document::FieldPath::root()
            .field("runs")
            .index(0)
            .field("intake.legs"),
        count: limits::LEGS + 1,
        max: limits::LEGS,
    };
    assert_eq!(
        refused,
        Ok(Err(expected)),
        "with the count and the most that is read"
    );
}

#[test]
fn crossed_limits_and_figures_of_the_air_path_are_named_at_their_field() {
    let path = |inner: &str| format!("\"air_path\": {{{inner}}}, \"intake\": {{");
    check(
        "\"intake\": {",
        &path(
            "\"low_limit_percent\": {\"value\": 120, \"origin\": \"typed\"}, \"high_limit_percent\": {\"value\": 80, \"origin\": \"typed\"}",
        ),
        "runs[0].air_path.low_limit_percent: the low limit of 120 % must lie below the high one of 80 %",
    );
    check(
        "\"intake\": {",
        &path("\"hole_count\": {\"value\": 0, \"origin\": \"typed\"}"),
        "runs[0].air_path.hole_count: number of sampling holes is 0, must be from 1 to 200",
    );
}

#[test]
fn what_is_wrong_in_a_visit_is_named_at_its_field() {
    let visit = |inner: &str| {
        let whole = r#"{"on": "2026-08-30", "by": "J. Orre", "note": "", "#;
        format!("\"visits\": [{whole}{inner}}}], \"intake\": {{")
    };
    let wrong = |inner: &str, sentence: &str| check("\"intake\": {", &visit(inner), sentence);
    wrong(
        r#""airflow_l_min": {"value": 2900}"#,
        "runs[0].visits[0].airflow_l_min.value: flow is 2\u{2009}900 L/min, must be from 0 to 1\u{2009}000 L/min",
    );
    wrong(
        r#""first_smoke_s": {"value": -1}"#,
        "runs[0].visits[0].first_smoke_s.value: transport time is \u{2212}1 s, must be from 0 to 36\u{2009}000 s",
    );
    wrong(
        r#""suction_pa": {"value": 95, "expected": {"usual": 95, "low": 101, "high": 90}}"#,
        "runs[0].visits[0].suction_pa.expected: the value 95 lies outside its span from 101 to 90",
    );
    wrong(
        r#""water": [{"tube": "intake", "at_m": 5.2, "water_g": -5}]"#,
        "runs[0].visits[0].water[0].water_g: water found is \u{2212}5 g, must be from 0 to 1\u{2009}000\u{2009}000 g",
    );
    wrong(
        r#""suction_at_m": -0.5"#,
        "runs[0].visits[0].suction_at_m: distance from the tube's start is \u{2212}0.5 m, must be from 0 to 1\u{2009}000 m",
    );
    wrong(
        r#""occasion": "repair""#,
        "runs[0].visits[0].occasion: unknown variant `repair`, expected `as_fitted` or `service`",
    );
    let error = fault(
        "\"intake\": {",
        &visit("\"water\": []").replace("2026-08-30", "30.8.2026"),
    );
    assert_eq!(
        error.path().map(|path| path.as_str()),
        Some("runs[0].visits[0].on"),
        "a day that is none: {error}"
    );
}

#[test]
fn what_is_wrong_in_a_year_is_named_at_its_field() {
    let wrong = |field: &str, inner: &str, sentence: &str| {
        check(field, &format!("{inner}, {field}"), sentence);
    };
    let weather = |sha256: &str, rows: &str| {
        format!(
            r#""weather": {{"file": "a.csv", "place": "", "rows": {rows}, "step_s": 3600, "sha256": "{sha256}"}}"#
        )
    };
    wrong(
        "\"spaces\": [",
        &weather("0A", "8760"),
        "weather.sha256: is no SHA-256, must have 64 digits from 0 to 9 and a to f",
    );
    wrong(
        "\"spaces\": [",
        &weather(&"0a".repeat(32), "0"),
        "weather.rows: number of rows is 0, must be from 1 to 1\u{2009}000\u{2009}000\u{2009}000",
    );
    wrong(
        "\"static_pa\": ",
        r#""source": {"from": "measured"}"#,
        "runs[0].duct.source.file: is missing, air that was measured must have it",
    );
    wrong(
        "\"static_pa\": ",
        r#""source": {"from": "outdoors", "steps": [{"kind": "cooled", "share": {"value": 0.1, "origin": "typed"}}]}"#,
        "runs[0].duct.source.steps[0].temperature_c: is missing, air that is cooled must have it",
    );
    wrong(
        "\"static_pa\": ",
        r#""source": {"from": "outdoors", "steps": [{"kind": "heated", "temperature_c": {"value": 20, "origin": "typed"}, "when": [{"from_h": 25}]}]}"#,
        "runs[0].duct.source.steps[0].when[0].from_h: hour of the day is 25, must be from 0 to 24",
    );
    wrong(
        "\"static_pa\": ",
        r#""fan_off": [{"from_h": 6.5}]"#,
        "runs[0].duct.fan_off[0].from_h: must be a whole hour",
    );
    wrong(
        "\"static_pa\": ",
        r#""fan_off": [{"days": ["sunday"]}]"#,
        "runs[0].duct.fan_off[0].days[0]: unknown variant `sunday`, expected one of `mon`, `tue`, `wed`, `thu`, `fri`, `sat`, `sun`",
    );
    wrong(
        "\"wind_m_s\": ",
        r#""year": {"follows": "partly"}"#,
        "spaces[0].year.share: is missing, a space that follows outdoors partly must have it",
    );
    wrong(
        "\"wind_m_s\": ",
        r#""year": {"follows": "outdoors", "sky_share": {"value": 50, "origin": "typed"}}"#,
        "spaces[0].year.sky_share: share is 50, must be from 0 to 1",
    );
}
