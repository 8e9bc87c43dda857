//! The answer file: the air through a run, its states and faults, the limits, and whether the detector is blind.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::{Figure, NotComputed};

/// Whether air still arrives.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum AirflowAnswer {
    /// Nothing is said of it.
    NotComputed(NotComputed),
    /// What is said of it. Since revision 4.
    Computed(Box<AirflowOutput>),
}

/// Why the detector may not be sampling its duct.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BlindOutput {
    /// reversed, still, diluted, iced or sealed.
    pub why: String,
    /// The tube that is iced or sealed: intake or exhaust.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube: Option<String>,
    /// Where, m.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_m: Option<Figure>,
    /// After how long of these conditions, h.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after_h: Option<Figure>,
    /// What of the air at the sensor comes from the duct, %.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub share_percent: Option<Figure>,
}

/// The air through a run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AirflowOutput {
    /// forward, reversed or still.
    pub direction: String,
    /// Volume flow at the sensor, L/min.
    pub flow_l_min: Figure,
    /// What of it comes from the duct, % by mass.
    pub share_percent: Figure,
    /// The reading against that as fitted, %; null where nothing flowed as fitted.
    pub reading_percent: Option<Figure>,
    /// Speed of a generic fan against its curve; 1 where the curve is its own.
    pub fan_speed: Figure,
    /// How long air takes from the holes to the sensor; null where none arrives.
    pub transport: Option<TransportOutput>,
    /// Total pressures along the way, against the detector's room.
    pub pressures: Vec<PressureOutput>,
    /// What fan and duct give, and what each part costs.
    pub budget: Vec<PressureOutput>,
    /// States that must not trip a limit.
    pub states: Vec<StateOutput>,
    /// Faults that ought to.
    pub faults: Vec<FaultOutput>,
    /// States and faults that have no single flow.
    pub unanswered: Figure,
    /// The tightest limits that no expected state trips; null where nothing flowed as fitted.
    pub recommended: Option<RecommendedOutput>,
    /// What the limits in use do; left out where none are given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_use: Option<InUseOutput>,
    /// The cheapest change that lets limits catch what they miss: filter_interval, new_as_fitted, season, fan_speed or shorter_tube; null where all is caught.
    pub cheapest_change: Option<String>,
}

/// Transport time as a band.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TransportOutput {
    /// First trace, s.
    pub first_s: Figure,
    /// As if all moved at one speed, s.
    pub plug_s: Figure,
    /// Nine tenths, s.
    pub ninety_percent_s: Figure,
}

/// A pressure at a part or place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PressureOutput {
    /// Which.
    pub part: String,
    /// The pressure, Pa.
    pub pressure_pa: Figure,
}

/// A state that must not trip a limit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StateOutput {
    /// Which, in words.
    pub state: String,
    /// Volume flow at the sensor, L/min; negative where it is reversed.
    pub flow_l_min: Figure,
    /// The reading against that as fitted, %; null where nothing flowed as fitted.
    pub reading_percent: Option<Figure>,
    /// What of the air comes from the duct, %.
    pub share_percent: Figure,
}

/// A fault that ought to trip a limit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FaultOutput {
    /// Which: parted, sealed, holes_fouled, filter_missing, trap_dry or fan_weak.
    pub fault: String,
    /// The tube: intake or exhaust; left out where it is in neither.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube: Option<String>,
    /// Where along it, m.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_m: Option<Figure>,
    /// Volume flow at the sensor, L/min; negative where it is reversed.
    pub flow_l_min: Figure,
    /// The reading against that as fitted, %; null where nothing flowed as fitted.
    pub reading_percent: Option<Figure>,
    /// What of the air comes from the duct, %.
    pub share_percent: Figure,
    /// What the recommended limits make of it: low, high or not_seen; left out where there are none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub recommended: Option<String>,
    /// What the limits in use make of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_use: Option<String>,
}

/// The tightest limits.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RecommendedOutput {
    /// The low one, % of the reading as fitted.
    pub low_percent: Figure,
    /// The high one, %.
    pub high_percent: Figure,
    /// The state that sets the low one.
    pub low_set_by: String,
    /// The state that sets the high one.
    pub high_set_by: String,
}

/// What limits in use do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct InUseOutput {
    /// The low one, % of the reading as fitted.
    pub low_percent: Figure,
    /// The high one, %.
    pub high_percent: Figure,
    /// Expected states that trip one although nothing is wrong.
    pub false_alarms: Vec<String>,
}

/// A value that stands in for one that the project leaves out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AssumedOutput {
    /// Id of the figure that it is; the numbers are in its unit or in that of the field.
    pub figure: String,
    /// The field that is left out.
    pub path: String,
    /// The row of the library.
    pub row: String,
    /// The value assumed.
    pub value: Figure,
    /// The lowest value that is plausible.
    pub low: Figure,
    /// The highest.
    pub high: Figure,
}
