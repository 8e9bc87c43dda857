//! The text of whole drawings and answers, to see what a change changes; the geometry is asserted in `geometry.rs`.

mod sample;

use dewrun_advice::{BoundaryPoint, Limit};
use dewrun_drawing::{Room, View, dew_square, elevation, profile, svg};
use dewrun_quantity::{Style, Temperature};
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

/// The dew square with a made-up boundary, an element a line.
fn square(sample: &Sample, width: f64, dew_c: f64) -> String {
    let view = View {
        run: &sample.run,
        outcome: &sample.outcome,
        names: &sample.names,
        style: Style::default(),
        tube: Tube::Intake,
    };
    let boundary = [dew_c, 45.0].map(|t_c| BoundaryPoint {
        temperature: Temperature::celsius(t_c),
        dew_point: Limit::At(Temperature::celsius(dew_c)),
    });
    let drawn = dew_square(&view, &boundary, &[], Room { width, text: 1.0 });
    svg(&drawn.scene).replace("><", ">\n<")
}

#[test]
fn dew_square_of_make_up_air_on_a_wide_page() {
    insta::assert_snapshot!(square(&sample::make_up_air(), 700.0, 20.0));
}

#[test]
fn dew_square_of_a_frozen_loft_on_a_phone() {
    insta::assert_snapshot!(square(&sample::loft(), 328.0, -6.0));
}
