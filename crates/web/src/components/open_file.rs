//! Opening a project file; a file that can't be used never costs the open project.

use leptos::prelude::*;

use super::fault_note::FaultSign;
use super::parts::{When, flag, words};
use crate::hooks::file_text::read_chosen;
use crate::state::use_desk;

/// The way to open a project file.
#[component]
pub(super) fn OpenFile() -> impl IntoView {
    let desk = use_desk();
    let take = move |event| {
        read_chosen(&event, move |name, text| {
            desk.open_text(&name, text.as_deref())
        })
    };
    view! {
        <label class="dw-act dw-open">
            "Open"
            <span class="dw-open__what">" file"</span>
            <input class="dw-spoken" type="file" accept=".json,application/json" on:change=take />
        </label>
    }
}

/// Why a file was not taken in.
#[component]
pub(crate) fn RefusedFile() -> impl IntoView {
    let desk = use_desk();
    let refused = move || desk.refused_file();
    let headline = words(move || refused().map(|file| file.headline).unwrap_or_default());
    let sentence = words(move || refused().map(|file| file.sentence).unwrap_or_default());
    view! {
        <div role="alert">
            <When holds=flag(move || refused().is_some())>
                <div class="dw-refused">
                    <div>
                        <p><b>{headline}</b></p>
                        <p class="dw-refused__why"><FaultSign />{sentence}</p>
                    </div>
                    <button type="button" class="dw-button" on:click=move |_| desk.forget_refused_file()>
                        "Leave it"
                    </button>
                </div>
            </When>
        </div>
    }
}
