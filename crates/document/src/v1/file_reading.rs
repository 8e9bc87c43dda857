//! How a weather or logger file is read where a person says what looking at it would get wrong.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::Over;

/// How a file is read; what is left out is found by looking at it.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct FileReading {
    /// Form of the file.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub form: Option<FileForm>,
    /// What stands between cells.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub delimiter: Option<FileDelimiter>,
    /// What parts whole from broken digits.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub decimal_mark: Option<FileMark>,
    /// Number of the first line with a reading, from 1.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub first_reading: Option<f64>,
    /// Order of day, month and year.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub date_order: Option<FileDates>,
    /// What columns hold; those not named here are looked at.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub columns: Vec<FileColumn>,
    /// The station whose rows are taken, where the file holds several.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub station: Option<String>,
    /// What the time beside a reading means.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub stamps: Option<FileStamps>,
    /// Hours that the times are ahead of UTC.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub utc_offset_h: Option<f64>,
    /// Elevation of the place above sea level, m.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub elevation_m: Option<f64>,
    /// One pressure for all rows, Pa.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub pressure_pa: Option<f64>,
    /// What dew points below freezing refer to.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub dew_points_over: Option<Over>,
    /// What relative humidities below freezing refer to.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub relative_humidities_over: Option<Over>,
    /// Which counts where a row has both dew point and relative humidity.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub leads: Option<FileHumidity>,
}

/// A column of a file and what it holds.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct FileColumn {
    /// Its number, from 1.
    pub number: f64,
    /// What it holds, such as `temperature`, `relative humidity`, `dew point`, `pressure`, `date`, or `other`.
    pub holds: String,
    /// In which unit; left out: found by looking.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
}

/// A form of weather file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileForm {
    /// Eight lines of header and 35 columns.
    Epw,
    /// Third US set of typical years, CSV.
    Tmy3,
    /// Second US set of typical years, fixed columns.
    Tm2,
    /// Any table with one reading a line.
    Table,
}

/// What stands between cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileDelimiter {
    /// `,`
    Comma,
    /// `;`
    Semicolon,
    /// A tabulator.
    Tab,
    /// `|`
    Bar,
    /// Any run of spaces.
    Spaces,
}

/// A decimal mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileMark {
    /// `21.5`
    Point,
    /// `21,5`
    Comma,
}

/// An order of dates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileDates {
    /// Day, month, year.
    DayMonthYear,
    /// Month, day, year.
    MonthDayYear,
    /// Year, month, day.
    YearMonthDay,
}

/// What the time beside a reading means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileStamps {
    /// The start of the step.
    Start,
    /// The end of the step.
    End,
    /// The moment of the reading.
    Moment,
}

/// A humidity that counts before the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FileHumidity {
    /// The dew point.
    DewPoint,
    /// The relative humidity.
    RelativeHumidity,
}

record!(
    FileReading,
    "how a file is read, such as {\"dew_points_over\": \"ice\"}",
    form,
    delimiter,
    decimal_mark,
    first_reading,
    date_order,
    columns,
    station,
    stamps,
    utc_offset_h,
    elevation_m,
    pressure_pa,
    dew_points_over,
    relative_humidities_over,
    leads,
);
record!(
    FileColumn,
    "a column, such as {\"number\": 3, \"holds\": \"temperature\"}",
    number,
    holds,
    unit;
    left_out_where_none
);
words!(FileForm; Epw = "epw", Tmy3 = "tmy3", Tm2 = "tm2", Table = "table");
words!(
    FileDelimiter;
    Comma = "comma",
    Semicolon = "semicolon",
    Tab = "tab",
    Bar = "bar",
    Spaces = "spaces",
);
words!(FileMark; Point = "point", Comma = "comma");
words!(
    FileDates;
    DayMonthYear = "day_month_year",
    MonthDayYear = "month_day_year",
    YearMonthDay = "year_month_day",
);
words!(FileStamps; Start = "start", End = "end", Moment = "moment");
words!(FileHumidity; DewPoint = "dew_point", RelativeHumidity = "relative_humidity");
