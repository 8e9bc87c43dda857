//! The answer once more, small, at the top of the window while the band itself is out of sight.

use dewrun_drawing::answer;
use leptos::prelude::*;

use super::answer_band::{AnswerPlace, part};
use crate::hooks::scrolled::use_scrolled_past;
use crate::state::use_desk;

/// The small answer; it only repeats, so that it is kept from those who listen.
#[component]
pub(crate) fn SlimAnswer() -> impl IntoView {
    let desk = use_desk();
    let place = use_context::<AnswerPlace>()
        .map(|place| place.0)
        .unwrap_or_default();
    let past = use_scrolled_past(place);
    let sentence = move || {
        let style = desk.style();
        desk.answered().map(|answered| {
            let words = answer(&answered.run, &answered.outcome, style);
            words.sentence.iter().map(part).collect_view()
        })
    };
    view! {
        <Show when=move || past.get()>
            <p class="dw-slim-answer" class=("dw-stale", move || desk.is_stale()) aria-hidden="true">
                {sentence}
            </p>
        </Show>
    }
}
