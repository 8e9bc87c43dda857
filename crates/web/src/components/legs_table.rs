//! The legs as a table: inputs at the left, what becomes of each leg at the right.

use dewrun_quantity::measure::{BORE, HEAT_TRACING, TEMPERATURE, TUBE_LENGTH, WATER};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_results::use_other_forms;
use super::leg_row::LegRow;
use super::legs::use_legs;
use crate::state::use_desk;

/// The legs of both tubes.
#[component]
pub(crate) fn LegsTable() -> impl IntoView {
    view! {
        <div class="dw-scroll">
            <table class="dw-table dw-legs-table">
                <caption class="dw-spoken">"The legs of both tubes in the direction of the air"</caption>
                <LegsHead />
                <LegsBody tube=Tube::Intake name="Intake tube, from the duct to the detector" />
                <LegsBody tube=Tube::Exhaust name="Exhaust tube, from the detector to the duct" />
            </table>
        </div>
    }
}

#[component]
fn LegsHead() -> impl IntoView {
    let desk = use_desk();
    let forms = use_other_forms();
    let units = move || desk.style().units;
    let head = |name: &'static str, unit: &'static str| {
        view! {
            <th scope="col" class="dw-number">
                {name}
                <br />
                <span class="dw-unit">{unit}</span>
            </th>
        }
    };
    let celsius = move || TEMPERATURE.unit(units()).name;
    let water = move || WATER.unit(units()).name;
    view! {
        <thead>
            <tr>
                <th scope="col">"Leg"</th>
                <th scope="col">"Space"</th>
                {move || head("Length", TUBE_LENGTH.unit(units()).name)}
                {head("Fall", "")}
                <th scope="col">"Water runs"</th>
                {move || head("Bore", BORE.unit(units()).name)}
                {move || head("Outside", BORE.unit(units()).name)}
                {move || head("Insulation", BORE.unit(units()).name)}
                {move || head("Tracing", HEAT_TRACING.unit(units()).name)}
                {move || head("Air at end", celsius())}
                {move || head("Lowest wall", celsius())}
                {move || head("Dew point at end", celsius())}
                {move || head("Water", water())}
                {move || forms.get().0.then(|| head("as frost", water()))}
                {move || forms.get().1.then(|| head("Sweat", water()))}
                {move || head("Wet from", TUBE_LENGTH.unit(units()).name)}
            </tr>
        </thead>
    }
}

#[component]
fn LegsBody(tube: Tube, name: &'static str) -> impl IntoView {
    let legs = use_legs(tube);
    view! {
        <Show when=move || !legs.with(Vec::is_empty)>
            <tbody>
                <tr>
                    <th scope="rowgroup" colspan="16" class="dw-legs-table__tube">{name}</th>
                </tr>
                <For each=move || legs.get() key=|leg| leg.clone() let((at, _id))>
                    <LegRow tube=tube at=at />
                </For>
            </tbody>
        </Show>
    }
}
