//! When something holds: hours of the day, days of the week, months.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::Input;

/// Hours of some days in some months; what is left out does not narrow it.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Period {
    /// From the start of this hour of the day, 0 to 23; left out: from midnight.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub from_h: Option<f64>,
    /// To the start of this hour, 0 to 24; over midnight where it is not later; left out: to midnight.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub until_h: Option<f64>,
    /// On these days of the week; left out: on all.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub days: Option<Vec<Weekday>>,
    /// In these months; left out: in all.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub months: Option<Vec<MonthName>>,
}

impl MonthName {
    /// All of them, January first.
    pub const ALL: [Self; 12] = [
        Self::Jan,
        Self::Feb,
        Self::Mar,
        Self::Apr,
        Self::May,
        Self::Jun,
        Self::Jul,
        Self::Aug,
        Self::Sep,
        Self::Oct,
        Self::Nov,
        Self::Dec,
    ];
}

impl Weekday {
    /// All of them, Monday first.
    pub const ALL: [Self; 7] = [
        Self::Mon,
        Self::Tue,
        Self::Wed,
        Self::Thu,
        Self::Fri,
        Self::Sat,
        Self::Sun,
    ];
}

/// What a room is set to in a period.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Setting {
    /// When.
    pub when: Period,
    /// Its temperature then, °C; left out: as else.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<Input<f64>>,
    /// Its relative humidity then, %; left out: as else.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub percent: Option<Input<f64>>,
}

/// A day of the week.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Weekday {
    /// Monday.
    Mon,
    /// Tuesday.
    Tue,
    /// Wednesday.
    Wed,
    /// Thursday.
    Thu,
    /// Friday.
    Fri,
    /// Saturday.
    Sat,
    /// Sunday.
    Sun,
}

/// A month.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum MonthName {
    /// January.
    Jan,
    /// February.
    Feb,
    /// March.
    Mar,
    /// April.
    Apr,
    /// May.
    May,
    /// June.
    Jun,
    /// July.
    Jul,
    /// August.
    Aug,
    /// September.
    Sep,
    /// October.
    Oct,
    /// November.
    Nov,
    /// December.
    Dec,
}

record!(
    Period,
    "a period, such as {\"from_h\": 20, \"until_h\": 6}",
    from_h,
    until_h,
    days,
    months;
    left_out_where_none
);
record!(
    Setting,
    "a setting with its period",
    when,
    temperature_c,
    percent;
    left_out_where_none
);
words!(
    Weekday;
    Mon = "mon",
    Tue = "tue",
    Wed = "wed",
    Thu = "thu",
    Fri = "fri",
    Sat = "sat",
    Sun = "sun",
);
words!(
    MonthName;
    Jan = "jan",
    Feb = "feb",
    Mar = "mar",
    Apr = "apr",
    May = "may",
    Jun = "jun",
    Jul = "jul",
    Aug = "aug",
    Sep = "sep",
    Oct = "oct",
    Nov = "nov",
    Dec = "dec",
);
