//! Saving the open project as a file.

use leptos::prelude::*;

use crate::hooks::save::save;
use crate::state::use_desk;

/// The way to save the project.
#[component]
pub(super) fn SaveFile() -> impl IntoView {
    let desk = use_desk();
    let take = move |_| {
        if let Some(text) = desk.file_text()
            && save(&desk.file_name(), &text).is_err()
        {
            desk.refuse_to_save("The browser would not take the file.".to_owned());
        }
    };
    view! {
        <button type="button" class="dw-act" on:click=take>
            "Save"
            <span class="dw-open__what">" file"</span>
        </button>
    }
}
