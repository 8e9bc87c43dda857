//! Labels of an elevation on random routes: none over another, none outside, and none missing that matters.

mod sample;

use dewrun_drawing::{Elevation, Label, LabelKind, Rect, Room, View, elevation};
use dewrun_quantity::Style;
use dewrun_run::Tube;
use proptest::prelude::{Strategy, prop_assert, proptest};
use sample::{Sample, SampleLeg};

const WIDTHS: [f64; 3] = [328.0, 768.0, 1392.0];
/// More than this counts as wet, g/h.
const WET_G_H: f64 = 0.01;

fn draw(sample: &Sample, width: f64) -> Elevation {
    let view = View {
        run: &sample.run,
        outcome: &sample.outcome,
        names: &sample.names,
        style: Style::default(),
        tube: Tube::Intake,
    };
    elevation(&view, Room { width, text: 1.0 })
}

/// Legs that run level, fall, rise, drop and climb through up to four spaces.
fn routes() -> impl Strategy<Value = Sample> {
    let leg = (0_usize..4, 0.2..8.0_f64, -1.0..1.0_f64, 0.0..1.0_f64);
    let legs = proptest::collection::vec(leg, 1..=20);
    let spaces = proptest::collection::vec(-10.0..35.0_f64, 4);
    (legs, spaces, 10.0..35.0_f64, 0.0..12.0_f64).prop_map(|(legs, spaces, air, below)| {
        let names = [
            "Plant room",
            "Service corridor",
            "Ceiling void, north wing",
            "Lobby",
        ];
        let spaces: Vec<_> = names.into_iter().zip(spaces).collect();
        let legs: Vec<SampleLeg> = legs.iter().map(|leg| course(*leg)).collect();
        sample::sample((air, air - below), &spaces, &legs)
    })
}

/// One leg in five is steep, the others fall or rise by up to 1:10.
fn course((space, length, slope, kind): (usize, f64, f64, f64)) -> SampleLeg {
    let steep = if slope < 0.0 { -1.0 } else { 1.0 };
    let share = if kind < 0.2 { steep } else { slope * 0.1 };
    (space, length, length * share)
}

fn overlapping(labels: &[Label]) -> Option<(&Label, &Label)> {
    labels.iter().enumerate().find_map(|(place, label)| {
        let others = labels.iter().skip(place + 1);
        others
            .filter(|other| label.rect.overlaps(&other.rect))
            .map(|other| (label, other))
            .next()
    })
}

fn outside<'a>(labels: &'a [Label], bounds: &Rect) -> Option<&'a Label> {
    labels.iter().find(|label| !bounds.holds(&label.rect))
}

fn has(labels: &[Label], kind: LabelKind) -> bool {
    labels.iter().any(|label| label.kind == kind)
}

proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(300))]

    #[test]
    fn labels_keep_apart_and_inside(sample in routes()) {
        for width in WIDTHS {
            let drawn = draw(&sample, width);
            let bounds = drawn.scene.bounds();
            prop_assert!(overlapping(&drawn.labels).is_none(), "at {width} px two overlap: {:?}", overlapping(&drawn.labels));
            prop_assert!(outside(&drawn.labels, &bounds).is_none(), "at {width} px one leaves {bounds:?}: {:?}", outside(&drawn.labels, &bounds));
            for leg in 0..sample.run.intake.len() {
                prop_assert!(has(&drawn.labels, LabelKind::Leg(leg)), "at {width} px leg {leg} has lost its number");
            }
        }
    }
}

/// At 800 px with 8 legs no leg loses number, fall or water figure.
#[track_caller]
fn check_eight_legs(sample: &Sample) {
    let drawn = draw(sample, 800.0);
    for (place, leg) in sample.outcome.intake.legs.iter().enumerate() {
        let number = drawn
            .labels
            .iter()
            .find(|label| label.kind == LabelKind::Leg(place));
        let number = number.map(|label| label.form);
        // The last form is the bare number.
        let forms = if sample.run.intake[place].is_steep() {
            2
        } else {
            3
        };
        assert!(
            number.is_some_and(|form| form + 1 < forms),
            "leg {place} shows number and fall, form {number:?}"
        );
        let is_wet = WET_G_H < leg.condensate.to_grams_per_hour();
        assert_eq!(
            has(&drawn.labels, LabelKind::LegWater(place)),
            is_wet,
            "leg {place} shows its water where it is wet"
        );
    }
}

#[test]
fn eight_legs_keep_their_figures() {
    check_eight_legs(&sample::many(8));
}

#[test]
fn eight_legs_in_one_cold_space_keep_their_figures() {
    let legs: Vec<SampleLeg> = (0..8)
        .map(|place| (0, 1.5, if place % 2 == 0 { -0.03 } else { 0.02 }))
        .collect();
    check_eight_legs(&sample::sample(
        (30.0, 28.0),
        &[("Ceiling void", 12.0)],
        &legs,
    ));
}

#[test]
fn label_rectangles_are_not_empty() {
    let drawn = draw(&sample::make_up_air(), 1392.0);
    for label in &drawn.labels {
        let Rect { width, height, .. } = label.rect;
        assert!(5.0 < width && 5.0 < height, "{label:?} covers something");
    }
}
