//! The answer: one sentence, what stands beside it, and for what it still holds where an entry can't be used.

use dewrun_drawing::{Emphasis, Part, answer};
use leptos::html::Section;
use leptos::prelude::*;

use super::stale_note::StaleNote;
use crate::state::use_desk;

/// The place of the answer, for those who want to know whether it is in sight.
#[derive(Clone, Copy)]
pub(crate) struct AnswerPlace(pub(crate) NodeRef<Section>);

/// The answer.
#[component]
pub(crate) fn AnswerBand() -> impl IntoView {
    let desk = use_desk();
    let place = NodeRef::<Section>::new();
    provide_context(AnswerPlace(place));
    let words = Memo::new(move |_| {
        let style = desk.style();
        desk.answered()
            .map(|answered| answer(&answered.run, &answered.outcome, style))
    });
    let sentence = move || match words.get() {
        Some(words) => words.sentence.iter().map(part).collect_view().into_any(),
        None => "This run has no answer yet.".into_any(),
    };
    let asides = move || {
        let words = words.get().map(|words| words.asides).unwrap_or_default();
        let aside = |parts: &Vec<Part>| {
            view! { <span class="dw-answer__aside">{parts.iter().map(part).collect_view()}" "</span> }
        };
        words.iter().map(aside).collect_view()
    };
    let notes = move || {
        let notes = desk.answered().map(|answered| answered.notes.clone());
        let note = |note: dewrun_document::output::NoteOutput| {
            view! { <p class="dw-answer__note">"Note on "{note.path}": "{note.sentence}"."</p> }
        };
        notes
            .unwrap_or_default()
            .into_iter()
            .map(note)
            .collect_view()
    };
    view! {
        <section class="dw-answer" aria-label="Answer" node_ref=place>
            <div class="dw-answer__words" class=("dw-stale", move || desk.is_stale())>
                <p class="dw-answer__sentence" role="status">{sentence}</p>
                <p class="dw-answer__asides">{asides}</p>
                {notes}
            </div>
            <StaleNote />
        </section>
    }
}

/// A piece of the sentence, set off as it deserves.
pub(crate) fn part(part: &Part) -> impl IntoView + use<> {
    let class = match part.emphasis {
        Emphasis::None => return part.text.clone().into_any(),
        Emphasis::Strong => "dw-figure",
        Emphasis::Water => "dw-figure dw-figure--water",
        Emphasis::Frost => "dw-figure dw-figure--frost",
        Emphasis::Mist => "dw-figure dw-figure--mist",
        Emphasis::Sweat => "dw-figure dw-figure--sweat",
    };
    view! { <b class=class>{part.text.clone()}</b> }.into_any()
}
