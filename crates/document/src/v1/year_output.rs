//! The answer about the year of a run, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{Figure, GradeOutput, VerdictOutput};

/// What the year of a run comes to, or, without its weather file, its design states.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Year")]
pub struct YearOutput {
    /// The year in words.
    pub sentence: String,
    /// What has to be said before anything is made of it, such as weather from another height than the project. Since revision 8.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The weather file that it goes by; left out where none is at hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weather: Option<YearWeatherOutput>,
    /// The weather file that is missing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub missing_file: Option<String>,
    /// What all its hours come to; left out without the weather file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub whole: Option<YearSumOutput>,
    /// Steady answers in the design states of the climate.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub design_states: Vec<DesignStateOutput>,
    /// The year in harder weather than that of the file, where that was asked for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stress: Vec<StressOutput>,
    /// What is taken for granted of the year, in sentences.
    pub taken_for_granted: Vec<String>,
    /// Numbers that stand in for what the project leaves out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<YearAssumedOutput>,
    /// Hour by hour, where it was asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub series: Option<SeriesOutput>,
}

/// The year in harder weather.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Stress")]
pub struct StressOutput {
    /// `dew points 2 K higher` or `air 5 K colder`.
    pub weather: String,
    /// Hours in which more than 0.01 g an hour deposits over both tubes.
    pub wet_hours: Figure,
    /// Hours with mist at the sensor.
    pub mist_hours: Figure,
    /// Hours with ice on a wall.
    pub frost_hours: Figure,
    /// What deposited on the walls, g.
    pub condensed_g: Figure,
    /// Hours in which the detector does not sample its duct; left out where that has no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blind_hours: Option<Figure>,
}

/// The weather file of a year.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearWeather")]
pub struct YearWeatherOutput {
    /// Its name.
    pub file: String,
    /// Where its readings are from; may be empty.
    pub place: String,
    /// SHA-256 of its bytes, in hexadecimal digits.
    pub sha256: String,
    /// Its rows.
    pub rows: Figure,
    /// Usual time from row to row, s.
    pub step_s: Figure,
    /// Its months come from different years, so that its days of the week mean nothing.
    pub is_typical_year: bool,
}

/// What the hours of a year come to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearSum")]
pub struct YearSumOutput {
    /// Whether any of it is wet.
    pub verdict: VerdictOutput,
    /// What the answer rests on: by bound where every hour is.
    pub grade: GradeOutput,
    /// All hours.
    pub hours: Figure,
    /// Rows of the file that were left out, as something is not known of them.
    pub left_out_rows: Figure,
    /// Hours in which more than 0.01 g an hour deposits over both tubes.
    pub wet_hours: Figure,
    /// Hours with mist at the sensor.
    pub mist_hours: Figure,
    /// Hours in which mist leaves at the end of the exhaust.
    pub outlet_mist_hours: Figure,
    /// Hours with ice on a wall.
    pub frost_hours: Figure,
    /// Hours with the chamber above the device's humidity rating; left out where no rating is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours_above_rating: Option<Figure>,
    /// Highest relative humidity over water in the chamber, %.
    pub most_humid_chamber_percent: Figure,
    /// What deposited on the walls, g.
    pub condensed_g: Figure,
    /// What dried off them, g.
    pub evaporated_g: Figure,
    /// What ran off them, g.
    pub drained_g: Figure,
    /// What of that came at once, as ice thawed, g.
    pub slug_g: Figure,
    /// What passed the sensor as mist, g.
    pub mist_g: Figure,
    /// Times that the last ice went.
    pub thaws: Figure,
    /// Coldest wall, °C; left out where no cell lies a bore behind an inlet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coldest_wall_c: Option<Figure>,
    /// Hours that are dry by bound.
    pub by_bound_hours: Figure,
    /// Start of the first wet hour on the file's own clock; left out where none is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_wet: Option<String>,
    /// The day on which most formed; left out where nothing did.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worst_day: Option<WorstDayOutput>,
    /// By month, January first.
    pub months: Vec<MonthOutput>,
    /// The hours that 0.4, 1 and 2 % of all are wetter than.
    pub design_hours: Vec<DesignHourOutput>,
    /// Water that stands, and the air over it; left out where it has no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water: Option<YearWaterOutput>,
}

/// The day on which most formed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WorstDay")]
pub struct WorstDayOutput {
    /// Its start on the file's own clock.
    pub from: String,
    /// What formed in its 24 rows, g.
    pub condensed_g: Figure,
}

/// A month.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearMonth")]
pub struct MonthOutput {
    /// Its hours.
    pub hours: Figure,
    /// Wet ones.
    pub wet_hours: Figure,
    /// What deposited, g.
    pub condensed_g: Figure,
    /// What dried, g.
    pub evaporated_g: Figure,
    /// What ran off, g.
    pub drained_g: Figure,
}

/// A design hour of the route.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "DesignHour")]
pub struct DesignHourOutput {
    /// Share of the hours that are wetter, %.
    pub exceeded_percent: Figure,
    /// Its start on the file's own clock.
    pub at: String,
    /// What deposits in it, g/h.
    pub condensed_g_h: Figure,
}

/// The steady answer in a design state of the climate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "DesignStateAnswer")]
pub struct DesignStateOutput {
    /// What it is ranked by: `dew_point` or `temperature`.
    pub by: String,
    /// Share of the hours that exceed it, %.
    pub exceeded_percent: Figure,
    /// Temperature outdoors, °C.
    pub outdoor_c: Figure,
    /// Dew point outdoors, over water, °C.
    pub outdoor_dew_point_c: Figure,
    /// Whether it is wet.
    pub verdict: VerdictOutput,
    /// Water formed in both tubes, g/h.
    pub condensed_g_h: Figure,
}

/// Water that stood in a year, and the air over it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearWater")]
pub struct YearWaterOutput {
    /// Hours in which the detector does not sample its duct.
    pub blind_hours: Figure,
    /// Hours in which water closes a low point.
    pub sealed_hours: Figure,
    /// Hours in which frost closes a bore, or ice does in a pool.
    pub iced_hours: Figure,
    /// Hours in which the air throws slugs.
    pub slug_hours: Figure,
    /// Hours in which the reading lies under the low limit.
    pub low_flow_hours: Figure,
    /// Hours in which it lies over the high limit.
    pub high_flow_hours: Figure,
    /// Hours in which the air runs backwards.
    pub reversed_hours: Figure,
    /// Hours in which a trap is full.
    pub trap_full_hours: Figure,
    /// Times that a trap became full.
    pub trap_fillings: Figure,
    /// Visits that found something to let out.
    pub emptyings: Figure,
    /// Times that the last ice in pools thawed.
    pub thaws: Figure,
    /// Most that stood in pools and puddles, g.
    pub most_standing_g: Figure,
    /// Dried from them, g.
    pub evaporated_g: Figure,
    /// Left over seals and out of open stubs, g.
    pub drained_g: Figure,
    /// Ran back into the duct, g.
    pub into_duct_g: Figure,
    /// Ran into the detector, g.
    pub into_detector_g: Figure,
    /// Let out at visits, g.
    pub let_out_g: Figure,
    /// Ran out of cracked traps, g.
    pub leaked_g: Figure,
    /// Passed traps that were full, g.
    pub overflowed_g: Figure,
    /// The first week that makes trouble; left out where none does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_critical_week: Option<CriticalWeekOutput>,
    /// Pools and traps.
    pub stores: Vec<StoreOutput>,
}

/// The first week that makes trouble.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "CriticalWeek")]
pub struct CriticalWeekOutput {
    /// The hour that makes it, on the file's own clock.
    pub at: String,
    /// What trouble.
    pub trouble: String,
}

/// A place where water stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Store")]
pub struct StoreOutput {
    /// `pool` or `trap`.
    pub kind: String,
    /// `intake` or `exhaust`.
    pub tube: String,
    /// Where along it, m.
    pub at_m: Figure,
    /// What it holds, g; left out where nothing keeps it from draining.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub holds_g: Option<Figure>,
    /// Most that stood in it, g.
    pub most_g: Figure,
}

/// A number that stands in for one that the project leaves out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearAssumed")]
pub struct YearAssumedOutput {
    /// The field that is left out.
    pub path: String,
    /// The row of the library.
    pub row: String,
    /// The value, in the unit of the field.
    pub value: Figure,
    /// The lowest that is plausible.
    pub low: Figure,
    /// The highest.
    pub high: Figure,
}

/// A year hour by hour.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearSeries")]
pub struct SeriesOutput {
    /// Starts of the hours on the file's own clock.
    pub time: Vec<String>,
    /// What each hour came to.
    pub columns: Vec<SeriesColumnOutput>,
}

/// One quantity hour by hour.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "YearSeriesColumn")]
pub struct SeriesColumnOutput {
    /// What it is, with its unit at the end.
    pub name: String,
    /// Hour by hour; null where it is not known.
    pub values: Vec<Option<Figure>>,
}
