//! The spaces that the tube passes: temperature, humidity and air speed of each.

use std::sync::Arc;

use dewrun_quantity::measure::{AIR_SPEED, TEMPERATURE};
use leptos::prelude::*;

use super::fault_note::FaultNote;
use super::humidity_kind::HumidityKindChoice;
use super::parts::{Row, Rows, words};
use super::text_field::TextField;
use crate::state::{Field, HumidOf, use_desk};

/// The spaces.
#[component]
pub(super) fn SpacesTable() -> impl IntoView {
    let desk = use_desk();
    let count = Signal::derive(move || desk.with(|project| project.spaces.len()));
    let row: Row = Arc::new(|at| view! { <SpaceRow at=at /> }.into_any());
    let celsius = words(move || TEMPERATURE.unit(desk.style().units).name.to_owned());
    let speed = words(move || AIR_SPEED.unit(desk.style().units).name.to_owned());
    view! {
        <div class="dw-scroll">
        <table class="dw-table dw-spaces">
            <caption class="dw-spaces__name">"Spaces that the tube passes"</caption>
            <thead>
                <tr>
                    <th scope="col">"Space"</th>
                    <th scope="col" class="dw-number">"Air"<br /><span class="dw-unit">{celsius}</span></th>
                    <th scope="col">"Humidity"</th>
                    <th scope="col" class="dw-number">"Speed"<br /><span class="dw-unit">{speed}</span></th>
                </tr>
            </thead>
            <tbody>
                <Rows count=count row=row />
            </tbody>
        </table>
        </div>
    }
}

#[component]
fn SpaceRow(at: usize) -> impl IntoView {
    let desk = use_desk();
    let name = words(move || {
        desk.with(|project| project.spaces.get(at).map(|space| space.name.clone()))
            .unwrap_or_default()
    });
    let fields = [
        Field::SpaceTemperature(at),
        Field::SpaceHumidity(at),
        Field::SpaceWind(at),
    ];
    let [temperature, humidity, wind] = fields;
    let unit = words(move || {
        let shown = desk.with(|project| humidity.show(project, desk.style()));
        shown.map_or("", |(_, unit)| unit).to_owned()
    });
    let notes = fields.map(|field| view! { <FaultNote field=field /> }.into_any());
    view! {
        <tr>
            <th scope="row">{name}</th>
            <td class="dw-number"><TextField field=temperature in_table=true /></td>
            <td>
                <div class="dw-spaces__humidity">
                    <HumidityKindChoice of=HumidOf::Space(at) in_table=true />
                    <TextField field=humidity in_table=true />
                    <span class="dw-unit">{unit}</span>
                </div>
            </td>
            <td class="dw-number"><TextField field=wind in_table=true /></td>
        </tr>
        <tr class="dw-legs-table__note">
            <td colspan="4">{notes.into_iter().collect_view()}</td>
        </tr>
    }
}
