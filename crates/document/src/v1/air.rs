//! Moist air as it is entered: any pair of quantities that fixes its state.

use crate::field_path::Here;
use crate::json::{Fault, Fields, FromJson, Node, Part, ToJson, Writer, record, variant, words};
use schemars::JsonSchema;

use super::Input;

/// The pair of quantities that fixes the state of an air.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(rename_all = "snake_case", deny_unknown_fields)]
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
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(rename_all = "snake_case", deny_unknown_fields)]
pub enum Humidity {
    /// Relative humidity.
    Relative(Relative),
    /// Dew point, over water also below freezing, °C.
    #[schemars(rename = "dew_point_c")]
    DewPoint(Input<f64>),
    /// Frost point, over ice, °C.
    #[schemars(rename = "frost_point_c")]
    FrostPoint(Input<f64>),
    /// Vapour per dry air, kg/kg.
    #[schemars(rename = "ratio_kg_kg")]
    Ratio(Input<f64>),
    /// Wet bulb, °C.
    #[schemars(rename = "wet_bulb_c")]
    WetBulb(Input<f64>),
    /// Enthalpy per dry air, counted from 0 °C, kJ/kg.
    #[schemars(rename = "enthalpy_kj_kg")]
    Enthalpy(Input<f64>),
}

/// A relative humidity and the surface it is relative to.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Relative {
    /// Relative humidity, %.
    pub percent: Input<f64>,
    /// The surface at whose saturation it is 100 %.
    #[schemars(default, extend("default" = "water"))]
    pub over: Over,
}

/// The surface that a humidity below freezing refers to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Over {
    /// Liquid water, also below freezing: the habit of weather services and sensors.
    #[default]
    Water,
    /// Ice below 0.01 °C: the habit of handbooks.
    Ice,
}

/// The absolute pressure of the air, or the altitude that fixes it.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Pressure {
    /// Absolute pressure, Pa.
    AbsolutePa(Input<f64>),
    /// Altitude in the standard atmosphere, m above sea level.
    AltitudeM(Input<f64>),
}

const PAIR: &str = "a pair of quantities: `temperature`, `dew_point_and_relative`, `frost_point_and_relative` or `ratio_and_relative`";
const PAIRS: [&str; 4] = [
    "temperature",
    "dew_point_and_relative",
    "frost_point_and_relative",
    "ratio_and_relative",
];

impl FromJson for AirPair {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let (name, node) = variant(node, at, PAIR, &PAIRS)?;
        let at = &at.field(name);
        let of = |names: &[&'static str; 2]| Fields::of(node, at, PAIR, names);
        Ok(match name {
            "temperature" => {
                let fields = of(&["temperature_c", "humidity"])?;
                Self::Temperature {
                    temperature_c: fields.take("temperature_c")?,
                    humidity: fields.take("humidity")?,
                }
            }
            "dew_point_and_relative" => {
                let fields = of(&["dew_point_c", "relative"])?;
                Self::DewPointAndRelative {
                    dew_point_c: fields.take("dew_point_c")?,
                    relative: fields.take("relative")?,
                }
            }
            "frost_point_and_relative" => {
                let fields = of(&["frost_point_c", "relative"])?;
                Self::FrostPointAndRelative {
                    frost_point_c: fields.take("frost_point_c")?,
                    relative: fields.take("relative")?,
                }
            }
            _ => {
                let fields = of(&["ratio_kg_kg", "relative"])?;
                Self::RatioAndRelative {
                    ratio_kg_kg: fields.take("ratio_kg_kg")?,
                    relative: fields.take("relative")?,
                }
            }
        })
    }
}

impl ToJson for AirPair {
    fn to_json(&self, out: &mut Writer) {
        let (name, fields): (&str, [(&str, &dyn ToJson); 2]) = match self {
            Self::Temperature {
                temperature_c,
                humidity,
            } => (
                "temperature",
                [("temperature_c", temperature_c), ("humidity", humidity)],
            ),
            Self::DewPointAndRelative {
                dew_point_c,
                relative,
            } => (
                "dew_point_and_relative",
                [("dew_point_c", dew_point_c), ("relative", relative)],
            ),
            Self::FrostPointAndRelative {
                frost_point_c,
                relative,
            } => (
                "frost_point_and_relative",
                [("frost_point_c", frost_point_c), ("relative", relative)],
            ),
            Self::RatioAndRelative {
                ratio_kg_kg,
                relative,
            } => (
                "ratio_and_relative",
                [("ratio_kg_kg", ratio_kg_kg), ("relative", relative)],
            ),
        };
        out.record(&[(name, &Part(&fields))]);
    }
}

const HUMIDITY: &str = "one measure of humidity, such as {\"dew_point_c\": ..}";
const HUMIDITIES: [&str; 6] = [
    "relative",
    "dew_point_c",
    "frost_point_c",
    "ratio_kg_kg",
    "wet_bulb_c",
    "enthalpy_kj_kg",
];

impl FromJson for Humidity {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let (name, node) = variant(node, at, HUMIDITY, &HUMIDITIES)?;
        let at = &at.field(name);
        if name == "relative" {
            return Relative::from_json(node, at).map(Self::Relative);
        }
        let value = Input::from_json(node, at)?;
        Ok(match name {
            "dew_point_c" => Self::DewPoint(value),
            "frost_point_c" => Self::FrostPoint(value),
            "ratio_kg_kg" => Self::Ratio(value),
            "wet_bulb_c" => Self::WetBulb(value),
            _ => Self::Enthalpy(value),
        })
    }
}

impl ToJson for Humidity {
    fn to_json(&self, out: &mut Writer) {
        let field: (&str, &dyn ToJson) = match self {
            Self::Relative(relative) => ("relative", relative),
            Self::DewPoint(value) => ("dew_point_c", value),
            Self::FrostPoint(value) => ("frost_point_c", value),
            Self::Ratio(value) => ("ratio_kg_kg", value),
            Self::WetBulb(value) => ("wet_bulb_c", value),
            Self::Enthalpy(value) => ("enthalpy_kj_kg", value),
        };
        out.record(&[field]);
    }
}

record!(
    Relative,
    "a relative humidity with its fields",
    percent,
    over
);
words!(Over, or Water; Water = "water", Ice = "ice");

impl FromJson for Pressure {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let known = ["absolute_pa", "altitude_m"];
        let (name, node) = variant(node, at, "`absolute_pa` or `altitude_m`", &known)?;
        let value = Input::from_json(node, &at.field(name))?;
        Ok(match name {
            "absolute_pa" => Self::AbsolutePa(value),
            _ => Self::AltitudeM(value),
        })
    }
}

impl ToJson for Pressure {
    fn to_json(&self, out: &mut Writer) {
        let (name, value) = match self {
            Self::AbsolutePa(value) => ("absolute_pa", value),
            Self::AltitudeM(value) => ("altitude_m", value),
        };
        out.record(&[(name, value)]);
    }
}
