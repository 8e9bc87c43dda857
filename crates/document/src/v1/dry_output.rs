//! The part of the answer file that says what a run would still take dry.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::Figure;

/// What the run would still take dry, by one change at a time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StayingDryOutput {
    /// The most humid duct air.
    pub duct_air: DuctAirLimitOutput,
    /// The coldest that the spaces may be.
    pub space: SpaceLimitOutput,
    /// The longest intake tube along the route, the detector at its end and no exhaust tube.
    pub tube: TubeLimitOutput,
}

/// Whether there is a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LimitOutput {
    /// Dry up to it, wet a little past it.
    At,
    /// Dry as far as it can go.
    Any,
    /// Wet however far it is taken back.
    Never,
}

/// The most humid duct air.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DuctAirLimitOutput {
    /// Whether there is a limit.
    pub limit: LimitOutput,
    /// The temperature of the duct air, which stays as it is, °C.
    pub temperature_c: Figure,
    /// The highest dew point that stays dry, over water also below 0 °C, °C; left out where there is no limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dew_point_c: Option<Figure>,
}

/// The coldest that the spaces may be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SpaceLimitOutput {
    /// Whether there is a limit.
    pub limit: LimitOutput,
    /// The lowest temperature that stays dry, °C; left out where there is no limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<Figure>,
    /// Names of the spaces that are taken to have it alike: of a wet run those now colder, of a dry run those now warmer.
    pub spaces: Vec<String>,
}

/// The longest intake tube.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TubeLimitOutput {
    /// Whether there is a limit.
    pub limit: LimitOutput,
    /// The greatest length from the duct on that stays dry, m; left out where there is no limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_m: Option<Figure>,
    /// Id of the leg in which it ends.
    pub leg: String,
    /// Whether it ends with that leg, within 50 mm.
    pub at_end_of_leg: bool,
}
