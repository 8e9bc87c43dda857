//! Where things lie: to scale, joints over the axis, water between its bounds.

mod sample;

use dewrun_drawing::{Elevation, Room, View, elevation, profile};
use dewrun_quantity::Style;
use dewrun_run::Tube;
use sample::Sample;

fn view(sample: &Sample) -> View<'_> {
    sample.view(Style::default())
}

fn draw(sample: &Sample, width: f64) -> Elevation {
    elevation(&view(sample), Room { width, text: 1.0 })
}

#[track_caller]
fn near(found: f64, expected: f64, what: &str) {
    assert!(
        (found - expected).abs() < 0.05,
        "{what}: {found}, expected {expected}"
    );
}

#[test]
fn level_lengths_are_to_the_scale_of_the_axis() {
    let sample = sample::make_up_air();
    let drawn = draw(&sample, 1392.0);
    let scale = drawn.frame.px_per_m;
    for (place, leg) in sample.run.intake.iter().take(4).enumerate() {
        let (length, rise) = (leg.length.to_metres(), leg.rise.to_metres());
        let across = (length * length - rise * rise).sqrt();
        let found = drawn.bends[place + 1].x - drawn.bends[place].x;
        near(found, across * scale, "horizontal length of a leg");
    }
}

#[test]
fn falls_share_one_factor_and_drops_are_true() {
    let sample = sample::make_up_air();
    let drawn = draw(&sample, 1392.0);
    assert_eq!(
        (drawn.heights_factor, drawn.falls_factor),
        (1.0, 6.0),
        "there is room for both"
    );
    for (place, leg) in sample.run.intake.iter().enumerate() {
        let factor = if leg.is_steep() { 1.0 } else { 6.0 };
        let found = drawn.bends[place + 1].y - drawn.bends[place].y;
        near(
            found,
            -leg.rise.to_metres() * factor * drawn.frame.px_per_m,
            "fall of a leg",
        );
    }
}

#[test]
fn tall_route_is_drawn_lower_and_says_so() {
    let sample = sample::sample(
        (30.0, 20.0),
        &[("Shaft", 15.0)],
        &[(0, 1.0, 0.0), (0, 30.0, -30.0)],
    );
    for width in [328.0, 800.0, 1392.0] {
        let drawn = draw(&sample, width);
        assert!(
            drawn.scene.height < 800.0,
            "{} px is no drawing to scroll through",
            drawn.scene.height
        );
        let factor = format!("heights {}\u{d7}", drawn.heights_factor);
        assert!(
            drawn.scale_note.contains(&factor),
            "{} names {factor}",
            drawn.scale_note
        );
    }
}

#[test]
fn elevation_and_profile_fit_their_width() {
    for width in [288.0, 328.0, 800.0, 1392.0, 2512.0] {
        for sample in [sample::make_up_air(), sample::loft(), sample::many(20)] {
            let drawn = draw(&sample, width);
            assert!(
                drawn
                    .bends
                    .iter()
                    .all(|bend| 0.0 < bend.x && bend.x < width),
                "the tube stays within {width} px"
            );
            assert!(drawn.frame.end() <= width, "so does the axis");
            let plotted = profile(&view(&sample), &drawn.frame).map(|profile| profile.plot);
            assert_eq!(
                plotted.map(|plot| plot.x),
                Some(drawn.frame.origin),
                "the axis begins under the inlet"
            );
        }
    }
}

#[test]
fn inlet_lies_over_the_start_of_the_axis() {
    for sample in [sample::make_up_air(), sample::loft(), sample::many(7)] {
        for width in [328.0, 800.0, 1392.0] {
            let drawn = draw(&sample, width);
            near(drawn.bends[0].x, drawn.frame.origin, "inlet");
        }
    }
}

#[test]
fn slab_parts_the_loft_from_the_rooms_below() {
    let sample = sample::loft();
    let drawn = draw(&sample, 1392.0);
    let ground = drawn.scene.items.iter().filter(|item| {
        matches!(
            item,
            dewrun_drawing::Item::Path {
                class: "dw-g-raise",
                ..
            }
        )
    });
    assert_eq!(ground.count(), 1, "one space lies a floor higher");
    let words = format!("{:?}", drawn.scene.items);
    for name in ["Pool plant room", "Loft", "Lobby"] {
        assert!(words.contains(name), "{name} is named");
    }
}

#[test]
fn exhaust_tube_is_drawn_from_the_detector() {
    let mut sample = sample::make_up_air();
    sample.outcome.exhaust = Some(sample.outcome.intake.clone());
    sample.run.exhaust = sample.run.intake.clone();
    let view = View {
        tube: Tube::Exhaust,
        ..view(&sample)
    };
    let drawn = elevation(
        &view,
        Room {
            width: 1392.0,
            text: 1.0,
        },
    );
    assert!(
        drawn.scene.description.contains("from the detector"),
        "{}",
        drawn.scene.description
    );
    assert!(
        drawn.scene.title.contains("exhaust tube"),
        "{}",
        drawn.scene.title
    );
}

#[test]
fn odd_routes_are_drawn_without_a_number_that_is_none() {
    let odd = [
        sample::sample((20.0, 10.0), &[("A", 20.0)], &[(0, 0.001, 0.0)]),
        sample::sample(
            (20.0, 10.0),
            &[("A", 20.0)],
            &[(0, 5.0, 5.0), (0, 5.0, -5.0)],
        ),
        sample::sample((20.0, 10.0), &[("A", 20.0)], &[(0, 900.0, -900.0)]),
        sample::sample(
            (20.0, 20.0),
            &[("A", 20.0), ("B", -60.0)],
            &[(0, 1.0, 1.0), (1, 1.0, -1.0), (0, 1.0, 1.0)],
        ),
    ];
    for sample in &odd {
        for width in [0.0, 40.0, 328.0, 1392.0] {
            let drawn = draw(sample, width);
            let finite = drawn
                .bends
                .iter()
                .all(|bend| bend.x.is_finite() && bend.y.is_finite());
            assert!(
                finite && drawn.scene.height.is_finite(),
                "at {width} px {:?}",
                drawn.bends
            );
            let plotted = profile(&view(sample), &drawn.frame).map(|profile| profile.scene.height);
            assert!(
                plotted.is_some_and(f64::is_finite),
                "the profile is {plotted:?} px high"
            );
        }
    }
}
