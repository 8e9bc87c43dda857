//! No answer holds a number that is none, and no finite input brings the product down.

use dewrun_quantity::{Length, Power, Temperature, VolumeFlow};
use dewrun_run::air::Pair;
use dewrun_run::{Flow, FlowAt, Outcome, Run, evaluate};
use dewrun_tests::fingerprint::numbers;
use dewrun_tests::routes::{awkward, route, wild};

#[track_caller]
fn assert_finite(outcome: &Outcome, what: &str) {
    let found = numbers(outcome)
        .into_iter()
        .position(|number| !number.is_finite());
    assert_eq!(found, None, "{what}: a number of the outcome is not finite");
}

#[test]
fn random_routes_have_finite_answers() {
    for seed in 0..1000 {
        match evaluate(&route(seed)) {
            Ok(outcome) => assert_finite(&outcome.value, &format!("seed {seed}")),
            Err(error) => panic!("seed {seed}: {error}"),
        }
    }
}

#[test]
fn awkward_routes_have_finite_answers() {
    for seed in 0..3000 {
        match evaluate(&awkward(seed)) {
            Ok(outcome) => assert_finite(&outcome.value, &format!("seed {seed}")),
            Err(error) => panic!("seed {seed}: {error}"),
        }
    }
}

/// Any finite numbers at all: an answer of finite numbers, or a sentence.
#[test]
fn wild_inputs_have_an_answer_or_a_sentence() {
    let mut answered = 0;
    for seed in 0..20_000 {
        match evaluate(&wild(seed)) {
            Ok(outcome) => {
                answered += 1;
                assert_finite(&outcome.value, &format!("seed {seed}"));
            }
            Err(error) => assert!(!error.to_string().is_empty(), "seed {seed}: no sentence"),
        }
    }
    assert!(
        1000 < answered,
        "only {answered} of the wild inputs have an answer"
    );
}

/// Counted at a sensor that a heater warms, a volume of air has a highest heat that it can carry at any temperature: 30 W is beyond that of 4.4 L/min.
#[test]
fn a_flow_that_cannot_carry_the_heat_is_refused_and_does_not_stand() {
    let mut run = route(70);
    run.flow = Flow {
        volume: VolumeFlow::litres_per_minute(4.4),
        at: FlowAt::Sensor,
    };
    let mut answered = 0;
    for watts in 0..100 {
        run.detector.heat = Power::watts(0.5 * f64::from(watts));
        match evaluate(&run) {
            Ok(outcome) => {
                answered += 1;
                let flow = outcome.value.dry_air.to_kilograms_per_second();
                assert!(2e-5 < flow, "{watts} half watts: {flow} kg/s");
            }
            Err(error) => assert!(
                ["comes out", "was not found"]
                    .iter()
                    .any(|words| error.to_string().contains(words)),
                "{error}"
            ),
        }
    }
    assert!(5 < answered && answered < 30, "{answered} of a hundred");
}

/// The whole run at one temperature: nothing flows, and nothing is divided by that nothing.
#[test]
fn equal_temperatures_change_nothing() {
    for seed in 0..300 {
        let mut run = route(seed);
        let Pair::Temperature(air, _) = run.duct_air else {
            continue;
        };
        for space in &mut run.spaces {
            space.temperature = air;
            space.radiant = None;
        }
        for leg in run.intake.iter_mut().chain(&mut run.exhaust) {
            leg.tracing = dewrun_quantity::PowerPerLength::ZERO;
        }
        run.detector.heat = Power::ZERO;
        let outcome = evaluated(&run, seed);
        assert_finite(&outcome, &format!("seed {seed}"));
        if outcome.duct_air.mist.to_kilograms_per_kilogram() == 0.0 {
            let off = (outcome.chamber.temperature - air).to_kelvins();
            assert!(
                off.abs() < 0.3,
                "seed {seed}: the air went {off} K off its surroundings"
            );
        }
    }
}

/// From no flow at all up: the wall follows its surroundings and every number is one.
#[test]
fn tiny_flows_have_finite_answers() {
    for seed in 0..200 {
        for flow_lpm in [0.0, 1e-12, 1e-9, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 0.1] {
            let mut run = route(seed);
            run.flow.volume = VolumeFlow::litres_per_minute(flow_lpm);
            run.detector.heat = Power::ZERO;
            let outcome = evaluated(&run, seed);
            assert_finite(&outcome, &format!("seed {seed} at {flow_lpm} L/min"));
            let balance = outcome.balance;
            let left = balance.water_left_over.to_kilograms_per_second();
            let all = balance.water_in.to_kilograms_per_second();
            assert!(
                left.abs() <= 1e-9 * all,
                "seed {seed} at {flow_lpm} L/min: {left} of {all}"
            );
        }
    }
}

/// Copper in ice water: surroundings just around freezing keep a wet wall at 0 °C.
#[test]
fn walls_at_freezing_have_finite_answers() {
    for seed in 0..300 {
        for space_c in [-4.0, -2.0, -1.0, -0.1, -1e-3, -1e-6, 0.0, 1e-6, 1e-3] {
            let mut run = route(seed);
            for space in &mut run.spaces {
                space.temperature = Temperature::celsius(space_c);
                space.radiant = None;
            }
            for leg in run.intake.iter_mut().chain(&mut run.exhaust) {
                leg.length = leg.length.max(Length::metres(2.0));
                leg.rise = Length::ZERO;
            }
            assert_finite(
                &evaluated(&run, seed),
                &format!("seed {seed} at {space_c} °C"),
            );
        }
    }
}

fn evaluated(run: &Run, seed: u64) -> Outcome {
    match evaluate(run) {
        Ok(outcome) => outcome.value,
        Err(error) => panic!("seed {seed}: {error}"),
    }
}
