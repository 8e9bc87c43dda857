//! Where along a tube there is water, frost, mist or sweat.

use dewrun_run::{ProfilePoint, TubeOutcome};

/// A form of water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Water forms on the inner wall.
    Water,
    /// Frost forms on the inner wall.
    Frost,
    /// The air carries droplets.
    Mist,
    /// Water forms on the outer surface.
    Sweat,
}

/// A stretch of tube in one state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StateStretch {
    /// The state.
    pub state: State,
    /// Where it begins, m from the inlet.
    pub from_m: f64,
    /// Where it ends, m from the inlet.
    pub to_m: f64,
}

/// Droplets below this are less than the eye could see, kg per kg of dry air.
pub(crate) const LEAST_MIST: f64 = 1e-6;

/// All stretches of a tube, state by state, each in flow order.
///
/// The bounds of the wet ones are the engine's own; what is frozen, misty or sweating is told apart at the profile's points.
#[must_use]
pub fn states(tube: &TubeOutcome) -> Vec<StateStretch> {
    let mut found = Vec::new();
    for wet in &tube.wet {
        let bounds = (wet.from.to_metres(), wet.to.to_metres());
        wet_parts(&tube.profile, bounds, &mut found);
    }
    where_both(&tube.profile, State::Mist, &mut found, |point| {
        LEAST_MIST < point.mist.to_kilograms_per_kilogram()
    });
    where_both(&tube.profile, State::Sweat, &mut found, |point| {
        0.0 < point.sweat.to_grams_per_hour_metre()
    });
    found
}

/// Parts a wet stretch into water and frost.
fn wet_parts(profile: &[ProfilePoint], (from_m, to_m): (f64, f64), found: &mut Vec<StateStretch>) {
    // A march has a place where the wall passes 0 °C, so that the middle between two tells for both.
    let state_of = |a: &ProfilePoint, b: &ProfilePoint| {
        if a.inner_wall.to_celsius() + b.inner_wall.to_celsius() < 0.0 {
            State::Frost
        } else {
            State::Water
        }
    };
    let start = found.len();
    for pair in profile.windows(2) {
        let [a, b] = pair else { continue };
        let (low, high) = (a.x.to_metres().max(from_m), b.x.to_metres().min(to_m));
        if low < high {
            append(found, start, state_of(a, b), low, high);
        }
    }
    if let Some(first) = found.get_mut(start) {
        first.from_m = from_m;
    }
    match found.get_mut(start..).and_then(<[_]>::last_mut) {
        Some(last) => last.to_m = to_m,
        None => found.push(StateStretch {
            state: State::Water,
            from_m,
            to_m,
        }),
    }
}

/// The stretches at both ends of whose every step the condition holds.
fn where_both(
    profile: &[ProfilePoint],
    state: State,
    found: &mut Vec<StateStretch>,
    holds: impl Fn(&ProfilePoint) -> bool,
) {
    let start = found.len();
    for pair in profile.windows(2) {
        let [a, b] = pair else { continue };
        let (low, high) = (a.x.to_metres(), b.x.to_metres());
        if low < high && holds(a) && holds(b) {
            append(found, start, state, low, high);
        }
    }
}

/// Adds a stretch, or lengthens the last one since `start` where it goes on.
fn append(found: &mut Vec<StateStretch>, start: usize, state: State, from_m: f64, to_m: f64) {
    if let Some(last) = found.get_mut(start..).and_then(<[_]>::last_mut)
        && last.state == state
        && last.to_m == from_m
    {
        last.to_m = to_m;
        return;
    }
    found.push(StateStretch {
        state,
        from_m,
        to_m,
    });
}
