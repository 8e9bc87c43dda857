//! Solved steady routes: any case of the form of `steady.json` as a run, and its answers by the same keys.

use dewrun_moist_air::humidity::saturated_over_ice;
use dewrun_moist_air::mixture::mole_fraction;
use dewrun_quantity::{
    Conductivity, HumidityRatio, Length, Power, PowerPerLength, Pressure, Speed, Temperature,
    VolumeFlow,
};
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::{
    AirPoint, Detector, Flow, FlowAt, Insulation, Leg, Outcome, Run, Space, TubeOutcome, TubeWall,
    evaluate,
};
use serde_json::{Value, json};

use super::compare::Tolerance;
use super::inputs::Inputs;
use super::report::{FileReport, Values};
use super::solved;

/// Where the seam between ice and water lies in the cases' relative humidities, °C.
const SEAM_C: f64 = 0.01;

/// How near each key has to be; `tests/cases/README.md` has the same in words.
const TOLERANCES: [(&str, Tolerance); 13] = [
    ("m_dry_air_kg_s", Tolerance::relative(0.002)),
    ("condensate_g_h", Tolerance::either(0.01, 0.02)),
    ("leg_condensate_g_h", Tolerance::either(0.01, 0.02)),
    ("leg_sweat_g_h", Tolerance::either(0.02, 0.05)),
    ("t_out_c", Tolerance::absolute(0.1)),
    ("min_wall_c", Tolerance::absolute(0.1)),
    ("chamber_t_c", Tolerance::absolute(0.1)),
    ("w_out", Tolerance::relative(0.005)),
    ("mist_out", Tolerance::either(0.05, 2e-5)),
    ("max_mist", Tolerance::either(0.05, 2e-5)),
    ("chamber_mist", Tolerance::either(0.05, 2e-5)),
    ("chamber_rh", Tolerance::absolute(0.005)),
    ("onset_m", Tolerance::absolute(0.1)),
];

/// Holds every case of a file.
#[must_use]
pub fn hold(name: &str, cases: &[Value]) -> FileReport {
    solved::hold_each(name, cases, |case| {
        solved::answer(case, values(case)?, &[], &TOLERANCES)
    })
}

/// The run that a case describes: a space for each segment, those before `exhaust_from` in the intake.
///
/// # Errors
/// A sentence where an input is missing.
pub fn run_of(case: &Value) -> Result<Run, String> {
    let inputs = Inputs::of(case);
    let segments = case["segments"].as_array().ok_or("segments are missing")?;
    let mut spaces = Vec::new();
    let mut legs = Vec::new();
    for (number, segment) in segments.iter().enumerate() {
        spaces.push(space(&Inputs::of(segment))?);
        legs.push(leg(&Inputs::of(segment), number)?);
    }
    let in_intake = case["exhaust_from"]
        .as_u64()
        .map_or(Ok(legs.len()), usize::try_from);
    let in_intake = in_intake
        .map_err(|error| error.to_string())?
        .min(legs.len());
    let exhaust = legs.split_off(in_intake);
    let heat = if exhaust.is_empty() {
        0.0
    } else {
        inputs.number("detector_w")?
    };
    Ok(Run {
        pressure: Pressure::pascals(inputs.number("p_pa")?),
        duct_air: Pair::Temperature(
            Temperature::celsius(inputs.number("t_in_c")?),
            Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(
                inputs.number("w_in")?,
            )),
        ),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(inputs.number("q_lpm")?),
            at: FlowAt::Intake,
        },
        spaces,
        intake: legs,
        detector: Detector {
            heat: Power::watts(heat),
            humidity_rating: None,
        },
        exhaust,
    })
}

fn space(segment: &Inputs<'_>) -> Result<Space, String> {
    Ok(Space {
        temperature: Temperature::celsius(segment.number("t_amb")?),
        humidity: Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(
            segment.number("w_amb")?,
        )),
        radiant: None,
        wind: Speed::metres_per_second(segment.number("wind")?),
    })
}

fn leg(segment: &Inputs<'_>, space: usize) -> Result<Leg, String> {
    let length = Length::metres(segment.number("length")?);
    let steep = segment.raw()["vertical"]
        .as_bool()
        .ok_or("vertical is missing")?;
    let thickness = segment.number("ins")?;
    let insulation = Insulation {
        thickness: Length::metres(thickness),
        conductivity: Conductivity::watts_per_metre_kelvin(segment.number("k_ins")?),
    };
    Ok(Leg {
        space,
        length,
        rise: if steep { -length } else { Length::ZERO },
        tube: TubeWall {
            bore: Length::metres(segment.number("d_in")?),
            outside_diameter: Length::metres(segment.number("d_out")?),
            conductivity: Conductivity::watts_per_metre_kelvin(segment.number("k_wall")?),
        },
        insulation: (0.0 < thickness).then_some(insulation),
        emissivity: segment.number("emis")?,
        tracing: PowerPerLength::watts_per_metre(segment.number("trace")?),
    })
}

/// The answers to a case, by the keys of its `expect`.
///
/// # Errors
/// A sentence where an input is missing or the run has no answer.
pub fn values(case: &Value) -> Result<Values, String> {
    let run = run_of(case)?;
    let outcome = evaluate(&run).map_err(|error| error.to_string())?.value;
    let tubes: Vec<&TubeOutcome> = [&outcome.intake]
        .into_iter()
        .chain(&outcome.exhaust)
        .collect();
    let legs = || tubes.iter().flat_map(|tube| &tube.legs);
    let outlet = outcome
        .exhaust
        .as_ref()
        .map_or(outcome.intake.outlet, |exhaust| exhaust.outlet);
    let grams_per_hour = |tube: &TubeOutcome| tube.condensate.to_grams_per_hour();
    let coldest = tubes
        .iter()
        .filter_map(|tube| Some(tube.coldest_wall?.temperature.to_celsius()))
        .reduce(f64::min);
    let most_mist = tubes
        .iter()
        .map(|tube| ratio(tube.most_mist))
        .fold(0.0, f64::max);
    let mut values = Values::new();
    let mut put = |key: &str, value: Value| values.insert(key.to_owned(), value);
    put(
        "m_dry_air_kg_s",
        json!(outcome.dry_air.to_kilograms_per_second()),
    );
    put(
        "condensate_g_h",
        json!(tubes.iter().map(|tube| grams_per_hour(tube)).sum::<f64>()),
    );
    put(
        "leg_condensate_g_h",
        legs()
            .map(|leg| leg.condensate.to_grams_per_hour())
            .collect(),
    );
    put(
        "leg_sweat_g_h",
        legs().map(|leg| leg.sweat.to_grams_per_hour()).collect(),
    );
    put("t_out_c", json!(outlet.temperature.to_celsius()));
    put("w_out", json!(ratio(outlet.humidity_ratio)));
    put("mist_out", json!(ratio(outlet.mist)));
    put("max_mist", json!(most_mist));
    put("onset_m", json!(first_wet(&run, &outcome)));
    put("min_wall_c", json!(coldest));
    if outcome.exhaust.is_some() {
        put(
            "chamber_t_c",
            json!(outcome.chamber.temperature.to_celsius()),
        );
        put(
            "chamber_rh",
            json!(chamber_humidity(&outcome.chamber, run.pressure)),
        );
        put("chamber_mist", json!(ratio(outcome.chamber.mist)));
    }
    Ok(values)
}

fn ratio(value: HumidityRatio) -> f64 {
    value.to_kilograms_per_kilogram()
}

/// The first wet metre counted from the intake through both tubes.
fn first_wet(run: &Run, outcome: &Outcome) -> Option<f64> {
    let intake: f64 = run.intake.iter().map(|leg| leg.length.to_metres()).sum();
    let in_exhaust = || outcome.exhaust.as_ref().and_then(TubeOutcome::first_wet);
    outcome
        .intake
        .first_wet()
        .map(Length::to_metres)
        .or_else(|| Some(intake + in_exhaust()?.to_metres()))
}

/// Relative humidity as the cases have it: over ice in the cold, where the product says it over water.
fn chamber_humidity(chamber: &AirPoint, pressure: Pressure) -> f64 {
    let t_c = chamber.temperature.to_celsius();
    if SEAM_C <= t_c {
        return chamber.relative_humidity.to_fraction();
    }
    mole_fraction(ratio(chamber.humidity_ratio)) / saturated_over_ice(t_c, pressure.to_pascals())
}
