//! Long work, at once and in turns, against the searches asked directly.

use dewrun_advice::{StayingDry, dry_boundary, staying_dry};
use dewrun_desk::{Answered, EXAMPLES, OpenProject, boundary_of, limits_of, project_text};
use dewrun_drawing::{Room, boundary_temperatures};
use dewrun_quantity::Style;
use dewrun_run::Tube;
use dewrun_workshop::{Answer, Turn, Workshop};

const LIMITS: &str = "staying-dry";

/// The examples, each with its text and its answer.
fn examples() -> Vec<(OpenProject, String, Answered)> {
    let open = EXAMPLES.iter().map(|example| {
        let project: OpenProject = example.project().expect("the tests read it").into();
        let text = project_text(&project).expect("it can be written");
        let answered = Answered::unranked(&project).expect("examples have an answer");
        (project, text, answered)
    });
    open.collect()
}

fn limits(answered: &Answered) -> StayingDry {
    staying_dry(&answered.run, &answered.outcome).expect("limits are found")
}

fn numbers(answer: Answer) -> Vec<f64> {
    match answer {
        Answer::Numbers(numbers) => numbers,
        other => panic!("numbers were asked for, not {other:?}"),
    }
}

#[test]
fn limits_come_back_as_they_were_found() {
    let mut workshop = Workshop::default();
    for (project, text, answered) in examples() {
        let found = numbers(workshop.ask(LIMITS, &text, project.run, &[]));
        assert_eq!(
            limits_of(&found),
            Some(limits(&answered)),
            "of {}",
            project.name
        );
    }
}

#[test]
fn the_boundary_comes_back_as_it_was_found() {
    // Style, width and size of text, no boundary yet, no year.
    let asked = [0.0, 0.0, 640.0, 1.0, 0.0];
    let room = Room {
        width: 640.0,
        text: 1.0,
    };
    let mut workshop = Workshop::default();
    for (project, text, answered) in examples() {
        let view = answered.view(Tube::Intake, Style::default());
        let temperatures = boundary_temperatures(&view, &[], room);
        let direct = dry_boundary(&answered.run, &answered.outcome, &temperatures);
        let found = numbers(workshop.ask("dry-boundary", &text, project.run, &asked));
        let direct = direct.expect("a boundary is found");
        assert_eq!(boundary_of(&found), Some(direct), "of {}", project.name);
    }
}

#[test]
fn turns_come_to_what_is_answered_at_once() {
    for (project, text, _) in examples() {
        let at_once = Workshop::default().ask(LIMITS, &text, project.run, &[]);
        let mut workshop = Workshop::default();
        let mut turn = workshop.begin(LIMITS, &text, project.run, &[]);
        let mut told = Vec::new();
        while let Turn::Going(share) = turn {
            told.push(share);
            turn = workshop.turn().expect("it is not done yet");
        }
        assert_eq!(turn, Turn::Done(at_once), "of {}", project.name);
        assert!(told.is_sorted() && 2 < told.len(), "progress: {told:?}");
        assert!(
            told.iter().all(|share| (0.0..1.0).contains(share)),
            "shares: {told:?}"
        );
        assert_eq!(workshop.turn(), None, "nothing is left to do");
    }
}

#[test]
fn what_is_begun_takes_the_place_of_what_was() {
    let all = examples();
    let [(first, first_text, _), (second, second_text, answered), ..] = &all[..] else {
        panic!("there are examples");
    };
    let mut workshop = Workshop::default();
    workshop.begin(LIMITS, first_text, first.run, &[]);
    workshop.turn();
    let mut turn = workshop.begin(LIMITS, second_text, second.run, &[]);
    while let Turn::Going(_) = turn {
        turn = workshop.turn().expect("it is not done yet");
    }
    let Turn::Done(answer) = turn else {
        panic!("it is done")
    };
    assert_eq!(
        limits_of(&numbers(answer)),
        Some(limits(answered)),
        "of the second"
    );
}

#[test]
fn another_run_or_project_is_another_question() {
    let mut workshop = Workshop::default();
    let (project, text, answered) = examples().remove(0);
    let mut longer = project.clone();
    longer.project.runs[0].intake.legs[0].length_m.value += 1.0;
    let longer_text = project_text(&longer).expect("it can be written");
    let of_longer = Answered::unranked(&longer).expect("it has an answer");
    for _ in 0..2 {
        let found = numbers(workshop.ask(LIMITS, &text, 0, &[]));
        assert_eq!(limits_of(&found), Some(limits(&answered)), "as it was");
        let found = numbers(workshop.ask(LIMITS, &longer_text, 0, &[]));
        assert_eq!(
            limits_of(&found),
            Some(limits(&of_longer)),
            "a metre longer"
        );
    }
}

#[test]
fn what_can_not_be_done_is_said() {
    let mut workshop = Workshop::default();
    let (_, text, _) = examples().remove(0);
    for (kind, project, run, about) in [
        (LIMITS, "{}", 0, "that is no project"),
        (LIMITS, &*text, 99, "there is no such run"),
        ("tea", &*text, 0, "there is no such kind"),
    ] {
        let answer = workshop.ask(kind, project, run, &[]);
        let Answer::Sentence(sentence) = &answer else {
            panic!("{about}: {answer:?}");
        };
        assert!(!sentence.is_empty(), "{about}");
        let turn = workshop.begin(kind, project, run, &[]);
        assert_eq!(turn, Turn::Done(answer), "{about}");
    }
    assert_eq!(workshop.turn(), None, "and nothing was begun");
}
