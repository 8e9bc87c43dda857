//! Solved airflow lines: any case of the form of `flow.json` as a line in a state, and its answers by the same keys.

mod input;

use dewrun_airflow::{Airflow, AirflowError, Direction, Place, State, airflow};
use dewrun_quantity::{Pressure, VolumeFlow};
use serde_json::{Value, json};

use super::compare::Tolerance;
use super::report::{FileReport, Values};
use super::solved;
pub use input::{line_of, state_of};

/// How near each key has to be; `tests/cases/README.md` has the same in words.
const TOLERANCES: [(&str, Tolerance); 17] = [
    ("as_fitted_lpm", FLOW),
    ("q_lpm", FLOW),
    ("hole_lpm", FLOW),
    ("leaks_lpm", FLOW),
    ("stub_lpm", FLOW),
    ("roots_lpm", FLOW),
    ("p_pa", PRESSURE),
    ("fan_pa", PRESSURE),
    ("share", Tolerance::absolute(0.002)),
    ("pct", Tolerance::either(0.002, 0.2)),
    ("re_intake", Tolerance::relative(0.002)),
    ("re_exhaust", Tolerance::relative(0.002)),
    ("t_plug_s", TIME),
    ("t_first_s", TIME),
    ("t_90_s", TIME),
    ("status", Tolerance::absolute(0.0)),
    ("info", Tolerance::absolute(0.0)),
];
const FLOW: Tolerance = Tolerance::either(0.002, 0.02);
/// Where a wedge-shaped pool is in the path, whose friction is an integral.
const FLOW_OVER_WEDGE: Tolerance = Tolerance::either(0.003, 0.02);
const PRESSURE: Tolerance = Tolerance::either(0.002, 0.2);
const TIME: Tolerance = Tolerance::relative(0.003);

/// Holds every case of a file.
#[must_use]
pub fn hold(name: &str, cases: &[Value]) -> FileReport {
    solved::hold_each(name, cases, |case| {
        let mut answer = solved::answer(case, values(case)?, &[solved::INFO], &TOLERANCES)?;
        let pools = case["in"]["state"]["pools"].as_array();
        if pools.is_some_and(|pools| pools.iter().any(|pool| pool["kind"] == "wedge")) {
            for comparison in &mut answer.comparisons {
                if comparison.key == "q_lpm" {
                    comparison.tolerance = FLOW_OVER_WEDGE;
                }
            }
        }
        Ok(answer)
    })
}

/// The answers to a case, by the keys of its `expect`.
///
/// # Errors
/// A sentence where an input is missing or the line has no answer.
pub fn values(case: &Value) -> Result<Values, String> {
    let (line, state) = (line_of(&case["in"])?, state_of(&case["in"])?);
    let fitted = airflow(&line, &State::default()).map_err(|error| error.to_string())?;
    let fitted = fitted.value.sensor;
    let mut values = Values::new();
    values.insert("as_fitted_lpm".into(), litres(fitted));
    match airflow(&line, &state) {
        Ok(flow) => put(&flow.value, fitted, &mut values),
        Err(AirflowError::SeveralOperatingPoints { flows }) => {
            values.insert("status".into(), "several_operating_points".into());
            values.insert("roots_lpm".into(), flows.into_iter().map(litres).collect());
        }
        Err(error) => return Err(error.to_string()),
    }
    Ok(values)
}

fn put(flow: &Airflow, fitted: VolumeFlow, values: &mut Values) {
    let status = match flow.direction {
        Direction::Forward => "forward",
        Direction::Reversed => "reversed",
        Direction::Still => "no_flow",
    };
    let pressures = flow
        .pressures
        .iter()
        .map(|at| (name(at.place), pascals(at.pressure)));
    let leaks = flow
        .leaks
        .iter()
        .enumerate()
        .map(|(number, &leak)| (name(Place::Leak(number)), litres(leak)));
    let seconds = |of: fn(&dewrun_airflow::TransportTime) -> dewrun_quantity::Time| {
        json!(flow.transport.as_ref().map(|time| of(time).to_seconds()))
    };
    let put = [
        ("status", json!(status)),
        ("q_lpm", litres(flow.sensor)),
        ("pct", json!(100.0 * (flow.sensor / fitted))),
        ("p_pa", Value::Object(pressures.collect())),
        ("fan_pa", pascals(flow.budget.fan)),
        ("share", json!(flow.share)),
        ("re_intake", json!(flow.reynolds_intake)),
        ("re_exhaust", json!(flow.reynolds_exhaust)),
        ("t_plug_s", seconds(|time| time.plug)),
        ("t_first_s", seconds(|time| time.first)),
        ("t_90_s", seconds(|time| time.ninety_percent)),
        ("hole_lpm", flow.holes.map_or(Value::Null, litres)),
        ("leaks_lpm", Value::Object(leaks.collect())),
        ("stub_lpm", flow.stub.map_or(Value::Null, litres)),
    ];
    values.extend(put.map(|(key, value)| (key.to_owned(), value)));
}

/// The cases' names of places.
fn name(place: Place) -> String {
    let name = match place {
        Place::DuctAtIntake => "duct_in",
        Place::Inlet => "hole",
        Place::PartedJoint => "parted",
        Place::Leak(number) => return format!("leak{}", number + 1),
        Place::DetectorInlet => "det_in",
        Place::FilterOutlet => "filter_out",
        Place::FanInlet => "fan_in",
        Place::FanOutlet => "fan_out",
        Place::ExhaustEnd => "exh_end",
        Place::DuctAtExhaust => "duct_out",
    };
    name.to_owned()
}

fn litres(flow: VolumeFlow) -> Value {
    json!(flow.to_litres_per_minute())
}

fn pascals(pressure: Pressure) -> Value {
    json!(pressure.to_pascals())
}
