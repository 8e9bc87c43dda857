//! The answer: one sentence, what stands beside it, and for what it still holds where an entry can't be used.

use dewrun_drawing::{Answer, answer, html};
use leptos::prelude::*;

use super::opened_figure::opened_figure;
use super::parts::{flag, words};
use super::remedies::remedies;
use super::stale_note::stale_note;
use crate::element::{El, el, when};
use crate::hooks::scrolled::use_scrolled_past;
use crate::hooks::workshop::use_workshop;
use crate::state::{Desk, use_desk};
use dewrun_desk::{Answered, Work, notes_html, style_as_numbers};

/// The answer; once scrolled past, its sentence stays at the top of the window.
pub(crate) fn answer_band() -> El {
    let desk = use_desk();
    let sentence = words(move || {
        told(desk, Work::Sentence, |_, answer| html::sentence(answer))
            .unwrap_or_else(|| "This run has no answer yet.".to_owned())
    });
    let beside = words(move || {
        let steady = |answered: &Answered, answer: &Answer| {
            html::asides(answer) + &notes_html(&answered.notes)
        };
        told(desk, Work::Beside, steady).unwrap_or_default()
    });
    let more = words(move || told(desk, Work::More, |_, _| String::new()).unwrap_or_default());
    let once_more = words(move || {
        let steady = |_: &Answered, answer: &Answer| html::plain_sentence(answer);
        told(desk, Work::PlainSentence, steady).unwrap_or_default()
    });
    // While a hand is on the project it is not ranked anew.
    let settled = desk.settled();
    let rests_on = words(move || {
        let told = settled.get().and_then(|answered| {
            let style = style_as_numbers(desk.style());
            use_workshop().text(Work::RestsOn.name(), &answered, &style)
        });
        told.unwrap_or_default()
    });
    let is_stale = flag(move || desk.is_stale());
    let told = el("div")
        .class("dw-answer__words")
        .class_if("dw-stale", is_stale)
        .child(
            el("p")
                .class("dw-answer__sentence")
                .attr("role", "status")
                .html(sentence),
        )
        .child(el("div").class("dw-answer__rests").html(rests_on))
        .child(el("p").class("dw-answer__beside").html(beside))
        .child(
            el("details")
                .class("dw-answer__more dw-rests")
                .flag("hidden", flag(move || more.with(String::is_empty)))
                .html(more),
        );
    let band = el("section")
        .class("dw-answer")
        .attr("aria-label", "Answer")
        .attr("data-opens", "answer")
        .child(told)
        .child(remedies())
        .child(stale_note())
        .child(opened_figure("answer"));
    let past = use_scrolled_past(&band);
    // It only repeats, so that it is kept from those who listen.
    let slim = when(flag(move || past.get()), move || {
        vec![
            el("p")
                .class("dw-answer-slim")
                .class_if("dw-stale", is_stale)
                .attr("aria-hidden", "true")
                .html(once_more),
        ]
    });
    el("div").child(band).child(slim)
}

/// The answer with water and air; the steady one until the module that tells them stands.
fn told(desk: Desk, whole: Work, steady: fn(&Answered, &Answer) -> String) -> Option<String> {
    let answered = desk.answered()?;
    let style = desk.style();
    let told = use_workshop().text(whole.name(), &answered, &style_as_numbers(style));
    Some(told.unwrap_or_else(|| {
        let answer = answer(&answered.run, &answered.outcome, style);
        steady(&answered, &answer)
    }))
}
