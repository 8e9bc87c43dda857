//! The answer: one sentence, what stands beside it, and for what it still holds where an entry can't be used.

use dewrun_document::output::NoteOutput;
use dewrun_drawing::{Answer, answer, escaped, html, rests};
use leptos::prelude::*;

use super::opened_figure::opened_figure;
use super::parts::{flag, words};
use super::stale_note::stale_note;
use crate::element::{El, el, when};
use crate::hooks::scrolled::use_scrolled_past;
use crate::state::{Desk, use_desk};

/// The answer; once scrolled past, its sentence stays at the top of the window.
pub(crate) fn answer_band() -> El {
    let desk = use_desk();
    let sentence = words(move || {
        let told = told(desk).map(|answer| html::sentence(&answer));
        told.unwrap_or_else(|| "This run has no answer yet.".to_owned())
    });
    let beside = words(move || {
        let asides = told(desk).map(|answer| html::asides(&answer));
        asides.unwrap_or_default() + &notes(desk)
    });
    let once_more = words(move || {
        told(desk)
            .map(|answer| html::plain_sentence(&answer))
            .unwrap_or_default()
    });
    let rests_on = words(move || {
        let style = desk.style();
        let told = desk.answered().map(|answered| {
            let spaces = &answered.names.spaces;
            html::rests_on(&rests(&answered.run, spaces, &answered.ranked, style))
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
        .child(el("p").class("dw-answer__beside").html(beside));
    let band = el("section")
        .class("dw-answer")
        .attr("aria-label", "Answer")
        .attr("data-opens", "answer")
        .child(told)
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

fn told(desk: Desk) -> Option<Answer> {
    let answered = desk.answered()?;
    Some(answer(&answered.run, &answered.outcome, desk.style()))
}

fn notes(desk: Desk) -> String {
    let Some(answered) = desk.answered() else {
        return String::new();
    };
    let note = |note: &NoteOutput| {
        let (path, sentence) = (escaped(&note.path), escaped(&note.sentence));
        format!("<span>Note on {path}: {sentence}.</span> ")
    };
    answered.notes.iter().map(note).collect()
}
