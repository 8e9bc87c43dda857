//! The year of a project: the weather file it goes by, where the air of a duct comes from, what a space follows, and when.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::{FileReading, Input, MonthName, Period, Setting};

/// A weather or logger file, known by its name and its hash; what it holds lies beside the project.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct WeatherReference {
    /// Its name, without a folder.
    pub file: String,
    /// Where its readings are from; may be empty.
    pub place: String,
    /// How many rows it has.
    pub rows: f64,
    /// Usual time from row to row, s.
    pub step_s: f64,
    /// SHA-256 of its bytes, 64 hexadecimal digits.
    #[schemars(regex(pattern = "^[0-9a-f]{64}$"))]
    pub sha256: String,
    /// What is said of it where looking at it is not enough, such as what its humidities below freezing refer to; left out: nothing. Since revision 5.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<FileReading>,
    /// Design states counted from it, which stand where it is not at hand.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub design: Vec<DesignState>,
}

/// A state of the air outdoors that a share of the hours exceeds.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct DesignState {
    /// Which of both is ranked.
    pub by: DesignBy,
    /// Share of the hours that exceed it, %.
    pub exceeded_percent: f64,
    /// Temperature of the air, °C.
    pub outdoor_c: f64,
    /// Its dew point, over water also below freezing, °C.
    pub outdoor_dew_point_c: f64,
    /// The month that has most of its hours.
    pub month: MonthName,
}

/// What a design state is ranked by; the other value is the mean that comes with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum DesignBy {
    /// The dew point.
    DewPoint,
    /// The temperature.
    Temperature,
}

/// Where the air of a duct comes from, hour by hour.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct AirSource {
    /// What it was before anything was done to it.
    pub from: AirFrom,
    /// Temperature of the room that it comes from, °C; left out: that of the duct's air.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<Input<f64>>,
    /// Relative humidity of that room, over water or, below 0 °C, over ice, %; left out: that of the duct's air.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub percent: Option<Input<f64>>,
    /// When that room is otherwise; the first that holds counts.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub settings: Vec<Setting>,
    /// The logger file that was measured in the duct.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<WeatherReference>,
    /// What is done to it on its way, in this order.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<AirStep>,
}

/// What the air of a duct was before anything was done to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum AirFrom {
    /// Air from outdoors.
    Outdoors,
    /// The air of a room.
    Room,
    /// Air that was measured in the duct.
    Measured,
}

/// Something that is done to the air on its way to the duct.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct AirStep {
    /// What.
    pub kind: AirStepKind,
    /// Temperature of the air behind a heater, of the surface of a coil, of return or extract air, of the water of a humidifier, °C; of a humidifier left out: steam.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<Input<f64>>,
    /// Relative humidity behind a humidifier, of return or extract air, %.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub percent: Option<Input<f64>>,
    /// Share that passes a coil untouched, of return air, or of the heat that is recovered.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub share: Option<Input<f64>>,
    /// Share of the moisture that is recovered.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub moisture_share: Option<Input<f64>>,
    /// When it is done; left out: always.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub when: Vec<Period>,
}

/// What is done to the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum AirStepKind {
    /// Warmed to a temperature.
    Heated,
    /// Led past a cooling coil.
    Cooled,
    /// Mixed with return air.
    Mixed,
    /// Humidified.
    Humidified,
    /// Led past extract air in a recovery of heat.
    Recovered,
}

/// What a space is like through the year.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct SpaceYear {
    /// What it follows.
    pub follows: Follows,
    /// How far it follows outdoors, 0 to 1.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub share: Option<Input<f64>>,
    /// Temperature of the rooms beside it, °C; left out: assumed.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub room_c: Option<Input<f64>>,
    /// Their relative humidity, %; left out: assumed.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub room_percent: Option<Input<f64>>,
    /// Share of the sun that its roof takes up, 0 to 1; left out: no sun gets in.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub roof_absorbs: Option<Input<f64>>,
    /// Share of what a tube outdoors sees that is sky, 0 to 1; left out: assumed.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub sky_share: Option<Input<f64>>,
    /// Share of the wind that reaches a tube outdoors, 0 to 1; left out: assumed.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub wind_share: Option<Input<f64>>,
    /// When it is otherwise than entered; the first that holds counts.
    #[schemars(default, skip_serializing_if = "Vec::is_empty")]
    pub settings: Vec<Setting>,
}

impl SpaceYear {
    /// A space of which nothing else is said.
    #[must_use]
    pub const fn following(follows: Follows) -> Self {
        Self {
            follows,
            share: None,
            room_c: None,
            room_percent: None,
            roof_absorbs: None,
            sky_share: None,
            wind_share: None,
            settings: Vec::new(),
        }
    }
}

/// What a space follows through the year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum Follows {
    /// Only its settings: it is as entered.
    Settings,
    /// The weather, with wind and sky.
    Outdoors,
    /// The weather by a share, and the rooms beside it by the rest.
    Partly,
}

record!(
    WeatherReference,
    "a weather file with its name, rows, step and hash",
    file,
    place,
    rows,
    step_s,
    sha256,
    reading,
    design,
);
record!(
    DesignState,
    "a design state with its fields",
    by,
    exceeded_percent,
    outdoor_c,
    outdoor_dew_point_c,
    month;
    left_out_where_none
);
words!(DesignBy; DewPoint = "dew_point", Temperature = "temperature");
record!(
    AirSource,
    "where the air comes from, such as {\"from\": \"outdoors\"}",
    from,
    temperature_c,
    percent,
    settings,
    file,
    steps,
);
words!(AirFrom; Outdoors = "outdoors", Room = "room", Measured = "measured");
record!(
    AirStep,
    "a step with its fields",
    kind,
    temperature_c,
    percent,
    share,
    moisture_share,
    when;
    left_out_where_none
);
words!(
    AirStepKind;
    Heated = "heated",
    Cooled = "cooled",
    Mixed = "mixed",
    Humidified = "humidified",
    Recovered = "recovered",
);
record!(
    SpaceYear,
    "what a space follows, such as {\"follows\": \"outdoors\"}",
    follows,
    share,
    room_c,
    room_percent,
    roof_absorbs,
    sky_share,
    wind_share,
    settings,
);
words!(Follows; Settings = "settings", Outdoors = "outdoors", Partly = "partly");
