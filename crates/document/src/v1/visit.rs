//! A visit: what somebody measured and found at a run, and on which day.

use crate::json::{record, words};
use schemars::JsonSchema;

/// What was measured and found at a run on one day.
#[derive(Debug, Clone, PartialEq, Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Visit {
    /// The day, as 2026-08-30.
    pub on: String,
    /// Who was there; may be empty.
    pub by: String,
    /// Why.
    #[schemars(default, extend("default" = "service"))]
    pub occasion: Occasion,
    /// Airflow that the detector's sensor read, L/min.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub airflow_l_min: Option<Reading>,
    /// Static pressure in the duct at the intake against the detector's room, Pa.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub duct_static_pa: Option<Reading>,
    /// How far the pressure in the intake tube lies below the detector's room, Pa.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub suction_pa: Option<Reading>,
    /// Where along the intake tube that was measured, m; left out: at the detector.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub suction_at_m: Option<f64>,
    /// From the smoke at the duct to its first trace at the detector, s.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub first_smoke_s: Option<Reading>,
    /// From the smoke at the duct until the detector reads nine tenths of it, s.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub ninety_percent_s: Option<Reading>,
    /// Water that was taken out of low points and traps.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub water: Vec<WaterFound>,
    /// Anything worth saying about it; may be empty.
    pub note: String,
}

impl Visit {
    /// Everything that is read off an instrument: airflow, duct static, suction, first smoke, nine tenths.
    #[must_use]
    pub const fn readings(&self) -> [Option<&Reading>; 5] {
        [
            self.airflow_l_min.as_ref(),
            self.duct_static_pa.as_ref(),
            self.suction_pa.as_ref(),
            self.first_smoke_s.as_ref(),
            self.ninety_percent_s.as_ref(),
        ]
    }
}

/// Why somebody came.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Occasion {
    /// Fitted, or changed and fitted anew: what the sensor reads is the airflow as fitted.
    AsFitted,
    /// Service in between.
    #[default]
    Service,
}

/// A value that was read on site, and what was expected of it then.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Reading {
    /// The value, in the unit that the field's name ends in.
    pub value: f64,
    /// What the run as it stood then led to expect; left out: nothing was computed.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub expected: Option<ExpectedReading>,
}

/// What a reading was expected to be, in the unit of the reading.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct ExpectedReading {
    /// As fitted.
    pub usual: f64,
    /// The least that any state of a good installation gives.
    pub low: f64,
    /// The most that any gives.
    pub high: f64,
}

/// Water taken out at one place.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct WaterFound {
    /// The tube.
    pub tube: VisitedTube,
    /// Distance along it from its start, m.
    pub at_m: f64,
    /// How much, g; a millilitre is a gram.
    pub water_g: f64,
}

/// One of the two tubes of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum VisitedTube {
    /// From the duct to the detector.
    Intake,
    /// From the detector back to the duct.
    Exhaust,
}

record!(
    Visit,
    "a visit with its fields",
    on,
    by,
    occasion,
    airflow_l_min,
    duct_static_pa,
    suction_pa,
    suction_at_m,
    first_smoke_s,
    ninety_percent_s,
    water,
    note;
    left_out_where_none
);
words!(Occasion, or Service; AsFitted = "as_fitted", Service = "service");
record!(
    Reading,
    "a reading, such as {\"value\": 29.4}",
    value,
    expected,
);
record!(
    ExpectedReading,
    "what was expected, with its span",
    usual,
    low,
    high,
);
record!(
    WaterFound,
    "a place and the water found there",
    tube,
    at_m,
    water_g;
    left_out_where_none
);
words!(VisitedTube; Intake = "intake", Exhaust = "exhaust");
