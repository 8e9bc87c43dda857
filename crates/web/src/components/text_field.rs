//! A number in a field: what is typed stays as it was typed, and is taken at each key where it can be.

use dewrun_document::Origin;
use leptos::prelude::*;

use super::fault_note::FaultNote;
use crate::state::{Field, use_desk};

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
    let held = Memo::new(move |_| desk.with(|project| field.show(project, desk.style())));
    let text = Memo::new(move |_| {
        let fault = desk.fault(field).map(|fault| fault.text);
        let held = || held.get().map(|(number, _)| number);
        fault
            .or_else(|| typed.get())
            .or_else(held)
            .unwrap_or_default()
    });
    let is_wrong = move || desk.fault(field).is_some_and(|fault| !fault.is_unfinished);
    let unit = move || held.get().map_or("", |(_, unit)| unit);
    let origin = move || {
        desk.with(|project| field.origin(project))
            .unwrap_or(Origin::Typed)
    };
    let is_assumed = move || matches!(origin(), Origin::Assumed { .. });
    let keypad = move || {
        let is_plain = desk.with(|project| field.is_plain_number(project));
        if is_plain { "decimal" } else { "text" }
    };
    view! {
        <div
            class="dw-field"
            class=("dw-field--in-table", in_table)
            class=("dw-field--wrong", is_wrong)
            class=("dw-field--assumed", is_assumed)
            class=("dw-field--measured", move || matches!(origin(), Origin::Measured { .. }))
        >
            {label(field, in_table)}
            <span class="dw-field__box">
                <input
                    id=field.id()
                    class="dw-field__input"
                    type="text"
                    inputmode=keypad
                    autocomplete="off"
                    spellcheck="false"
                    size="5"
                    prop:value=move || text.get()
                    aria-invalid=move || is_wrong().then_some("true")
                    aria-describedby=move || is_wrong().then(|| field.note_id())
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
                <Show when=move || !in_table && !unit().is_empty()>
                    <span class="dw-field__unit" aria-hidden="true">{unit}</span>
                </Show>
            </span>
            <Show when=move || !in_table>
                <FaultNote field=field />
            </Show>
        </div>
    }
}

/// The field's name; what the surroundings say to those who see is spoken to the others.
fn label(field: Field, in_table: bool) -> impl IntoView {
    let desk = use_desk();
    let name = move || desk.with(|project| field.name(project));
    let rest = move || {
        let full = desk.with(|project| field.full_name(project));
        let unit = desk
            .with(|project| field.show(project, desk.style()))
            .map_or("", |(_, unit)| unit);
        let whose = full.strip_prefix(name()).unwrap_or("").to_owned();
        let origin = desk.with(|project| field.origin(project));
        let origin = match origin {
            Some(Origin::Assumed { .. }) => ", assumed",
            Some(Origin::Measured { .. }) => ", measured",
            _ => "",
        };
        match unit {
            "" => format!("{whose}{origin}"),
            _ => format!("{whose}, {unit}{origin}"),
        }
    };
    view! {
        <label for=field.id() class="dw-field__label" class=("dw-spoken", in_table)>
            {name}
            <span class="dw-spoken">{rest}</span>
        </label>
    }
}
