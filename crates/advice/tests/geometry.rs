//! Remedies of geometry: what they claim is what a fresh answer of the changed run says, and none is larger than it has to be.

use dewrun_advice::{Change, Left, RemedyKind, Subject, changed, remedies_of_geometry};
use dewrun_document::{read, to_installation, to_run};
use dewrun_quantity::{Length, Mass};
use dewrun_run::{Drain, Installation, Outcome, Run, Whole, evaluate, water_and_air};
use dewrun_tests::{installations, routes};

struct Answered {
    run: Run,
    built: Installation,
    outcome: Outcome,
    whole: Whole,
}

impl Answered {
    fn of(run: Run, built: Installation) -> Option<Self> {
        let outcome = evaluate(&run).ok()?.value;
        let whole = water_and_air(&run, &built, &outcome).ok()?;
        Some(Self {
            run,
            built,
            outcome,
            whole,
        })
    }

    fn worked_case(project: &str) -> Self {
        let project = read(project).expect("a worked case is a project");
        let (run, _) = to_run(&project, 0).expect("it has a run");
        let (built, _) = to_installation(&project, 0).expect("it is installed");
        Self::of(run, built).expect("it has an answer")
    }

    fn subject(&self) -> Subject<'_> {
        Subject {
            run: &self.run,
            installation: &self.built,
            outcome: &self.outcome,
            whole: &self.whole,
        }
    }

    fn with(&self, changes: &[Change]) -> Option<Self> {
        let (run, built) = changed(&self.run, &self.built, changes);
        Self::of(run, built)
    }
}

#[test]
fn make_up_air_gets_its_trap_at_the_low_point() {
    let answered = Answered::worked_case(include_str!("../../../demo/make-up-air.json"));
    let remedies = remedies_of_geometry(&answered.subject());
    let first = remedies.first().expect("there is one");
    assert_eq!(first.kind, RemedyKind::Traps, "a trap: {first:?}");
    // Legs of 1.0 m and 4.2 m fall to it, the next one rises.
    assert!(
        matches!(first.changes[..], [Change::Trap { at, .. }] if (at.to_metres() - 5.2).abs() < 1e-9),
        "where the legs meet: {:?}",
        first.changes
    );
    assert!(first.before.blind.is_some(), "sealed before");
    assert!(first.after.blind.is_none(), "and not after");
    assert_eq!(first.after.standing, Mass::ZERO, "nothing stands");
}

#[test]
fn a_dry_run_needs_none() {
    let answered = Answered::worked_case(include_str!("../../../demo/chilled-supply.json"));
    assert_eq!(
        remedies_of_geometry(&answered.subject()),
        [],
        "it sweats outside only"
    );
}

#[test]
fn what_is_claimed_is_what_a_fresh_answer_says() {
    let (mut blind, mut cured, mut traps, mut hangers, mut regraded) = (0, 0, 0, 0, 0);
    for seed in 0..150 {
        let run = routes::route(seed);
        let built = installations::installation(&run, seed);
        let Some(answered) = Answered::of(run, built) else {
            continue;
        };
        let remedies = remedies_of_geometry(&answered.subject());
        assert!(remedies.len() <= 3, "run {seed}: three at most");
        blind += usize::from(answered.whole.blind.is_some());
        cured += usize::from(
            answered.whole.blind.is_some() && remedies.iter().any(|one| one.after.blind.is_none()),
        );
        for remedy in &remedies {
            assert_eq!(
                remedy.before,
                Left::of(&answered.outcome, &answered.whole),
                "run {seed}: what there is now"
            );
            let fresh = answered.with(&remedy.changes).expect("it has an answer");
            assert_eq!(
                remedy.after,
                Left::of(&fresh.outcome, &fresh.whole),
                "run {seed}: {:?}",
                remedy.changes
            );
            match remedy.kind {
                RemedyKind::Traps => traps += 1,
                RemedyKind::Hangers => hangers += 1,
                RemedyKind::Regrade => regraded += 1,
            }
        }
    }
    assert!(
        10 < traps && 5 < hangers && 3 < regraded && 3 < cured,
        "{blind} blind runs, {cured} cured; {traps} traps, {hangers} hangers, {regraded} regraded"
    );
}

#[test]
fn one_step_smaller_does_not_do() {
    let (mut traps, mut hangers) = (0, 0);
    for seed in 0..150 {
        let run = routes::route(seed);
        let built = installations::installation(&run, seed);
        let Some(answered) = Answered::of(run, built) else {
            continue;
        };
        for remedy in remedies_of_geometry(&answered.subject()) {
            for change in &remedy.changes {
                match *change {
                    Change::Trap {
                        drain: Drain::ByHand,
                        at,
                        tube,
                        capacity,
                        ..
                    } => {
                        let fresh = answered.with(&remedy.changes).expect("it has an answer");
                        let water = match tube {
                            dewrun_run::Tube::Intake => &fresh.whole.intake,
                            dewrun_run::Tube::Exhaust => {
                                fresh.whole.exhaust.as_ref().expect("it is drawn")
                            }
                        };
                        let there = water.traps.iter().find(|trap| trap.at == at);
                        let there = there.expect("the trap is there");
                        // Once the walls are wet, all that comes in one interval.
                        let comes_g = there.rate.to_grams_per_hour()
                            * answered.built.drain_interval.to_hours();
                        let takes_g = capacity.to_grams();
                        assert!(
                            comes_g <= takes_g + 1e-6 && takes_g - 50.0 < comes_g,
                            "run {seed}: {comes_g} g come, it takes {takes_g} g"
                        );
                        traps += 1;
                    }
                    Change::Hangers { tube, leg, spacing } => {
                        let wider = Change::Hangers {
                            tube,
                            leg,
                            spacing: spacing + Length::metres(0.051),
                        };
                        let fresh = answered.with(&[wider]).expect("it has an answer");
                        let now = Left::of(&fresh.outcome, &fresh.whole);
                        // All others hang as they did.
                        let all = remedy.before.sagging;
                        assert_eq!(now.sagging, all, "run {seed}: a step wider it sags still");
                        hangers += 1;
                    }
                    _ => {}
                }
            }
        }
    }
    assert!(
        5 < traps && 5 < hangers,
        "{traps} traps and {hangers} legs were tried"
    );
}
