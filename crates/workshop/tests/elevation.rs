//! The elevation drawn by one module and met by a hand in the other is one drawing.

use dewrun_desk::{
    Answered, EXAMPLES, ElevationAsked, OpenProject, add_trap, add_variant, project_text,
};
use dewrun_document::to_installation;
use dewrun_drawing::{
    Grips, Rail, Room, Sheet, elevation_of_whole, elevation_of_whole_on_paper, elevation_undrawn,
    profile, svg,
};
use dewrun_quantity::{Length, Style};
use dewrun_run::{Tube, Whole, water_and_air};
use dewrun_workshop::{Answer, Workshop};

fn opened(project: &OpenProject) -> (String, Answered, Whole) {
    let text = project_text(project).expect("it can be written");
    let answered = Answered::unranked(project).expect("it has an answer");
    let (installation, _) = to_installation(project, project.run).expect("it is installed");
    let whole = water_and_air(&answered.run, &installation, &answered.outcome);
    (text, answered, whole.expect("water and air are answered"))
}

/// The examples, with a trap in each.
fn examples() -> Vec<OpenProject> {
    let read = EXAMPLES.iter().map(|example| {
        let mut project = example.project().expect("the tests read it").into();
        add_trap(&mut project, Tube::Intake, Length::metres(2.0));
        project
    });
    read.collect()
}

fn text(workshop: &mut Workshop, kind: &str, project: &str, run: usize, numbers: &[f64]) -> String {
    match workshop.ask(kind, project, run, numbers) {
        Answer::Text(text) => text,
        other => panic!("{kind} is a text, not {other:?}"),
    }
}

fn places(workshop: &mut Workshop, project: &str, numbers: &[f64]) -> Vec<f64> {
    match workshop.ask("elevation-places", project, 0, numbers) {
        Answer::Numbers(numbers) => numbers,
        other => panic!("places are numbers, not {other:?}"),
    }
}

/// Sheets of a wide and a narrow window and of paper, each kept by nothing.
const SHEETS: [(f64, bool); 3] = [(1180.0, false), (328.0, false), (1180.0, true)];

fn sheet((width, on_paper): (f64, bool)) -> Sheet {
    Sheet {
        room: Room { width, text: 1.0 },
        on_paper,
        held: None,
    }
}

#[test]
fn it_is_the_drawing_with_water_and_a_hand_meets_what_is_drawn() {
    let mut workshop = Workshop::default();
    for project in examples() {
        let (file, answered, whole) = opened(&project);
        for tube in [Tube::Intake, Tube::Exhaust] {
            let view = answered.view(tube, Style::default());
            if view.answer().is_none() {
                continue;
            }
            for sheet in SHEETS.map(sheet) {
                let direct = if sheet.on_paper {
                    elevation_of_whole_on_paper(&view, Some(&whole))
                } else {
                    elevation_of_whole(&view, Some(&whole), sheet.room, None)
                };
                let numbers = ElevationAsked {
                    style: view.style,
                    tube,
                    compared: None,
                    sheet,
                }
                .as_numbers();
                let about = format!("{}, {tube:?}, {sheet:?}", project.name);
                let drawn = text(&mut workshop, "elevation", &file, 0, &numbers);
                assert_eq!(drawn, svg(&direct.scene), "{about}");
                let note = text(&mut workshop, "elevation-note", &file, 0, &numbers);
                assert_eq!(note, direct.scale_note, "{about}");
                let mut met = elevation_undrawn(&view, &sheet);
                met.take_places(&places(&mut workshop, &file, &numbers));
                assert_eq!(Grips::new(&met), Grips::new(&direct), "grips of {about}");
                let profile = profile(&view, &direct.frame).expect("the tube is drawn");
                assert_eq!(
                    Rail::new(&met, &profile),
                    Rail::new(&direct, &profile),
                    "the rail of {about}"
                );
            }
        }
    }
}

#[test]
fn a_held_drawing_keeps_its_scale() {
    let mut project = examples().remove(0);
    let (_, answered, whole) = opened(&project);
    let room = sheet(SHEETS[0]).room;
    let view = answered.view(Tube::Intake, Style::default());
    let held = elevation_of_whole(&view, Some(&whole), room, None).held;
    project.project.runs[0].intake.legs[0].length_m.value += 2.0;
    let (file, longer, whole) = opened(&project);
    let view = longer.view(Tube::Intake, Style::default());
    let sheet = Sheet {
        room,
        on_paper: false,
        held: Some(held),
    };
    let numbers = ElevationAsked {
        style: view.style,
        tube: Tube::Intake,
        compared: None,
        sheet,
    }
    .as_numbers();
    let mut workshop = Workshop::default();
    let drawn = text(&mut workshop, "elevation", &file, 0, &numbers);
    let direct = elevation_of_whole(&view, Some(&whole), room, Some(&held));
    assert_eq!(drawn, svg(&direct.scene), "as it is held");
    let mut met = elevation_undrawn(&view, &sheet);
    met.take_places(&places(&mut workshop, &file, &numbers));
    assert_eq!(Grips::new(&met), Grips::new(&direct), "and met there");
}

#[test]
fn another_run_is_drawn_thin_under_it() {
    let mut project = examples().remove(0);
    add_variant(&mut project);
    let variant = project.run;
    let numbers = |compared| {
        ElevationAsked {
            style: Style::default(),
            tube: Tube::Intake,
            compared,
            sheet: sheet(SHEETS[0]),
        }
        .as_numbers()
    };
    let (file, ..) = opened(&project);
    let mut workshop = Workshop::default();
    let mut of = |kind, compared| text(&mut workshop, kind, &file, variant, &numbers(compared));
    assert!(!of("elevation", None).contains("dw-o-line"), "alone");
    assert!(
        of("elevation", Some(0)).contains("dw-o-line"),
        "with another"
    );
    assert!(
        of("elevation-note", Some(0)).contains("thin: "),
        "it is named"
    );
    let nobody = workshop.ask("elevation", &file, variant, &[0.0, 0.0]);
    assert!(matches!(nobody, Answer::Sentence(_)), "{nobody:?}");
}
