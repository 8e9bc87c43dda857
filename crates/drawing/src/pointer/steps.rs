//! Where the pointer goes by keys and buttons: even steps, the tube's ends, joints and the bounds of wet stretches.

use dewrun_quantity::format::{MINUS, UNIT_SPACE, entered_with};
use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Length, Style, TemperatureDifference, Units};
use dewrun_run::{ProfilePoint, TubeOutcome, reading};

use super::Rail;
use crate::states::states;
use crate::view::View;

/// Two places nearer than this are one, m.
const SAME_M: f64 = 1e-6;

/// A step of the pointer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Step {
    /// By a small step, towards the inlet or the outlet.
    Small {
        /// Towards the outlet.
        on: bool,
    },
    /// By ten small steps.
    Large {
        /// Towards the outlet.
        on: bool,
    },
    /// To the next joint or bound of a stretch with water, frost, mist or sweat.
    Bound {
        /// Towards the outlet.
        on: bool,
    },
    /// To the inlet or the outlet.
    End {
        /// To the outlet.
        on: bool,
    },
    /// By a length.
    By(Length),
}

/// A large button that moves the pointer.
#[derive(Debug, Clone, PartialEq)]
pub struct BigStep {
    /// What stands on it.
    pub words: String,
    /// What is heard of it.
    pub spoken: String,
    /// How far it goes.
    pub step: Step,
}

/// The four buttons: far back, back, on, far on.
#[must_use]
pub fn big_steps(style: Style) -> [BigStep; 4] {
    let unit = TUBE_LENGTH.unit(style.units);
    let far: f64 = match style.units {
        Units::Si => 1.0,
        Units::InchPound => 3.0,
    };
    let lengths = [-far, -far / 10.0, far / 10.0, far];
    lengths.map(|length: f64| {
        let size = entered_with(length.abs(), style.mark);
        let (sign, way) = if length < 0.0 {
            (MINUS, "back")
        } else {
            ('+', "on")
        };
        let name = if length.abs() < far {
            String::new()
        } else {
            format!("{UNIT_SPACE}{}", unit.name)
        };
        BigStep {
            words: format!("{sign}{size}{name}"),
            spoken: format!("{size}{UNIT_SPACE}{} {way}", unit.name),
            step: Step::By((unit.make)(length)),
        }
    })
}

impl Rail {
    /// Where the pointer stands before anybody moves it: where half of the water has formed, else where the wall comes nearest to the dew point.
    #[must_use]
    pub fn start(&self, view: &View<'_>) -> Length {
        let Some(tube) = view.answer() else {
            return Length::ZERO;
        };
        let margin = |point: &ProfilePoint| {
            let margin = point.dew_point.map(|dew| point.inner_wall - dew);
            margin.map_or(f64::INFINITY, TemperatureDifference::to_kelvins)
        };
        if 0.0 < tube.condensate.to_grams_per_hour() {
            return rounded(view, half_formed(view, tube));
        }
        let places = tube.profile.iter();
        let closest = places.min_by(|a, b| margin(a).total_cmp(&margin(b)));
        closest.map_or(Length::ZERO, |point| rounded(view, point.x))
    }

    /// Where a step leads from a place.
    #[must_use]
    pub fn stepped(&self, view: &View<'_>, from: Length, step: Step) -> Length {
        let unit = TUBE_LENGTH.unit(view.style.units);
        let small = match view.style.units {
            Units::Si => 0.05,
            Units::InchPound => 0.2,
        };
        let by = |length: Length, on: bool| {
            rounded(view, if on { from + length } else { from - length })
        };
        let to = match step {
            Step::Small { on } => by((unit.make)(small), on),
            Step::Large { on } => by((unit.make)(10.0 * small), on),
            Step::By(length) => by(length, true),
            Step::End { on: false } => Length::ZERO,
            Step::End { on: true } => end(view),
            Step::Bound { on } => next_bound(view, from, on),
        };
        within(view, to).unwrap_or(from)
    }
}

/// The place up to which half of a tube's water has formed, found by halving.
fn half_formed(view: &View<'_>, tube: &TubeOutcome) -> Length {
    let half = tube.condensate.to_grams_per_hour() / 2.0;
    let (mut low, mut high) = (0.0, end(view).to_metres());
    // To the hundredth of a metre in any tube that could be fitted.
    for _ in 0..16 {
        let middle = (low + high) / 2.0;
        let read = reading(tube, view.run.pressure, Length::metres(middle));
        if read.is_some_and(|read| read.deposited.to_grams_per_hour() < half) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Length::metres(high)
}

/// The next joint or bound, or the tube's end.
fn next_bound(view: &View<'_>, from: Length, on: bool) -> Length {
    let from = from.to_metres();
    let bounds = bounds(view).into_iter();
    let next = if on {
        bounds
            .filter(|bound| from + SAME_M < *bound)
            .reduce(f64::min)
    } else {
        bounds
            .filter(|bound| *bound < from - SAME_M)
            .reduce(f64::max)
    };
    let last = if on { end(view) } else { Length::ZERO };
    next.map_or(last, Length::metres)
}

/// Joints and bounds of stretches, m.
fn bounds(view: &View<'_>) -> Vec<f64> {
    let Some(tube) = view.answer() else {
        return Vec::new();
    };
    let joints = tube
        .legs
        .iter()
        .flat_map(|leg| [leg.from.to_metres(), leg.to.to_metres()]);
    let stretches = states(tube);
    let ends = stretches
        .iter()
        .flat_map(|stretch| [stretch.from_m, stretch.to_m]);
    joints.chain(ends).collect()
}

/// A place to the hundredth of the unit shown.
pub(crate) fn rounded(view: &View<'_>, x: Length) -> Length {
    let unit = TUBE_LENGTH.unit(view.style.units);
    (unit.make)(((unit.read)(x) * 100.0).round() / 100.0)
}

/// The place itself, or the nearer end of the tube.
pub(crate) fn within(view: &View<'_>, x: Length) -> Option<Length> {
    view.answer()?.profile.last()?;
    Some(x.max(Length::ZERO).min(end(view)))
}

fn end(view: &View<'_>) -> Length {
    let last = view.answer().and_then(|tube| tube.profile.last());
    last.map_or(Length::ZERO, |point| point.x)
}
