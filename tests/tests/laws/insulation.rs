//! What more insulation does: a warmer wall beyond the critical radius, a warning below it.

use dewrun_quantity::{Conductivity, Length, PowerPerLength, Temperature};
use dewrun_run::air::Pair;
use dewrun_run::{Insulation, Outcome, Run, RunNote, evaluate};
use dewrun_tests::routes::{Draw, route};

const ROUTES: u64 = 2000;
/// How much colder a wall may come out of two answers of equal truth, K.
const SLACK_K: f64 = 2e-3;

/// The coldest wall of a single leg, and whether insulation was said to make things worse.
fn coldest_wall(run: &Run, seed: u64) -> (f64, bool) {
    match evaluate(run) {
        Ok(outcome) => {
            let warned = outcome
                .notes
                .iter()
                .any(|note| matches!(note, RunNote::InsulationBelowCriticalRadius { .. }));
            (lowest(&outcome.value), warned)
        }
        Err(error) => panic!("seed {seed}: {error}"),
    }
}

fn lowest(outcome: &Outcome) -> f64 {
    outcome
        .intake
        .legs
        .iter()
        .map(|leg| leg.lowest_wall.to_celsius())
        .fold(f64::INFINITY, f64::min)
}

/// One leg in surroundings colder than the air, with insulation of a thickness.
fn insulated(seed: u64, thickness_mm: f64) -> Run {
    let mut run = route(seed);
    let mut draw = Draw::new(seed);
    run.intake.truncate(1);
    run.exhaust.clear();
    let conductivity = draw.between(0.02, 0.2);
    let below = draw.between(1.0, 30.0);
    if let (Pair::Temperature(air, _), Some(leg)) = (run.duct_air, run.intake.first_mut()) {
        leg.insulation = Some(Insulation {
            thickness: Length::millimetres(thickness_mm),
            conductivity: Conductivity::watts_per_metre_kelvin(conductivity),
        });
        leg.tracing = PowerPerLength::ZERO;
        if let Some(space) = run.spaces.get_mut(leg.space) {
            space.temperature = Temperature::celsius((air.to_celsius() - below).max(-59.0));
            space.radiant = None;
        }
    }
    run
}

#[test]
fn beyond_the_critical_radius_more_insulation_never_cools_the_wall_and_below_it_we_are_told() {
    let (mut worse, mut better) = (0, 0);
    for seed in 0..ROUTES {
        let thin_mm = Draw::new(!seed).between(0.2, 15.0);
        let more_mm = thin_mm + Draw::new(seed ^ 0xabcd).between(0.2, 15.0);
        let (thin, warned) = coldest_wall(&insulated(seed, thin_mm), seed);
        let (thick, _) = coldest_wall(&insulated(seed, more_mm), seed);
        assert!(
            thin - SLACK_K <= thick || warned,
            "seed {seed}: from {thin_mm} to {more_mm} mm the wall goes from {thin} to {thick} °C, unsaid"
        );
        worse += u32::from(thick < thin - SLACK_K);
        better += u32::from(thin + SLACK_K < thick);
    }
    assert!(
        20 < worse,
        "insulation made only {worse} walls colder: nothing was tried"
    );
    assert!(1000 < better, "insulation made only {better} walls warmer");
}
