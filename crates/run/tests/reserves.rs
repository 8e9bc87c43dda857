//! What is said beside an answer: flows that the relations leave out, and places past their range.

mod plain;

use dewrun_quantity::{Power, Pressure, RelativeHumidity, Temperature, VolumeFlow};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{Detector, Flow, FlowAt, Place, Run, RunNote, Space, Tube, evaluate};

const BORE_MM: f64 = 19.0;

fn run(flow_l_min: f64, duct_c: f64, space_c: f64, radiant_c: f64) -> Run {
    Run {
        pressure: Pressure::pascals(101_325.0),
        duct_air: Pair::Temperature(
            Temperature::celsius(duct_c),
            Humidity::Relative {
                value: RelativeHumidity::percent(30.0),
                over: Over::Ice,
            },
        ),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(flow_l_min),
            at: FlowAt::Intake,
        },
        spaces: vec![Space {
            humidity: Humidity::Relative {
                value: RelativeHumidity::percent(0.0),
                over: Over::Water,
            },
            radiant: Some(Temperature::celsius(radiant_c)),
            ..plain::space(space_c)
        }],
        intake: vec![plain::leg(0, 5.0)],
        detector: Detector {
            heat: Power::ZERO,
            humidity_rating: None,
        },
        exhaust: vec![],
    }
}

fn notes(run: &Run) -> Vec<RunNote> {
    evaluate(run).expect("the run can be evaluated").notes
}

#[test]
fn an_ordinary_flow_is_told_without_reserve() {
    assert!(
        notes(&run(30.0, 30.0, 20.0, 20.0)).is_empty(),
        "30 L/min in a 19 mm bore is what such detectors draw"
    );
}

#[test]
fn a_small_flow_is_told_with_buoyancy_over_inertia() {
    let run = run(0.5, 40.0, 20.0, 20.0);
    let outcome = evaluate(&run).expect("the run can be evaluated");
    let Some(RunNote::VerySmallFlow { place, richardson }) = outcome.notes.first() else {
        panic!("no note on the flow: {:?}", outcome.notes);
    };
    assert_eq!(*place, Place::Leg(Tube::Intake, 0), "the only leg");
    // Gr / Re^2 by their definitions with dry air at 30 °C, 16.0e-6 m2/s (from memory), at the widest difference of air and wall.
    let widest_k = (outcome.value.intake.profile.iter())
        .map(|p| p.air.to_celsius() - p.inner_wall.to_celsius())
        .fold(0.0, f64::max);
    let (d, nu) = (BORE_MM * 1e-3, 16.0e-6);
    let velocity = 0.5e-3 / 60.0 / (0.25 * core::f64::consts::PI * d * d);
    let grashof = 9.81 / 313.0 * widest_k * d * d * d / (nu * nu);
    let reynolds = velocity * d / nu;
    let expected = grashof / (reynolds * reynolds);
    assert!(
        (richardson / expected - 1.0).abs() < 0.1,
        "{richardson} against {expected}"
    );
}

#[test]
fn a_very_fast_flow_is_told_with_its_velocity() {
    let notes = notes(&run(1000.0, 30.0, 20.0, 20.0));
    let Some(RunNote::VeryFastFlow { velocity_m_s, .. }) = notes.first() else {
        panic!("no note on the velocity: {notes:?}");
    };
    // 1000 L/min through a circle of 19 mm.
    assert!(
        (velocity_m_s - 58.8).abs() < 0.6,
        "{velocity_m_s} m/s through 283.5 mm2"
    );
}

#[test]
fn a_tube_colder_than_the_relations_hold_for_is_told() {
    let notes = notes(&run(5.0, -59.0, -60.0, -90.0));
    assert!(
        notes.iter().any(|note| matches!(
            note,
            RunNote::ColderThanRange { coldest_c, .. } if (-90.0..-60.0).contains(coldest_c)
        )),
        "a tube under a sky of -90 °C: {notes:?}"
    );
}
