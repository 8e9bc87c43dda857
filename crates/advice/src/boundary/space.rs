//! The coldest that the spaces may be before a run gets wet.

use dewrun_quantity::{Pressure, Temperature};
use dewrun_run::air::{Humidity, MoistAir, Over, Pair};
use dewrun_run::range::{AIR_TEMPERATURE, RADIANT_TEMPERATURE};
use dewrun_run::{Outcome, Run, Space, Verdict};

use super::Limit;
use super::duct_air::TOLERANCE_K;
use super::error::BoundaryError;
use super::probe::{Prober, of_outcome};
use super::search::{Axis, Found, last_dry};

/// Spaces so much warmer than the dew point are dry whatever the tube, K: more than the error of a dew point.
const ABOVE_DEW_POINT_K: f64 = 0.1;
/// What is changed, and its unit.
const QUANTITY: (&str, &str) = ("the temperature of the spaces", "°C");

/// How cold the spaces may be.
#[derive(Debug, Clone, PartialEq)]
pub struct SpaceLimit {
    /// The lowest temperature at which the run is dry.
    pub temperature: Limit<Temperature>,
    /// The spaces that are taken to have it, by position: of a wet run those now colder, of a dry run those now warmer; the others stay as they are.
    pub spaces: Vec<usize>,
}

/// The lowest temperature that the spaces may have alike before the run gets wet.
///
/// Of a wet run the spaces that are colder than it are warmed to it; of a dry run those that are warmer are cooled to it.
/// Each keeps its relative humidity, and its surroundings stay as much warmer or colder than its air.
/// [`Limit::Any`] where the run stays dry at -60 °C, [`Limit::Never`] where it stays wet however warm the spaces.
/// `now` is what [`dewrun_run::evaluate`] answers for the run.
///
/// # Range
/// As [`dewrun_run::evaluate`].
///
/// # Accuracy
/// 0.01 K, on the dry side, of the model's own threshold.
///
/// # Errors
/// [`BoundaryError`] where one of the runs on the way has no answer.
///
/// # Source
/// By search over the whole model; no relation of its own. Example: see [`super::staying_dry`].
pub fn coldest_space(run: &Run, now: &Outcome) -> Result<SpaceLimit, BoundaryError> {
    let change = Change::of(run, now);
    let Some((coldest_c, warmest_c)) = change.span() else {
        return Ok(change.limit(Limit::Any));
    };
    let probed = of_outcome(now);
    // Counted downwards: colder spaces lie further up the axis.
    let (driest, wettest) = if change.warms {
        let dry_c = surely_dry_c(run, now) + change.colder_surroundings_k();
        (-dry_c.min(AIR_TEMPERATURE.max), -coldest_c)
    } else {
        (-warmest_c, -change.least_c())
    };
    let axis = Axis {
        quantity: QUANTITY,
        driest,
        wettest,
        guess: -(coldest_c + probed.excess_k),
        tolerance: TOLERANCE_K,
        per_kelvin: 1.0,
    };
    let mut prober = Prober::new(run, now);
    let found = last_dry(&axis, &mut |minus_c| {
        change.apply(&mut prober.run, -minus_c);
        prober.probe()
    })?;
    Ok(change.limit(match found {
        Found::LastDry(minus_c) => Limit::At(Temperature::celsius(-minus_c)),
        Found::AllDry => Limit::Any,
        Found::AllWet => Limit::Never,
    }))
}

/// The spaces that the tubes pass, and which way they are changed.
struct Change {
    /// Position, the space now, and its humidity as a relative one.
    spaces: Vec<(usize, Space, Humidity)>,
    /// Wet now: the colder ones are warmed; else the warmer ones are cooled.
    warms: bool,
}

impl Change {
    fn of(run: &Run, now: &Outcome) -> Self {
        let passes = |place: &usize| {
            run.intake
                .iter()
                .chain(&run.exhaust)
                .any(|leg| leg.space == *place)
        };
        let spaces = run
            .spaces
            .iter()
            .enumerate()
            .filter(|(place, _)| passes(place))
            .map(|(place, space)| (place, *space, relative(space, run.pressure)))
            .collect();
        Self {
            spaces,
            warms: now.verdict == Verdict::Wet,
        }
    }

    /// The coldest and the warmest of them, °C.
    fn span(&self) -> Option<(f64, f64)> {
        let temperatures = || self.spaces.iter().map(|(_, space, _)| space.temperature);
        let coldest = temperatures().reduce(Temperature::min)?;
        let warmest = temperatures().reduce(Temperature::max)?;
        Some((coldest.to_celsius(), warmest.to_celsius()))
    }

    /// Gives the spaces that are on the wrong side of `t_c` that temperature, the others their own.
    fn apply(&self, run: &mut Run, t_c: f64) {
        for (place, space, humidity) in &self.spaces {
            let Some(changed) = run.spaces.get_mut(*place) else {
                continue;
            };
            *changed = *space;
            if self.changes(space, t_c) {
                let temperature = Temperature::celsius(t_c);
                changed.temperature = temperature;
                changed.radiant = space
                    .radiant
                    .map(|radiant| temperature + (radiant - space.temperature));
                changed.humidity = *humidity;
            }
        }
    }

    fn changes(&self, space: &Space, t_c: f64) -> bool {
        let now_c = space.temperature.to_celsius();
        if self.warms { now_c < t_c } else { t_c < now_c }
    }

    /// The coldest that is within the limits of the relations.
    fn least_c(&self) -> f64 {
        AIR_TEMPERATURE
            .min
            .max(RADIANT_TEMPERATURE.min + self.colder_surroundings_k())
    }

    /// By how much the surroundings are colder than the air where they are so most, K.
    fn colder_surroundings_k(&self) -> f64 {
        self.spaces
            .iter()
            .filter_map(|(_, space, _)| Some((space.temperature - space.radiant?).to_kelvins()))
            .fold(0.0, f64::max)
    }

    fn limit(&self, temperature: Limit<Temperature>) -> SpaceLimit {
        let all = |(place, _, _): &(usize, Space, Humidity)| *place;
        let spaces = match temperature {
            Limit::At(t) => self
                .spaces
                .iter()
                .filter(|(_, space, _)| self.changes(space, t.to_celsius()))
                .map(all)
                .collect(),
            Limit::Any | Limit::Never => self.spaces.iter().map(all).collect(),
        };
        SpaceLimit {
            temperature,
            spaces,
        }
    }
}

/// Where all spaces and their surroundings are this warm no surface is as cold as the duct air's dew or frost point, °C.
fn surely_dry_c(run: &Run, now: &Outcome) -> f64 {
    let dew_point = now.duct_air.dew_point;
    let frost_point = MoistAir::new(run.duct_air, run.pressure)
        .ok()
        .and_then(|state| state.value.frost_point());
    let points = dew_point.into_iter().chain(frost_point);
    points
        .map(Temperature::to_celsius)
        .fold(AIR_TEMPERATURE.min, f64::max)
        + ABOVE_DEW_POINT_K
}

/// The humidity of a space as a relative one, which has a meaning at every temperature.
fn relative(space: &Space, pressure: Pressure) -> Humidity {
    if matches!(space.humidity, Humidity::Relative { .. }) {
        return space.humidity;
    }
    let pair = Pair::Temperature(space.temperature, space.humidity);
    MoistAir::new(pair, pressure).map_or(space.humidity, |state| Humidity::Relative {
        value: state.value.relative_humidity(Over::Water),
        over: Over::Water,
    })
}
