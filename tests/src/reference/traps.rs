//! Solved traps and drains: any case of the form of `traps.json`, and its answers by the same keys.

use dewrun_quantity::{Area, Density, Length, Pressure};
use dewrun_water::drain::{drain_stub, hand_drain};
use dewrun_water::trap::{TrapError, TrapKind, TrapState, requirement};
use serde_json::{Value, json};

use super::compare::Tolerance;
use super::inputs::Inputs;
use super::pools::standard_gravity;
use super::report::{FileReport, Values};
use super::solved;

use core::f64::consts::PI;

/// How near each key has to be; `tests/cases/README.md` has the same in words.
const TOLERANCES: [(&str, Tolerance); 10] = [
    ("h_suction_mm", HEIGHT),
    ("h_pressure_mm", HEIGHT),
    ("outlet_drop_mm", HEIGHT),
    ("seal_mm", HEIGHT),
    ("head_mm", HEIGHT),
    ("column_mm", HEIGHT),
    ("gives_water", Tolerance::absolute(0.0)),
    ("drains", Tolerance::absolute(0.0)),
    ("runs_out_g", Tolerance::either(0.001, 0.05)),
    ("held_g", Tolerance::either(0.001, 0.05)),
];
const HEIGHT: Tolerance = Tolerance::either(0.001, 0.05);

/// Holds every case of a file.
#[must_use]
pub fn hold(name: &str, cases: &[Value]) -> FileReport {
    solved::hold(name, cases, &TOLERANCES, values)
}

fn values(inputs: &Inputs<'_>) -> Result<Values, String> {
    standard_gravity(inputs)?;
    let kind = inputs.raw()["kind"].as_str().ok_or("kind is missing")?;
    let values = match kind {
        "hand_drain" => valve(inputs)?,
        "drain_stub" => stub(inputs)?,
        kind => trap(kind, inputs)?,
    };
    values.map_err(|error| error.to_string())
}

type Answered = Result<Result<Values, TrapError>, String>;

fn of<const N: usize>(values: [(&str, Value); N]) -> Values {
    let values = values.map(|(key, value)| (key.to_owned(), value));
    values.into_iter().collect()
}

fn water(inputs: &Inputs<'_>) -> Result<Density, String> {
    Ok(Density::kilograms_per_cubic_metre(
        inputs.number("rho_water")?,
    ))
}

fn pressures(inputs: &Inputs<'_>) -> Result<Vec<Pressure>, String> {
    let given = inputs.list("p_tube_pa")?;
    Ok(given.into_iter().map(Pressure::pascals).collect())
}

fn valve(inputs: &Inputs<'_>) -> Answered {
    let bore = Length::millimetres(inputs.number("bore_mm")?);
    let column = Length::millimetres(inputs.number("column_mm")?);
    let valve = hand_drain(&pressures(inputs)?, bore, column, water(inputs)?);
    Ok(valve.map(|valve| {
        of([
            ("head_mm", json!(valve.head.to_millimetres())),
            ("gives_water", json!(valve.gives_water)),
            ("runs_out_g", json!(valve.runs_out.to_grams())),
        ])
    }))
}

fn stub(inputs: &Inputs<'_>) -> Answered {
    let bore = Length::millimetres(inputs.number("bore_mm")?);
    let length = Length::millimetres(inputs.number("length_mm")?);
    let stub = drain_stub(&pressures(inputs)?, bore, length, water(inputs)?);
    Ok(stub.map(|stub| {
        of([
            ("column_mm", json!(stub.column.to_millimetres())),
            ("held_g", json!(stub.held.to_grams())),
            ("drains", json!(stub.drains)),
        ])
    }))
}

fn trap(kind: &str, inputs: &Inputs<'_>) -> Answered {
    let areas = || {
        let bore_mm = inputs.number("dip_bore_mm")?;
        let dip = Area::square_millimetres(0.25 * PI * bore_mm * bore_mm);
        let pot = Area::square_millimetres(inputs.number("pot_free_area_mm2")?);
        Ok::<_, String>((dip, pot))
    };
    let kind = match kind {
        "equal_legs" => TrapKind::EqualLegs,
        "dip_open_to_room" => {
            let (dip, pot) = areas()?;
            TrapKind::DipOpenToRoom { dip, pot }
        }
        "dip_on_tube" => {
            let (dip, pot) = areas()?;
            TrapKind::DipOnTube { dip, pot }
        }
        other => return Err(format!("kind {other} is not known")),
    };
    let given = inputs.raw()["states"]
        .as_array()
        .ok_or("states are missing")?;
    let mut states = Vec::new();
    for state in given {
        let state = Inputs::of(state);
        states.push(TrapState {
            duct_static: Pressure::pascals(state.number("duct_static_pa")?),
            loss: Pressure::pascals(state.number("loss_pa")?),
        });
    }
    let margin = Length::millimetres(inputs.number("margin_mm")?);
    let needs = requirement(kind, &states, margin, water(inputs)?);
    Ok(needs.map(|needs| {
        of([
            ("h_suction_mm", json!(needs.suction_head.to_millimetres())),
            ("h_pressure_mm", json!(needs.pressure_head.to_millimetres())),
            ("outlet_drop_mm", json!(needs.outlet_drop.to_millimetres())),
            ("seal_mm", json!(needs.seal.to_millimetres())),
        ])
    }))
}
