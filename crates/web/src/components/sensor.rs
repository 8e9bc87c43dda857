//! What the detector gets: the air around the sensor.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::{MIST, RELATIVE_HUMIDITY, TEMPERATURE, WATER};
use leptos::prelude::*;

use super::section_head::SectionHead;
use crate::state::use_desk;

/// The section of the sensor.
#[component]
pub(crate) fn Sensor() -> impl IntoView {
    let desk = use_desk();
    let row = |name: &'static str, value: String| {
        view! {
            <div class="dw-sensor__row">
                <dt>{name}</dt>
                <dd>{value}</dd>
            </div>
        }
    };
    let rows = move || {
        let answered = desk.answered()?;
        let style = desk.style();
        let outcome = &answered.outcome;
        let chamber = &outcome.chamber;
        let dew_point = chamber.dew_point.map_or_else(
            || DOES_NOT_APPLY.to_owned(),
            |t| TEMPERATURE.show(t, style).to_string(),
        );
        let rating = answered.run.detector.humidity_rating.map(|rating| {
            row(
                "Rated for",
                RELATIVE_HUMIDITY.show(rating, style).to_string(),
            )
        });
        Some(view! {
            {row("Temperature", TEMPERATURE.show(chamber.temperature, style).to_string())}
            {row("Relative humidity", RELATIVE_HUMIDITY.show(chamber.relative_humidity, style).to_string())}
            {rating}
            {row("Dew point", dew_point)}
            {row("Mist", MIST.show(chamber.mist, style).to_string())}
            {row("Water formed on the way", WATER.show(outcome.intake.condensate, style).to_string())}
        })
    };
    view! {
        <section class="dw-sensor" aria-labelledby="sensor">
            <SectionHead id="sensor" name="Sensor" question="What air does the detector get?" />
            <dl class="dw-sensor__rows" class=("dw-stale", move || desk.is_stale())>{rows}</dl>
        </section>
    }
}
