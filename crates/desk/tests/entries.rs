//! Fields of the installation: what is typed is taken, what can't be used is refused with a sentence and nothing is lost.

use dewrun_desk::{OpenProject, enter, entries_html, set_limits};
use dewrun_document::{Origin, read, to_installation};
use dewrun_quantity::{DecimalMark, Style, Units};

fn make_up_air() -> OpenProject {
    let text = include_str!("../../../demo/make-up-air.json");
    OpenProject {
        project: read(text).expect("a worked case is a project"),
        run: 0,
    }
}

const IP: Style = Style {
    units: Units::InchPound,
    mark: DecimalMark::Comma,
};

#[track_caller]
fn refused(name: &str, text: &str, says: &str) {
    let mut project = make_up_air();
    let before = project.clone();
    let sentence = enter(&mut project, name, text, Style::default());
    let sentence = sentence.expect_err("it is refused");
    assert!(sentence.contains(says), "`{text}` for {name}: {sentence}");
    assert!(project == before, "the project stays as it was");
}

#[test]
fn what_is_typed_is_taken() {
    let mut project = make_up_air();
    let style = Style::default();
    let mut type_in = |name: &str, text: &str, style| {
        enter(&mut project, name, text, style).expect("it is taken");
    };
    type_in("duct.static_pa", "-120", style);
    type_in("air_path.hole_count", "6", style);
    type_in("air_path.drain_interval_days", "30", style);
    type_in("air_path.fan", "0 300; 50 220; 100 0", style);
    type_in("air_path.sensor", "mass", style);
    // One inch is 25.4 mm.
    type_in("air_path.hole_diameter_mm", "0,5 in", IP);
    let (built, _) = to_installation(&project.project, 0).expect("it is installed");
    assert_eq!(built.holes.len(), 6, "six holes");
    assert!(
        (built.holes[0].diameter.to_millimetres() - 12.7).abs() < 1e-9,
        "half an inch each"
    );
    assert!(
        (built.duct.intake.static_pressure.to_pascals() + 120.0).abs() < 1e-9,
        "the duct's pressure"
    );
    assert!(
        (built.drain_interval.to_days() - 30.0).abs() < 1e-9,
        "every thirty days"
    );
    let run = project.open_run().expect("it is open");
    let path = run.air_path.as_ref().expect("it is entered");
    assert_eq!(path.fan.len(), 3, "three points");
    assert_eq!(run.duct.static_pa.origin, Origin::Typed, "typed");
}

#[test]
fn an_empty_text_brings_the_row_back() {
    let mut project = make_up_air();
    enter(&mut project, "air_path.hole_count", "6", Style::default()).expect("it is taken");
    enter(&mut project, "air_path.hole_count", " ", Style::default()).expect("so is nothing");
    let run = project.open_run().expect("it is open");
    let count = run
        .air_path
        .as_ref()
        .and_then(|path| path.hole_count.clone());
    assert_eq!(count, None, "left out");
}

#[test]
fn what_cannot_be_used_gets_its_sentence() {
    refused("duct.static_pa", "minus", "is not a number");
    refused("duct.static_pa", "", "nothing is typed");
    refused("air_path.hole_count", "0", "number of sampling holes");
    refused("air_path.fan", "300", "is no point");
    refused("air_path.fan", "0 300; x 20", "is no point");
    refused("air_path.nothing", "1", "no part of the project");
    let mut project = make_up_air();
    let crossed = set_limits(&mut project, [120.0, 80.0]).expect_err("they are crossed");
    assert!(crossed.contains("120"), "{crossed}");
}

#[test]
fn every_field_can_be_typed_into_again() {
    let mut project = make_up_air();
    enter(
        &mut project,
        "air_path.fan",
        "0 300; 100 0",
        Style::default(),
    )
    .expect("it is taken");
    set_limits(&mut project, [80.0, 115.0]).expect("they are limits");
    for style in [Style::default(), IP] {
        let html = entries_html(&project, style);
        let mut fields = 0;
        for piece in html.split("data-entry=\"").skip(1) {
            let name = piece.split('"').next().unwrap_or_default();
            let Some((_, rest)) = piece.split_once(" value=\"") else {
                continue;
            };
            // A choice holds its value in its options.
            if piece
                .find("</select>")
                .is_some_and(|end| end < piece.len() - rest.len())
            {
                continue;
            }
            let value = rest.split('"').next().unwrap_or_default();
            let mut again = project.clone();
            let taken = enter(&mut again, name, value, style);
            assert_eq!(taken, Ok(()), "{name}: `{value}` comes back");
            fields += 1;
        }
        assert!(18 < fields, "{fields} fields");
        assert!(html.contains("assumed"), "what is assumed says so");
    }
}
