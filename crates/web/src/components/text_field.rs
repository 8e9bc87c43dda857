//! A number in a field: what is typed stays as it was typed, and is taken at each key where it can be.

use leptos::prelude::*;

use super::fault_note::fault_note;
use super::parts::{flag, words};
use crate::element::{El, el, typed as typed_in};
use crate::state::use_desk;
use dewrun_desk::{Field, FieldShown};

/// A number of the project in a field; `in_table` where the head of a table names it and its row says what is wrong with it.
///
/// While it has the focus its text is never rewritten; left, it shows the value that the project holds.
#[must_use]
pub fn text_field(field: Field, in_table: bool) -> El {
    let desk = use_desk();
    let typed = RwSignal::new(None::<String>);
    // Most of a page's numbers stay as they are when one changes.
    let shown = Memo::new(move |_| desk.with(|project| field.shown(project, desk.style())));
    let of = move |part: fn(&FieldShown) -> &str| {
        words(move || shown.with(|shown| part(shown).to_owned()))
    };
    let text = words(move || {
        let fault = desk.fault(field).map(|fault| fault.text);
        fault
            .or_else(|| typed.get())
            .unwrap_or_else(|| shown.with(|shown| shown.number.clone()))
    });
    let is_wrong = flag(move || desk.fault(field).is_some_and(|fault| !fault.is_unfinished));
    let described = Signal::derive(move || is_wrong.get().then(|| field.note_id()));
    let invalid = Signal::derive(move || is_wrong.get().then(|| "true".to_owned()));
    let label_class = if in_table {
        "dw-spoken"
    } else {
        "dw-field__label"
    };
    let label = el("label")
        .attr("for", &field.id())
        .class(label_class)
        .child(of(|shown| shown.name))
        .child(el("span").class("dw-spoken").child(of(|shown| &shown.rest)));
    let input = el("input")
        .attr("id", &field.id())
        .class("dw-field__input")
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .attr("size", "5")
        .live_attr("inputmode", of(|shown| shown.keypad))
        .maybe_attr("aria-invalid", invalid)
        .maybe_attr("aria-describedby", described)
        .value(text)
        .on("focus", move |_| typed.set(Some(text.get_untracked())))
        .on("input", move |event| {
            let now = typed_in(&event);
            typed.set(Some(now.clone()));
            desk.type_into(field, &now);
        })
        .on("blur", move |_| {
            typed.set(None);
            desk.leave(field);
        });
    let mut unit = el("span")
        .class("dw-field__unit")
        .attr("aria-hidden", "true")
        .child(of(|shown| shown.unit));
    if in_table {
        unit = unit.attr("hidden", "");
    }
    let made = el("div")
        .live_class(class_of(of(|shown| shown.origin), in_table, is_wrong))
        .child(label)
        .child(el("span").class("dw-field__box").child(input).child(unit));
    if in_table {
        return made;
    }
    made.child(fault_note(field))
}

/// How the field is drawn: by where it stands and where its value came from.
fn class_of(origin: Signal<String>, in_table: bool, is_wrong: Signal<bool>) -> Signal<String> {
    words(move || {
        let wrong = if is_wrong.get() {
            " dw-field--wrong"
        } else {
            ""
        };
        let place = if in_table {
            "dw-field dw-field--in-table"
        } else {
            "dw-field"
        };
        format!("{place} {}{wrong}", origin.get())
    })
}
