//! What a visit makes of a run: readings become its measured inputs.

use crate::{Flow, FlowAt, Input, Occasion, Origin, Run, Visit};

/// Appends a visit to a run; what was read becomes measured input, with the day and the person.
///
/// Only a visit at which the run was fitted sets its airflow: percentages refer to that one, and later readings are compared with it.
///
/// ```
/// use dewrun_document::{Occasion, Origin, Reading, Visit, read, visited};
/// let text = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/make-up-air.json"));
/// let mut run = read(text)?.runs.swap_remove(0);
/// visited(&mut run, Visit {
///     on: "2026-08-30".to_owned(),
///     by: "J. Orre".to_owned(),
///     occasion: Occasion::AsFitted,
///     airflow_l_min: Some(Reading { value: 29.1, expected: None }),
///     ..Visit::default()
/// });
/// assert_eq!(run.flow.volume_l_min.value, 29.1);
/// assert!(matches!(&run.flow.volume_l_min.origin, Origin::Measured { by, .. } if by == "J. Orre"));
/// # Ok::<(), dewrun_document::DocumentError>(())
/// ```
pub fn visited(run: &mut Run, visit: Visit) {
    let measured = |value| Input {
        value,
        origin: Origin::Measured {
            on: visit.on.clone(),
            by: visit.by.clone(),
        },
    };
    if let (Occasion::AsFitted, Some(airflow)) = (visit.occasion, &visit.airflow_l_min) {
        run.flow = Flow {
            volume_l_min: measured(airflow.value),
            at: FlowAt::Sensor,
        };
    }
    if let Some(pressure) = &visit.duct_static_pa {
        run.duct.static_pa = measured(pressure.value);
    }
    run.visits.push(visit);
}

#[cfg(test)]
mod tests {
    use super::visited;
    use crate::{FlowAt, Input, Occasion, Origin, Reading, Run, Visit, read};

    fn run() -> Run {
        let text = include_str!("../../../demo/make-up-air.json");
        let mut project = read(text).expect("the example opens");
        project.runs.swap_remove(0)
    }

    fn visit(occasion: Occasion) -> Visit {
        let reading = |value| {
            Some(Reading {
                value,
                expected: None,
            })
        };
        Visit {
            on: "2026-08-30".to_owned(),
            by: "J. Orre".to_owned(),
            occasion,
            airflow_l_min: reading(27.8),
            duct_static_pa: reading(-62.0),
            ..Visit::default()
        }
    }

    fn measured(value: f64) -> Input<f64> {
        let (on, by) = ("2026-08-30".to_owned(), "J. Orre".to_owned());
        Input {
            value,
            origin: Origin::Measured { on, by },
        }
    }

    #[test]
    fn what_was_read_as_fitted_becomes_input() {
        let mut run = run();
        visited(&mut run, visit(Occasion::AsFitted));
        assert_eq!(run.flow.volume_l_min, measured(27.8), "with day and person");
        assert_eq!(run.flow.at, FlowAt::Sensor, "where it was read");
        assert_eq!(run.duct.static_pa, measured(-62.0), "the duct's pressure");
        assert_eq!(run.visits, [visit(Occasion::AsFitted)], "and is kept");
    }

    #[test]
    fn a_service_leaves_the_airflow_as_fitted() {
        let (before, mut run) = (run(), run());
        visited(&mut run, visit(Occasion::Service));
        visited(&mut run, visit(Occasion::Service));
        assert_eq!(run.flow, before.flow, "percentages refer to that one");
        assert_eq!(run.duct.static_pa, measured(-62.0), "the duct is as it is");
        assert_eq!(run.visits.len(), 2, "each in its turn");
    }
}
