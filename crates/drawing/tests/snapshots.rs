//! The text of whole drawings and answers, to see what a change changes; the geometry is asserted in `geometry.rs`.

mod sample;

use dewrun_drawing::{Room, View, elevation, profile, svg};
use dewrun_quantity::Style;
use dewrun_run::Tube;
use sample::Sample;

/// Both drawings, an element a line.
fn drawn(sample: &Sample, width: f64) -> String {
    let view = View {
        run: &sample.run,
        outcome: &sample.outcome,
        names: &sample.names,
        style: Style::default(),
        tube: Tube::Intake,
    };
    let elevation = elevation(&view, Room { width, text: 1.0 });
    let profile = profile(&view, &elevation.frame).map(|profile| svg(&profile.scene));
    let both = format!("{}\n{}", svg(&elevation.scene), profile.unwrap_or_default());
    both.replace("><", ">\n<")
}

#[test]
fn make_up_air_on_a_wide_page() {
    insta::assert_snapshot!(drawn(&sample::make_up_air(), 1392.0));
}

#[test]
fn make_up_air_on_a_phone() {
    insta::assert_snapshot!(drawn(&sample::make_up_air(), 328.0));
}

#[test]
fn frozen_loft_on_a_wide_page() {
    insta::assert_snapshot!(drawn(&sample::loft(), 1392.0));
}
