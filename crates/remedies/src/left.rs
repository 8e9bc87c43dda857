//! What is left of the trouble in a run: as it is entered, and through its year.

use dewrun_advice::Left as WaterLeft;
use dewrun_ensemble::Inputs;
use dewrun_quantity::{MassFlow, RelativeHumidity, Time, VolumeFlow};
use dewrun_run::{Outcome, Verdict, Whole, evaluate, water_and_air};
use dewrun_season::YearOutcome;

use crate::trap_days::trap_days;

/// Kilograms an hour in grams an hour.
const G_KG: f64 = 1e3;

/// What is left of the trouble in a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Left {
    /// In the conditions that are entered.
    pub entered: EnteredLeft,
    /// Through the year; none where there is no weather.
    pub year: Option<YearLeft>,
}

/// What is left in the conditions that are entered.
#[derive(Debug, Clone, PartialEq)]
pub struct EnteredLeft {
    /// Wet or dry.
    pub verdict: Verdict,
    /// Water that forms in both tubes.
    pub forms: MassFlow,
    /// Sweat and rime outside both tubes.
    pub sweat: MassFlow,
    /// Relative humidity of the air around the sensor.
    pub chamber: RelativeHumidity,
    /// Whether a part of what forms freezes.
    pub has_frost: bool,
    /// What water and air do; none where they have no answer.
    pub air: Option<AirLeft>,
}

/// Water that stands, and the air, in the conditions that are entered.
#[derive(Debug, Clone, PartialEq)]
pub struct AirLeft {
    /// Where the water goes.
    pub water: WaterLeft,
    /// Flow at the sensor.
    pub flow: VolumeFlow,
    /// From the first smoke at the sensor to nine tenths of it; none where no duct air arrives.
    pub transport: Option<[Time; 2]>,
}

/// What is left through the weather there is.
#[derive(Debug, Clone, PartialEq)]
pub struct YearLeft {
    /// All of it, h.
    pub hours: f64,
    /// Wet hours.
    pub wet_hours: f64,
    /// What forms on the walls, kg.
    pub formed_kg: f64,
    /// What forms in the design hours of the route: 0.4, 1 and 2 % of all are wetter; g/h.
    pub design_g_h: [f64; 3],
    /// Hours in which mist reaches the sensor.
    pub mist_hours: f64,
    /// Hours in which ice lies on a wall.
    pub frost_hours: f64,
    /// Highest relative humidity around the sensor.
    pub most_humid_chamber: f64,
    /// Hours in which that is above the device's rating; none where no rating is known.
    pub hours_above_rating: Option<f64>,
    /// Sweat and rime outside, kg.
    pub sweat_kg: f64,
    /// Hours in which the detector does not sample its duct; none where water can't be followed.
    pub blind_hours: Option<f64>,
    /// Hours in which the airflow lies outside its limits.
    pub limit_hours: Option<f64>,
    /// What runs into the detector, kg.
    pub into_detector_kg: Option<f64>,
    /// What was drained and let out, kg.
    pub drained_kg: Option<f64>,
    /// The shortest time in which a trap that is emptied by hand fills, days; none where none fills or there is none.
    pub trap_days: Option<f64>,
}

impl EnteredLeft {
    /// What is left of the inputs; none where they have no answer.
    #[must_use]
    pub fn of(inputs: &Inputs) -> Option<Self> {
        let outcome = evaluate(&inputs.run).ok()?.value;
        let whole = water_and_air(&inputs.run, &inputs.installation, &outcome).ok();
        Some(Self::told(&outcome, whole.as_ref()))
    }

    pub(crate) fn told(outcome: &Outcome, whole: Option<&Whole>) -> Self {
        let exhaust = outcome.exhaust.as_ref();
        let tubes = || core::iter::once(&outcome.intake).chain(exhaust);
        let mut legs = tubes().flat_map(|tube| &tube.legs);
        Self {
            verdict: outcome.verdict,
            forms: tubes().map(|tube| tube.condensate).sum(),
            sweat: tubes().map(|tube| tube.sweat).sum(),
            chamber: outcome.chamber.relative_humidity,
            has_frost: legs.any(|leg| MassFlow::ZERO < leg.frost),
            air: whole.map(|whole| {
                let now = &whole.airflow.now;
                let transport = now.transport;
                AirLeft {
                    water: WaterLeft::of(outcome, whole),
                    flow: now.sensor,
                    transport: transport.map(|time| [time.first, time.ninety_percent]),
                }
            }),
        }
    }

    /// Whether the detector may not be sampling its duct.
    #[must_use]
    pub fn is_blind(&self) -> bool {
        self.air
            .as_ref()
            .is_some_and(|air| air.water.blind.is_some())
    }
}

impl YearLeft {
    /// What is left of a year that was marched.
    #[must_use]
    pub fn of(year: &YearOutcome) -> Self {
        let sum = &year.sum;
        let water = year.water.as_ref().ok();
        let mut design_g_h = [0.0; 3];
        for (place, design) in design_g_h.iter_mut().zip(&year.design) {
            *place = G_KG * design.condensed_kg_h;
        }
        Self {
            hours: sum.hours,
            wet_hours: sum.wet_hours,
            formed_kg: sum.condensed_kg,
            design_g_h,
            mist_hours: sum.mist_hours,
            frost_hours: sum.frost_hours,
            most_humid_chamber: sum.most_humid_chamber,
            hours_above_rating: sum.hours_above_rating,
            sweat_kg: year.legs.iter().map(|leg| leg.sweat_kg).sum(),
            blind_hours: water.map(|water| water.sum.hours.blind),
            limit_hours: water.map(|water| water.sum.hours.low + water.sum.hours.high),
            into_detector_kg: water.map(|water| water.sum.went.into_detector_kg),
            drained_kg: water.map(|water| water.sum.went.drained_kg + water.sum.went.let_out_kg),
            trap_days: water.and_then(trap_days),
        }
    }
}
