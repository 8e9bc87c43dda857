//! The answer about the doubt of a year, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{ErrorOutput, Figure, SpreadOutput};

/// What stands in `format` of an answer about the doubt of a year.
pub const DOUBT_FORMAT: &str = "dewrun-doubt";

/// The answer to one project: how sure the years of its runs are.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "DoubtAnswer", title = "Dewrun doubt, version 1, revision 1")]
pub struct DoubtFile {
    /// Always `dewrun-doubt`.
    #[schemars(extend("const" = DOUBT_FORMAT))]
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
    pub runs: Vec<DoubtRunOutput>,
    /// Why the project could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// The answer of one run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "DoubtRun")]
pub struct DoubtRunOutput {
    /// Its id.
    pub id: String,
    /// Its name; may be empty.
    pub name: String,
    /// How sure its year is; left out where it has no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub doubt: Option<EnsembleOutput>,
    /// Why it has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// How sure a year is: the year again and again, everything that is assumed or measured taken anywhere within its span.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Ensemble")]
pub struct EnsembleOutput {
    /// In words.
    pub sentences: Vec<String>,
    /// The weather file.
    pub weather_file: String,
    /// SHA-256 of its bytes.
    pub weather_sha256: String,
    /// Members that have an answer.
    pub members: u64,
    /// Members that have none: their values leave what the relations hold for.
    pub unanswered: u64,
    /// Bytes in which the hours of all members are kept.
    pub bytes: u64,
    /// So many of a hundred members are wet in some hour, or have mist at the sensor.
    pub wet_of_100: Figure,
    /// So many of a hundred are blind in some hour; left out where that is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blind_of_100: Option<Figure>,
    /// What their years come to.
    pub quantities: Vec<QuantityOutput>,
    /// What varies from member to member.
    pub spans: Vec<SpanOutput>,
    /// Relations that no member varies.
    pub as_published: Vec<String>,
    /// The one to three assumed values that decide, and how to measure each.
    pub deciding: Vec<DecidingOutput>,
    /// In how many of a hundred members it is wet in the wettest hour of some month, place by place.
    pub wet_along: WetAlongOutput,
    /// What readings make of it; left out where there are none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<MeasuredOutput>,
}

/// The doubt of one number of a year.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Quantity")]
pub struct QuantityOutput {
    /// Which, with its unit: `water_kg`, `ran_off_kg`, `wet_hours`, `mist_hours`, `frost_hours`, `blind_hours`, `limit_hours`, `humid_hours` or `trap_fillings`.
    pub id: String,
    /// With all values as they stand; left out where that year has no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub as_entered: Option<Figure>,
    /// Between what four of five members lie.
    pub spread: SpreadOutput,
    /// How far an end of that lies from that of half of the members, % of its width; left out where it has no width.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moved_percent: Option<Figure>,
    /// What makes the spread, the largest part first; parts under 1 % are left out.
    pub shares: Vec<SpanShareOutput>,
}

/// A part of a spread.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "SpanShare")]
pub struct SpanShareOutput {
    /// Position in `spans`, from 0.
    pub span: u64,
    /// The part that it alone makes, %.
    pub share_percent: Figure,
}

/// What varies, and how far.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Span")]
pub struct SpanOutput {
    /// Id of the figure, of the number of the year, or of the relation: `inside_film`, `outside_film` or `diffusivity`.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// The fields of the project that hold it, or would.
    pub paths: Vec<String>,
    /// The row of the library that it was taken from; left out where it was measured, and of relations.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub row: Option<String>,
    /// The lowest value, in the unit of the figure; shares and humidities of the year are parts of one.
    pub low: Figure,
    /// The value as it stands.
    pub usual: Figure,
    /// The highest value.
    pub high: Figure,
}

/// An assumed value that decides.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Deciding")]
pub struct DecidingOutput {
    /// Position in `spans`, from 0.
    pub span: u64,
    /// The part of the spread that it alone makes, %.
    pub share_percent: Figure,
    /// How to measure it.
    pub how_to_measure: String,
}

/// How often it is wet, a decimetre from one place to the next.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "WetAlong")]
pub struct WetAlongOutput {
    /// Along the intake from its inlet on, of a hundred.
    pub intake_of_100: Vec<Figure>,
    /// Along the exhaust.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub exhaust_of_100: Vec<Figure>,
}

/// What readings make of the ensemble; everything beside it is without them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Measured")]
pub struct MeasuredOutput {
    /// How many members of equal weight would know as much.
    pub worth: Figure,
    /// What readings count for, %: less than 100 where the ensemble is too coarse to follow them.
    pub trust_percent: Figure,
    /// Reading by reading.
    pub readings: Vec<ReadingOutput>,
    /// So many of a hundred members are wet in some hour, by their weights.
    pub wet_of_100: Figure,
    /// What their years come to, by their weights.
    pub quantities: Vec<QuantityOutput>,
    /// What is left of each span, in the order of `spans`.
    pub spans: Vec<RevisedOutput>,
}

/// A reading, and what was expected of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "ReadingToHold")]
pub struct ReadingOutput {
    /// `airflow_l_min`, `first_smoke_s`, `ninety_percent_s`, `suction_pa` or `drained_g`.
    pub what: String,
    /// The value.
    pub value: Figure,
    /// Its standard error.
    pub error: Figure,
    /// What all members expect; left out where none has such a thing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub before: Option<SpreadOutput>,
    /// What they expect by their weights.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<SpreadOutput>,
    /// The nearest of all members, where even that is too far off: the reading contradicts the model and is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub contradicts: Option<Figure>,
}

/// A span before and after readings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Revised")]
pub struct RevisedOutput {
    /// Of all members alike.
    pub before: SpreadOutput,
    /// By their weights.
    pub after: SpreadOutput,
}
