//! What a run's troubles go by: the log that somebody kept, how it is read, and what was seen at checks.

use crate::json::record;
use schemars::JsonSchema;

use super::{FileDates, MonthName, Weekday};

/// What the troubles of a run go by.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct TroublesKept {
    /// The log; left out: nobody has given one.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub log: Option<LogReference>,
    /// What was seen at checks, in the order in which it was entered.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub seen: Vec<SeenAtCheck>,
}

/// A log of troubles by its hash; it lies beside the project.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct LogReference {
    /// Its name, without a folder.
    pub file: String,
    /// How many rows were read.
    pub rows: f64,
    /// SHA-256 of its bytes, 64 hexadecimal digits.
    #[schemars(regex(pattern = "^[0-9a-f]{64}$"))]
    pub sha256: String,
    /// What is said of it where looking at it is not enough; left out: nothing.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<LogReading>,
}

/// How a log is read; what is left out is found by looking at it.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct LogReading {
    /// Order of day, month and year.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub date_order: Option<FileDates>,
    /// Number of the column of the date, from 1.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub date_column: Option<f64>,
    /// Number of the column that says what it was, from 1.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub kind_column: Option<f64>,
    /// What words of it mean; what stands first counts first.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub words: Vec<LogWords>,
    /// Hours that its clock is ahead of UTC outside daylight saving; left out: as that of the weather.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub utc_offset_h: Option<f64>,
    /// When its clock is put forward and back by an hour; left out: never.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub daylight_saving: Option<DaylightChanges>,
}

/// Words and the kind of entry that they mean.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct LogWords {
    /// Words as they stand in the log.
    pub words: String,
    /// The kind: `airflow_low`, `airflow_high`, `alarm_without_smoke`, `water_found`, `emptied`, `filter_changed`, `detector_replaced` or `other`.
    pub kind: String,
}

/// The two days of a year on which a clock is changed.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct DaylightChanges {
    /// Put forward by an hour.
    pub starts: ClockChange,
    /// Put back.
    pub ends: ClockChange,
}

/// A day of the year by rule, and an hour on the wall.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct ClockChange {
    /// The month.
    pub month: MonthName,
    /// Which such day of the week in it: 1 to 4, or 5 for the last.
    pub which: f64,
    /// The day of the week.
    pub weekday: Weekday,
    /// The hour, 0 to 23, by the clock before the change.
    pub hour: f64,
}

/// What was seen at a check.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct SeenAtCheck {
    /// Id of the check, such as `empty_and_measure`.
    pub check: String,
    /// Which of its outcomes, from 1.
    pub outcome: f64,
}

record!(
    TroublesKept,
    "what troubles go by, with its fields",
    log,
    seen,
);
record!(
    LogReference,
    "a log with its fields",
    file,
    rows,
    sha256,
    reading,
);
record!(
    LogReading,
    "how a log is read, such as {\"date_column\": 2}",
    date_order,
    date_column,
    kind_column,
    words,
    utc_offset_h,
    daylight_saving,
);
record!(
    LogWords,
    "words and a kind, such as {\"words\": \"draught weak\", \"kind\": \"airflow_low\"}",
    words,
    kind;
    left_out_where_none
);
record!(DaylightChanges, "two changes of a clock", starts, ends,);
record!(
    ClockChange,
    "a change of a clock, such as {\"month\": \"mar\", \"which\": 5, \"weekday\": \"sun\", \"hour\": 2}",
    month,
    which,
    weekday,
    hour,
);
record!(
    SeenAtCheck,
    "what was seen, such as {\"check\": \"empty_and_measure\", \"outcome\": 1}",
    check,
    outcome;
    left_out_where_none
);
