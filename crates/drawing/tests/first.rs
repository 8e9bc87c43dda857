//! The short answer on the empty page.

mod sample;

use dewrun_drawing::{Answer, Emphasis, html, weather_answer};
use dewrun_quantity::{DecimalMark, HumidityRatio, Length, MassFlow, Style, Units};
use dewrun_run::{Grade, Outcome, Stretch, Verdict};
use sample::Sample;

/// A bare tube of 12 m that is wet from 0.1 m on; the amounts are of our choice.
fn wet() -> Sample {
    let mut sample = sample::sample((32.0, 26.0), &[("Corridor", 20.0)], &[(0, 12.0, 0.0)]);
    sample.outcome.intake.condensate = MassFlow::grams_per_hour(12.3);
    stretch(&mut sample, 0.1, 12.0);
    sample
}

fn stretch(sample: &mut Sample, from_m: f64, to_m: f64) {
    sample.outcome.intake.wet = vec![Stretch {
        from: Length::metres(from_m),
        to: Length::metres(to_m),
    }];
}

fn dry() -> Sample {
    let mut sample = wet();
    sample.outcome.verdict = Verdict::Dry;
    sample.outcome.intake.condensate = MassFlow::grams_per_hour(0.0);
    sample.outcome.intake.wet.clear();
    sample
}

fn first_answer(outcome: &Outcome, style: Style) -> Answer {
    dewrun_drawing::first_answer(outcome, "With these values", ASSUMED, style)
}

#[track_caller]
fn check(sample: &Sample, style: Style, expected: &str) {
    let found = first_answer(&sample.outcome, style).plain();
    assert_eq!(found, expected.replace('~', "\u{a0}"), "all of it");
}

const ASSUMED: &str = "Dotted values are assumed; overwrite what you know.";

#[test]
fn wet_says_how_much_and_from_where() {
    check(
        &wet(),
        Style::default(),
        &format!(
            "With these values it is wet: 12.3~g/h, from the first 0.1~m on. {ASSUMED} By model; doubt not computed yet."
        ),
    );
    let style = Style {
        units: Units::InchPound,
        mark: DecimalMark::Comma,
    };
    // 12.3 g are 0.434 oz (NIST SP 811, app. B.8: 28.34952 g), 0.1 m are 0.328 ft.
    check(
        &wet(),
        style,
        &format!(
            "With these values it is wet: 0,43~oz/h, from the first 0,3~ft on. {ASSUMED} By model; doubt not computed yet."
        ),
    );
}

#[test]
fn wet_to_a_place_before_the_end_says_up_to_where() {
    let mut sample = wet();
    stretch(&mut sample, 0.0, 7.5);
    let plain = first_answer(&sample.outcome, Style::default()).plain_sentence();
    assert_eq!(
        plain, "With these values it is wet: 12.3\u{a0}g/h, from the duct on, up to 7.5\u{a0}m.",
        "both ends"
    );
}

#[test]
fn frost_is_called_frost() {
    let mut sample = wet();
    let amount = sample.outcome.intake.condensate;
    for leg in &mut sample.outcome.intake.legs {
        leg.frost = amount;
    }
    let answer = first_answer(&sample.outcome, Style::default());
    assert!(
        answer.plain_sentence().contains("g/h of frost, from"),
        "{answer:?}"
    );
    let is_frost = |part: &&dewrun_drawing::Part| part.emphasis == Emphasis::Frost;
    assert!(
        answer.sentence.iter().any(|part| is_frost(&part)),
        "and set off as frost"
    );
}

#[test]
fn mist_alone_is_wet_too() {
    let mut sample = wet();
    sample.outcome.intake.condensate = MassFlow::grams_per_hour(0.0);
    sample.outcome.chamber.mist = HumidityRatio::kilograms_per_kilogram(2e-5);
    let plain = first_answer(&sample.outcome, Style::default()).plain_sentence();
    assert_eq!(
        plain, "With these values it is wet: mist reaches the sensor.",
        "no amount in the tube"
    );
}

#[test]
fn dry_never_stands_alone() {
    let mut sample = dry();
    check(
        &sample,
        Style::default(),
        &format!(
            "With these values it is dry in the conditions entered; doubt not computed yet. {ASSUMED} By model."
        ),
    );
    sample.outcome.grade = Grade::ByBound;
    sample.outcome.intake.sweat = MassFlow::grams_per_hour(2.1);
    check(
        &sample,
        Style::default(),
        &format!(
            "With these values it is dry in the conditions entered; doubt not computed yet; the tube sweats outside, 2.1~g/h. {ASSUMED} By bound."
        ),
    );
}

#[test]
fn the_worst_weather_is_named_with_all_of_them() {
    let (wet, dry) = (wet(), dry());
    let mut wetter = wet.outcome.clone();
    wetter.intake.condensate = MassFlow::grams_per_hour(15.0);
    let weathers = [
        ("muggy night", &wet.outcome),
        ("foggy morning", &dry.outcome),
        ("muggy summer day", &wetter),
    ];
    assert_eq!(
        weather_answer(&weathers, Style::default()),
        "Worst of 3 weathers is the muggy summer day, 15.0\u{a0}g/h; muggy night 12.3\u{a0}g/h, foggy morning dry. In the conditions entered; doubt not computed yet.",
        "the worst first"
    );
    let weathers = [("foggy morning", &dry.outcome); 2];
    assert_eq!(
        weather_answer(&weathers, Style::default()),
        "Dry in each of 2 weathers in the conditions entered; doubt not computed yet.",
        "none is worst where all are dry"
    );
    assert_eq!(weather_answer(&[], Style::default()), "", "of none");
}

#[test]
fn a_leg_that_is_fitted_says_by_how_much_it_falls() {
    let legs = [(0, 3.0, -0.06), (0, 1.2, 1.2), (0, 2.0, 0.0)];
    let sample = sample::sample((32.0, 26.0), &[("Corridor", 20.0)], &legs);
    let head = |at, units| {
        let style = Style {
            units,
            ..Style::default()
        };
        html::leg_fitted_head(&sample.view(style), at)
    };
    for (at, fall) in [
        (0, "falls 60\u{a0}mm"),
        (1, "rises 1\u{2009}200\u{a0}mm"),
        (2, "level"),
    ] {
        let head = head(at, Units::Si);
        assert!(head.contains(&format!(">{fall}<")), "{fall}: {head}");
    }
    // 60 mm are 2.36 in (25.4 mm to the inch).
    let head = head(0, Units::InchPound);
    assert!(head.contains(">falls 2.4\u{a0}in<"), "{head}");
}
