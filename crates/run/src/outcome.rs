//! What a run answers.

use dewrun_quantity::{
    HumidityRatio, Length, MassFlow, MassFlowPerLength, Power, RelativeHumidity, Temperature,
};

/// The steady answer for one run.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Wet or dry, by the thresholds of [`WET_TUBE_G_H`] and [`WET_SENSOR_MIST`].
    pub verdict: Verdict,
    /// How the verdict is proved.
    pub grade: Grade,
    /// Dry air through both tubes.
    pub dry_air: MassFlow,
    /// The air where it enters the intake tube.
    pub duct_air: AirPoint,
    /// From the duct to the detector.
    pub intake: TubeOutcome,
    /// The air around the sensor, after the detector's own heat.
    pub chamber: AirPoint,
    /// From the detector back to the duct; none where no exhaust leg is drawn.
    pub exhaust: Option<TubeOutcome>,
    /// Water and energy in and out, to check the answer by.
    pub balance: Balance,
}

/// More water than this deposited in either tube is wet, g/h.
pub const WET_TUBE_G_H: f64 = 0.01;
/// More mist than this at the sensor is wet, kg per kg of dry air.
pub const WET_SENSOR_MIST: f64 = 1e-5;

/// Wet or dry, with one meaning everywhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// No more than the threshold deposited in either tube and no mist at the sensor; sweat alone is dry.
    Dry,
    /// Water deposits in a tube, or mist reaches the sensor.
    Wet,
}

/// What the verdict rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grade {
    /// The duct's dew point lies below the coldest surroundings of any leg: no tube relation is needed.
    ByBound,
    /// The relations of the tube say so.
    ByModel,
}

/// Moist air at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirPoint {
    /// Temperature of the air.
    pub temperature: Temperature,
    /// Vapour, per kg of dry air.
    pub humidity_ratio: HumidityRatio,
    /// Suspended water, per kg of dry air.
    pub mist: HumidityRatio,
    /// Relative humidity over water.
    pub relative_humidity: RelativeHumidity,
    /// Dew point (over water); none in bone-dry air.
    pub dew_point: Option<Temperature>,
}

/// One tube, from its inlet to its outlet. Every `x` counts from that inlet.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeOutcome {
    /// One for each leg, in flow order.
    pub legs: Vec<LegOutcome>,
    /// The air at the outlet, before the detector adds its heat.
    pub outlet: AirPoint,
    /// All water deposited inside, frost included.
    pub condensate: MassFlow,
    /// All water deposited outside, rime included.
    pub sweat: MassFlow,
    /// Stretches where water or frost forms inside, in flow order.
    pub wet: Vec<Stretch>,
    /// Coldest inner wall, looked for from one bore behind the inlet on; none in a tube shorter than that.
    pub coldest_wall: Option<WallPoint>,
    /// The most suspended water anywhere in the tube.
    pub most_mist: HumidityRatio,
    /// Where the straight line of states between wall and bulk crosses saturation the furthest, if it does.
    pub near_wall_mist: Option<NearWallMist>,
    /// The tube drawn out: points in flow order, at least two for each leg; where a joint changes the wall, two points share an `x`.
    pub profile: Vec<ProfilePoint>,
}

impl TubeOutcome {
    /// The first place where water or frost forms inside.
    #[must_use]
    pub fn first_wet(&self) -> Option<Length> {
        self.wet.first().map(|stretch| stretch.from)
    }

    /// The first place where frost forms: at the mean of the two points around it half or more of what deposits freezes.
    #[must_use]
    pub fn frost_from(&self) -> Option<Length> {
        let steps = || self.profile.iter().zip(self.profile.iter().skip(1));
        self.wet.iter().find_map(|wet| {
            let mut within = steps().filter(|(a, b)| a.x < b.x && a.x < wet.to && wet.from < b.x);
            let freezes =
                |(a, b): &(&ProfilePoint, &ProfilePoint)| 1.0 <= a.frozen_share + b.frozen_share;
            let (from, _) = within.find(freezes)?;
            Some(if from.x < wet.from { wet.from } else { from.x })
        })
    }
}

/// A stretch of tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// A place on the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallPoint {
    /// Distance from the inlet.
    pub x: Length,
    /// Temperature of the inner wall there.
    pub temperature: Temperature,
}

/// Mist that may form in the film between a cold wall and air that is not saturated itself.
///
/// Reported beside the mist of the bulk and not added to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearWallMist {
    /// Where the excess is largest.
    pub x: Length,
    /// Highest vapour content over that at saturation (over water) on the line of states, above 1.
    pub saturation_ratio: f64,
    /// No more mist than this can form in the film over the whole tube.
    pub upper_bound: MassFlow,
}

/// One leg of a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LegOutcome {
    /// Where it begins, from the tube's inlet.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Water deposited inside, frost included.
    pub condensate: MassFlow,
    /// The part of it that freezes to the wall.
    pub frost: MassFlow,
    /// Water deposited outside, rime included.
    pub sweat: MassFlow,
    /// The part of it that freezes to the surface.
    pub rime: MassFlow,
    /// First place in this leg where water or frost forms inside.
    pub first_wet: Option<Length>,
    /// Lowest temperature of its inner wall.
    pub lowest_wall: Temperature,
    /// The air at its end.
    pub air_at_end: AirPoint,
    /// Heat that its outer surface gives to the space; negative where the space warms it.
    pub heat_to_space: Power,
}

/// Every quantity at one place along a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProfilePoint {
    /// Distance from the inlet.
    pub x: Length,
    /// Position of the leg in its tube.
    pub leg: usize,
    /// Bulk air.
    pub air: Temperature,
    /// Inner wall.
    pub inner_wall: Temperature,
    /// Outermost surface.
    pub outer_surface: Temperature,
    /// Dew point of the bulk (frost point where the wall is below 0 °C); none in bone-dry air.
    pub dew_point: Option<Temperature>,
    /// Vapour in the bulk, per kg of dry air.
    pub humidity_ratio: HumidityRatio,
    /// Suspended water in the bulk, per kg of dry air.
    pub mist: HumidityRatio,
    /// Water that deposits inside here.
    pub deposit: MassFlowPerLength,
    /// Share of that deposit which freezes: 0 above 0 °C, 1 below, between where the wall is held at 0 °C.
    pub frozen_share: f64,
    /// Water that deposits outside here.
    pub sweat: MassFlowPerLength,
}

/// Water and energy that enter and leave, each summed on its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// Vapour drawn in, less vapour and mist given back and water deposited.
    pub water_left_over: MassFlow,
    /// Vapour drawn in.
    pub water_in: MassFlow,
    /// Enthalpy of air and water in, tracing, detector heat and heat of sweat, less enthalpy out, that of the condensate and heat to the spaces.
    pub energy_left_over: Power,
    /// Sum of the sizes of those terms, to judge the rest by.
    pub energy_turned_over: Power,
}
