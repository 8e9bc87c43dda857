//! The invented weather file is what its maker writes, and is read whole.

use dewrun_tests::invented_weather;
use dewrun_weather::{PressureSource, Reader, Understanding, Weather, design_conditions};

const FILE: &str = include_str!("../../demo/gull-harbour.csv");

fn read() -> Weather {
    let mut reader = Reader::new(Understanding::default());
    reader.push(FILE.as_bytes()).expect("a weather file");
    reader.finish().expect("a weather file")
}

#[test]
fn the_file_is_what_its_maker_writes() {
    assert!(
        invented_weather::text() == FILE,
        "write it anew with `cargo run -p dewrun-tests --example invented_weather > demo/gull-harbour.csv`"
    );
}

#[test]
fn it_says_that_it_is_invented() {
    assert!(FILE.contains("invented from end to end"), "in its head");
}

#[test]
fn every_hour_of_it_is_read() {
    let weather = read();
    let series = &weather.series;
    assert_eq!(series.usable(), 8760, "a year");
    assert_eq!(series.timing.irregular_steps, 0, "hour by hour");
    assert_eq!(series.timing.utc_offset_h, Some(1.0), "its clock");
    assert_eq!(
        weather.place.name.as_deref(),
        Some("Gull Harbour"),
        "its name"
    );
    assert_eq!(
        weather.pressure_source,
        PressureSource::Standard,
        "from its elevation"
    );
    // Cell by cell, without the reader.
    let cells = |at: usize| -> Vec<f64> {
        let rows = FILE.lines().skip_while(|line| !line.starts_with("2001-"));
        rows.map(|line| {
            line.split(',')
                .nth(at)
                .and_then(|cell| cell.parse().ok())
                .expect("a number")
        })
        .collect()
    };
    assert_eq!(series.temperature_c, cells(1), "temperatures as written");
    assert_eq!(series.dew_point_c, cells(2), "dew points as written");
    assert_eq!(
        series.wind_m_s.as_deref(),
        Some(cells(3).as_slice()),
        "wind as written"
    );
    assert_eq!(
        series.global_w_m2.as_deref(),
        Some(cells(4).as_slice()),
        "sun as written"
    );
    assert_eq!(
        series.infrared_w_m2.as_deref(),
        Some(cells(5).as_slice()),
        "sky as written"
    );
}

#[test]
fn its_year_has_what_a_year_must_show() {
    let weather = read();
    let series = &weather.series;
    let hours = |is: &dyn Fn(f64) -> bool| series.hours_where(&series.dew_point_c, is);
    assert!(20.0 < hours(&|point_c| 18.0 < point_c), "muggy hours");
    assert!(
        100.0 < series.hours_where(&series.temperature_c, |t_c| t_c < 0.0),
        "frost"
    );
    assert!(
        100.0 < series.hours_where(&series.relative_percent, |rh| 99.0 < rh),
        "fog"
    );
    let design = design_conditions(series).expect("a whole year");
    assert!(
        design.humid[0].dew_point > design.humid[2].dew_point,
        "rarer is more humid"
    );
}
