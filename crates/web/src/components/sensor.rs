//! What the detector gets: the air around the sensor.

use dewrun_drawing::html;
use leptos::prelude::*;

use super::opened_figure::OpenedFigure;
use super::parts::{flag, words};
use super::section_head::SectionHead;
use crate::state::use_desk;

/// The section of the sensor.
#[component]
pub(crate) fn Sensor() -> impl IntoView {
    let desk = use_desk();
    let figures = words(move || {
        desk.answered()
            .map(|answered| html::sensor(&answered.run, &answered.outcome, desk.style()))
            .unwrap_or_default()
    });
    view! {
        <section class="dw-sensor" aria-labelledby="sensor" data-opens="sensor">
            <SectionHead id="sensor" name="Sensor" question="What air does the detector get?" />
            <dl
                class="dw-figures dw-sensor__figures"
                class=("dw-stale", flag(move || desk.is_stale()))
                inner_html=figures
            />
            <OpenedFigure section="sensor" />
        </section>
    }
}
