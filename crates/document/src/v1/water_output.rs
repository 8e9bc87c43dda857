//! The answer file: water in the tubes, low points, traps, hangers, frost.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::output::Figure;

/// Water in both tubes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WaterOutput {
    /// In the intake tube.
    pub intake: TubeWaterOutput,
    /// In the exhaust tube; left out where no exhaust leg is drawn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exhaust: Option<TubeWaterOutput>,
}

/// Water in one tube; every `.._m` counts from its own inlet, every time from dry walls under the same conditions.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TubeWaterOutput {
    /// One for each leg, in flow order.
    pub legs: Vec<LegWaterOutput>,
    /// Low points to which water comes, and pools that ran together.
    pub low_points: Vec<LowPointOutput>,
    /// Traps and drains, in their order.
    pub traps: Vec<TrapOutput>,
    /// Traps that are missing.
    pub proposed_traps: Vec<ProposedTrapOutput>,
    /// Runs out of the first end in the long run, g/h.
    pub out_at_start_g_h: Figure,
    /// Runs out of the last end in the long run, g/h.
    pub out_at_end_g_h: Figure,
    /// Troubles that water makes, the soonest first.
    pub troubles: Vec<TroubleOutput>,
    /// How long traps may wait, days; null where no trouble comes.
    pub drain_interval_d: Option<Figure>,
    /// Frost, leg by leg, where any grows.
    pub ice: Vec<IceOutput>,
    /// What water the duct itself may let in: lying_water, drops or nothing.
    pub from_duct: String,
}

/// What a leg does with water.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LegWaterOutput {
    /// Id of the leg.
    pub id: String,
    /// Which way its water runs: with_air, against_air or level.
    pub course: String,
    /// Its fall, % of the horizontal length; null where it is upright.
    pub fall_percent: Option<Figure>,
    /// Its drop from end to end, mm.
    pub drop_mm: Figure,
    /// So flat that water stands in it.
    pub stands: bool,
    /// Water it holds before any runs, g.
    pub holds_g: Figure,
    /// What its bore does to water that once fills it: runs, level or upright.
    pub lock: String,
    /// How it must be hung: steep, all_along, level or spacing.
    pub hangers: String,
    /// The largest hanger spacing at which it drains, m; null where no spacing counts.
    pub largest_spacing_m: Option<Figure>,
    /// Sag at the spacing entered, mm; null where none is.
    pub sag_mm: Option<Figure>,
    /// Steepest slope of that sag, %.
    pub steepest_percent: Option<Figure>,
    /// Speed of the air in it, m/s.
    pub air_speed_m_s: Figure,
    /// Speed of the air that holds water up in it, m/s; null where no water runs against the air.
    pub flooding_speed_m_s: Option<Figure>,
    /// Water forms in it and runs against the air, which drags a thin film up harder than its weight draws it down.
    pub dragged: bool,
}

/// The airflow while water stands so deep at a low point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PoolLevelOutput {
    /// Depth of the water, mm.
    pub depth_mm: Figure,
    /// Volume flow at the sensor, L/min.
    pub flow_l_min: Figure,
    /// The reading against that as fitted, %; null where nothing flowed as fitted.
    pub reading_percent: Option<Figure>,
}

/// A low point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LowPointOutput {
    /// The lowest place, m.
    pub at_m: Figure,
    /// The end of its level bottom, m.
    pub until_m: Figure,
    /// What comes in once all walls uphill are wet, g/h.
    pub water_g_h: Figure,
    /// Water that closes the bore, mL.
    pub seal_ml: Figure,
    /// The most that stands there, mL.
    pub capacity_ml: Figure,
    /// Water at which moving air throws the first slugs, mL.
    pub slug_ml: Figure,
    /// When the first slugs come, h; null where they never do.
    pub first_slugs_h: Option<Figure>,
    /// When the airflow falls under its low limit, h.
    pub low_limit_h: Option<Figure>,
    /// When the bore is closed, h.
    pub sealed_h: Option<Figure>,
    /// The airflow while water stands there, from shallow to nearly closed.
    pub levels: Vec<PoolLevelOutput>,
    /// What stands there when traps are next emptied, g.
    pub standing_g: Figure,
    /// How deep it stands then, mm.
    pub depth_mm: Figure,
    /// Pressure that holds air back then, Pa.
    pub bubbling_pa: Figure,
    /// Where it runs over to; null where it does not.
    pub runs_over_to: Option<String>,
    /// Whether water that stands there freezes: no, perhaps or surely.
    pub freezes: String,
    /// How long what stands there then takes to freeze, h.
    pub freezing_h: Option<Figure>,
}

/// A trap or drain as it is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TrapOutput {
    /// Where, m.
    pub at_m: Figure,
    /// What comes to it, g/h.
    pub water_g_h: Figure,
    /// When it is full, days; null where it never is.
    pub full_d: Option<Figure>,
    /// Where water goes that passes it when full.
    pub overflow: Option<String>,
    /// Static pressure there against the room, running, Pa.
    pub running_pa: Figure,
    /// The same as the fan starts, Pa.
    pub starting_pa: Figure,
    /// The drop that its outlet needs, mm.
    pub needs_drop_mm: Figure,
    /// The seal that it needs, mm.
    pub needs_seal_mm: Figure,
    /// Its outlet lies low enough.
    pub drop_is_enough: bool,
    /// Its seal is high enough.
    pub seal_is_enough: bool,
    /// When a seal that nothing refills dries out, days.
    pub dries_out_d: Option<Figure>,
    /// Water that the suction holds over an open valve, mm.
    pub head_mm: Figure,
    /// Whether a valve that is opened while the fan runs gives water.
    pub gives_water: bool,
    /// What runs out then, g.
    pub runs_out_g: Figure,
}

/// A trap that is missing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ProposedTrapOutput {
    /// Where it goes, m; null where no leg that leads there can be reached.
    pub at_m: Option<Figure>,
    /// Where the water comes to now, m.
    pub low_point_m: Figure,
    /// What it keeps dry: low_point, start or end.
    pub keeps_dry: String,
    /// What comes there, g/h.
    pub water_g_h: Figure,
    /// How much higher it lies than the low point, mm.
    pub over_mm: Figure,
    /// What stays below it for good, mL.
    pub leaves_ml: Figure,
    /// What comes in one drain interval, mL.
    pub size_ml: Figure,
    /// The drop that the outlet of a self-draining one needs, mm.
    pub needs_drop_mm: Figure,
    /// The seal that it needs, mm.
    pub needs_seal_mm: Figure,
}

/// A trouble that water makes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TroubleOutput {
    /// first_slugs, low_limit, sealed or trap_full.
    pub trouble: String,
    /// Where, m.
    pub at_m: Figure,
    /// After how long, h.
    pub after_h: Figure,
}

/// Frost in a leg.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct IceOutput {
    /// Id of the leg.
    pub leg: String,
    /// All frost that grows in it, g/h.
    pub frost_g_h: Figure,
    /// Where it grows most, m.
    pub at_m: Figure,
    /// When it has closed the bore there, h.
    pub closed_h: Option<Figure>,
    /// What it leaves of the bore's area when traps are next emptied, %.
    pub free_percent: Figure,
    /// What comes down at once when it thaws, g.
    pub thaw_g: Figure,
}
