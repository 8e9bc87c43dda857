//! The legs as cards, of which one is open at a time: for a phone, a ladder and gloves.

use dewrun_quantity::measure::WATER;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_results::{LegResults, use_leg_results};
use super::leg_row::leg_fields;
use super::legs::use_legs;
use super::space_choice::SpaceChoice;
use super::text_field::TextField;
use crate::state::{Field, TubeName, leg_number, route, use_desk};

/// The legs of both tubes.
#[component]
pub(crate) fn LegCards() -> impl IntoView {
    view! {
        <LegList tube=Tube::Intake name="Intake tube, from the duct to the detector" />
        <LegList tube=Tube::Exhaust name="Exhaust tube, from the detector to the duct" />
    }
}

#[component]
fn LegList(tube: Tube, name: &'static str) -> impl IntoView {
    let legs = use_legs(tube);
    view! {
        <Show when=move || !legs.with(Vec::is_empty)>
            <h3 class="dw-leg-cards__tube">{name}</h3>
            <ul class="dw-leg-cards">
                <For each=move || legs.get() key=|leg| leg.clone() let((at, _id))>
                    <LegCard tube=tube at=at />
                </For>
            </ul>
        </Show>
    }
}

#[component]
fn LegCard(tube: Tube, at: usize) -> impl IntoView {
    let desk = use_desk();
    let is_open = move || desk.selected() == Some((tube, at));
    let turn = move |_| {
        if is_open() {
            desk.unselect();
        } else {
            desk.select(tube, at);
        }
    };
    let fields = move || {
        leg_fields(tube, at)
            .map(|field| view! { <TextField field=field /> })
            .into_iter()
            .collect_view()
    };
    view! {
        <li class="dw-leg-card" class=("dw-leg-card--open", is_open)>
            <button
                type="button"
                class="dw-leg-card__head"
                aria-expanded=move || is_open().to_string()
                on:click=turn
            >
                <CardHead tube=tube at=at />
            </button>
            <Show when=is_open>
                <div class="dw-leg-card__fields">
                    <SpaceChoice tube=tube at=at />
                    {fields}
                </div>
                <CardResults tube=tube at=at />
            </Show>
        </li>
    }
}

/// Number, space, length and fall of a leg, and what forms in it.
#[component]
fn CardHead(tube: TubeName, at: usize) -> impl IntoView {
    let desk = use_desk();
    let found = use_leg_results(tube, at);
    let text = move |field: Field| {
        let shown = desk.with(|project| field.show(project, desk.style()));
        shown.map_or_else(String::new, |(number, unit)| match unit {
            "" => number,
            _ => format!("{number}\u{a0}{unit}"),
        })
    };
    let space = move || {
        desk.with(|project| {
            let id = &route(project, tube)?.legs.get(at)?.space;
            project
                .spaces
                .iter()
                .find(|space| space.id == *id)
                .map(|space| space.name.clone())
        })
    };
    let unit = move || WATER.unit(desk.style().units).name;
    let figure = move |read: fn(LegResults) -> String| found.get().map(read);
    view! {
        <b class="dw-leg-card__number">{move || desk.with(|project| leg_number(project, tube, at))}</b>
        <span class="dw-leg-card__what">
            {space}
            ", "
            {move || text(Field::LegLength(tube, at))}
            <span class="dw-leg-card__fall">
                {move || match text(Field::LegFall(tube, at)).as_str() {
                    word @ ("drop" | "riser" | "level") => word.to_owned(),
                    fall => format!("fall {fall}"),
                }}
            </span>
        </span>
        <span class="dw-leg-card__water" class=("dw-stale", move || desk.is_stale())>
            <b>{move || figure(|leg| leg.water)}</b>
            "\u{a0}"
            {unit}
        </span>
    }
}

/// The other results of an open leg.
#[component]
fn CardResults(tube: TubeName, at: usize) -> impl IntoView {
    let desk = use_desk();
    let found = use_leg_results(tube, at);
    let row = |name: &'static str, value: String| {
        view! {
            <div class="dw-leg-card__result">
                <dt>{name}</dt>
                <dd>{value}</dd>
            </div>
        }
    };
    let units = move || {
        let units = desk.style().units;
        (
            dewrun_quantity::measure::TEMPERATURE.unit(units).name,
            dewrun_quantity::measure::TUBE_LENGTH.unit(units).name,
            WATER.unit(units).name,
        )
    };
    let rows = move || {
        found.get().map(|leg| {
            let (celsius, metre, water) = units();
            let with = |number: String, unit: &str| format!("{number}\u{a0}{unit}");
            view! {
                {row("Air at end", with(leg.air_at_end, celsius))}
                {row("Lowest wall", with(leg.lowest_wall, celsius))}
                {row("Dew point at end", with(leg.dew_point_at_end, celsius))}
                {row("Wet from", with(leg.wet_from, metre))}
                {row("as frost", with(leg.frost, water))}
                {row("Sweat", with(leg.sweat, water))}
            }
        })
    };
    view! { <dl class="dw-leg-card__results" class=("dw-stale", move || desk.is_stale())>{rows}</dl> }
}
