//! A year of minutes, made here: as many rows as the case says, and the same means and hours as the hourly means.

use std::fmt::Write as _;

use dewrun_weather::{Range, Understanding};

use super::numbers::count;
use super::{Files, Held, read_bytes};
use crate::reference::compare::Tolerance;
use crate::reference::inputs::Inputs;
use crate::reference::report::Answer;

/// Temperature in hundredths of a kelvin and relative humidity in hundredths of a percent, by whole numbers alone.
fn reading(minute: i64) -> (i64, i64) {
    let day = minute % 1440;
    let swing = (day - 720).abs();
    (
        1200 + swing + (minute * 37) % 101,
        6000 + 3 * (720 - swing) + (minute * 53) % 97,
    )
}

fn line(text: &mut String, minute: i64, t: i64, rh: i64) {
    let (day, hour, minute) = (minute / 1440, minute / 60 % 24, minute % 60);
    // Days of a year without leap day, counted on from 1 January 2023.
    let date = dewrun_weather::Civil::of((19_358 + day) * 86_400)
        .map_or_else(String::new, |civil| civil.to_string());
    let date = date.trim_end_matches("T00:00");
    let _ = writeln!(
        text,
        "{date} {hour:02}:{minute:02},{}.{:02},{}.{:02}",
        t / 100,
        t % 100,
        rh / 100,
        rh % 100
    );
}

/// Both files as text: each minute, and the means of each hour to a hundredth.
fn texts(rows: i64) -> (String, String) {
    let heading = "time,temperature (C),relative humidity (%)\n";
    let (mut minutes, mut hours) = (heading.to_owned(), heading.to_owned());
    for hour in 0..rows / 60 {
        let (mut t_sum, mut rh_sum) = (0, 0);
        for minute in 60 * hour..60 * hour + 60 {
            let (t, rh) = reading(minute);
            t_sum += t;
            rh_sum += rh;
            line(&mut minutes, minute, t, rh);
        }
        line(&mut hours, 60 * hour, (t_sum + 30) / 60, (rh_sum + 30) / 60);
    }
    (minutes, hours)
}

pub(super) fn a_year_of_minutes(expected: &Inputs<'_>, _: &Files) -> Result<Answer, String> {
    #[allow(clippy::cast_possible_truncation, reason = "a count of rows")]
    let rows = expected.number("rows")? as i64;
    let (minutes, hours) = texts(rows);
    let minutes = read_bytes(minutes.as_bytes(), Understanding::default())?.series;
    let hours = read_bytes(hours.as_bytes(), Understanding::default())?.series;
    let mean = |values: &[f64]| Range::of(values).map_or(f64::NAN, |range| range.mean);
    let rounding = Tolerance::absolute(0.005);
    let mut held = Held::default();
    held.same(expected.raw(), "rows", count(minutes.usable()));
    held.near(
        "mean T",
        mean(&minutes.temperature_c),
        mean(&hours.temperature_c),
        rounding,
    );
    held.near(
        "mean RH",
        mean(&minutes.relative_percent),
        mean(&hours.relative_percent),
        rounding,
    );
    held.near(
        "covered hours",
        minutes.covered_hours(),
        hours.covered_hours(),
        Tolerance::absolute(1.0e-6),
    );
    held.done()
}
