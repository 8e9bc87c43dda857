//! The doubt of a steady answer: what must hold of it whatever its numbers.

use std::fs;

use dewrun_advice::{Limit, SteadyDoubt, SteadyDoubts, Varied, staying_dry};
use dewrun_document::{givens, read, to_run};
use dewrun_run::figure::{Figure, Given, Origin, set};
use dewrun_run::{Place, Run, evaluate};

fn example(name: &str) -> (Run, Vec<Given>) {
    let path = format!("{}/../demo/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = fs::read_to_string(path).expect("the example is there");
    let project = read(&text).expect("it can be read");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    (run, givens(&project, 0))
}

fn doubt(run: &Run, givens: &[Given], seed: u64, cases: u32) -> SteadyDoubt {
    let mut cases_of = SteadyDoubts::new(run, givens, seed);
    cases_of.take(cases);
    cases_of.so_far().expect("cases have an answer")
}

/// The middle of a skewed spread is not the answer itself, but the answer lies within it.
#[test]
fn the_answer_lies_within_its_spread() {
    for name in ["make-up-air", "pool-hall-exhaust", "sagging-tube"] {
        let (run, givens) = example(name);
        let answer = evaluate(&run).expect("an answer").value;
        let water = answer.intake.condensate.to_grams_per_hour();
        let told = doubt(&run, &givens, 1, 512);
        let spread = told.intake.water_g_h;
        assert!(
            spread.p10 < water && water < spread.p90,
            "{name}: {water} in {spread:?}"
        );
        assert!(spread.p10 < spread.p50 && spread.p50 < spread.p90, "{name}");
        assert_eq!(
            told.cases + told.unanswered,
            512,
            "{name}: each case counts once"
        );
    }
}

/// Cases follow from the seed alone, however they are taken.
#[test]
fn the_same_seed_gives_the_same_cases() {
    let (run, givens) = example("make-up-air");
    let (one, again) = (doubt(&run, &givens, 7, 64), doubt(&run, &givens, 7, 64));
    assert_eq!(one, again, "and all at once or in pieces:");
    let mut pieces = SteadyDoubts::new(&run, &givens, 7);
    for _ in 0..4 {
        pieces.take(16);
    }
    assert_eq!(pieces.so_far(), Some(one), "the same");
}

/// A value that stands as typed does not vary.
#[test]
fn what_is_typed_stands() {
    let (run, mut givens) = example("make-up-air");
    for given in &mut givens {
        given.origin = Origin::Typed;
    }
    let told = doubt(&run, &givens, 1, 128);
    let varied: Vec<Varied> = told.shares.into_iter().map(|share| share.varied).collect();
    assert_eq!(varied.len(), 3, "relations alone: {varied:?}");
}

/// The corridor decides: the example says so of itself, and an assumption that is narrowed leaves less spread.
#[test]
fn a_narrower_span_leaves_less_doubt() {
    let (run, mut givens) = example("make-up-air");
    let wide = doubt(&run, &givens, 1, 512);
    let first = wide.shares.first().expect("something varies");
    let Varied::Assumed(assumed) = &first.varied else {
        panic!("an assumption, not {first:?}");
    };
    assert_eq!(assumed.figure, Figure::SpaceTemperature, "the corridor");
    for given in &mut givens {
        if given.figure == assumed.figure && assumed.places.contains(&given.place) {
            given.origin = Origin::Typed;
        }
    }
    let narrow = doubt(&run, &givens, 1, 512);
    let width = |told: &SteadyDoubt| told.intake.water_g_h.p90 - told.intake.water_g_h.p10;
    assert!(
        width(&narrow) < 0.7 * width(&wide),
        "{} and {}",
        width(&narrow),
        width(&wide)
    );
}

/// More and more cases settle on one chance, here of a run at the border between wet and dry.
#[test]
fn chances_settle() {
    let (mut run, mut givens) = example("make-up-air");
    let now = evaluate(&run).expect("an answer").value;
    let Limit::At(border) = staying_dry(&run, &now).expect("a border").duct_air else {
        panic!("a wet run has a border");
    };
    let changed = set(
        &mut run,
        Figure::DuctDewPoint,
        Place::DuctAir,
        border.to_celsius(),
    );
    assert_eq!(changed, Some(()), "the dew point is an input");
    for given in &mut givens {
        if given.place == Place::DuctAir {
            given.origin = Origin::Typed;
        }
    }
    let chance = |seed, cases| {
        let told = doubt(&run, &givens, seed, cases);
        f64::from(told.wet) / f64::from(told.cases)
    };
    let (coarse, fine) = (chance(1, 256), chance(2, 2048));
    assert!(0.1 < fine && fine < 0.9, "{fine} at the border");
    assert!((coarse - fine).abs() < 0.03, "{coarse} and {fine}");
}
