//! How sure an answer is, in words: what is told, and that it never says more than was computed.

mod sample;

use dewrun_advice::{Spread, SteadyDoubt, TubeDoubt};
use dewrun_drawing::{Answer, answer};
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::{Grade, Verdict};
use sample::Sample;

/// A made-up doubt.
fn doubt(wet: u32, cases: u32, water: [f64; 3]) -> SteadyDoubt {
    let spread = |[p10, p50, p90]: [f64; 3]| Spread { p10, p50, p90 };
    SteadyDoubt {
        cases,
        wet,
        unanswered: 0,
        intake: TubeDoubt {
            water_g_h: spread(water),
            sweat_g_h: spread([0.0; 3]),
            wet_at: Vec::new(),
        },
        exhaust: None,
        mist: spread([0.0; 3]),
        shares: Vec::new(),
    }
}

fn wet() -> Sample {
    let mut sample = sample::make_up_air();
    sample.outcome.intake.condensate = MassFlow::grams_per_hour(10.64);
    sample
}

fn dry(grade: Grade) -> Sample {
    let mut sample = wet();
    sample.outcome.verdict = Verdict::Dry;
    sample.outcome.grade = grade;
    sample.outcome.intake.condensate = MassFlow::ZERO;
    sample.outcome.intake.wet.clear();
    sample
}

fn told(sample: &Sample, doubt: &SteadyDoubt) -> String {
    let style = Style::default();
    let answer: Answer = answer(&sample.run, &sample.outcome, style);
    answer.with_doubt(&sample.outcome, doubt, style).plain()
}

#[track_caller]
fn check(sample: &Sample, doubt: &SteadyDoubt, begins: &str) {
    let told = told(sample, doubt);
    let begins = begins.replace('~', "\u{a0}");
    assert!(told.starts_with(&begins), "{told}");
    assert!(!told.contains("not computed yet"), "{told}");
}

#[test]
fn most_cases_agree() {
    check(
        &wet(),
        &doubt(970, 1000, [6.8, 10.5, 14.8]),
        "10.6~g/h of water forms in the intake tube between 1.5~m and 9.5~m, in the conditions entered; 97 of 100 plausible cases are wet. By model. In four of five cases 6.8 to 14.8~g/h form in the intake tube.",
    );
}

#[test]
fn where_one_in_nine_ends_otherwise_there_is_doubt() {
    check(
        &wet(),
        &doubt(880, 1000, [0.0, 10.5, 14.8]),
        "10.6~g/h of water forms in the intake tube between 1.5~m and 9.5~m, in the conditions entered; 88 of 100 plausible cases are wet. By model, with doubt. In four of five cases 0 to 14.8~g/h",
    );
    check(
        &dry(Grade::ByModel),
        &doubt(120, 1000, [0.0, 0.0, 0.3]),
        "The intake tube stays dry in the conditions entered; 12 of 100 plausible cases are wet. By model, with doubt.",
    );
}

/// A bound holds for the conditions entered; what happens in others is told beside it.
#[test]
fn a_bound_stays_a_bound() {
    check(
        &dry(Grade::ByBound),
        &doubt(0, 1000, [0.0; 3]),
        "The intake tube stays dry in the conditions entered; 0 of 100 plausible cases are wet. By bound:",
    );
}

#[test]
fn hardly_any_is_not_none() {
    let told = |wet| told(&dry(Grade::ByModel), &doubt(wet, 1000, [0.0; 3]));
    assert!(told(1).contains("under 1 of 100"), "{}", told(1));
    assert!(told(999).contains("over 99 of 100"), "{}", told(999));
    assert!(told(1000).contains("100 of 100"), "{}", told(1000));
}
