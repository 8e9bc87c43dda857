//! The route: elevation, profile under it, and the profile as a table.

use dewrun_drawing::html;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::drawing::Drawing;
use super::opened_figure::OpenedFigure;
use super::parts::{When, flag, words};
use super::section_head::SectionHead;
use super::toggle::{Choosable, Toggle};
use crate::state::use_desk;

const TUBES: [Tube; 2] = [Tube::Intake, Tube::Exhaust];
const WORDS: [Choosable; 2] = [
    Choosable {
        word: "intake",
        spoken: " tube",
    },
    Choosable {
        word: "exhaust",
        spoken: " tube",
    },
];

/// The section of the route.
#[component]
pub(crate) fn Route() -> impl IntoView {
    let desk = use_desk();
    let has_exhaust = flag(move || {
        desk.answered()
            .is_some_and(|answered| answered.outcome.exhaust.is_some())
    });
    let chosen = Signal::derive(move || usize::from(desk.tube() == Tube::Exhaust));
    let table = words(move || {
        desk.answered()
            .map(|answered| html::profile_table(&answered.view(desk.tube(), desk.style())))
            .unwrap_or_default()
    });
    view! {
        <section class="dw-route" aria-labelledby="route" data-opens="route">
            <SectionHead id="route" name="Route" question="Where does water form, and which way does it run?">
                <When holds=has_exhaust>
                    <Toggle
                        label="Tube shown"
                        name="Tube"
                        kind="dw-toggle--words"
                        options=&WORDS
                        chosen=chosen
                        choose=Callback::new(move |at: usize| desk.show_tube(TUBES[at]))
                    />
                </When>
            </SectionHead>
            <Drawing />
            <details class="dw-table-behind">
                <summary>"The profile as a table"</summary>
                <div class="dw-scroll" role="region" aria-label="The profile as a table" tabindex="0">
                    <table class="dw-table" aria-label="Temperatures and water along the tube" inner_html=table />
                </div>
            </details>
            <OpenedFigure section="route" />
        </section>
    }
}
