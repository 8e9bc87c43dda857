//! Moist air as it is entered: any pair of quantities that fixes its state.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Input;

/// The pair of quantities that fixes the state of an air.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(
    rename_all = "snake_case",
    deny_unknown_fields,
    expecting = "a pair of quantities: `temperature`, `dew_point_and_relative`, `frost_point_and_relative` or `ratio_and_relative`"
)]
pub enum AirPair {
    /// Temperature and any measure of humidity.
    Temperature {
        /// Temperature, °C.
        temperature_c: Input<f64>,
        /// Humidity at that temperature.
        humidity: Humidity,
    },
    /// Dew point and relative humidity.
    DewPointAndRelative {
        /// Dew point, over water also below freezing, °C.
        dew_point_c: Input<f64>,
        /// Relative humidity.
        relative: Relative,
    },
    /// Frost point and relative humidity.
    FrostPointAndRelative {
        /// Frost point, over ice, °C.
        frost_point_c: Input<f64>,
        /// Relative humidity.
        relative: Relative,
    },
    /// Humidity ratio and relative humidity.
    RatioAndRelative {
        /// Vapour per dry air, kg/kg.
        ratio_kg_kg: Input<f64>,
        /// Relative humidity.
        relative: Relative,
    },
}

/// How humid an air of known temperature is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(
    rename_all = "snake_case",
    deny_unknown_fields,
    expecting = "one measure of humidity, such as {\"dew_point_c\": ..}"
)]
pub enum Humidity {
    /// Relative humidity.
    Relative(Relative),
    /// Dew point, over water also below freezing, °C.
    #[serde(rename = "dew_point_c")]
    DewPoint(Input<f64>),
    /// Frost point, over ice, °C.
    #[serde(rename = "frost_point_c")]
    FrostPoint(Input<f64>),
    /// Vapour per dry air, kg/kg.
    #[serde(rename = "ratio_kg_kg")]
    Ratio(Input<f64>),
    /// Wet bulb, °C.
    #[serde(rename = "wet_bulb_c")]
    WetBulb(Input<f64>),
    /// Enthalpy per dry air, counted from 0 °C, kJ/kg.
    #[serde(rename = "enthalpy_kj_kg")]
    Enthalpy(Input<f64>),
}

/// A relative humidity and the surface it is relative to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, expecting = "a relative humidity with its fields")]
pub struct Relative {
    /// Relative humidity, %.
    pub percent: Input<f64>,
    /// The surface at whose saturation it is 100 %.
    #[serde(default)]
    pub over: Over,
}

/// The surface that a humidity below freezing refers to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Over {
    /// Liquid water, also below freezing: the habit of weather services and sensors.
    #[default]
    Water,
    /// Ice below 0.01 °C: the habit of handbooks.
    Ice,
}

/// The absolute pressure of the air, or the altitude that fixes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", expecting = "`absolute_pa` or `altitude_m`")]
pub enum Pressure {
    /// Absolute pressure, Pa.
    AbsolutePa(Input<f64>),
    /// Altitude in the standard atmosphere, m above sea level.
    AltitudeM(Input<f64>),
}
