//! A number in a field: what is typed stays as it was typed, and is taken at each key where it can be.

use dewrun_document::Origin;
use leptos::prelude::*;

use super::fault_note::fault_note;
use super::parts::{flag, words};
use crate::element::{El, el, typed as typed_in};
use crate::state::{Desk, use_desk};
use dewrun_desk::Field;

/// A number of the project in a field; `in_table` where the head of a table names it and its row says what is wrong with it.
///
/// While it has the focus its text is never rewritten; left, it shows the value that the project holds.
#[must_use]
pub fn text_field(field: Field, in_table: bool) -> El {
    let desk = use_desk();
    let typed = RwSignal::new(None::<String>);
    let held = move || desk.with(|project| field.show(project, desk.style()));
    let text = words(move || {
        let fault = desk.fault(field).map(|fault| fault.text);
        let held = || held().map(|(number, _)| number);
        fault
            .or_else(|| typed.get())
            .or_else(held)
            .unwrap_or_default()
    });
    let is_wrong = flag(move || desk.fault(field).is_some_and(|fault| !fault.is_unfinished));
    let unit = words(move || held().map_or_else(String::new, |(_, unit)| unit.to_owned()));
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
        .child(words(move || {
            desk.with(|project| field.name(project)).to_owned()
        }))
        .child(
            el("span")
                .class("dw-spoken")
                .child(rest_of_label(desk, field)),
        );
    let input = el("input")
        .attr("id", &field.id())
        .class("dw-field__input")
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .attr("size", "5")
        .live_attr("inputmode", keypad(desk, field))
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
        .child(unit);
    if in_table {
        unit = unit.attr("hidden", "");
    }
    let made = el("div")
        .live_class(class_of(desk, field, in_table, is_wrong))
        .child(label)
        .child(el("span").class("dw-field__box").child(input).child(unit));
    if in_table {
        return made;
    }
    made.child(fault_note(field))
}

/// How the field is drawn: by where it stands and where its value came from.
fn class_of(desk: Desk, field: Field, in_table: bool, is_wrong: Signal<bool>) -> Signal<String> {
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
        match desk.with(|project| field.origin(project)) {
            Some(Origin::Assumed { .. }) => format!("{place} dw-field--assumed{wrong}"),
            Some(Origin::Measured { .. }) => format!("{place} dw-field--measured{wrong}"),
            _ => format!("{place}{wrong}"),
        }
    })
}

fn keypad(desk: Desk, field: Field) -> Signal<String> {
    words(move || {
        let is_plain = desk.with(|project| field.is_plain_number(project));
        if is_plain { "decimal" } else { "text" }.to_owned()
    })
}

/// What the surroundings of a field say to those who see, spoken to the others: whose it is, its unit, its origin.
fn rest_of_label(desk: Desk, field: Field) -> Signal<String> {
    words(move || {
        desk.with(|project| {
            let full = field.full_name(project);
            let whose = full.strip_prefix(field.name(project)).unwrap_or("");
            let unit = match field.show(project, desk.style()) {
                Some((_, unit)) if !unit.is_empty() => format!(", {unit}"),
                _ => String::new(),
            };
            let origin = match field.origin(project) {
                Some(Origin::Assumed { .. }) => ", assumed",
                Some(Origin::Measured { .. }) => ", measured",
                _ => "",
            };
            format!("{whose}{unit}{origin}")
        })
    })
}
