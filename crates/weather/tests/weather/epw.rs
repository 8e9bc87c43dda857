//! EPW of odd kinds.

use crate::reading::{read, read_as, says};
use dewrun_weather::{PressureSource, Understanding};

const HEAD: &str = "LOCATION,Testville,XX,TST,SYN,999999,40.00,-75.00,-5.0,100.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,none\nCOMMENTS 2,none\n";

/// A row of an EPW with the first fields as given and the rest plausible.
fn row(year: u32, month: u32, day: u32, hour: u32, minute: u32, air: &str) -> String {
    format!(
        "{year},{month},{day},{hour},{minute},?9,{air},0,0,300,0,0,0,0,0,0,0,180,2.0,5,5,16.0,77777,9,999999999,100,0.1000,0,88,0.200,0.0,1.0\n"
    )
}

fn file(per_hour: u32, rows: &[String]) -> String {
    format!(
        "{HEAD}DATA PERIODS,1,{per_hour},Data,Sunday,1/1,1/1\n{}",
        rows.concat()
    )
}

#[test]
fn hours_from_0_to_23() {
    let rows: Vec<String> = (0..24)
        .map(|hour| row(2001, 1, 1, hour, 0, "10,5,71,100000"))
        .collect();
    let weather = read(&file(1, &rows));
    says(&weather, "hours run from 0 to 23");
    assert_eq!(
        (weather.series.len(), weather.series.timing.irregular_steps),
        (24, 0),
        "a day"
    );
    assert_eq!(
        weather
            .series
            .first()
            .map(|stamp| stamp.to_string())
            .as_deref(),
        Some("2001-01-01T01:00"),
        "the first hour ends at 1"
    );
}

#[test]
fn minutes_of_every_kind_mean_the_same_hours() {
    let of = |minute: u32| {
        let rows: Vec<String> = (1..=24)
            .map(|hour| row(2001, 1, 1, hour, minute, "10,5,71,100000"))
            .collect();
        read(&file(1, &rows)).series
    };
    assert_eq!(of(0), of(60), "0 or 60");
    assert_eq!(of(0), of(30), "0 or 30");
}

#[test]
fn quarters_that_begin_instead_of_end() {
    let rows: Vec<String> = (1..=24)
        .flat_map(|hour| {
            [0, 15, 30, 45].map(|minute| row(2001, 1, 1, hour, minute, "10,5,71,100000"))
        })
        .collect();
    let weather = read(&file(4, &rows));
    assert_eq!(
        (
            weather.series.len(),
            weather.series.timing.step_s,
            weather.series.timing.irregular_steps
        ),
        (96, 900, 0),
        "a day in quarters"
    );
    assert_eq!(
        weather
            .series
            .first()
            .map(|stamp| stamp.to_string())
            .as_deref(),
        Some("2001-01-01T00:15"),
        "the first quarter ends at 0:15"
    );
}

#[test]
fn more_records_than_the_header_states() {
    let rows: Vec<String> = (1..=24)
        .flat_map(|hour| [30, 60].map(|minute| row(2001, 1, 1, hour, minute, "10,5,71,100000")))
        .collect();
    let weather = read(&file(1, &rows));
    says(&weather, "the rows are followed");
    assert_eq!(weather.series.covered_hours(), 24.0, "a day");
}

#[test]
fn years_one_after_the_other_stay_what_they_are() {
    let mut rows = Vec::new();
    for (year, month, day) in [(2019, 12, 31), (2020, 1, 1)] {
        rows.extend((1..=24).map(|hour| row(year, month, day, hour, 0, "10,5,71,100000")));
    }
    let weather = read(&file(1, &rows));
    assert!(!weather.series.timing.is_typical_year, "real dates");
    assert_eq!(
        weather
            .series
            .last()
            .map(|stamp| stamp.to_string())
            .as_deref(),
        Some("2020-01-02T00:00"),
        "the end"
    );
}

#[test]
fn a_leap_day_of_a_real_year_is_kept() {
    let mut rows = Vec::new();
    for (month, day) in [(2, 28), (2, 29), (3, 1)] {
        rows.extend((1..=24).map(|hour| row(2020, month, day, hour, 0, "10,5,71,100000")));
    }
    assert_eq!(read(&file(1, &rows)).series.len(), 72, "three days");
}

#[test]
fn no_pressure_at_all() {
    let rows: Vec<String> = (1..=3)
        .map(|hour| row(2001, 1, 1, hour, 0, "10,5,71,999999"))
        .collect();
    let weather = read(&file(1, &rows));
    assert_eq!(
        weather.pressure_source,
        PressureSource::Standard,
        "from the elevation"
    );
    // ISO 2533: 100 129.4 Pa at 100 m.
    assert!(
        (weather.series.pressure_pa[0] - 100_129.4).abs() < 1.0,
        "{}",
        weather.series.pressure_pa[0]
    );
    let given = Understanding {
        elevation_m: Some(1000.0),
        ..Understanding::default()
    };
    let said = read_as(file(1, &rows).as_bytes(), given);
    assert!(
        (said.series.pressure_pa[0] - 89_874.6).abs() < 1.0,
        "{}",
        said.series.pressure_pa[0]
    );
}

#[test]
fn a_spreadsheet_has_written_it() {
    let rows: Vec<String> = (1..=24)
        .map(|hour| row(2001, 1, 1, hour, 0, "10.5,5.25,70,100000"))
        .collect();
    let text = file(1, &rows);
    let plain = read(&text).series;
    let european = text.replace(',', ";").replace('.', ",");
    assert_eq!(
        read(&european).series,
        plain,
        "semicolons and decimal commas"
    );
    assert_eq!(
        read(&text.replace(',', "\t")).series,
        plain,
        "tabs and points"
    );
    let quoted: String = text
        .lines()
        .map(|line| format!("\"{}\"\r\n", line.replace(',', "\",\"")))
        .collect();
    assert_eq!(read(&quoted).series, plain, "quotes");
}

#[test]
fn a_row_written_twice_leaves_a_typical_year_typical() {
    let mut rows = Vec::new();
    for (year, month) in [(1999, 1), (1988, 2)] {
        for day in 1..=28 {
            rows.extend((1..=24).map(|hour| row(year, month, day, hour, 0, "10,5,71,100000")));
        }
    }
    let last = rows.last().cloned().expect("rows");
    rows.push(last);
    let weather = read(&file(1, &rows));
    assert!(
        weather.series.timing.is_typical_year,
        "two months of two years"
    );
    assert_eq!(
        (weather.series.len(), weather.series.timing.repeated),
        (56 * 24, 1),
        "once"
    );
}
