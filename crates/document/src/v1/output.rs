//! The answer file: what a project's runs answered, figure by figure, for other programs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize, Serializer};

pub use super::air_output::{AIR_FORMAT, AirStateOutput};
pub use super::airflow_output::{
    AirflowAnswer, AirflowOutput, AssumedOutput, BlindOutput, FaultOutput, InUseOutput,
    PressureOutput, RecommendedOutput, StateOutput, TransportOutput,
};
pub use super::doubt_output::{
    DoubtAnswer, DoubtOutput, ShareOutput, SpreadOutput, TubeDoubtOutput,
};
pub use super::dry_output::{
    DuctAirLimitOutput, LimitOutput, SpaceLimitOutput, StayingDryOutput, TubeLimitOutput,
};

pub use super::ensemble_output::{
    DOUBT_FORMAT, DecidingOutput, DoubtFile, DoubtRunOutput, EnsembleOutput, MeasuredOutput,
    QuantityOutput, ReadingOutput, RevisedOutput, SpanOutput, SpanShareOutput, WetAlongOutput,
};

pub use super::remedies_output::{
    AlterationOutput, EnteredLeftOutput, LeftOutput, REMEDIES_FORMAT, RemediesFile, RemediesOutput,
    RemediesRunOutput, RemedyOutput, RemedyPowerOutput, TargetOutput, YearLeftOutput,
};

pub use super::troubles_output::{
    TROUBLES_FORMAT, TroubleCauseOutput, TroubleCheckOutput, TroubleEntryOutput,
    TroubleOutcomeOutput, TroublesFile, TroublesOutput,
};

pub use super::weather_output::{
    ColdDesignOutput, ColumnOutput, ConventionOutput, DesignOutput, GapOutput, HumidDesignOutput,
    PlaceOutput, RangeOutput, RangesOutput, RowOutput, TimingOutput, UnderstoodOutput,
    WEATHER_FORMAT, WeatherNoteOutput, WeatherOutput,
};

pub use super::year_output::{
    CriticalWeekOutput, DesignHourOutput, DesignStateOutput, MonthOutput, SeriesColumnOutput,
    SeriesOutput, StoreOutput, StressOutput, WorstDayOutput, YearAssumedOutput, YearOutput,
    YearSumOutput, YearWaterOutput, YearWeatherOutput,
};

pub use super::water_output::{
    IceOutput, LegWaterOutput, LowPointOutput, PoolLevelOutput, ProposedTrapOutput, TrapOutput,
    TroubleOutput, TubeWaterOutput, WaterOutput,
};

/// What stands in `format` of an answer.
pub const ANSWER_FORMAT: &str = "dewrun-answer";
/// The version of answers that is written.
pub const ANSWER_VERSION: u64 = 1;
/// The revision of answers that is written; rises with every field added.
pub const ANSWER_REVISION: u64 = 8;

/// A computed number; one that is not finite is never written.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct Figure(pub f64);

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.0.is_finite() {
            return serializer.serialize_f64(self.0);
        }
        Err(serde::ser::Error::custom("a number that is not finite"))
    }
}

/// The answer to one project.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Answer", title = "Dewrun answer, version 1, revision 8")]
pub struct AssessOutput {
    /// Always `dewrun-answer`.
    #[schemars(extend("const" = ANSWER_FORMAT))]
    pub format: String,
    /// Always 1.
    #[schemars(extend("const" = ANSWER_VERSION))]
    pub version: u64,
    /// Which fields the answer may hold; rises with every field added.
    pub revision: u64,
    /// The file that held the project, where there was one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// The line that held the project, counted from 1, where projects come line by line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub line: Option<u64>,
    /// Name of the project; left out where it could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub project: Option<String>,
    /// One for each run that was asked for; empty where the project could not be read.
    pub runs: Vec<RunOutput>,
    /// What each number of the answer is and how it follows from what; left out where answers come line by line, `dewrun figures --json` prints it. Since revision 2.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub figures: Vec<FigureOutput>,
    /// Why the project could not be read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// A figure: what it is called, how it follows from what, and who found that.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "FigureEntry")]
pub struct FigureOutput {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Its letter, an index after `_`.
    pub symbol: String,
    /// The unit in which people read it; a field of the answer names its own. Empty for a bare number.
    pub unit: String,
    /// The fields of the answer that are this figure, with `[]` for every entry of a list.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fields: Vec<String>,
    /// How it follows from its inputs; left out for an input of the run.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub relation: String,
    /// Where the relation holds.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub holds: String,
    /// How far the relation is known to be off.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub spread: String,
    /// Ids of what it is computed from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub inputs: Vec<String>,
    /// Who found the relation, and when.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub source: String,
    /// How a person could measure it, where it is an input of the run.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub how_to_measure: String,
}

/// An assumed value that the answer rests on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RestsOnOutput {
    /// Id of the figure that it is; value, low and high are in its unit, or in that of the field.
    pub figure: String,
    /// The fields of the project that hold it: legs of one tube of the library are one assumption.
    pub paths: Vec<String>,
    /// The row of the library.
    pub row: String,
    /// The value assumed, in the unit of the field.
    pub value: Figure,
    /// The lowest value that is plausible.
    pub low: Figure,
    /// The highest.
    pub high: Figure,
    /// Most change of water and mist where it alone is taken to low or high, g/h.
    pub change_g_h: Figure,
    /// It alone makes wet dry, or dry wet.
    pub changes_verdict: bool,
    /// It alone makes a detector blind, or a blind one see. Since revision 5.
    pub changes_blindness: bool,
    /// It alone changes blindness or the verdict, or the water by a tenth or more.
    pub decides: bool,
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ErrorOutput {
    /// The sentence: where, what, and what would be right.
    pub sentence: String,
    /// The field, where it is about one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub path: Option<String>,
    /// Line within the project's text, counted from 1, where the text is wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text_line: Option<u64>,
    /// Column in bytes, counted from 1, where the text is wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text_column: Option<u64>,
}

/// One run: its answer, or why there is none.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RunOutput {
    /// Id of the run.
    pub id: String,
    /// Name of the run.
    pub name: String,
    /// The answer in steady state.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steady: Option<SteadyOutput>,
    /// The year of the run, where its project names a weather file or the year was asked for. Since revision 7.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub year: Option<YearOutput>,
    /// Why there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<ErrorOutput>,
}

/// The answer of a run in steady state, all walls dry at the start.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SteadyOutput {
    /// The answer in one or a few sentences.
    pub sentence: String,
    /// Wet or dry.
    pub verdict: VerdictOutput,
    /// What the verdict rests on.
    pub grade: GradeOutput,
    /// Why the detector may not be sampling its duct; left out where it does. Since revision 4.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blind: Option<BlindOutput>,
    /// Whether air still arrives.
    pub airflow: AirflowAnswer,
    /// Water in the tubes, where it goes and when. Since revision 4.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water: Option<WaterOutput>,
    /// What stands in for what the project leaves out of water and air. Since revision 4.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<AssumedOutput>,
    /// How sure it is. Computed since revision 6.
    pub doubt: DoubtAnswer,
    /// Dry air through both tubes, kg/s.
    pub dry_air_kg_s: Figure,
    /// The air where it enters the intake tube.
    pub duct_air: AirOutput,
    /// From the duct to the detector.
    pub intake: TubeOutput,
    /// The air around the sensor.
    pub chamber: AirOutput,
    /// Whether the chamber is more humid than the device is rated for; left out where no rating is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chamber_over_rating: Option<bool>,
    /// From the detector back to the duct; left out where no exhaust leg is drawn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exhaust: Option<TubeOutput>,
    /// Water and energy in and out.
    pub balance: BalanceOutput,
    /// The assumed values, the one that changes the answer most first, each taken alone to its low and high. Since revision 2.
    #[serde(default)]
    pub rests_on: Vec<RestsOnOutput>,
    /// What it would still take dry; left out where a run on the way to it has no answer. Since revision 3.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub would_stay_dry: Option<StayingDryOutput>,
    /// What stands beside the answer.
    pub notes: Vec<NoteOutput>,
}

/// Wet or dry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum VerdictOutput {
    /// No more than 0.01 g/h deposited in either tube and no mist above 1e-5 kg/kg at the sensor.
    Dry,
    /// More than that.
    Wet,
}

/// What a verdict rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum GradeOutput {
    /// The duct's dew point lies below the coldest surroundings of any leg.
    ByBound,
    /// The relations of the tube say so.
    ByModel,
}

/// What later revisions compute.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum NotComputed {
    /// Not computed yet.
    NotComputed,
}

/// Something that stands beside an answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoteOutput {
    /// The field of the project, or the part, that it is about.
    pub path: String,
    /// What is to be said.
    pub sentence: String,
}

/// Moist air at one place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AirOutput {
    /// Temperature, °C.
    pub temperature_c: Figure,
    /// Vapour per dry air, kg/kg.
    pub humidity_ratio_kg_kg: Figure,
    /// Suspended water per dry air, kg/kg.
    pub mist_kg_kg: Figure,
    /// Relative humidity over water, %.
    pub relative_humidity_percent: Figure,
    /// Dew point over water, °C; null in bone-dry air.
    pub dew_point_c: Option<Figure>,
}

/// One tube; every `.._m` counts from its own inlet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TubeOutput {
    /// All water deposited inside, frost included, g/h.
    pub condensate_g_h: Figure,
    /// All water deposited outside, rime included, g/h.
    pub sweat_g_h: Figure,
    /// First place where water or frost forms inside, m; null where none does.
    pub first_wet_m: Option<Figure>,
    /// Stretches where water or frost forms inside.
    pub wet: Vec<StretchOutput>,
    /// Coldest inner wall from one bore behind the inlet on; null in a tube shorter than that.
    pub coldest_wall: Option<WallOutput>,
    /// The most suspended water anywhere in the tube, kg/kg.
    pub most_mist_kg_kg: Figure,
    /// Mist that may form in the film at the wall; null where none may.
    pub near_wall_mist: Option<NearWallMistOutput>,
    /// The air at the outlet.
    pub outlet: AirOutput,
    /// One for each leg, in flow order.
    pub legs: Vec<LegOutput>,
    /// The tube drawn out, where it was asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<Vec<ProfileOutput>>,
}

/// A stretch of tube.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StretchOutput {
    /// Where it begins, m.
    pub from_m: Figure,
    /// Where it ends, m.
    pub to_m: Figure,
}

/// A place on the wall.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WallOutput {
    /// Where, m.
    pub x_m: Figure,
    /// Temperature of the inner wall, °C.
    pub temperature_c: Figure,
}

/// Mist that may form between a cold wall and air that is not saturated itself; not added to the mist of the bulk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NearWallMistOutput {
    /// Where the excess is largest, m.
    pub x_m: Figure,
    /// Highest vapour content over that at saturation, above 1.
    pub saturation_ratio: Figure,
    /// No more than this can form over the whole tube, g/h.
    pub upper_bound_g_h: Figure,
}

/// One leg.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LegOutput {
    /// Id of the leg.
    pub id: String,
    /// Where it begins, m.
    pub from_m: Figure,
    /// Where it ends, m.
    pub to_m: Figure,
    /// Water deposited inside, frost included, g/h.
    pub condensate_g_h: Figure,
    /// The part of it that freezes, g/h.
    pub frost_g_h: Figure,
    /// Water deposited outside, rime included, g/h.
    pub sweat_g_h: Figure,
    /// The part of it that freezes, g/h.
    pub rime_g_h: Figure,
    /// First place in it where water or frost forms inside, m; null where none does.
    pub first_wet_m: Option<Figure>,
    /// Lowest temperature of its inner wall, °C.
    pub lowest_wall_c: Figure,
    /// The air at its end.
    pub air_at_end: AirOutput,
    /// Heat that its surface gives to the space, W.
    pub heat_to_space_w: Figure,
}

/// Every quantity at one place along a tube.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileOutput {
    /// Where, m.
    pub x_m: Figure,
    /// Bulk air, °C.
    pub air_c: Figure,
    /// Inner wall, °C.
    pub inner_wall_c: Figure,
    /// Outermost surface, °C.
    pub outer_surface_c: Figure,
    /// Dew point of the bulk (frost point where the wall is below 0 °C), °C; null in bone-dry air.
    pub dew_point_c: Option<Figure>,
    /// Vapour in the bulk, kg/kg.
    pub humidity_ratio_kg_kg: Figure,
    /// Suspended water in the bulk, kg/kg.
    pub mist_kg_kg: Figure,
    /// Water that deposits inside, g/(h m).
    pub deposit_g_h_m: Figure,
    /// Share of that deposit which freezes.
    pub frozen_share: Figure,
    /// Water that deposits outside, g/(h m).
    pub sweat_g_h_m: Figure,
}

/// Water and energy that enter and leave, to check the answer by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BalanceOutput {
    /// Vapour drawn in, g/h.
    pub water_in_g_h: Figure,
    /// What of it is not accounted for, g/h.
    pub water_left_over_g_h: Figure,
    /// Sum of the sizes of all terms of energy, W.
    pub energy_turned_over_w: Figure,
    /// What of it is not accounted for, W.
    pub energy_left_over_w: Figure,
}
