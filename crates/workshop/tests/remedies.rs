//! Remedies as the page gets them: what a button claims is what the project says once it is pressed.

use dewrun_advice::{Left, Remedy, Subject, remedies_of_geometry};
use dewrun_document::{read, to_installation, to_run};
use dewrun_run::{evaluate, water_and_air};
use dewrun_workshop::{Answer, Workshop};

const CASES: [(&str, &str); 4] = [
    (
        "make-up air",
        include_str!("../../../demo/make-up-air.json"),
    ),
    (
        "pool hall",
        include_str!("../../../demo/pool-hall-exhaust.json"),
    ),
    (
        "sagging tube",
        include_str!("../../../demo/sagging-tube.json"),
    ),
    (
        "chilled supply",
        include_str!("../../../demo/chilled-supply.json"),
    ),
];

fn asked(kind: &str, project: &str, numbers: &[f64]) -> String {
    match Workshop::default().ask(kind, project, 0, numbers) {
        Answer::Text(text) => text,
        other => panic!("`{kind}` is answered with {other:?}"),
    }
}

/// What water leaves in a project, and the remedies for it.
fn left(project: &str) -> (Left, Vec<Remedy>) {
    let project = read(project).expect("it is a project");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    let (installation, _) = to_installation(&project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &installation, &outcome).expect("its water has one");
    let subject = Subject {
        run: &run,
        installation: &installation,
        outcome: &outcome,
        whole: &whole,
    };
    (Left::of(&outcome, &whole), remedies_of_geometry(&subject))
}

#[test]
fn what_a_button_claims_is_what_the_project_says() {
    let mut made = 0;
    for (name, project) in CASES {
        let (_, remedies) = left(project);
        let rows = asked("remedies", project, &[0.0, 0.0]);
        assert_eq!(
            rows.matches("data-remedy=").count(),
            remedies.len(),
            "{name}: a button for each"
        );
        for (number, remedy) in remedies.iter().enumerate() {
            let changed = asked(&format!("remedied {number}"), project, &[]);
            let (after, _) = left(&changed);
            // Values go through the units of the file, and may come back a last digit off.
            let close = |one: f64, other: f64| (one - other).abs() <= 1e-9 * one.abs().max(1.0);
            assert!(
                close(after.standing.to_grams(), remedy.after.standing.to_grams())
                    && close(
                        after.into_detector.to_grams_per_hour(),
                        remedy.after.into_detector.to_grams_per_hour()
                    ),
                "{name}: {after:?} for {:?}",
                remedy.after
            );
            assert_eq!(
                after.blind.is_some(),
                remedy.after.blind.is_some(),
                "{name}: {:?}",
                remedy.changes
            );
            made += 1;
        }
    }
    assert!(2 < made, "{made} remedies of four cases were made");
}

#[test]
fn a_remedy_that_is_none_is_not_made() {
    let answer = Workshop::default().ask("remedied 7", CASES[0].1, 0, &[]);
    assert!(matches!(answer, Answer::Sentence(_)), "{answer:?}");
}

#[test]
fn the_airflow_follows_the_limits_that_a_hand_holds() {
    let room = [0.0, 0.0, 1392.0, 1.0];
    let project = CASES[0].1;
    let set = asked("airflow-limits", project, &room);
    let held = asked(
        "airflow-limits",
        project,
        &[room.as_slice(), &[70.0, 150.0]].concat(),
    );
    assert!(held.contains("aria-valuenow=\"70\""), "the low limit");
    assert!(held.contains("aria-valuenow=\"150\""), "the high one");
    let seen = |html: &str| html.matches("not seen").count();
    assert!(
        seen(&set) < seen(&held),
        "wider limits miss more: {} and {}",
        seen(&set),
        seen(&held)
    );
    for kind in ["airflow", "airflow-charts", "airflow-tables"] {
        assert!(
            !asked(kind, project, &room).is_empty(),
            "{kind} has something to say"
        );
    }
}

#[test]
fn a_fan_that_leaves_no_single_flow_is_refused_at_its_field() {
    // A fan whose curve the route's own crosses several times has no one flow.
    // The route of this case takes some 170 Pa at 29 L/min and half of that at 17.
    let hump = "entered air_path.fan 0 60; 15 30; 25 250; 60 0";
    let answer = Workshop::default().ask(hump, CASES[0].1, 0, &[0.0, 0.0]);
    assert!(
        matches!(&answer, Answer::Sentence(sentence) if sentence.contains("flow")),
        "{answer:?}"
    );
    let plain = "entered air_path.fan 0 300; 50 220; 100 0";
    let answer = Workshop::default().ask(plain, CASES[0].1, 0, &[0.0, 0.0]);
    assert!(matches!(answer, Answer::Text(_)), "{answer:?}");
}

#[test]
fn a_trap_off_the_tube_is_refused() {
    let project = asked("remedied 0", CASES[0].1, &[]);
    // The intake is 12.1 m long.
    let answer =
        Workshop::default().ask("entered intake.traps.0.at_m 13", &project, 0, &[0.0, 0.0]);
    assert!(matches!(answer, Answer::Sentence(_)), "{answer:?}");
    let answer = Workshop::default().ask("entered intake.traps.0.at_m 5", &project, 0, &[0.0, 0.0]);
    assert!(matches!(answer, Answer::Text(_)), "{answer:?}");
}

#[test]
fn limits_are_set_both_at_once() {
    let answer = asked("entered limits", CASES[0].1, &[0.0, 0.0, 79.0, 112.0]);
    let project = read(&answer).expect("it is a project");
    let path = project.runs[0].air_path.as_ref().expect("they are set");
    let of = |input: &Option<dewrun_document::Input<f64>>| input.as_ref().map(|input| input.value);
    assert_eq!(
        (of(&path.low_limit_percent), of(&path.high_limit_percent)),
        (Some(79.0), Some(112.0)),
        "as moved"
    );
}
