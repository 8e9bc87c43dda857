//! One evaluated run, as the searches see it: wet or dry, by how much, and how near to the other.

use dewrun_run::{
    Outcome, ProfilePoint, Run, RunError, TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H,
    evaluate,
};

/// A dry run without a drop may lie this much further from the threshold than from the first drop, K.
const FIRST_DROP_K: f64 = 0.02;
/// Air so dry that it has no dew point lies this far from it, K.
const BONE_DRY_K: f64 = 60.0;

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

/// Evaluates a run.
pub(crate) fn probe(run: &Run) -> Result<Probe, RunError> {
    evaluate(run).map(|outcome| of_outcome(&outcome.value))
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
