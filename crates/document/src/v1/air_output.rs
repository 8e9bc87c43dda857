//! The answer about one state of moist air, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::Figure;

/// What stands in `format` of an answer about one state of air.
pub const AIR_FORMAT: &str = "dewrun-air";

/// Every quantity of one state of moist air.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Air", title = "Dewrun air, version 1, revision 1")]
pub struct AirStateOutput {
    /// Always `dewrun-air`.
    #[schemars(extend("const" = AIR_FORMAT))]
    pub format: String,
    /// Always 1.
    pub version: u64,
    /// Which fields the answer may hold; rises with every field added.
    pub revision: u64,
    /// Temperature, °C.
    pub temperature_c: Figure,
    /// Absolute pressure, Pa.
    pub pressure_pa: Figure,
    /// Vapour per dry air, kg/kg.
    pub humidity_ratio_kg_kg: Figure,
    /// Partial pressure of the vapour, Pa.
    pub vapour_pressure_pa: Figure,
    /// Relative humidity over water, %.
    pub relative_humidity_percent: Figure,
    /// Relative humidity over ice below 0.01 °C, over water above, %.
    pub relative_humidity_over_ice_percent: Figure,
    /// Humidity ratio over that at saturation over water, %.
    pub degree_of_saturation_percent: Figure,
    /// Dew point over water, °C; null in bone-dry air.
    pub dew_point_c: Option<Figure>,
    /// Frost point over ice, °C; null where it lies above 0.01 °C and in bone-dry air.
    pub frost_point_c: Option<Figure>,
    /// Wet bulb, °C.
    pub wet_bulb_c: Figure,
    /// Enthalpy per dry air, counted from 0 °C, kJ/kg.
    pub enthalpy_kj_kg: Figure,
    /// Volume per dry air, m³/kg.
    pub specific_volume_m3_kg: Figure,
    /// Density of air and vapour, kg/m³.
    pub density_kg_m3: Figure,
    /// What stands beside the answer.
    pub notes: Vec<String>,
}
