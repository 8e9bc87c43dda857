//! From a place in the engine's run to the field of the project file.

use dewrun_run::{Place, RunError, Tube};

use crate::{DocumentError, FieldPath};

/// The part of the project file that a place in the engine's run stands for.
#[must_use]
pub fn path_of(run_index: usize, place: Place) -> FieldPath {
    let run = FieldPath::root().field("runs").index(run_index);
    match place {
        Place::Run => run,
        Place::DuctAir => run.field("duct.air"),
        Place::Space(at) => FieldPath::root().field("spaces").index(at),
        Place::Leg(Tube::Intake, at) => run.field("intake.legs").index(at),
        Place::Leg(Tube::Exhaust, at) => run.field("exhaust.legs").index(at),
        Place::Detector => run.field("detector"),
        Place::Flow => run.field("flow"),
    }
}

/// The engine's error at its field.
#[must_use]
pub fn located(run_index: usize, error: RunError) -> DocumentError {
    let path = match &error {
        RunError::OutOfRange { place, field, .. } => field_path(run_index, *place, field),
        RunError::NoSuchSpace { place, .. } => path_of(run_index, *place).field("space"),
        RunError::NoLegs => path_of(run_index, Place::Run).field("intake.legs"),
        RunError::Air { place, .. } | RunError::NotSolved { place, .. } => {
            path_of(run_index, *place)
        }
        _ => path_of(run_index, Place::Run),
    };
    DocumentError::Run {
        path,
        source: error,
    }
}

fn field_path(run_index: usize, place: Place, field: &str) -> FieldPath {
    if (place, field) == (Place::Run, "pressure") {
        return FieldPath::root().field("pressure");
    }
    let here = path_of(run_index, place);
    match field_name(place, field) {
        Some(name) => here.field(name),
        None => here,
    }
}

/// The file's name for a field that the engine names without unit.
fn field_name(place: Place, field: &str) -> Option<&'static str> {
    let name = match (place, field) {
        (Place::Leg(..), "length") => "length_m",
        (Place::Leg(..), "rise") => "rise_m",
        (Place::Leg(..), "bore") => "tube.bore_mm",
        (Place::Leg(..), "outside_diameter") => "tube.outside_diameter_mm",
        (Place::Leg(..), "conductivity") => "tube.conductivity_w_mk",
        (Place::Leg(..), "insulation.thickness") => "insulation.thickness_mm",
        (Place::Leg(..), "insulation.conductivity") => "insulation.conductivity_w_mk",
        (Place::Leg(..), "emissivity") => "emissivity",
        (Place::Leg(..), "tracing") => "heat_tracing_w_m",
        (Place::Space(_), "temperature") => "temperature_c",
        (Place::Space(_), "humidity") => "humidity",
        (Place::Space(_), "radiant") => "radiant_c",
        (Place::Space(_), "wind") => "wind_m_s",
        (Place::Detector, "heat") => "heat_w",
        (Place::Detector, "humidity_rating") => "humidity_rating_percent",
        (Place::Flow, "volume") => "volume_l_min",
        _ => return None,
    };
    Some(name)
}
