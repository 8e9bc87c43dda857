//! Remedies that need power: what it takes in a year, what is left when it fails, and how hot a tube gets where it stays on.

use dewrun_quantity::{Length, Power, Pressure, Temperature};
use dewrun_run::{Leg, library};
use dewrun_season::YearOutcome;
use dewrun_season::told::is_wet;

use crate::alteration::{Alteration, altered, legs};
use crate::inverse::{StillTube, kept_temperature};
use crate::left::{EnteredLeft, Left, YearLeft};
use crate::subject::Subject;

/// Watts and seconds in a kilowatt hour.
const KWH_J: f64 = 3.6e6;
/// Walls that conduct less than this are plastic, W/(m K).
const PLASTIC_W_MK: f64 = 1.0;
/// The row of plastics of no known kind.
const PLASTIC_ROW: &str = "tube-rigid-plastic-19";

/// What a remedy takes of power.
#[derive(Debug, Clone, PartialEq)]
pub struct Powered {
    /// All of it, beside what there is already.
    pub power: Power,
    /// What it takes in the weather there is where it is always on, kWh.
    pub energy_kwh: Option<f64>,
    /// The same with a thermostat; none where there is no weather, or nothing would be wet without it.
    pub thermostat: Option<Thermostat>,
    /// What is left where it has failed.
    pub failed: Left,
    /// How hot the tube gets where it stays on in the warmest hour and the air stands; none where no tube is traced.
    pub stuck_on: Option<Temperature>,
    /// What the plastic of the tube bears; none where it is of metal.
    pub bears: Option<Temperature>,
}

/// A thermostat in the air beside the traced legs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thermostat {
    /// It is on where the air is no warmer than this: that of the warmest hour that would be wet without it, °C.
    pub on_up_to_c: f64,
    /// What is taken with it, kWh.
    pub energy_kwh: f64,
}

/// What a remedy takes of power and what comes of its failure; none where the failed run has no answer.
pub(crate) fn without_power(
    subject: &Subject,
    alterations: &[Alteration],
    failed: &[Alteration],
    year: Option<&YearOutcome>,
) -> Option<Powered> {
    let entered = EnteredLeft::of(&altered(&subject.inputs, failed))?;
    let with = altered(&subject.inputs, alterations);
    let without = altered(&subject.inputs, failed);
    let sum = |inputs: &dewrun_ensemble::Inputs| {
        let all = inputs.run.intake.iter().chain(&inputs.run.exhaust);
        let traced: f64 = all
            .map(|leg| leg.tracing.to_watts_per_metre() * leg.length.to_metres())
            .sum();
        traced + inputs.run.detector.heat.to_watts()
    };
    // What is there already is not the remedy's.
    let power_w = (sum(&with) - sum(&without)).max(0.0);
    let traced: Vec<&Leg> = alterations
        .iter()
        .filter(|one| one.has_power())
        .filter_map(|one| one.leg())
        .filter_map(|(tube, leg)| legs(&with, tube).get(leg))
        .collect();
    let spaces: Vec<usize> = traced.iter().map(|leg| leg.space).collect();
    let seconds = year.map(|year| year.sums.iter().map(|hour| hour.seconds).sum::<f64>());
    Some(Powered {
        power: Power::watts(power_w),
        energy_kwh: seconds.map(|seconds| power_w * seconds / KWH_J),
        thermostat: year.and_then(|year| thermostat(year, &spaces, power_w)),
        failed: Left {
            entered,
            year: year.map(YearLeft::of),
        },
        stuck_on: traced
            .iter()
            .filter_map(|leg| stuck_on(subject, leg))
            .max_by(|one, next| one.to_celsius().total_cmp(&next.to_celsius())),
        bears: traced.iter().find_map(|leg| bears(leg)),
    })
}

/// The air beside the traced legs at which no hour is wet any more without power, and what it takes to be on below it.
fn thermostat(year: &YearOutcome, spaces: &[usize], power_w: f64) -> Option<Thermostat> {
    let hours = &year.hourly.hours;
    let coldest_c = |hour: usize| {
        let airs = spaces.iter().filter_map(|space| hours.around(hour, *space));
        airs.map(|air| air.air_c).min_by(f64::total_cmp)
    };
    let sums = || year.sums.iter().enumerate();
    let troubled = sums().filter(|(_, hour)| is_wet(hour) || 0.0 < hour.frost_kg);
    let on_up_to_c = troubled
        .filter_map(|(at, _)| coldest_c(at))
        .max_by(f64::total_cmp)?
        .ceil();
    let on_s: f64 = sums()
        .filter(|(at, _)| coldest_c(*at).is_some_and(|air_c| air_c <= on_up_to_c))
        .map(|(_, hour)| hour.seconds)
        .sum();
    Some(Thermostat {
        on_up_to_c,
        energy_kwh: power_w * on_s / KWH_J,
    })
}

/// What the plastic of a leg's tube bears; none where it is of metal.
pub(crate) fn bears(leg: &Leg) -> Option<Temperature> {
    let is_plastic = leg.tube.conductivity.to_watts_per_metre_kelvin() < PLASTIC_W_MK;
    let row = library::find(library::tubes(), PLASTIC_ROW).filter(|_| is_plastic);
    row.map(|row| row.highest_temperature.usual)
}

/// How hot a traced leg gets where the air stands, in the warmest hour of its space; none where it is not traced, or beyond 150 °C.
pub(crate) fn stuck_on(subject: &Subject, leg: &Leg) -> Option<Temperature> {
    if leg.tracing.to_watts_per_metre() <= 0.0 {
        return None;
    }
    let entered = subject.inputs.run.spaces.get(leg.space)?.temperature;
    let warmest_c = subject.warmest_c.get(leg.space).copied();
    let around = warmest_c.map_or(entered, Temperature::celsius);
    let layer = leg.insulation;
    let tube = StillTube {
        outside_diameter: leg.tube.outside_diameter,
        insulation: layer.map_or(Length::ZERO, |layer| layer.thickness),
        conductivity: layer.map_or(leg.tube.conductivity, |layer| layer.conductivity),
        emissivity: leg.emissivity,
        around,
        pressure: Pressure::pascals(subject.inputs.run.pressure.to_pascals()),
    };
    kept_temperature(&tube, leg.tracing)
}
