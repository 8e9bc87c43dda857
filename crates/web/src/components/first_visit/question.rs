//! A question whose answers are words to tap, each large enough for a glove.

use leptos::prelude::*;

use crate::components::parts::{button, words};
use crate::element::{El, el};
use crate::state::use_desk;
use dewrun_desk::Question;

/// The question, what is spoken after it, and its answers.
pub(super) fn question(question: Question, whose: &str) -> El {
    let desk = use_desk();
    let chosen = Memo::new(move |_| desk.with(|project| question.chosen(project)));
    let name = question.name();
    let answer = move |place: usize| {
        desk.change(name, |project| {
            // A leg that is gone takes no answer.
            let _ = question.answer(project, place);
        });
        if question == Question::NextLeg {
            // The leg laid last is the one that is asked about.
            desk.unselect();
        }
    };
    let mut answers = el("div").class("dw-question__answers");
    for (place, word) in question.words().iter().enumerate() {
        let is_chosen = words(move || (chosen.get() >> place & 1 == 1).to_string());
        let tile = button("dw-question__answer", move || answer(place))
            .live_attr("aria-pressed", is_chosen)
            .child(*word);
        answers = answers.child(tile);
    }
    el("div")
        .class("dw-question")
        .attr("role", "group")
        .attr("aria-label", &format!("{name}{whose}"))
        .child(
            el("p")
                .class("dw-question__name")
                .attr("aria-hidden", "true")
                .child(name),
        )
        .child(answers)
}
