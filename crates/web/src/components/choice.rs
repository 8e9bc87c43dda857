//! One of many: a space for a leg, a quantity for a humidity.

use dewrun_drawing::escaped;
use leptos::prelude::*;

use super::parts::words;

/// What can be chosen.
pub(super) type Options = Vec<ChoiceOption>;

/// One that can be chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ChoiceOption {
    /// The head over it and its neighbours; empty for none.
    pub(super) group: String,
    pub(super) value: String,
    pub(super) name: String,
}

impl ChoiceOption {
    /// One without a head over it.
    pub(super) fn new(value: String, name: String) -> Self {
        Self {
            group: String::new(),
            value,
            name,
        }
    }
}

/// A choice of one of many.
#[component]
pub(super) fn Choice(
    /// Id of the control.
    id: String,
    /// What is chosen.
    name: &'static str,
    /// Whose, spoken after the name.
    whose: Signal<String>,
    /// What can be chosen.
    options: Signal<Options>,
    /// The value that is chosen.
    chosen: Signal<String>,
    /// Chooses another.
    choose: Callback<String>,
    /// Stands in a table whose head names it.
    #[prop(optional)]
    in_table: bool,
) -> impl IntoView {
    let chosen = Memo::new(move |_| chosen.get());
    let listed = words(move || listed(&options.get(), &chosen.get()));
    let label_class = if in_table {
        "dw-spoken"
    } else {
        "dw-field__label"
    };
    view! {
        <div class="dw-choice">
            <label for=id.clone() class=label_class>
                {name}
                <span class="dw-spoken">{whose}</span>
            </label>
            <select
                id=id
                class="dw-choice__box"
                prop:value=chosen
                inner_html=listed
                on:change=move |event| choose.run(event_target_value(&event))
            />
        </div>
    }
}

/// The options as mark-up, neighbours of one group under its head.
fn listed(options: &[ChoiceOption], chosen: &str) -> String {
    let mut out = String::new();
    for group in options.chunk_by(|a, b| a.group == b.group) {
        let head = group.first().map_or("", |one| &one.group);
        if !head.is_empty() {
            out += &format!("<optgroup label=\"{}\">", escaped(head));
        }
        for ChoiceOption { value, name, .. } in group {
            let selected = if value == chosen { " selected" } else { "" };
            let (value, name) = (escaped(value), escaped(name));
            out += &format!("<option value=\"{value}\"{selected}>{name}</option>");
        }
        if !head.is_empty() {
            out += "</optgroup>";
        }
    }
    out
}
