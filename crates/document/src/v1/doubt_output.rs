//! The answer file: how sure a steady answer is.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{Figure, NotComputed};

/// How sure an answer is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum DoubtAnswer {
    /// Nothing is said of it.
    NotComputed(NotComputed),
    /// What is said of it. Since revision 6.
    Computed(Box<DoubtOutput>),
}

/// How sure a steady answer is: the run again and again, assumed values and relations taken anywhere within their spans.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DoubtOutput {
    /// So many cases have an answer.
    pub cases: u32,
    /// So many have none: their values leave what the relations hold for.
    pub unanswered: u32,
    /// So many of a hundred are wet.
    pub wet_of_100: Figure,
    /// The intake tube.
    pub intake: TubeDoubtOutput,
    /// The exhaust tube; left out where none is drawn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exhaust: Option<TubeDoubtOutput>,
    /// Mist at the sensor, kg per kg of dry air.
    pub mist_kg_kg: SpreadOutput,
    /// What varied, and the part of the spread of all water inside that it alone makes, the largest first.
    pub shares: Vec<ShareOutput>,
}

/// How sure the answer for one tube is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TubeDoubtOutput {
    /// Water and frost deposited inside, g/h.
    pub water_g_h: SpreadOutput,
    /// Water and rime deposited outside, g/h.
    pub sweat_g_h: SpreadOutput,
    /// In how many of a hundred cases it is wet, a decimetre from one to the next; only where the tubes are drawn out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub wet_of_100_along: Vec<Figure>,
}

/// The middle and the ends of all cases.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SpreadOutput {
    /// A tenth of the cases lies below.
    pub p10: Figure,
    /// Half of them.
    pub p50: Figure,
    /// Nine tenths.
    pub p90: Figure,
}

/// What varied, and its part of a spread.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShareOutput {
    /// Id of the figure that is assumed; left out for a relation.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub assumed: Option<String>,
    /// The fields of the project that hold it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub paths: Vec<String>,
    /// inside_film, outside_film or diffusivity; left out for an assumed value.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relation: Option<String>,
    /// Its part, %.
    pub share_percent: Figure,
}
