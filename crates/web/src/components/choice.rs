//! One of many: a space for a leg, a quantity for a humidity.

use leptos::prelude::*;

use super::parts::words;

/// What can be chosen: value and name.
pub(super) type Options = Vec<(String, String)>;

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
    let listed = words(move || {
        let option = |(value, name): (String, String)| {
            let selected = if value == chosen.get() {
                " selected"
            } else {
                ""
            };
            let (value, name) = (
                dewrun_drawing::escaped(&value),
                dewrun_drawing::escaped(&name),
            );
            format!("<option value=\"{value}\"{selected}>{name}</option>")
        };
        options.get().into_iter().map(option).collect()
    });
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
