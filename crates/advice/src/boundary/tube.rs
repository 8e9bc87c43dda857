//! The longest intake tube along the route that stays dry.

use dewrun_quantity::Length;
use dewrun_run::range::LENGTH;
use dewrun_run::{Leg, Outcome, Run, TubeOutcome, Verdict, WET_TUBE_G_H};

use super::Limit;
use super::error::BoundaryError;
use super::probe::Prober;
use super::search::{Axis, Found, last_dry};

/// How narrow the bracket is to be, m.
const TOLERANCE_M: f64 = 0.002;
/// A tube that ends so near the end of a leg ends with it, m.
const AT_JOINT_M: f64 = 0.05;
/// More than a fall may be off by after two multiplications.
const ROUNDING: f64 = 1e-15;
/// What is changed, and its unit.
const QUANTITY: (&str, &str) = ("the length of the intake tube", "m");

/// How long the intake tube may be, the detector at its end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TubeLimit {
    /// The longest part of the intake's route, from the duct on, that is dry; [`Limit::Any`]: all of it.
    pub length: Limit<Length>,
    /// The leg that it ends in, by position; of a route that is dry, the last.
    pub leg: usize,
    /// Whether it ends with that leg, within 50 mm.
    pub at_end_of_leg: bool,
}

/// The longest part of the intake's route, from the duct on, with the detector at its end, that stays dry.
///
/// The exhaust tube is left out: from a detector in another place it takes another route.
/// [`Limit::Any`] where the whole intake is dry, [`Limit::Never`] where even a millimetre is wet.
/// `now` is what [`dewrun_run::evaluate`] answers for the run; the search begins where the deposit along the intake reaches the threshold.
///
/// # Range
/// As [`dewrun_run::evaluate`].
///
/// # Accuracy
/// 2 mm, on the dry side, of the model's own threshold.
///
/// # Errors
/// [`BoundaryError`] where one of the runs on the way has no answer.
///
/// # Source
/// By search over the whole model; no relation of its own. Example: see [`super::staying_dry`].
pub fn longest_tube(run: &Run, now: &Outcome) -> Result<TubeLimit, BoundaryError> {
    let whole_m: f64 = run.intake.iter().map(|leg| leg.length.to_metres()).sum();
    if now.verdict == Verdict::Dry {
        return Ok(limit(run, Limit::Any));
    }
    let mut prober = Prober::new(run, now);
    prober.run.exhaust.clear();
    let axis = Axis {
        quantity: QUANTITY,
        driest: LENGTH.min,
        wettest: whole_m.max(LENGTH.min),
        guess: first_threshold_m(&now.intake).unwrap_or(whole_m),
        tolerance: TOLERANCE_M,
        per_kelvin: 0.0,
    };
    let found = last_dry(&axis, &mut |length_m| {
        prober.run.intake = cut(&run.intake, length_m);
        prober.probe()
    })?;
    Ok(limit(
        run,
        match found {
            Found::LastDry(length_m) => Limit::At(Length::metres(length_m)),
            Found::AllDry => Limit::Any,
            Found::AllWet => Limit::Never,
        },
    ))
}

/// Where the deposit along a tube, summed from its inlet, reaches the threshold, m.
fn first_threshold_m(tube: &TubeOutcome) -> Option<f64> {
    let mut sum_g_h = 0.0;
    for pair in tube.profile.windows(2) {
        let [from, to] = pair else { continue };
        let length_m = (to.x - from.x).to_metres();
        let deposit_g_hm =
            0.5 * (from.deposit.to_grams_per_hour_metre() + to.deposit.to_grams_per_hour_metre());
        let missing_g_h = WET_TUBE_G_H - sum_g_h;
        sum_g_h += deposit_g_hm * length_m;
        if WET_TUBE_G_H < sum_g_h {
            // What forms on the last piece grows with the square of the way into it where it begins there.
            let share = (missing_g_h / (deposit_g_hm * length_m)).sqrt();
            return Some(from.x.to_metres() + share * length_m);
        }
    }
    None
}

/// The first legs of a route, `length_m` in all; their falls stay as they are.
fn cut(legs: &[Leg], length_m: f64) -> Vec<Leg> {
    let mut left_m = length_m;
    let mut kept = Vec::with_capacity(legs.len());
    for leg in legs {
        // A stub shorter than any leg may be is left out, but for the first.
        if left_m < LENGTH.min && !kept.is_empty() {
            break;
        }
        let whole_m = leg.length.to_metres();
        let part_m = whole_m.min(left_m);
        left_m -= part_m;
        kept.push(shortened(leg, part_m / whole_m));
    }
    kept
}

/// A share of a leg; a rounding error must not turn one of just 45 degrees into a riser or back.
fn shortened(leg: &Leg, share: f64) -> Leg {
    let cut = |rise_share: f64| Leg {
        length: leg.length * share,
        rise: leg.rise * rise_share,
        ..*leg
    };
    let cuts = [1.0, 1.0 + ROUNDING, 1.0 - ROUNDING].map(|by| cut(share * by));
    let alike = cuts.iter().find(|cut| cut.is_steep() == leg.is_steep());
    *alike.unwrap_or(leg)
}

fn limit(run: &Run, length: Limit<Length>) -> TubeLimit {
    let last = run.intake.len().saturating_sub(1);
    let Limit::At(ends) = length else {
        let is_all = length == Limit::Any;
        return TubeLimit {
            length,
            leg: if is_all { last } else { 0 },
            at_end_of_leg: is_all,
        };
    };
    let mut end_m = 0.0;
    for (leg, drawn) in run.intake.iter().enumerate() {
        end_m += drawn.length.to_metres();
        let left_m = end_m - ends.to_metres();
        // A tube that has only just passed a joint ends at it too.
        if -AT_JOINT_M < left_m {
            return TubeLimit {
                length,
                leg,
                at_end_of_leg: left_m < AT_JOINT_M,
            };
        }
    }
    TubeLimit {
        length,
        leg: last,
        at_end_of_leg: true,
    }
}
