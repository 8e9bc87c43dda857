//! The project file: what the three people who use it enter.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::{
    Access, AirPair, AirPath, AirSource, DryEnough, Humidity, Input, Kept, Period, Pressure, Route,
    SpaceYear, TroublesKept, Visit, WeatherReference,
};

/// A project: the spaces of a building and the runs that pass them.
#[derive(Debug, Clone, PartialEq)]
pub struct Project {
    /// What people call it.
    pub name: String,
    /// Anything worth saying about it; may be empty.
    pub note: String,
    /// Pressure of the air on site.
    pub pressure: Pressure,
    /// The weather file of its year; none where nothing is said of it. Since revision 4.
    pub weather: Option<Kept<WeatherReference>>,
    /// What counts as dry enough; none where nothing is said of it. Since revision 6.
    pub target: Option<Kept<DryEnough>>,
    /// The spaces that legs pass.
    pub spaces: Vec<Space>,
    /// The runs: one for each detector.
    pub runs: Vec<Run>,
}

/// What surrounds a leg.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Space {
    /// Stable name that legs refer to.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// Temperature of its air, °C.
    pub temperature_c: Input<f64>,
    /// Humidity of its air at that temperature.
    pub humidity: Humidity,
    /// Temperature of the surfaces that the tube radiates to, °C; left out: that of the air.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub radiant_c: Option<Input<f64>>,
    /// Air speed across the tube, m/s; 0 in still air.
    pub wind_m_s: Input<f64>,
    /// Pressure of its air against the detector's room, Pa; left out: assumed. Since revision 2.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub pressure_pa: Option<Input<f64>>,
    /// What it is like through the year; left out: assumed. Since revision 4.
    #[schemars(
        default,
        with = "Option<SpaceYear>",
        skip_serializing_if = "Option::is_none"
    )]
    pub year: Option<Kept<SpaceYear>>,
}

/// Intake tube, detector and exhaust tube of one detector.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Run {
    /// Stable name within the project.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// Id of the run of the same detector that it is another layout of; left out: a run of its own. Since revision 2.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub variant_of: Option<String>,
    /// The duct that is sampled.
    pub duct: Duct,
    /// How much air the fan draws.
    pub flow: Flow,
    /// From the duct to the detector.
    pub intake: Route,
    /// The detector between both tubes.
    pub detector: Detector,
    /// From the detector back to the duct; left out: no exhaust tube is drawn.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub exhaust: Option<Route>,
    /// What the air meets on its way; left out: all of it is assumed. Since revision 2.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub air_path: Option<AirPath>,
    /// What was measured and found on site, in the order of the visits; left out: nobody noted any. Since revision 3.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub visits: Vec<Visit>,
    /// What its troubles go by; left out: nobody has given a log. Since revision 6.
    #[schemars(
        default,
        with = "Option<TroublesKept>",
        skip_serializing_if = "Option::is_none"
    )]
    pub troubles: Option<Kept<TroublesKept>>,
}

/// The duct that is sampled, and its air where the intake draws it.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Duct {
    /// What people call it.
    pub name: String,
    /// State of its air.
    pub air: AirPair,
    /// Static pressure in the duct against the detector's room, Pa.
    pub static_pa: Input<f64>,
    /// Velocity pressure in the duct, Pa.
    pub velocity_pa: Input<f64>,
    /// Where its air comes from through the year; left out: assumed. Since revision 4.
    #[schemars(
        default,
        with = "Option<AirSource>",
        skip_serializing_if = "Option::is_none"
    )]
    pub source: Option<Kept<AirSource>>,
    /// When its fan is off; left out: never. Since revision 4.
    #[schemars(
        default,
        with = "Option<Vec<Period>>",
        skip_serializing_if = "Option::is_none"
    )]
    pub fan_off: Option<Kept<Vec<Period>>>,
}

/// A volume flow of moist air and the place where it is counted.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Flow {
    /// Actual volume flow at the state of the air at `at`, L/min.
    pub volume_l_min: Input<f64>,
    /// Where it is counted.
    #[schemars(default, extend("default" = "sensor"))]
    pub at: FlowAt,
}

/// Where a volume flow is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum FlowAt {
    /// At the state of the duct air, as it enters the intake tube.
    Intake,
    /// At the state of the air in the detector's chamber, where the device itself measures.
    #[default]
    Sensor,
}

/// The detector between intake and exhaust tube.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Detector {
    /// Heat that its fan and electronics give to the air passing through, W.
    pub heat_w: Input<f64>,
    /// Highest relative humidity over water that the device is rated for, %, where known.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub humidity_rating_percent: Option<Input<f64>>,
    /// How a person gets to it.
    pub access: Access,
}

record!(
    Space,
    "a space with its fields",
    id,
    name,
    temperature_c,
    humidity,
    radiant_c,
    wind_m_s,
    pressure_pa,
    year,
);
record!(
    Run,
    "a run with its fields",
    id,
    name,
    variant_of,
    duct,
    flow,
    intake,
    detector,
    exhaust,
    air_path,
    visits,
    troubles,
);
record!(
    Duct,
    "a duct with its fields",
    name,
    air,
    static_pa,
    velocity_pa,
    source,
    fan_off,
);
record!(Flow, "a flow with its fields", volume_l_min, at);
words!(FlowAt, or Sensor; Intake = "intake", Sensor = "sensor");
record!(
    Detector,
    "a detector with its fields",
    heat_w,
    humidity_rating_percent,
    access,
);
