//! A text typed into a field of the installation.

use dewrun_document::{AirPath, AirflowSensor, FanPoint, Input, TrapKind, check};
use dewrun_quantity::measure::{AIR_FLOW, DRAUGHT};
use dewrun_quantity::parse::ParseError;
use dewrun_quantity::{Pressure, Style, Units, VolumeFlow};

use super::place::{Place, place};
use crate::OpenProject;

/// Takes a text into the field of a project; an empty one leaves the number out, so that its row stands in.
///
/// # Errors
/// What is wrong with it and what would be right, as a sentence.
pub fn enter(
    project: &mut OpenProject,
    name: &str,
    text: &str,
    style: Style,
) -> Result<(), String> {
    let mut changed = project.clone();
    let text = text.trim();
    let found = place(&mut changed, name);
    match found.ok_or_else(|| "this is no part of the project any more.".to_owned())? {
        Place::Number(input, measured) => {
            *input = Input::typed(
                measured
                    .parse(text, style.units)
                    .map_err(|e| no(text, &e))?,
            );
        }
        Place::Left(input, _) if text.is_empty() => *input = None,
        Place::Left(input, measured) => {
            let value = measured
                .parse(text, style.units)
                .map_err(|e| no(text, &e))?;
            *input = Some(Input::typed(value));
        }
        Place::Fan(path) => path.fan = fan(text, style.units)?,
        Place::Sensor(path) => {
            path.sensor = match text {
                "mass" => AirflowSensor::Mass,
                "velocity_pressure" => AirflowSensor::VelocityPressure,
                _ => AirflowSensor::Volume,
            };
        }
        Place::TrapKind(trap) => {
            trap.kind = match text {
                "self_draining" => TrapKind::SelfDraining,
                "open_stub" => TrapKind::OpenStub,
                _ => TrapKind::HandDrained,
            };
        }
    }
    check(&changed.project).map_err(|error| format!("{error}."))?;
    *project = changed;
    Ok(())
}

/// Sets both airflow limits, %.
///
/// # Errors
/// They are no limits, as a sentence.
pub fn set_limits(project: &mut OpenProject, [low, high]: [f64; 2]) -> Result<(), String> {
    let mut changed = project.clone();
    let run = changed.run;
    if let Some(run) = changed.project.runs.get_mut(run) {
        let path = run.air_path.get_or_insert_with(AirPath::default);
        path.low_limit_percent = Some(Input::typed(low));
        path.high_limit_percent = Some(Input::typed(high));
    }
    check(&changed.project).map_err(|error| format!("{error}."))?;
    *project = changed;
    Ok(())
}

/// That a text is no number, and what would be one.
pub(crate) fn no(text: &str, error: &ParseError) -> String {
    match error {
        ParseError::Empty => "nothing is typed. A number such as 12.5 would be right.".to_owned(),
        ParseError::Incomplete { .. } | ParseError::Unexpected { .. } => {
            format!(
                "\u{201c}{text}\u{201d} is not a number. One such as 12.5 or 12,5 would be right."
            )
        }
        other => format!("{other}."),
    }
}

/// Points such as `0 300; 50 220; 100 0`; nothing for the generic fan.
fn fan(text: &str, units: Units) -> Result<Vec<FanPoint>, String> {
    let points = text.split(';').map(str::trim).filter(|one| !one.is_empty());
    let point = |one: &str| {
        let wrong = || {
            format!(
                "\u{201c}{one}\u{201d} is no point. Flow and pressure such as 50 220 would be right, points set off by semicolons."
            )
        };
        let (flow, pressure) = one.split_once(char::is_whitespace).ok_or_else(wrong)?;
        let flow = AIR_FLOW.parse(flow, units).map_err(|_| wrong())?;
        let pressure = DRAUGHT.parse(pressure.trim(), units).map_err(|_| wrong())?;
        Ok(FanPoint {
            flow_l_min: Input::typed(litres(flow)),
            pressure_pa: Input::typed(pascals(pressure)),
        })
    };
    points.map(point).collect()
}

fn litres(flow: VolumeFlow) -> f64 {
    rounded(flow.to_litres_per_minute())
}

fn pascals(pressure: Pressure) -> f64 {
    rounded(pressure.to_pascals())
}

/// Nobody types a fan's point finer: a number that has gone through another unit comes back as it was typed.
fn rounded(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}
