//! The answer: one sentence, what stands beside it, and for what it still holds where an entry can't be used.

use dewrun_document::output::NoteOutput;
use dewrun_drawing::{Answer, answer, escaped, html, rests};
use leptos::html::Section;
use leptos::prelude::*;

use super::opened_figure::OpenedFigure;
use super::parts::{When, flag, words};
use super::stale_note::StaleNote;
use crate::hooks::scrolled::use_scrolled_past;
use crate::state::{Desk, use_desk};

/// The answer; once scrolled past, its sentence stays at the top of the window.
#[component]
pub(crate) fn AnswerBand() -> impl IntoView {
    let desk = use_desk();
    let place = NodeRef::<Section>::new();
    let past = use_scrolled_past(place);
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
    view! {
        <section class="dw-answer" aria-label="Answer" data-opens="answer" node_ref=place>
            <div class="dw-answer__words" class=("dw-stale", is_stale)>
                <p class="dw-answer__sentence" role="status" inner_html=sentence />
                <div class="dw-answer__rests" inner_html=rests_on />
                <p class="dw-answer__beside" inner_html=beside />
            </div>
            <StaleNote />
            <OpenedFigure section="answer" />
        </section>
        // It only repeats, so that it is kept from those who listen.
        <When holds=flag(move || past.get())>
            <p class="dw-answer-slim" class=("dw-stale", is_stale) aria-hidden="true" inner_html=once_more />
        </When>
    }
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
