//! What random runs keep of their troubles.

use dewrun_document::{
    ClockChange, DaylightChanges, FileDates, LogReading, LogReference, LogWords, MonthName,
    SeenAtCheck, TroublesKept, Weekday, limits,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::Strategy;
use proptest::sample::select;

use crate::generator::{number, text};

/// What a run may keep of its troubles.
pub(crate) fn troubles() -> impl Strategy<Value = TroublesKept> {
    let reading = (
        option::of(select(vec![
            FileDates::DayMonthYear,
            FileDates::MonthDayYear,
            FileDates::YearMonthDay,
        ])),
        option::of(1..20_u32),
        option::of(number(limits::UTC_OFFSET_H)),
        option::of((0..12_usize, 1..=5_u32, 0..7_usize, 0..24_u32)),
        option::of(text()),
    );
    let reading = reading.prop_map(|(date_order, column, utc_offset_h, change, words)| {
        let change = change.map(|(month, which, weekday, hour)| ClockChange {
            month: MonthName::ALL[month],
            which: f64::from(which),
            weekday: Weekday::ALL[weekday],
            hour: f64::from(hour),
        });
        let words = words.map(|words| LogWords {
            words: format!("w{words}"),
            kind: "airflow_low".to_owned(),
        });
        LogReading {
            date_order,
            date_column: column.map(f64::from),
            kind_column: column.map(f64::from),
            words: words.into_iter().collect(),
            utc_offset_h,
            daylight_saving: change.map(|change| DaylightChanges {
                starts: change.clone(),
                ends: change,
            }),
        }
    });
    let log = (text(), option::of(reading)).prop_map(|(file, reading)| LogReference {
        file: format!("f{file}"),
        rows: 17.0,
        sha256: "0123456789abcdef".repeat(4),
        reading,
    });
    let seen = vec(select(vec![1.0, 2.0, 3.0]), 0..3);
    (option::of(log), seen).prop_map(|(log, seen)| {
        let seen = seen.into_iter().map(|outcome| SeenAtCheck {
            check: "empty_and_measure".to_owned(),
            outcome,
        });
        TroublesKept {
            log,
            seen: seen.collect(),
        }
    })
}
