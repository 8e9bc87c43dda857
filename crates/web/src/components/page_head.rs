//! The head of the page: what it is for or what is open, undo and redo, files, the units.

use dewrun_quantity::Units;
use leptos::prelude::*;

use super::open_file::OpenFile;
use super::parts::{When, flag, words};
use super::save_file::SaveFile;
use super::toggle::{Choosable, Toggle};
use super::wordmark::Wordmark;
use crate::state::{Stage, use_desk};

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

/// What the page is for, in the head of the empty page.
const PURPOSE: &str =
    "where, when and how much water forms in the tube of a remote duct smoke detector";

/// The id of the head, which gets the focus when something else is opened.
pub(crate) const HEAD_ID: &str = "open";

/// The head of the page.
#[component]
pub(crate) fn PageHead() -> impl IntoView {
    let desk = use_desk();
    let is_first = flag(move || desk.stage() == Stage::First);
    let is_open = flag(move || !is_first.get());
    let chosen = Signal::derive(move || usize::from(desk.style().units == Units::InchPound));
    let act = move |word: &'static str, is_idle: Signal<bool>, act: Callback<()>| {
        // On the empty page what can't be done takes no room.
        let is_hidden = flag(move || is_first.get() && is_idle.get());
        view! {
            <button
                type="button"
                class="dw-act"
                prop:disabled=is_idle
                hidden=is_hidden
                on:click=move |_| act.run(())
            >
                {word}
            </button>
        }
        .into_any()
    };
    view! {
        <header class="dw-head">
            <Wordmark />
            <span class="dw-head__sign">"Dewrun"</span>
            <h1 class="dw-head__open" id=HEAD_ID tabindex="-1">
                <When holds=is_first>
                    <span class="dw-head__purpose">{PURPOSE}</span>
                </When>
                <When holds=is_open>
                    <Open />
                </When>
            </h1>
            <div class="dw-head__acts">
                {act("Undo", flag(move || !desk.can_undo()), Callback::new(move |()| desk.undo()))}
                {act("Redo", flag(move || !desk.can_redo()), Callback::new(move |()| desk.redo()))}
                <When holds=is_open>
                    <button type="button" class="dw-act" on:click=move |_| desk.go_to(Stage::First)>
                        "New"
                    </button>
                </When>
                <OpenFile />
                <When holds=is_open>
                    <SaveFile />
                </When>
                <When holds=is_first>
                    <a class="dw-act dw-act--link" href="#does-not-answer">"What it does not answer"</a>
                </When>
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
    .into_any()
}

/// What is open.
#[component]
fn Open() -> impl IntoView {
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
    view! {
        <span class="dw-head__project">{project}" / "</span>
        <b>{run}</b>
        <span class="dw-head__example">{example}</span>
    }
}
