//! That the answer shown is not the one to what stands in the fields, and for what it still holds.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::fault_note::fault_sign;
use super::parts::{button, flag, words};
use crate::element::{El, el, when};
use crate::state::{Desk, use_desk};
use dewrun_desk::Field;

/// For what the answer still holds, why, and the field to mend.
type Reason = Option<(String, String, Option<Field>)>;

/// For what the answer still holds, and the way to the entry that can't be used.
pub(super) fn stale_note() -> El {
    let desk = use_desk();
    let reason = move || reason(desk);
    let field = move || reason().and_then(|(.., field)| field);
    let go = move || {
        let element = untrack(field).and_then(|field| document().get_element_by_id(&field.id()));
        if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
            // A field that has gone meanwhile can't be gone to.
            let _ = element.focus();
        }
    };
    let told = when(flag(move || reason().is_some()), move || {
        let held = words(move || reason().map(|(held, ..)| held).unwrap_or_default());
        let why = words(move || reason().map(|(_, why, _)| why).unwrap_or_default());
        let name = words(move || {
            let name = field().map(|field| desk.with(|project| field.full_name(project)));
            lower(&name.unwrap_or_default())
        });
        let words = el("p")
            .child(el("b").child(held))
            .child(why)
            .child(" ")
            .child(button("dw-link", go).child("Go to ").child(name));
        vec![fault_sign(), words]
    });
    el("div")
        .class("dw-stale-note")
        .attr("role", "status")
        .child(told)
}

fn reason(desk: Desk) -> Reason {
    if let Some(fault) = desk.faults().into_iter().next() {
        let name = lower(&fault.name);
        let held = format!(
            "Still the answer for the last {name} that could be used, {}.",
            fault.held
        );
        return Some((held, String::new(), Some(fault.field)));
    }
    let failure = desk.shown().failure?;
    let held = failure.edit.as_ref().map_or_else(
        || "Still the answer before the last change.".to_owned(),
        |edit| {
            format!(
                "Still the answer for {} {}.",
                lower(&edit.name),
                edit.before
            )
        },
    );
    let why = format!(" {}. ", failure.sentence);
    Some((held, why, failure.edit.map(|edit| edit.field)))
}

/// A name within a sentence.
fn lower(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_ascii_lowercase(), letters.as_str())
    })
}
