//! The chance of water of a steady run against plain Monte Carlo.
//!
//! The routes are `tests/cases/doubt.json`, drawn 20 000 times each by `tests/generate/doubt_monte_carlo.py`, over relations written anew there.

use std::fs;
use std::path::Path;

use dewrun_advice::SteadyDoubts;
use dewrun_run::figure::{Figure, Given, Origin};
use dewrun_run::{Place, Tube};
use dewrun_tests::reference::steady::run_of;
use serde_json::Value;

/// Two in a hundred, and what 20 000 draws leave open is a third of one.
const CHANCE: f64 = 0.02;

/// The places of an input in a case, and its figure.
fn places(case: &Value, what: &str, segments: &Value) -> (Figure, Vec<Place>) {
    let split = case["exhaust_from"].as_u64().unwrap_or(u64::MAX);
    let leg = |number: &u64| {
        let (tube, at) = if *number < split {
            (Tube::Intake, *number)
        } else {
            (Tube::Exhaust, *number - split)
        };
        Place::Leg(tube, usize::try_from(at).expect("a position"))
    };
    let numbers = segments.as_array().map_or(&[][..], Vec::as_slice);
    let numbers: Vec<u64> = numbers.iter().filter_map(Value::as_u64).collect();
    // Each segment has a space of its own.
    let space = |number: &u64| Place::Space(usize::try_from(*number).expect("a position"));
    match what {
        "t_amb" => (
            Figure::SpaceTemperature,
            numbers.iter().map(space).collect(),
        ),
        "emis" => (Figure::Emissivity, numbers.iter().map(leg).collect()),
        "k_ins" => (
            Figure::InsulationConductivity,
            numbers.iter().map(leg).collect(),
        ),
        "k_wall" => (Figure::TubeConductivity, numbers.iter().map(leg).collect()),
        "q_lpm" => (Figure::Flow, vec![Place::Flow]),
        "t_in_c" => (Figure::DuctTemperature, vec![Place::DuctAir]),
        "w_in" => (Figure::DuctRatio, vec![Place::DuctAir]),
        other => panic!("an input that varies, not {other}"),
    }
}

fn givens(case: &Value) -> Vec<Given> {
    let varied = case["varied"].as_array().expect("what varies");
    let mut found = Vec::new();
    for (row, one) in varied.iter().enumerate() {
        let what = one["what"].as_str().expect("a name");
        let number = |key: &str| one[key].as_f64().expect("a number");
        let (figure, places) = places(case, what, &one["segments"]);
        found.extend(places.into_iter().map(|place| Given {
            figure,
            place,
            value: number("usual"),
            origin: Origin::Assumed {
                row: format!("row-{row}"),
                low: number("low"),
                high: number("high"),
            },
        }));
    }
    found
}

#[test]
fn chances_are_those_of_plain_monte_carlo() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/doubt.json");
    let text = fs::read_to_string(path).expect("the routes are committed");
    let cases: Vec<Value> = serde_json::from_str(&text).expect("a list of cases");
    assert_eq!(cases.len(), 5, "five routes");
    for case in &cases {
        let id = case["id"].as_str().unwrap_or_default();
        let run = run_of(case).expect("a run");
        let mut doubts = SteadyDoubts::new(&run, &givens(case), 1);
        doubts.take(1024);
        let told = doubts.so_far().expect("an answer");
        assert_eq!(told.unanswered, 0, "{id}");
        let chance = f64::from(told.wet) / f64::from(told.cases);
        let expected = case["chance"].as_f64().expect("a chance");
        println!("{id}: {chance:.4}, expected {expected:.4}");
        assert!(
            (chance - expected).abs() < CHANCE,
            "{id}: {chance}, not {expected}"
        );
        let spread = told.intake.water_g_h;
        let ends = case["intake_g_h"].as_array().expect("three numbers");
        for (found, expected) in [spread.p10, spread.p50, spread.p90].into_iter().zip(ends) {
            let expected = expected.as_f64().expect("a number");
            let near = (0.05 * expected).max(0.05);
            assert!(
                (found - expected).abs() < near,
                "{id}: {spread:?}, not {ends:?}"
            );
        }
    }
}
