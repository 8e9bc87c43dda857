//! The answer about remedies over a year, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{ErrorOutput, Figure};

/// What stands in `format` of an answer about remedies.
pub const REMEDIES_FORMAT: &str = "dewrun-remedies";

/// The answer to one project: what would make its runs dry enough.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(
    rename = "RemediesAnswer",
    title = "Dewrun remedies, version 1, revision 1"
)]
pub struct RemediesFile {
    /// Always `dewrun-remedies`.
    #[schemars(extend("const" = REMEDIES_FORMAT))]
    pub format: String,
    /// Always 1.
    pub version: u64,
    /// Which fields the answer may hold; rises with every field added.
    pub revision: u64,
    /// The file that held the project, where there was one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// Name of the project; left out where it could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub project: Option<String>,
    /// One for each run that was asked for; empty where the project could not be read.
    pub runs: Vec<RemediesRunOutput>,
    /// Why the project could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// The answer of one run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemediesRun")]
pub struct RemediesRunOutput {
    /// Its id.
    pub id: String,
    /// Its name; may be empty.
    pub name: String,
    /// Its remedies; left out where it has no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub remedies: Option<RemediesOutput>,
    /// Why it has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// What would make a run dry enough.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Remedies")]
pub struct RemediesOutput {
    /// In words.
    pub sentences: Vec<String>,
    /// The weather file; left out where there is none and the conditions entered alone count.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weather_file: Option<String>,
    /// SHA-256 of its bytes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weather_sha256: Option<String>,
    /// What counts as dry enough.
    pub target: TargetOutput,
    /// Whether the run as drawn meets it; no remedy is sought then.
    pub is_met: bool,
    /// What is left as drawn.
    pub before: LeftOutput,
    /// Remedies, those that meet the target first, in the order asked for.
    pub remedies: Vec<RemedyOutput>,
}

/// What counts as dry enough; what is left out is not asked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemedyTarget")]
pub struct TargetOutput {
    /// No water in this hour: `entered`, or the hour of which 0.4, 1 or 2 % of all are wetter: `0.4`, `1`, `2`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dry_in: Option<String>,
    /// At most so many wet hours.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wet_hours: Option<Figure>,
    /// At most so much water forms, L.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub formed_l: Option<Figure>,
    /// The air around the sensor stays below the device's rating by so much, % relative humidity.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chamber_margin_percent: Option<Figure>,
    /// No ice on a wall.
    pub no_frost: bool,
    /// At most so many hours in which the detector does not sample its duct.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blind_hours: Option<Figure>,
    /// No trap is emptied more often than every so many days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trap_days: Option<Figure>,
}

/// A remedy and what is left with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Remedy")]
pub struct RemedyOutput {
    /// What it does; two where one alone does not do.
    pub kinds: Vec<String>,
    /// The same in words, with its size.
    pub what: String,
    /// Whether the target is met with it; else it is the largest size there is, and does not do alone.
    pub meets_target: bool,
    /// The parts of the target that are missed.
    pub misses: Vec<String>,
    /// What is done, in this order.
    pub alterations: Vec<AlterationOutput>,
    /// What is left with it.
    pub left: LeftOutput,
    /// What else comes of it, in words.
    pub side_effects: Vec<String>,
    /// What work it is.
    pub work: String,
    /// How the places are reached at which it is done, in words.
    pub access: String,
    /// What it takes of power, and what comes of its failure; left out where it needs none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub power: Option<RemedyPowerOutput>,
}

/// One thing that is done to a run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Alteration")]
pub struct AlterationOutput {
    /// What.
    pub does: String,
    /// `intake` or `exhaust`; left out where it is about neither.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube: Option<String>,
    /// The leg or the trap of that tube, counted from 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub position: Option<u64>,
    /// How much, in the unit that `does` ends in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Figure>,
    /// The space by its position, or the row of the library by its id.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<String>,
}

/// What is left of the trouble.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemedyLeft")]
pub struct LeftOutput {
    /// In the conditions that are entered.
    pub entered: EnteredLeftOutput,
    /// Through the weather; left out where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub year: Option<YearLeftOutput>,
}

/// What is left in the conditions that are entered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemedyLeftEntered")]
pub struct EnteredLeftOutput {
    /// `dry` or `wet`.
    pub verdict: String,
    /// Water that forms in both tubes, g/h.
    pub water_g_h: Figure,
    /// Sweat outside, g/h.
    pub sweat_g_h: Figure,
    /// Relative humidity around the sensor, %.
    pub chamber_percent: Figure,
    /// Whether the detector may not be sampling its duct; left out where water and air have no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub is_blind: Option<bool>,
    /// What stands at low points when traps are next emptied, g.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub standing_g: Option<Figure>,
    /// Flow at the sensor, L/min.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flow_l_min: Option<Figure>,
    /// From the holes to the first smoke at the sensor, s.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_smoke_s: Option<Figure>,
    /// To nine tenths of it, s.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ninety_percent_s: Option<Figure>,
}

/// What is left through the weather.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemedyLeftYear")]
pub struct YearLeftOutput {
    /// All of it, h.
    pub hours: Figure,
    /// Wet hours.
    pub wet_hours: Figure,
    /// Water that forms, kg.
    pub water_kg: Figure,
    /// What forms in the hours of which 0.4, 1 and 2 % of all are wetter, g/h.
    pub design_g_h: [Figure; 3],
    /// Hours in which mist reaches the sensor.
    pub mist_hours: Figure,
    /// Hours in which ice lies on a wall.
    pub frost_hours: Figure,
    /// Highest relative humidity around the sensor, %.
    pub most_humid_chamber_percent: Figure,
    /// Sweat outside, kg.
    pub sweat_kg: Figure,
    /// Hours in which the detector does not sample its duct; left out, as those below, where water can't be followed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blind_hours: Option<Figure>,
    /// Hours in which the airflow lies outside its limits.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit_hours: Option<Figure>,
    /// What runs into the detector, kg.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub into_detector_kg: Option<Figure>,
    /// What was drained and let out, kg.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drained_kg: Option<Figure>,
    /// The shortest time in which a trap emptied by hand fills, days; left out where none does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trap_days: Option<Figure>,
}

/// What a remedy takes of power.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "RemedyPower")]
pub struct RemedyPowerOutput {
    /// All of it, W.
    pub power_w: Figure,
    /// What it takes where it is always on, kWh; left out, as the thermostat, where there is no weather.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub energy_kwh: Option<Figure>,
    /// A thermostat in the air beside it is set to this, °C; left out where nothing would be wet without power.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thermostat_c: Option<Figure>,
    /// What it takes with that, kWh.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thermostat_kwh: Option<Figure>,
    /// How hot the tube gets where it stays on in the warmest hour and the air stands, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stuck_on_c: Option<Figure>,
    /// What the tube bears, °C; left out where it is of metal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bears_c: Option<Figure>,
    /// What is left where it has failed.
    pub failed: LeftOutput,
}
