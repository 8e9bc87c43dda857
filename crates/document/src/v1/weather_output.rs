//! The answer about one weather or logger file, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::Figure;

/// What stands in `format` of an answer about a weather or logger file.
pub const WEATHER_FORMAT: &str = "dewrun-weather";

/// What was understood of one weather or logger file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Weather", title = "Dewrun weather, version 1, revision 1")]
pub struct WeatherOutput {
    /// Always `dewrun-weather`.
    #[schemars(extend("const" = WEATHER_FORMAT))]
    pub format: String,
    /// Always 1.
    pub version: u64,
    /// Which fields the answer may hold; rises with every field added.
    pub revision: u64,
    /// The file.
    pub file: String,
    /// Its length.
    pub bytes: u64,
    /// SHA-256 of its bytes, in hexadecimal digits.
    pub sha256: String,
    /// How it was read.
    pub understood: UnderstoodOutput,
    /// Where the readings are from.
    pub place: PlaceOutput,
    /// Rows with a time; repeated times count once, events not at all.
    pub rows: u64,
    /// Rows whose temperature, humidity and pressure are all known.
    pub usable_rows: u64,
    /// Rows that are not usable.
    pub missing_rows: u64,
    /// Lines with a time that hold an event and no reading.
    pub event_rows: u64,
    /// Lines with nothing in them.
    pub blank_lines: u64,
    /// How the rows lie in time.
    pub timing: TimingOutput,
    /// Where the pressures are from.
    pub pressure_source: String,
    /// Pressure of the standard atmosphere at the elevation, Pa; left out where no elevation is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub standard_pressure_pa: Option<Figure>,
    /// How dew points agree with the other readings below freezing; left out where too few rows tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub below_freezing: Option<ConventionOutput>,
    /// Relative humidities over 100 % that were taken as 100 %.
    pub clipped: u64,
    /// Ranges of what was read, by quantity.
    pub ranges: RangesOutput,
    /// The first row.
    pub first_row: RowOutput,
    /// The warmest and the coldest month, from 1; left out where no temperature is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warmest_month: Option<u64>,
    /// See `warmest_month`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coldest_month: Option<u64>,
    /// Design conditions counted from the file; left out where less than a year is covered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub design: Option<DesignOutput>,
    /// Names of the stations in the file, where it names any.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stations: Vec<String>,
    /// Free words of the file.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub comments: Vec<String>,
    /// Every decision and oddity.
    pub notes: Vec<WeatherNoteOutput>,
}

/// How a file was read; each can be said otherwise on the command line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Understood")]
pub struct UnderstoodOutput {
    /// Form of the file.
    pub form: String,
    /// Its letters.
    pub encoding: String,
    /// What stands between cells; empty where columns are fixed.
    pub delimiter: String,
    /// `point` or `comma`.
    pub decimal_mark: String,
    /// Order of day, month and year.
    pub date_order: String,
    /// What the stamps mean.
    pub stamps: String,
    /// Hours that the stamps are ahead of UTC, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub utc_offset_h: Option<Figure>,
    /// The station whose rows were taken, where there are several.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub station: Option<String>,
    /// The number of the first line with a reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_reading: Option<u64>,
    /// `water` or `ice`: what dew points below freezing refer to.
    pub dew_point_over: String,
    /// `water` or `ice`: what relative humidities below freezing refer to.
    pub relative_humidity_over: String,
    /// Which leads where a row has both: `dew point` or `relative humidity`.
    pub leading_humidity: String,
    /// The columns that were used.
    pub columns: Vec<ColumnOutput>,
}

/// A column that was used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherColumn")]
pub struct ColumnOutput {
    /// Its number, from 1.
    pub column: u64,
    /// What it holds.
    pub role: String,
    /// In which unit; left out where it has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
}

/// Where readings are from; what the file does not say is left out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Place")]
pub struct PlaceOutput {
    /// Name of the place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Degrees north.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub latitude_deg: Option<Figure>,
    /// Degrees east.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longitude_deg: Option<Figure>,
    /// Metres above sea level.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub elevation_m: Option<Figure>,
    /// Hours that the clock of the place is ahead of UTC.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone_h: Option<Figure>,
}

/// How rows lie in time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Timing")]
pub struct TimingOutput {
    /// Stamp of the first row, as the file means it.
    pub first: String,
    /// Stamp of the last row.
    pub last: String,
    /// Hour of a year of 8760 hours that the first row stands for, from 1.
    pub first_hour_of_year: u64,
    /// Usual step, s.
    pub step_s: u64,
    /// Hours with a usable row.
    pub covered_hours: Figure,
    /// The same as a share of a year, %; nothing is extrapolated.
    pub covered_share_percent: Figure,
    /// The months come from different years.
    pub is_typical_year: bool,
    /// Steps that differ from the usual one.
    pub irregular_steps: u64,
    /// Rows whose time stood already; left out of the rows.
    pub repeated: u64,
    /// Rows earlier than the one before them, in the file.
    pub backward: u64,
    /// Longest step, s.
    pub longest_step_s: u64,
    /// Stretches without a usable row.
    pub gaps: Vec<GapOutput>,
}

/// A stretch without a usable row.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Gap")]
pub struct GapOutput {
    /// The last usable row before it.
    pub from: String,
    /// The next usable one.
    pub to: String,
    /// Minutes between them.
    pub minutes: u64,
    /// Line of the next one.
    pub line: u64,
}

/// Medians of dew points recomputed from temperature and relative humidity, less those in the file, below freezing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Convention")]
pub struct ConventionOutput {
    /// Rows that were compared.
    pub rows: u64,
    /// Both over water, K.
    pub both_over_water_k: Figure,
    /// Both over ice, K.
    pub both_over_ice_k: Figure,
    /// Relative humidity over water, dew point over ice, K.
    pub frost_point_k: Figure,
}

/// Ranges of what was read; what the file does not hold is left out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherRanges")]
pub struct RangesOutput {
    /// Temperature, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<RangeOutput>,
    /// Dew point, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dew_point_c: Option<RangeOutput>,
    /// Relative humidity, %.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relative_humidity_percent: Option<RangeOutput>,
    /// Pressure, Pa.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure_pa: Option<RangeOutput>,
}

/// Least, most and mean.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherRange")]
pub struct RangeOutput {
    /// The least.
    pub min: Figure,
    /// The most.
    pub max: Figure,
    /// The mean.
    pub mean: Figure,
}

/// One row; what is missing is null.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherRow")]
pub struct RowOutput {
    /// Temperature, °C.
    pub temperature_c: Option<Figure>,
    /// Dew point, °C.
    pub dew_point_c: Option<Figure>,
    /// Relative humidity, %.
    pub relative_humidity_percent: Option<Figure>,
    /// Pressure, Pa.
    pub pressure_pa: Option<Figure>,
    /// Humidity ratio, kg/kg.
    pub humidity_ratio_kg_kg: Option<Figure>,
}

/// Design conditions counted from the file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherDesign")]
pub struct DesignOutput {
    /// Dew points exceeded in 0.4, 1 and 2 % of the hours.
    pub humid: Vec<HumidDesignOutput>,
    /// Dry bulbs exceeded in 99.6 and 99 % of the hours.
    pub cold: Vec<ColdDesignOutput>,
}

/// A dew point that a share of the hours exceeds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "HumidDesign")]
pub struct HumidDesignOutput {
    /// Share of the hours, %.
    pub exceeded_percent: Figure,
    /// The dew point, °C.
    pub dew_point_c: Figure,
    /// Mean dry bulb of the hours near it, °C.
    pub mean_coincident_dry_bulb_c: Figure,
}

/// A dry bulb that a share of the hours exceeds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "ColdDesign")]
pub struct ColdDesignOutput {
    /// Share of the hours, %.
    pub exceeded_percent: Figure,
    /// The dry bulb, °C.
    pub dry_bulb_c: Figure,
}

/// A decision or an oddity, with the lines it concerns.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WeatherNote")]
pub struct WeatherNoteOutput {
    /// What it is about.
    pub topic: String,
    /// What was decided or met, and why.
    pub sentence: String,
    /// The first few lines it concerns, from 1; empty where it is about the whole file.
    pub lines: Vec<u64>,
    /// How many lines it concerns; 0 where it is about the whole file.
    pub count: u64,
}
