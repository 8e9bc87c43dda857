//! An opened figure says how it follows from what; each input opens in turn, and what decides the answer stands out.

mod sample;

use dewrun_advice::{Assumption, Resting};
use dewrun_drawing::html::{Origins, leg_cells, opened, profile_table, sensor};
use dewrun_drawing::{Rests, View, rests};
use dewrun_quantity::{Style, Units};
use dewrun_run::figure::{Figure, Given, Origin, Spot};
use dewrun_run::{Place, Tube};
use sample::Sample;

const INTAKE: Spot = Spot::tube(Tube::Intake);

fn view(sample: &Sample) -> View<'_> {
    sample.view(Style::default())
}

fn corridor() -> Given {
    Given {
        figure: Figure::SpaceTemperature,
        place: Place::Space(1),
        value: 20.0,
        origin: Origin::Assumed {
            row: "corridor".into(),
            low: 16.0,
            high: 24.0,
        },
    }
}

fn givens() -> Vec<Given> {
    let flow = Given {
        figure: Figure::Flow,
        place: Place::Flow,
        value: 30.0,
        origin: Origin::Measured {
            on: "2026-05-12".into(),
            by: "J. Orre".into(),
        },
    };
    let bore = Given {
        figure: Figure::Bore,
        place: Place::Leg(Tube::Intake, 1),
        value: 19.0,
        origin: Origin::Typed,
    };
    vec![corridor(), flow, bore]
}

fn resting(figure: Figure, place: Place, decides: bool) -> Resting {
    Resting {
        assumed: Assumption {
            figure,
            places: vec![place],
            value: 20.0,
            row: "corridor".into(),
            low: 16.0,
            high: 24.0,
        },
        change_g_h: 3.0,
        changes_verdict: false,
        changes_blindness: false,
        decides,
    }
}

fn open(sample: &Sample, figure: Figure, spot: Spot, before: Option<Figure>) -> String {
    let givens = givens();
    let ranked = [resting(Figure::SpaceTemperature, Place::Space(1), true)];
    let origins = Origins {
        givens: &givens,
        ranked: &ranked,
        whole: None,
    };
    opened(&view(sample), origins, (figure, spot), before)
}

/// The text without its tags.
fn text(html: &str) -> String {
    let parts = html
        .split('<')
        .map(|part| part.split_once('>').map_or(part, |(_, text)| text));
    parts.collect::<Vec<_>>().join(" ").replace('\u{a0}', " ")
}

#[test]
fn water_opens_to_relation_inputs_and_source() {
    let html = open(&sample::make_up_air(), Figure::TubeWater, INTAKE, None);
    let masked = html
        .replace("><", ">\n<")
        .replace(|c: char| c.is_ascii_digit(), "#");
    insta::assert_snapshot!(masked);
}

#[test]
fn what_decides_comes_first_and_says_how_to_measure_it() {
    let html = open(&sample::make_up_air(), Figure::TubeWater, INTAKE, None);
    let first = html
        .find("<tbody")
        .and_then(|at| html.get(at..))
        .expect("it has rows");
    let row = first.split("</tr>").next().unwrap_or("");
    assert!(row.contains("dw-opened__deciding"), "{row}");
    assert!(row.contains("data-figure=\"space-temperature\""), "{row}");
    let words = text(first);
    for needed in [
        "Service corridor",
        "assumed",
        "16 to 24",
        "Decides the answer.",
        "A logger",
    ] {
        assert!(words.contains(needed), "{needed} in {words}");
    }
    assert_eq!(
        html.matches("data-figure=\"space-temperature\"").count(),
        1,
        "it stands once"
    );
}

#[test]
fn a_measured_value_says_when_and_by_whom() {
    let sample = sample::make_up_air();
    let row = text(&open(&sample, Figure::TubeWater, INTAKE, None));
    assert!(row.contains("2026-05-12, J. Orre"), "in a row: {row}");
    let alone = text(&open(&sample, Figure::Flow, INTAKE, None));
    assert!(
        alone.contains("Measured on 2026-05-12 by J. Orre."),
        "{alone}"
    );
}

#[test]
fn an_assumed_value_says_its_span_and_its_row() {
    let leg = Spot::leg(Tube::Intake, 1);
    let words = text(&open(
        &sample::make_up_air(),
        Figure::SpaceTemperature,
        leg,
        None,
    ));
    for needed in [
        "20",
        "Air in the space, Service corridor",
        "Assumed, 16 to 24 is plausible: library row \u{201c}",
        "common practice, no source",
        "How to measure it",
    ] {
        assert!(words.contains(needed), "{needed} in {words}");
    }
}

#[test]
fn every_value_of_the_table_opens() {
    let sample = sample::loft();
    for figure in Figure::ALL.iter().filter(|figure| !figure.is_given()) {
        let html = open(&sample, *figure, INTAKE, None);
        let rows = html.matches("<th scope=\"row\"").count();
        let opens = html.matches("data-figure=\"").count();
        assert_eq!(opens, rows, "{}", figure.id());
        assert!(!html.contains("style"), "the content policy refuses styles");
        for part in html.split("data-figure=\"").skip(1) {
            let id = part.split('"').next().unwrap_or("");
            assert!(Figure::from_id(id).is_some(), "{id} is known");
            let at = part
                .split("data-at=\"")
                .nth(1)
                .and_then(|at| at.split('"').next());
            assert!(at.and_then(Spot::parse).is_some(), "{at:?} is a spot");
        }
    }
}

#[test]
fn the_way_back_is_named() {
    let html = open(
        &sample::make_up_air(),
        Figure::Bore,
        Spot::leg(Tube::Intake, 1),
        Some(Figure::LegWater),
    );
    assert!(
        html.contains("data-back>Back to water formed</button>"),
        "{html}"
    );
    let html = open(
        &sample::make_up_air(),
        Figure::LegWater,
        Spot::leg(Tube::Intake, 1),
        None,
    );
    assert!(!html.contains("data-back"), "no way back from the first");
    assert!(html.contains("data-close>Close</button>"), "but out");
}

/// A space of somebody's name is text.
#[test]
fn names_that_hold_mark_up_stay_text() {
    let mut sample = sample::make_up_air();
    sample.names.spaces[1] = "<script>\"&".into();
    let html = open(&sample, Figure::TubeWater, INTAKE, None);
    assert!(!html.contains("<script"), "{html}");
    assert!(html.contains("&lt;script&gt;"), "but shown");
}

/// 20 °C is 68 °F, 16 to 24 °C is 60.8 to 75.2 °F.
#[test]
fn inch_pound_changes_value_and_range() {
    let sample = sample::make_up_air();
    let style = Style {
        units: Units::InchPound,
        ..Style::default()
    };
    let view = View {
        style,
        ..view(&sample)
    };
    let givens = givens();
    let origins = Origins {
        givens: &givens,
        ranked: &[],
        whole: None,
    };
    let leg = Spot::leg(Tube::Intake, 1);
    let words = text(&opened(
        &view,
        origins,
        (Figure::SpaceTemperature, leg),
        None,
    ));
    assert!(
        words.contains("68") && words.contains("60.8 to 75.2"),
        "{words}"
    );
}

#[test]
fn cells_heads_and_lists_open() {
    let sample = sample::loft();
    let view = view(&sample);
    let cells = leg_cells(&view, 2);
    for (cell, id) in cells.iter().zip([
        "air-at-end",
        "lowest-wall",
        "dew-point-at-end",
        "leg-water",
        "leg-frost",
        "leg-sweat",
        "leg-wet-from",
    ]) {
        assert!(
            cell.contains(&format!("data-figure=\"{id}\" data-at=\"intake.2\"")),
            "{cell}"
        );
    }
    assert_eq!(
        leg_cells(&view, 99),
        [const { String::new() }; 7],
        "no such leg"
    );
    let table = profile_table(&view);
    assert_eq!(table.matches("data-figure=").count(), 5, "each column");
    let list = sensor(&sample.run, &sample.outcome, Style::default());
    assert_eq!(
        list.matches("<dt>").count(),
        list.matches("data-figure=").count(),
        "{list}"
    );
}

fn rest(ranked: &[Resting]) -> Rests {
    let sample = sample::make_up_air();
    rests(&sample.run, &sample.names.spaces, ranked, Style::default())
}

#[track_caller]
fn check(ranked: &[Resting], expected: &str) {
    let found = rest(ranked).plain();
    assert_eq!(found, expected.replace('~', "\u{a0}"), "in words");
}

#[test]
fn the_answer_says_what_it_rests_on() {
    let corridor = resting(Figure::SpaceTemperature, Place::Space(1), true);
    let lobby = resting(Figure::SpaceRelative, Place::Space(2), true);
    let pressure = resting(Figure::Pressure, Place::Run, false);
    check(&[], "Rests on no assumed value.");
    check(
        std::slice::from_ref(&corridor),
        "Rests on 1 assumed value: Service corridor 20~°C [16 to 24].",
    );
    check(
        &[corridor.clone(), lobby, pressure.clone()],
        "Rests on 2 assumed values: Service corridor 20~°C [16 to 24]; Lobby humidity 20~% [16 to 24].",
    );
    check(
        std::slice::from_ref(&pressure),
        "The one assumed value does not decide it alone.",
    );
    check(
        &[pressure.clone(), pressure],
        "None of 2 assumed values decides it alone.",
    );
}

#[test]
fn three_are_named_and_the_rest_is_behind() {
    let ranked: Vec<Resting> = (0..3)
        .map(|at| resting(Figure::SpaceTemperature, Place::Space(at), true))
        .chain((0..2).map(|at| resting(Figure::SpaceRelative, Place::Space(at), true)))
        .collect();
    let told = rest(&ranked);
    let named = told
        .sentence
        .iter()
        .filter(|part| part.figure.is_some())
        .count();
    assert_eq!(named, 3, "{told:?}");
    assert_eq!(told.how.len(), 3, "each with how to measure it");
    let html = dewrun_drawing::html::rests_on(&told);
    assert!(html.contains("<summary>and 2 more</summary>"), "{html}");
    assert!(
        !html.contains(" of 100"),
        "no share of cases before doubt is computed"
    );
}
