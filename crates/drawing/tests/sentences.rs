//! What the answer says, and that it never says more than was computed.

mod sample;

use dewrun_drawing::{Answer, Emphasis, answer};
use dewrun_quantity::{HumidityRatio, MassFlow, RelativeHumidity, Style, Units};
use dewrun_run::{Grade, Verdict};
use sample::Sample;

fn answered(sample: &Sample) -> Answer {
    answer(&sample.run, &sample.outcome, Style::default())
}

#[track_caller]
fn check(sample: &Sample, expected: &str) {
    let expected = expected.replace('~', "\u{a0}");
    assert_eq!(answered(sample).plain_sentence(), expected, "the sentence");
}

/// The make-up air run with figures of our choice.
fn wet(g_h: f64) -> Sample {
    let mut sample = sample::make_up_air();
    sample.outcome.intake.condensate = MassFlow::grams_per_hour(g_h);
    sample
}

fn dry() -> Sample {
    let mut sample = wet(0.0);
    sample.outcome.verdict = Verdict::Dry;
    sample.outcome.intake.wet.clear();
    sample
}

#[test]
fn wet_tube() {
    check(
        &wet(10.64),
        "10.6~g/h of water forms in the intake tube between 1.5~m and 9.5~m, in the conditions entered; doubt not computed yet.",
    );
}

#[test]
fn dry_never_stands_alone() {
    check(
        &dry(),
        "The intake tube stays dry in the conditions entered; doubt not computed yet.",
    );
    let mut both = dry();
    both.outcome.exhaust = Some(both.outcome.intake.clone());
    check(
        &both,
        "Both tubes stay dry in the conditions entered; doubt not computed yet.",
    );
}

#[test]
fn sweat_alone_is_dry_and_named() {
    let mut sample = dry();
    sample.outcome.intake.sweat = MassFlow::grams_per_hour(2.1);
    check(
        &sample,
        "The intake tube sweats outside, 2.1~g/h; the intake tube stays dry inside in the conditions entered; doubt not computed yet.",
    );
}

#[test]
fn frost_is_named_with_its_place() {
    let sample = sample::loft();
    let sentence = answered(&sample).plain_sentence();
    assert!(sentence.contains("of it as frost from"), "{sentence}");
    let parts = answered(&sample).sentence;
    assert!(
        parts.iter().any(|part| part.emphasis == Emphasis::Frost),
        "frost is set off: {parts:?}"
    );
}

#[test]
fn mist_at_the_sensor_is_wet() {
    let mut sample = dry();
    sample.outcome.verdict = Verdict::Wet;
    sample.outcome.chamber.mist = HumidityRatio::kilograms_per_kilogram(2e-5);
    check(
        &sample,
        "Mist reaches the sensor, in the conditions entered; doubt not computed yet.",
    );
}

#[test]
fn exhaust_tube_is_named_too() {
    let mut sample = wet(3.0);
    let mut exhaust = sample.outcome.intake.clone();
    exhaust.condensate = MassFlow::grams_per_hour(1.0);
    sample.outcome.exhaust = Some(exhaust);
    let sentence = answered(&sample).plain_sentence();
    assert!(
        sentence.contains("; 1.0\u{a0}g/h of water forms in the exhaust tube between"),
        "{sentence}"
    );
}

#[test]
fn what_is_not_computed_is_said() {
    for sample in [wet(3.0), dry()] {
        let all = answered(&sample).plain();
        for needed in [
            "doubt not computed yet",
            "By model.",
            "Airflow not computed.",
        ] {
            assert!(all.contains(needed), "{needed} is missing in {all}");
        }
    }
}

#[test]
fn bound_says_what_it_is() {
    let mut sample = dry();
    sample.outcome.grade = Grade::ByBound;
    let all = answered(&sample).plain();
    assert!(
        all.contains("By bound: the duct's dew point lies below"),
        "{all}"
    );
}

#[test]
fn rating_is_compared_with_the_chamber() {
    let mut sample = dry();
    sample.outcome.chamber.relative_humidity = RelativeHumidity::percent(91.0);
    sample.run.detector.humidity_rating = Some(RelativeHumidity::percent(85.0));
    let all = answered(&sample).plain();
    assert!(
        all.contains("The chamber is at 91.0\u{a0}%, the device is rated for 85.0\u{a0}%."),
        "{all}"
    );
    sample.run.detector.humidity_rating = Some(RelativeHumidity::percent(95.0));
    assert!(
        !answered(&sample).plain().contains("rated"),
        "nothing to say below the rating"
    );
}

/// 10 g/h is 0.353 oz/h (NIST SP 811, app. B.8: 1 oz = 28.349 523 g).
#[test]
fn inch_pound_changes_figures_only() {
    let sample = wet(10.0);
    let style = Style {
        units: Units::InchPound,
        ..Style::default()
    };
    let sentence = answer(&sample.run, &sample.outcome, style).plain_sentence();
    assert!(
        sentence.starts_with("0.35\u{a0}oz/h of water"),
        "{sentence}"
    );
    assert!(
        sentence.contains('\u{a0}') && sentence.contains("ft"),
        "{sentence}"
    );
}

#[test]
fn every_figure_names_its_field() {
    let parts = answered(&sample::make_up_air()).sentence;
    for part in parts {
        let has_digit = part.text.chars().any(|c| c.is_ascii_digit());
        assert_eq!(part.figure.is_some(), has_digit, "{part:?}");
    }
}
