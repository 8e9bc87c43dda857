//! What the air meets on its way, and what is made of the airflow: holes, fan, filter, pressures, sensor, limits.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::Input;

/// What the air meets on its way; whatever is left out is assumed, by a row of the library.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct AirPath {
    /// How many sampling holes the intake has in the duct.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub hole_count: Option<Input<f64>>,
    /// Their diameter, mm.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub hole_diameter_mm: Option<Input<f64>>,
    /// Their discharge coefficient.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub hole_discharge: Option<Input<f64>>,
    /// Share of the duct's velocity pressure that the intake meets.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub intake_catch: Option<Input<f64>>,
    /// Share of the velocity pressure at the exhaust that the exhaust meets.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub exhaust_catch: Option<Input<f64>>,
    /// Static pressure in the duct where the exhaust ends, against the detector's room, Pa; left out: that at the intake.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub exhaust_static_pa: Option<Input<f64>>,
    /// Velocity pressure there, Pa; left out: that at the intake.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub exhaust_velocity_pa: Option<Input<f64>>,
    /// The fan's curve in points of rising flow, at 1.2 kg/m³; left out: a generic one at the speed that gives the flow entered.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub fan: Vec<FanPoint>,
    /// Resistance of the clean filter, Pa per L/min.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub filter_pa_min_l: Option<Input<f64>>,
    /// Loss coefficient of the chamber, on the velocity in the bore of the intake tube.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub chamber_loss: Option<Input<f64>>,
    /// Volume of filter housing and chamber, mL.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub chamber_volume_ml: Option<Input<f64>>,
    /// Suction of the fan as it starts, Pa.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub start_suction_pa: Option<Input<f64>>,
    /// What the airflow sensor answers to.
    #[schemars(default, extend("default" = "volume"))]
    pub sensor: AirflowSensor,
    /// The low airflow limit in use, % of the reading as fitted.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub low_limit_percent: Option<Input<f64>>,
    /// The high airflow limit in use, % of the reading as fitted.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub high_limit_percent: Option<Input<f64>>,
    /// What a limit keeps from the states that must not trip it, % of the reading as fitted.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub limit_margin_percent: Option<Input<f64>>,
    /// How often traps are emptied, days.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub drain_interval_days: Option<Input<f64>>,
}

/// A point of a fan's curve.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct FanPoint {
    /// Flow at the fan, L/min.
    pub flow_l_min: Input<f64>,
    /// What the fan gives at that flow, Pa.
    pub pressure_pa: Input<f64>,
}

/// What an airflow sensor answers to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum AirflowSensor {
    /// Volume flow.
    #[default]
    Volume,
    /// Mass flow, as a heated element does.
    Mass,
    /// Velocity pressure, as the difference across a restriction is.
    VelocityPressure,
}

record!(
    AirPath,
    "what the air meets, with its fields",
    hole_count,
    hole_diameter_mm,
    hole_discharge,
    intake_catch,
    exhaust_catch,
    exhaust_static_pa,
    exhaust_velocity_pa,
    fan,
    filter_pa_min_l,
    chamber_loss,
    chamber_volume_ml,
    start_suction_pa,
    sensor,
    low_limit_percent,
    high_limit_percent,
    limit_margin_percent,
    drain_interval_days,
);
record!(
    FanPoint,
    "a point of a fan's curve",
    flow_l_min,
    pressure_pa;
    left_out_where_none
);
words!(
    AirflowSensor, or Volume;
    Volume = "volume",
    Mass = "mass",
    VelocityPressure = "velocity_pressure",
);
