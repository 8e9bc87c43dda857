//! What is told in words and opened, against the same told directly.

use dewrun_advice::rests_on;
use dewrun_desk::{Answered, EXAMPLES, OpenProject, project_text, style_as_numbers};
use dewrun_document::to_installation;
use dewrun_drawing::{rests, whole_answer};
use dewrun_quantity::{DecimalMark, Style, Units};
use dewrun_run::{Whole, water_and_air};
use dewrun_workshop::{Answer, Workshop};

const STYLES: [Style; 2] = [
    Style {
        units: Units::Si,
        mark: DecimalMark::Point,
    },
    Style {
        units: Units::InchPound,
        mark: DecimalMark::Comma,
    },
];

/// The examples, each with its text, its answer and its water and air.
fn examples() -> Vec<(String, Answered, Whole)> {
    let open = EXAMPLES.iter().map(|example| {
        let project: OpenProject = example.project().expect("the tests read it").into();
        let text = project_text(&project).expect("it can be written");
        let answered = Answered::unranked(&project).expect("examples have an answer");
        let (installation, _) = to_installation(&project, project.run).expect("it is installed");
        let whole = water_and_air(&answered.run, &installation, &answered.outcome);
        (text, answered, whole.expect("water and air are answered"))
    });
    open.collect()
}

fn ask(workshop: &mut Workshop, kind: &str, text: &str, style: Style) -> String {
    match workshop.ask(kind, text, 0, &style_as_numbers(style)) {
        Answer::Text(html) => html,
        other => panic!("{kind} is a text, not {other:?}"),
    }
}

/// The text without its tags.
fn plain(html: &str) -> String {
    let pieces = html.split('<').enumerate().map(|(at, piece)| match at {
        0 => piece,
        _ => piece.split_once('>').map_or("", |(_, text)| text),
    });
    pieces.collect()
}

#[test]
fn the_answer_is_told_with_water_and_air() {
    let mut workshop = Workshop::default();
    for (text, answered, whole) in examples() {
        for style in STYLES {
            let told = whole_answer(&answered.run, &answered.outcome, &whole, style);
            let sentence = ask(&mut workshop, "sentence", &text, style);
            assert_eq!(plain(&sentence), told.plain_sentence(), "the sentence");
            let once_more = ask(&mut workshop, "plain-sentence", &text, style);
            assert_eq!(plain(&once_more), told.plain_sentence(), "once more");
            assert!(!once_more.contains("data-figure"), "with nothing to open");
            let beside = plain(&ask(&mut workshop, "beside", &text, style));
            let more = plain(&ask(&mut workshop, "more", &text, style));
            for (asides, all) in [(&told.asides, beside), (&told.more, more)] {
                for aside in asides {
                    let words: String = aside.iter().map(|part| part.text.as_str()).collect();
                    assert!(all.contains(&words), "{words} in {all}");
                }
            }
        }
    }
}

#[test]
fn what_the_answer_rests_on_is_ranked() {
    let mut workshop = Workshop::default();
    for (text, answered, _) in examples() {
        for style in STYLES {
            let ranked = rests_on(&answered.run, &answered.outcome, &answered.givens);
            let told = rests(&answered.run, &answered.names.spaces, &ranked, style);
            let html = plain(&ask(&mut workshop, "rests-on", &text, style));
            let sentence: String = told
                .sentence
                .iter()
                .map(|part| part.text.as_str())
                .collect();
            assert!(html.starts_with(&sentence), "{sentence} begins {html}");
            for how in &told.how {
                assert!(html.contains(how), "{how} in {html}");
            }
        }
    }
}

#[test]
fn remarks_stand_beside_the_answer() {
    let mut workshop = Workshop::default();
    let mut told = 0;
    for (text, _, whole) in examples() {
        let more = ask(&mut workshop, "more", &text, Style::default());
        let notes = more.matches("<li>Note on runs[0]").count();
        assert_eq!(
            notes,
            whole.remarks.len() + whole.airflow.notes.len(),
            "remarks in {more}"
        );
        told += notes;
    }
    assert!(0 < told, "some example has a remark");
}

#[test]
fn what_keeps_water_and_air_from_being_answered_stands_beside_the_steady_answer() {
    let mut project: OpenProject = EXAMPLES[0].project().expect("the tests read it").into();
    let end = project.project.runs[0]
        .intake
        .legs
        .iter()
        .map(|leg| leg.length_m.value);
    let beyond = end.sum::<f64>() + 1.0;
    dewrun_desk::add_trap(
        &mut project,
        dewrun_run::Tube::Intake,
        dewrun_quantity::Length::metres(1.0),
    );
    project.project.runs[0].intake.traps[0].at_m.value = beyond;
    let text = project_text(&project).expect("it can be written");
    let mut workshop = Workshop::default();
    let beside = ask(&mut workshop, "beside", &text, Style::default());
    assert!(beside.contains("Airflow not computed."), "{beside}");
    assert!(
        beside.contains("Note on runs[0].intake.traps[0].at_m: "),
        "{beside}"
    );
    let sentence = plain(&ask(&mut workshop, "sentence", &text, Style::default()));
    assert!(!sentence.contains("may not be sampling"), "{sentence}");
    let more = ask(&mut workshop, "more", &text, Style::default());
    assert_eq!(more, "", "and nothing is known besides");
}

#[test]
fn figures_open_and_lead_back() {
    let mut workshop = Workshop::default();
    let (text, ..) = examples().remove(0);
    let style = Style::default();
    let html = ask(&mut workshop, "opened tube-water intake", &text, style);
    for needed in ["Relation", "data-figure=\"deposit\"", "data-close"] {
        assert!(html.contains(needed), "{needed} in {html}");
    }
    let html = ask(
        &mut workshop,
        "opened deposit intake.1 tube-water",
        &text,
        style,
    );
    assert!(html.contains("Back to water"), "{html}");
    for kind in ["opened", "opened tea intake", "opened deposit nowhere"] {
        let answer = workshop.ask(kind, &text, 0, &[]);
        assert!(matches!(answer, Answer::Sentence(_)), "{kind}: {answer:?}");
    }
}

/// The figures of an answer: id and spot, and the text that is pressed.
fn pressed(html: &str) -> Vec<(String, String)> {
    let buttons = html.split("data-figure=\"").skip(1);
    let read = |button: &str| {
        let (id, rest) = button.split_once("\" data-at=\"")?;
        let (spot, rest) = rest.split_once('"')?;
        let (_, rest) = rest.split_once('>')?;
        let (text, _) = rest.split_once('<')?;
        Some((format!("{id} {spot}"), text.replace('\u{a0}', " ")))
    };
    buttons.filter_map(read).collect()
}

/// A number and its unit, and by how much the number may be off for having been rounded; days as hours.
fn measured(text: &str) -> (f64, String, f64) {
    let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
    let decimals = number.split_once('.').map_or(0, |(_, after)| after.len());
    let off = 0.501 * (0..decimals).fold(1.0, |off, _| off / 10.0);
    let number: f64 = number.parse().expect("it is a number");
    match unit {
        "days" | "d" => (24.0 * number, "h".to_owned(), 24.0 * off),
        _ => (number, unit.to_owned(), off),
    }
}

/// What stands large in the panel of an opened figure is what was pressed, with its own digits.
#[test]
fn an_opened_figure_of_water_or_air_has_the_value_that_was_pressed() {
    let mut workshop = Workshop::default();
    let mut seen = Vec::new();
    for (text, ..) in examples() {
        for kind in ["sentence", "beside", "more"] {
            let html = ask(&mut workshop, kind, &text, Style::default());
            for (figure, shown) in pressed(&html) {
                let panel = ask(
                    &mut workshop,
                    &format!("opened {figure}"),
                    &text,
                    Style::default(),
                );
                let (head, _) = panel.split_once("</p>").expect("a value comes first");
                let value = plain(head).replace('\u{a0}', " ");
                let (pressed, unit, pressed_off) = measured(&shown);
                let (opened, opened_unit, opened_off) = measured(value.trim());
                assert_eq!(opened_unit, unit, "{figure}: {shown} opens to {value}");
                assert!(
                    (opened - pressed).abs() <= pressed_off.max(opened_off),
                    "{figure}: {shown} opens to {value}"
                );
                seen.push(figure.split(' ').next().unwrap_or_default().to_owned());
            }
        }
    }
    for figure in [
        "low-point",
        "time-to-seal",
        "trap-proposed",
        "time-to-ice",
        "fault-place",
        "limit-low",
    ] {
        assert!(
            seen.iter().any(|one| one == figure),
            "{figure} among {seen:?}"
        );
    }
}

#[test]
fn how_a_run_is_installed_opens_with_its_origin() {
    let mut workshop = Workshop::default();
    let (text, ..) = examples().remove(0);
    for figure in [
        "start-suction intake",
        "duct-static intake@5.2",
        "roughness intake@5.2",
    ] {
        let html = ask(
            &mut workshop,
            &format!("opened {figure}"),
            &text,
            Style::default(),
        );
        let words = plain(&html);
        assert!(!words.contains("no such input"), "{figure}: {words}");
        assert!(words.contains("How to measure it"), "{figure}: {words}");
    }
}
