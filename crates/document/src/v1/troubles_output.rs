//! The answer about a log of troubles, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{ErrorOutput, Figure};

/// What stands in `format` of an answer about troubles.
pub const TROUBLES_FORMAT: &str = "dewrun-troubles";

/// The answer to a log of troubles: which cause explains it best, and what to look at next.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(
    rename = "TroublesAnswer",
    title = "Dewrun troubles, version 1, revision 2"
)]
pub struct TroublesFile {
    /// Always `dewrun-troubles`.
    #[schemars(extend("const" = TROUBLES_FORMAT))]
    pub format: String,
    /// Always 1.
    pub version: u64,
    /// Which fields the answer may hold; rises with every field added.
    pub revision: u64,
    /// The file that held the log; left out where there was none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub log: Option<String>,
    /// Name of the project; left out where it could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub project: Option<String>,
    /// What is said; left out where there is no answer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub troubles: Option<TroublesOutput>,
    /// Why there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// What answers and log say of a run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Troubles")]
pub struct TroublesOutput {
    /// Id of the run.
    pub run: String,
    /// The weather file.
    pub weather_file: String,
    /// Hours are those of another year: the climate, and not what was.
    pub is_climate: bool,
    /// Members of the ensemble that have an answer.
    pub members: u64,
    /// How the log was read, in sentences.
    pub read: Vec<String>,
    /// Its entries, in order of time.
    pub entries: Vec<TroubleEntryOutput>,
    /// Entries that are a trouble by themselves.
    pub troubles: u64,
    /// They are too few: the order rests on answers and on what is modelled.
    pub too_few: bool,
    /// Where answers and log contradict each other, in a sentence.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub contradiction: Option<String>,
    /// What the log cannot tell, in sentences.
    pub cannot_tell: Vec<String>,
    /// The causes, the likeliest first.
    pub causes: Vec<TroubleCauseOutput>,
    /// The checks, the best first.
    pub next_checks: Vec<TroubleCheckOutput>,
}

/// An entry of a log.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "TroubleEntry")]
pub struct TroubleEntryOutput {
    /// Its line in the log.
    pub line: u64,
    /// When, on the clock of the weather.
    pub at: String,
    /// Only its day is known.
    pub day_only: bool,
    /// What: `airflow_low`, `airflow_high`, `alarm_without_smoke`, `water_found`, `emptied`, `filter_changed`, `detector_replaced` or `other`.
    pub kind: String,
    /// Water, g.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water_g: Option<Figure>,
    /// What the panel showed of the airflow, % of that as fitted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub airflow_percent: Option<Figure>,
}

/// A cause in its place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "TroubleCause")]
pub struct TroubleCauseOutput {
    /// Its id.
    pub id: String,
    /// What it is, in words.
    pub name: String,
    /// Its share of a hundred.
    pub share: Figure,
    /// The least share as troubles are left out in turn.
    pub share_least: Figure,
    /// The most.
    pub share_most: Figure,
    /// Its share of a hundred by the answers alone.
    pub by_answers: Figure,
    /// By the log alone.
    pub by_log: Figure,
    /// What speaks for it.
    #[serde(rename = "for")]
    pub for_it: Vec<String>,
    /// What speaks against it.
    pub against: Vec<String>,
}

/// A check that a technician can do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "TroubleCheck")]
pub struct TroubleCheckOutput {
    /// Its id.
    pub id: String,
    /// What to do.
    pub name: String,
    /// What it takes, and what to mind.
    pub takes: String,
    /// How much of the doubt that is left it should settle, 0 to 1.
    pub settles: Figure,
    /// What may be seen.
    pub outcomes: Vec<TroubleOutcomeOutput>,
}

/// What may be seen at a check.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "TroubleOutcome")]
pub struct TroubleOutcomeOutput {
    /// In words.
    pub name: String,
    /// So many of a hundred.
    pub expected: Figure,
    /// The likeliest cause then.
    pub then: String,
    /// Its share of a hundred then.
    pub then_share: Figure,
}
