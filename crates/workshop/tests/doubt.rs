//! How sure an answer is: found in turns, given back as numbers, told in the sentence.

use dewrun_advice::{SteadyDoubts, seed_of};
use dewrun_desk::{Answered, EXAMPLES, OpenProject, project_text, style_as_numbers};
use dewrun_document::to_installation;
use dewrun_drawing::{html, whole_answer};
use dewrun_quantity::Style;
use dewrun_run::water_and_air;
use dewrun_workshop::{Answer, Turn, Workshop};

/// An example, its text, its answer.
fn example(name: &str) -> (OpenProject, String, Answered) {
    let found = EXAMPLES.iter().find(|example| example.name == name);
    let project: OpenProject = found
        .expect("it is offered")
        .project()
        .expect("the tests read it")
        .into();
    let text = project_text(&project).expect("it can be written");
    let answered = Answered::unranked(&project).expect("it has an answer");
    (project, text, answered)
}

fn numbers(answer: Answer) -> Vec<f64> {
    match answer {
        Answer::Numbers(numbers) => numbers,
        other => panic!("numbers were asked for, not {other:?}"),
    }
}

fn text(answer: Answer) -> String {
    match answer {
        Answer::Text(text) => text,
        other => panic!("a text was asked for, not {other:?}"),
    }
}

/// What the page shows is what the command line tells: the same cases, by the same words.
#[test]
fn the_sentence_is_that_of_the_cases_asked_directly() {
    let (project, written, answered) = example("make-up-air");
    let mut workshop = Workshop::default();
    let found = numbers(workshop.ask("doubt", &written, project.run, &[]));
    let style = Style::default();
    let question = [style_as_numbers(style).to_vec(), found].concat();
    let sentence = text(workshop.ask("sentence", &written, project.run, &question));
    let mut cases = SteadyDoubts::new(
        &answered.run,
        &answered.givens,
        seed_of(&answered.names.run),
    );
    cases.take(1024);
    let doubt = cases.so_far().expect("cases have an answer");
    let (installation, _) = to_installation(&project.project, 0).expect("it is installed");
    let whole = water_and_air(&answered.run, &installation, &answered.outcome);
    let whole = whole.expect("water and air are answered");
    let told = whole_answer(&answered.run, &answered.outcome, &whole, style);
    let told = told.with_doubt(&answered.outcome, &doubt, style);
    assert_eq!(sentence, html::sentence(&told), "the sentence");
    assert!(sentence.contains("plausible cases are wet"), "{sentence}");
}

#[test]
fn without_cases_the_sentence_says_so() {
    let (project, written, _) = example("chilled-supply");
    let mut workshop = Workshop::default();
    let style = style_as_numbers(Style::default());
    let sentence = text(workshop.ask("sentence", &written, project.run, &style));
    assert!(sentence.contains("doubt not computed yet"), "{sentence}");
    // Numbers that are no doubt change nothing.
    let broken = [style.to_vec(), vec![1.0, 2.0]].concat();
    let again = text(workshop.ask("sentence", &written, project.run, &broken));
    assert_eq!(again, sentence, "as if they were not there");
}

#[test]
fn cases_are_taken_in_turns() {
    let (project, written, _) = example("make-up-air");
    let mut workshop = Workshop::default();
    let at_once = workshop.ask("doubt", &written, project.run, &[]);
    let mut turn = workshop.begin("doubt", &written, project.run, &[]);
    let mut turns = 0;
    while matches!(turn, Turn::Going(_)) {
        turns += 1;
        turn = workshop.turn().expect("it is not done yet");
    }
    assert_eq!(turn, Turn::Done(at_once), "the same in the end");
    assert!(4 < turns, "{turns} turns");
}

/// A value of how the run is installed can be what the answer rests on.
#[test]
fn what_it_rests_on_is_told_with_the_installation() {
    let (project, written, _) = example("pool-hall-exhaust");
    let style = style_as_numbers(Style::default());
    let rests = text(Workshop::default().ask("rests-on", &written, project.run, &style));
    assert!(rests.contains("Rests on"), "{rests}");
    assert!(rests.contains("loft"), "the loft ends the ice: {rests}");
}
