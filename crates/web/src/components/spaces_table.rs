//! The spaces that the tube passes: temperature, humidity and air speed of each.

use dewrun_quantity::measure::{AIR_SPEED, TEMPERATURE};
use leptos::prelude::*;

use super::fault_note::FaultNote;
use super::humidity_choice::SpaceHumidityChoice;
use super::text_field::TextField;
use crate::state::{Field, use_desk};

/// The spaces.
#[component]
pub(crate) fn SpacesTable() -> impl IntoView {
    let desk = use_desk();
    let spaces = Memo::new(move |_| {
        desk.with(|project| {
            let names = project.spaces.iter().map(|space| space.name.clone());
            names.enumerate().collect::<Vec<_>>()
        })
    });
    let units = move || desk.style().units;
    view! {
        <table class="dw-table dw-spaces">
            <caption class="dw-spaces__name">"Spaces that the tube passes"</caption>
            <thead>
                <tr>
                    <th scope="col">"Space"</th>
                    <th scope="col" class="dw-number">
                        "Air"<br /><span class="dw-unit">{move || TEMPERATURE.unit(units()).name}</span>
                    </th>
                    <th scope="col" colspan="2">"Humidity"</th>
                    <th scope="col" class="dw-number">
                        "Speed"<br /><span class="dw-unit">{move || AIR_SPEED.unit(units()).name}</span>
                    </th>
                </tr>
            </thead>
            <tbody>
                <For each=move || spaces.get() key=|space| space.clone() let((at, name))>
                    <SpaceRow at=at name=name />
                </For>
            </tbody>
        </table>
    }
}

#[component]
fn SpaceRow(at: usize, name: String) -> impl IntoView {
    let fields = [
        Field::SpaceTemperature(at),
        Field::SpaceHumidity(at),
        Field::SpaceWind(at),
    ];
    let [temperature, humidity, wind] = fields;
    view! {
        <tr>
            <th scope="row">{name}</th>
            <td class="dw-number"><TextField field=temperature in_table=true /></td>
            <td class="dw-spaces__kind"><SpaceHumidityChoice at=at /></td>
            <td class="dw-number"><TextField field=humidity in_table=true /></td>
            <td class="dw-number"><TextField field=wind in_table=true /></td>
        </tr>
        <tr class="dw-legs-table__note">
            <td colspan="5">
                {fields.map(|field| view! { <FaultNote field=field /> }).into_iter().collect_view()}
            </td>
        </tr>
    }
}
