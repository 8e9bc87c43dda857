//! Where in the project each field stands.

use dewrun_document::{AirPath, Input, Project, Run, Trap};
use dewrun_run::library::{self, Row, Span};

use super::{LEFT, Measured};
use crate::{OpenProject, TubeName};

/// A field of the project by its name.
pub(super) enum Place<'a> {
    /// A number that is always there.
    Number(&'a mut Input<f64>, Measured),
    /// One that may be left out.
    Left(&'a mut Option<Input<f64>>, Measured),
    /// The fan's curve.
    Fan(&'a mut AirPath),
    /// What the airflow sensor answers to.
    Sensor(&'a mut AirPath),
    /// How a trap is emptied.
    TrapKind(&'a mut Trap),
}

/// The field of that name in the run that is open.
pub(super) fn place<'a>(project: &'a mut OpenProject, name: &str) -> Option<Place<'a>> {
    let run = project.run;
    let Project { runs, spaces, .. } = &mut project.project;
    let (part, rest) = name.split_once('.')?;
    if part == "spaces" {
        let at: usize = rest.split_once('.')?.0.parse().ok()?;
        return Some(Place::Left(
            &mut spaces.get_mut(at)?.pressure_pa,
            Measured::Gauge,
        ));
    }
    let run = runs.get_mut(run)?;
    match (part, rest) {
        ("duct", "static_pa") => Some(Place::Number(&mut run.duct.static_pa, Measured::Gauge)),
        ("duct", "velocity_pa") => Some(Place::Number(&mut run.duct.velocity_pa, Measured::Gauge)),
        ("air_path", "fan") => Some(Place::Fan(path(run))),
        ("air_path", "sensor") => Some(Place::Sensor(path(run))),
        ("air_path", field) => {
            let left = LEFT.iter().find(|left| left.field == field)?;
            Some(Place::Left((left.of)(path(run)), left.measured))
        }
        ("intake" | "exhaust", rest) => {
            let tube = if part == "intake" {
                TubeName::Intake
            } else {
                TubeName::Exhaust
            };
            trap_field(run, tube, rest)
        }
        _ => None,
    }
}

fn path(run: &mut Run) -> &mut AirPath {
    run.air_path.get_or_insert_with(AirPath::default)
}

/// Such as `traps.0.at_m`.
fn trap_field<'a>(run: &'a mut Run, tube: TubeName, name: &str) -> Option<Place<'a>> {
    let (at, field) = name.strip_prefix("traps.")?.split_once('.')?;
    let at: usize = at.parse().ok()?;
    let route = match tube {
        TubeName::Intake => &mut run.intake,
        TubeName::Exhaust => run.exhaust.as_mut()?,
    };
    let trap = route.traps.get_mut(at)?;
    Some(match field {
        "at_m" => Place::Number(&mut trap.at_m, Measured::Along),
        "kind" => Place::TrapKind(trap),
        "capacity_ml" => Place::Left(&mut trap.capacity_ml, Measured::In("mL")),
        "seal_mm" => Place::Left(&mut trap.seal_mm, Measured::Small),
        "outlet_drop_mm" => Place::Left(&mut trap.outlet_drop_mm, Measured::Small),
        _ => return None,
    })
}

/// The row that stands in for a number.
pub(super) fn stands_in(row: &str) -> Option<Span<f64>> {
    let found = library::assumptions().iter().find(|one| one.id() == row)?;
    Some(found.value)
}
