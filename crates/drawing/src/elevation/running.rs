//! How much water runs past each place on the invert: what has formed uphill of it since the last change of fall.

use dewrun_run::{Leg, ProfilePoint};

/// Which way water runs in a leg.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Runs {
    /// With the air.
    Onwards,
    /// Against the air.
    Back,
    /// The leg is level.
    Nowhere,
}

/// Which way water runs in a leg.
pub(super) fn runs(leg: &Leg) -> Runs {
    let rise = leg.rise.to_metres();
    if rise < 0.0 {
        Runs::Onwards
    } else if 0.0 < rise {
        Runs::Back
    } else {
        Runs::Nowhere
    }
}

/// For each point of the profile, g/h that run past it.
pub(crate) fn runs_past(profile: &[ProfilePoint], legs: &[Leg]) -> Vec<f64> {
    let way = |point: &ProfilePoint| legs.get(point.leg).map_or(Runs::Nowhere, runs);
    let onwards = gathered(profile.iter(), |point| way(point) == Runs::Onwards);
    let mut back = gathered(profile.iter().rev(), |point| way(point) == Runs::Back);
    back.reverse();
    onwards.iter().zip(&back).map(|(a, b)| a + b).collect()
}

/// Adds up what forms between the points that the condition holds for, from nothing at each start.
fn gathered<'a>(
    points: impl Iterator<Item = &'a ProfilePoint>,
    runs_here: impl Fn(&ProfilePoint) -> bool,
) -> Vec<f64> {
    let mut sum = 0.0;
    let mut before: Option<&ProfilePoint> = None;
    let mut sums = Vec::new();
    for point in points {
        if !runs_here(point) {
            sum = 0.0;
        } else if let Some(before) = before.filter(|before| runs_here(before)) {
            let length = (point.x - before.x).to_metres().abs();
            sum += length * (liquid(before) + liquid(point)) / 2.0;
        }
        sums.push(sum);
        before = Some(point);
    }
    sums
}

/// What forms and does not freeze, g/h per metre.
fn liquid(point: &ProfilePoint) -> f64 {
    point.deposit.to_grams_per_hour_metre() * (1.0 - point.frozen_share)
}
