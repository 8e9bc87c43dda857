//! SI or inch-pound, for everything at once; nothing that is stored changes.

use dewrun_quantity::Units;
use leptos::prelude::*;

use crate::state::use_desk;

/// The switch of the units.
#[component]
pub(crate) fn UnitsChoice() -> impl IntoView {
    let desk = use_desk();
    let choice = move |units: Units, short: &'static str, spoken: &'static str| {
        view! {
            <button
                type="button"
                class="dw-units__choice"
                aria-pressed=move || (desk.style().units == units).to_string()
                on:click=move |_| desk.set_units(units)
            >
                {short}
                <span class="dw-spoken">{spoken}</span>
            </button>
        }
    };
    view! {
        <div class="dw-units" role="group" aria-label="Units">
            {choice(Units::Si, "SI", " units")}
            {choice(Units::InchPound, "in-lb", " units")}
        </div>
    }
}
