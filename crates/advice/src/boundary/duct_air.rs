//! The most humid duct air that a run takes dry.

use dewrun_quantity::Temperature;
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::{Outcome, Run};

use super::Limit;
use super::curve::BoundaryPoint;
use super::error::BoundaryError;
use super::probe::Prober;
use super::search::{Axis, Found, last_dry};

/// Driest air that is looked at, dew point in °C: its vapour leaves no grams in any tube.
const DRIEST_C: f64 = -60.0;
/// How narrow the bracket is to be, K: a tenth of what is asked of it.
pub(super) const TOLERANCE_K: f64 = 0.01;
/// The same for the many points of a curve, K: less than a line is wide.
pub(super) const CURVE_TOLERANCE_K: f64 = 0.04;
/// What is changed, and its unit.
const QUANTITY: (&str, &str) = ("the dew point of the duct air", "°C");

/// Highest dew point (over water, also below 0 °C) of duct air of `temperature` that the run takes dry.
///
/// [`Limit::Any`] where even saturated air stays dry, [`Limit::Never`] where air with a dew point of -60 °C does not.
/// The flow keeps its volume, at the place where it is counted.
/// `now` is what [`dewrun_run::evaluate`] answers for the run; the search begins at its coldest wall.
///
/// # Range
/// As [`dewrun_run::evaluate`].
///
/// # Accuracy
/// 0.01 K, on the dry side, of the model's own threshold: more vapour never makes a wet run dry.
///
/// # Errors
/// [`BoundaryError`] where one of the runs on the way has no answer.
///
/// # Source
/// By search over the whole model; no relation of its own. Example: see [`super::staying_dry`].
pub fn most_humid_duct_air(
    run: &Run,
    now: &Outcome,
    temperature: Temperature,
) -> Result<Limit<Temperature>, BoundaryError> {
    let guess = coldest_wall(now).unwrap_or(temperature);
    most_humid_near(&mut Prober::new(run, now), temperature, guess, TOLERANCE_K)
}

/// The same, begun at a guess.
pub(super) fn most_humid_near(
    prober: &mut Prober,
    temperature: Temperature,
    guess: Temperature,
    tolerance: f64,
) -> Result<Limit<Temperature>, BoundaryError> {
    let axis = Axis {
        quantity: QUANTITY,
        driest: DRIEST_C.min(temperature.to_celsius()),
        wettest: temperature.to_celsius(),
        guess: guess.to_celsius(),
        tolerance,
        per_kelvin: 1.0,
    };
    let found = last_dry(&axis, &mut |dew_point_c| {
        let humidity = Humidity::DewPoint(Temperature::celsius(dew_point_c));
        prober.run.duct_air = Pair::Temperature(temperature, humidity);
        prober.probe()
    })?;
    Ok(match found {
        Found::LastDry(dew_point_c) => Limit::At(Temperature::celsius(dew_point_c)),
        Found::AllDry => Limit::Any,
        Found::AllWet => Limit::Never,
    })
}

/// The warmest saturated duct air that stays dry, from `dry` on up to where only the air of `limited` does.
pub(super) fn warmest_saturated(
    prober: &mut Prober,
    dry: Temperature,
    limited: &BoundaryPoint,
) -> Result<Option<Temperature>, BoundaryError> {
    let axis = Axis {
        quantity: ("the temperature of saturated duct air", "°C"),
        driest: dry.to_celsius(),
        wettest: limited.temperature.to_celsius(),
        guess: limited.dew_point.at().map_or(0.0, Temperature::to_celsius),
        tolerance: CURVE_TOLERANCE_K,
        per_kelvin: 1.0,
    };
    let found = last_dry(&axis, &mut |t_c| {
        let t = Temperature::celsius(t_c);
        prober.run.duct_air = Pair::Temperature(t, Humidity::DewPoint(t));
        prober.probe()
    })?;
    Ok(match found {
        Found::LastDry(t_c) => Some(Temperature::celsius(t_c)),
        Found::AllDry | Found::AllWet => None,
    })
}

/// The coldest inner wall of both tubes: air with a higher dew point is wet there, or nearly.
pub(super) fn coldest_wall(now: &Outcome) -> Option<Temperature> {
    core::iter::once(&now.intake)
        .chain(&now.exhaust)
        .filter_map(|tube| tube.coldest_wall)
        .map(|wall| wall.temperature)
        .reduce(Temperature::min)
}
