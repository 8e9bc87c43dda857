//! What keeps water and air of a run from being answered, at its field of the project file.

use dewrun_run as engine;

use crate::{DocumentError, FieldPath};

/// What keeps water and air of a run from being answered, at its field.
#[must_use]
pub fn located_whole(run_index: usize, error: &engine::WholeError) -> DocumentError {
    use engine::told::{AirflowError, DrainageError, Side as LineSide};
    let run = FieldPath::root().field("runs").index(run_index);
    let tube_path = |tube: engine::Tube| {
        run.clone().field(match tube {
            engine::Tube::Intake => "intake",
            engine::Tube::Exhaust => "exhaust",
        })
    };
    let path = match error {
        engine::WholeError::Drainage { tube, source } => match source {
            DrainageError::TrapOffTube { trap, .. } => {
                tube_path(*tube).field("traps").index(*trap).field("at_m")
            }
            DrainageError::SteeperThanUpright { leg, .. } => {
                tube_path(*tube).field("legs").index(*leg).field("rise_m")
            }
            DrainageError::Leg { leg, .. } => tube_path(*tube).field("legs").index(*leg),
            _ => tube_path(*tube),
        },
        engine::WholeError::Hanger { place, .. } => crate::path_of(run_index, *place).field("tube"),
        engine::WholeError::Trap { tube, trap, .. } => tube_path(*tube).field("traps").index(*trap),
        engine::WholeError::Airflow { source } => match source {
            AirflowError::SeveralOperatingPoints { .. } => run.clone().field("air_path.fan"),
            AirflowError::OffTube { side, .. } | AirflowError::NoStretch { side } => {
                tube_path(match side {
                    LineSide::Intake => engine::Tube::Intake,
                    LineSide::Exhaust => engine::Tube::Exhaust,
                })
            }
            _ => run.clone().field("air_path"),
        },
        _ => run.clone(),
    };
    DocumentError::Told {
        path,
        sentence: error.to_string(),
    }
}
