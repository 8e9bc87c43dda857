//! That the answer shown is not the one to what stands in the fields, and for what it still holds.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::fault_note::FaultSign;
use crate::state::{Field, use_desk};

/// For what the answer still holds, and the way to the entry that can't be used.
#[component]
pub(crate) fn StaleNote() -> impl IntoView {
    let desk = use_desk();
    let reason = Memo::new(move |_| {
        if let Some(fault) = desk.faults().into_iter().next() {
            let name = lower(&fault.name);
            let sentence = format!(
                "Still the answer for the last {name} that could be used, {}.",
                fault.held
            );
            return Some((sentence, None, Some(fault.field)));
        }
        let failure = desk.shown().failure?;
        let held = failure.edit.as_ref().map(|edit| {
            format!(
                "Still the answer for {} {}.",
                lower(&edit.name),
                edit.before
            )
        });
        let held = held.unwrap_or_else(|| "Still the answer before the last change.".to_owned());
        let field = failure.edit.map(|edit| edit.field);
        Some((held, Some(failure.sentence), field))
    });
    let note = move || {
        reason.get().map(|(held, sentence, field)| {
            view! {
                <div class="dw-stale-note">
                    <FaultSign />
                    <p>
                        <b>{held}</b>
                        {sentence.map(|sentence| view! { <span class="dw-stale-note__why">" "{sentence}"."</span> })}
                        {field.map(way_to)}
                    </p>
                </div>
            }
        })
    };
    view! { <div class="dw-stale-note-place" role="status">{note}</div> }
}

fn way_to(field: Field) -> impl IntoView {
    let desk = use_desk();
    let name = move || desk.with(|project| lower(&field.full_name(project)));
    let go = move |_| {
        let element = document().get_element_by_id(&field.id());
        if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
            // A field that has gone meanwhile can't be gone to.
            let _ = element.focus();
        }
    };
    view! {
        " "
        <button type="button" class="dw-link" on:click=go>
            "Go to "
            {name}
        </button>
    }
}

/// A name within a sentence.
fn lower(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_lowercase(), letters.as_str())
    })
}
