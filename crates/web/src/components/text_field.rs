//! A number in a field: what is typed stays as it was typed, and is taken at each key where it can be.

use dewrun_document::Origin;
use leptos::prelude::*;

use super::fault_note::FaultNote;
use super::parts::{When, flag, words};
use crate::state::{Desk, Field, use_desk};

/// A number of the project in a field.
///
/// While it has the focus its text is never rewritten; left, it shows the value that the project holds.
#[component]
#[must_use]
pub fn TextField(
    /// The number.
    field: Field,
    /// Stands in a table whose head names it and whose row says what is wrong with it.
    #[prop(optional)]
    in_table: bool,
) -> impl IntoView {
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
    view! {
        <div class=class_of(desk, field, in_table) class=("dw-field--wrong", is_wrong)>
            <label for=field.id() class=if in_table { "dw-spoken" } else { "dw-field__label" }>
                {words(move || desk.with(|project| field.name(project)).to_owned())}
                <span class="dw-spoken">{rest_of_label(desk, field)}</span>
            </label>
            <span class="dw-field__box">
                <input
                    id=field.id()
                    class="dw-field__input"
                    type="text"
                    inputmode=keypad(desk, field)
                    autocomplete="off"
                    spellcheck="false"
                    size="5"
                    prop:value=text
                    aria-invalid=Signal::derive(move || is_wrong.get().then(|| "true".to_owned()))
                    aria-describedby=described
                    on:focus=move |_| typed.set(Some(text.get_untracked()))
                    on:input=move |event| {
                        let now = event_target_value(&event);
                        typed.set(Some(now.clone()));
                        desk.type_into(field, &now);
                    }
                    on:blur=move |_| {
                        typed.set(None);
                        desk.leave(field);
                    }
                />
                <span class="dw-field__unit" aria-hidden="true" hidden=in_table>{unit}</span>
            </span>
            <When holds=flag(move || !in_table)>
                <FaultNote field=field />
            </When>
        </div>
    }
}

/// How the field is drawn: by where it stands and where its value came from.
fn class_of(desk: Desk, field: Field, in_table: bool) -> Signal<String> {
    words(move || {
        let place = if in_table {
            "dw-field dw-field--in-table"
        } else {
            "dw-field"
        };
        match desk.with(|project| field.origin(project)) {
            Some(Origin::Assumed { .. }) => format!("{place} dw-field--assumed"),
            Some(Origin::Measured { .. }) => format!("{place} dw-field--measured"),
            _ => place.to_owned(),
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
