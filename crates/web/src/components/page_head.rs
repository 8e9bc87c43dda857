//! The head of the page: what is open, undo and redo, the units.

use leptos::prelude::*;

use super::units_choice::UnitsChoice;
use super::wordmark::Wordmark;
use crate::state::use_desk;

/// The head of the page.
#[component]
pub(crate) fn PageHead() -> impl IntoView {
    let desk = use_desk();
    let run = move || {
        desk.with(|project| project.runs.first().map(|run| run.name.clone()))
            .unwrap_or_default()
    };
    let project = move || desk.with(|project| project.name.clone());
    view! {
        <header class="dw-head">
            <Wordmark />
            <span class="dw-head__sign">"Dewrun"</span>
            <h1 class="dw-head__open">
                <span class="dw-head__project">{project}" / "</span>
                <b>{run}</b>
            </h1>
            <div class="dw-head__acts">
                <button
                    type="button"
                    class="dw-act"
                    prop:disabled=move || !desk.can_undo()
                    on:click=move |_| desk.undo()
                >
                    "Undo"
                </button>
                <button
                    type="button"
                    class="dw-act"
                    prop:disabled=move || !desk.can_redo()
                    on:click=move |_| desk.redo()
                >
                    "Redo"
                </button>
                <UnitsChoice />
            </div>
        </header>
    }
}
