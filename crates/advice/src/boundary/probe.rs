//! One evaluated run, as the searches see it: wet or dry, by how much, and how near to the other.

use dewrun_quantity::VolumeFlow;
use dewrun_run::air::mixture::density_kg_m3;
use dewrun_run::{
    AirPoint, Flow, FlowAt, Outcome, ProfilePoint, Run, RunError, TubeOutcome, Verdict,
    WET_SENSOR_MIST, WET_TUBE_G_H, evaluate,
};

/// A dry run without a drop may lie this much further from the threshold than from the first drop, K.
const FIRST_DROP_K: f64 = 0.02;
/// Air so dry that it has no dew point lies this far from it, K.
const BONE_DRY_K: f64 = 60.0;

/// How near a flow at the sensor is held, as a share: a limit moves by less than a thousandth of a kelvin with it.
const FLOW_TOLERANCE: f64 = 5e-4;
/// Corrections of the flow before an evaluation settles it in full.
const MOST_CORRECTIONS: u32 = 4;

/// What one evaluated run says to a search.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Probe {
    /// By the one meaning of the word.
    pub(crate) is_dry: bool,
    /// Negative where dry, positive where wet, 0 at the threshold, rising through it; near it about in K.
    pub(crate) level: f64,
    /// How far the dew (or frost) point lies above the inner wall where it does so most, K; negative where all walls are warmer.
    pub(crate) excess_k: f64,
}

/// A run that is changed and evaluated again and again.
///
/// A flow counted at the sensor follows from the answer, and an evaluation takes several marches to settle it;
/// neighbours on an axis differ little, so here the flow at the intake is carried along from one to the next.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Prober {
    /// The run, to be changed at will but for its flow.
    pub(crate) run: Run,
    flow: Flow,
    at_intake: VolumeFlow,
}

impl Prober {
    /// Begins with a run and its answer.
    pub(crate) fn new(run: &Run, now: &Outcome) -> Self {
        let duct = dry_air_kg_m3(&now.duct_air, run);
        let volume_m3_s = now.dry_air.to_kilograms_per_second() / duct;
        Self {
            run: run.clone(),
            flow: run.flow,
            at_intake: VolumeFlow::cubic_metres_per_second(volume_m3_s),
        }
    }

    /// Evaluates the run as it is now.
    ///
    /// # Errors
    /// As [`evaluate`].
    pub(crate) fn probe(&mut self) -> Result<Probe, RunError> {
        if self.flow.at == FlowAt::Sensor
            && let Some(found) = self.probe_near()
        {
            return Ok(found);
        }
        self.run.flow = self.flow;
        evaluate(&self.run).map(|outcome| of_outcome(&outcome.value))
    }

    /// The same with the flow at the intake, corrected until it is the one asked for; none where it is not soon.
    fn probe_near(&mut self) -> Option<Probe> {
        for _ in 0..MOST_CORRECTIONS {
            self.run.flow = Flow {
                volume: self.at_intake,
                at: FlowAt::Intake,
            };
            let outcome = evaluate(&self.run).ok()?.value;
            let wanted = self.flow.volume.to_cubic_metres_per_second()
                * dry_air_kg_m3(&outcome.chamber, &self.run);
            let correction = wanted / outcome.dry_air.to_kilograms_per_second();
            if !correction.is_finite() {
                return None;
            }
            self.at_intake = self.at_intake * correction;
            if (correction - 1.0).abs() < FLOW_TOLERANCE {
                return Some(of_outcome(&outcome));
            }
        }
        None
    }
}

/// Dry air in a volume of an air.
fn dry_air_kg_m3(air: &AirPoint, run: &Run) -> f64 {
    let w = air.humidity_ratio.to_kilograms_per_kilogram();
    density_kg_m3(air.temperature.to_celsius(), w, run.pressure.to_pascals()) / (1.0 + w)
}

/// What an outcome says to a search.
pub(crate) fn of_outcome(outcome: &Outcome) -> Probe {
    let excess_k = tubes(outcome)
        .flat_map(|tube| &tube.profile)
        .filter_map(excess_k)
        .fold(-BONE_DRY_K, f64::max);
    let wetness = wetness(outcome);
    let level = if wetness <= 0.0 {
        excess_k.min(0.0) - FIRST_DROP_K
    } else {
        // What forms grows faster than the excess; its root grows about as fast.
        FIRST_DROP_K * (wetness.sqrt() - 1.0)
    };
    Probe {
        is_dry: outcome.verdict == Verdict::Dry,
        level,
        excess_k,
    }
}

/// What is deposited or carried as mist, over the threshold: at most 1 is dry.
fn wetness(outcome: &Outcome) -> f64 {
    let deposited = tubes(outcome)
        .map(|tube| tube.condensate.to_grams_per_hour())
        .fold(0.0, f64::max);
    let mist = outcome.chamber.mist.to_kilograms_per_kilogram();
    (deposited / WET_TUBE_G_H).max(mist / WET_SENSOR_MIST)
}

fn tubes(outcome: &Outcome) -> impl Iterator<Item = &TubeOutcome> {
    core::iter::once(&outcome.intake).chain(&outcome.exhaust)
}

fn excess_k(point: &ProfilePoint) -> Option<f64> {
    point
        .dew_point
        .map(|dew_point| (dew_point - point.inner_wall).to_kelvins())
}
