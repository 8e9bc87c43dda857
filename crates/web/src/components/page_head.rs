//! The head of the page: what is open, undo and redo, the units.

use dewrun_quantity::Units;
use leptos::prelude::*;

use super::open_file::OpenFile;
use super::parts::{flag, words};
use super::toggle::{Choosable, Toggle};
use super::wordmark::Wordmark;
use crate::state::use_desk;

const UNITS: [Units; 2] = [Units::Si, Units::InchPound];
const WORDS: [Choosable; 2] = [
    Choosable {
        word: "SI",
        spoken: " units",
    },
    Choosable {
        word: "in-lb",
        spoken: " units",
    },
];

/// What the note of a worked example begins with.
const EXAMPLE: &str = "Example, not your site";

/// The head of the page.
#[component]
pub(crate) fn PageHead() -> impl IntoView {
    let desk = use_desk();
    let run = words(move || {
        desk.with(|project| project.runs.first().map(|run| run.name.clone()))
            .unwrap_or_default()
    });
    let project = words(move || desk.with(|project| project.name.clone()));
    let example = words(move || {
        let is_example = desk.with(|project| project.note.starts_with(EXAMPLE));
        if is_example { EXAMPLE } else { "" }.to_owned()
    });
    let chosen = Signal::derive(move || usize::from(desk.style().units == Units::InchPound));
    let act = |word: &'static str, is_idle: Signal<bool>, act: Callback<()>| {
        view! {
            <button type="button" class="dw-act" prop:disabled=is_idle on:click=move |_| act.run(())>
                {word}
            </button>
        }
    };
    view! {
        <header class="dw-head">
            <Wordmark />
            <span class="dw-head__sign">"Dewrun"</span>
            <h1 class="dw-head__open">
                <span class="dw-head__project">{project}" / "</span>
                <b>{run}</b>
                <span class="dw-head__example">{example}</span>
            </h1>
            <div class="dw-head__acts">
                <OpenFile />
                {act("Undo", flag(move || !desk.can_undo()), Callback::new(move |()| desk.undo()))}
                {act("Redo", flag(move || !desk.can_redo()), Callback::new(move |()| desk.redo()))}
                <Toggle
                    label="Units"
                    name=""
                    kind="dw-toggle--box"
                    options=&WORDS
                    chosen=chosen
                    choose=Callback::new(move |at: usize| desk.set_units(UNITS[at]))
                />
            </div>
        </header>
    }
}
