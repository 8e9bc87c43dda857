//! The legs of both tubes: a table where there is room, cards on a phone.

use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_actions::LegActions;
use super::leg_card::LegCards;
use super::legs_table::LegsTable;
use super::origins::Origins;
use super::section_head::SectionHead;
use crate::state::{route, use_desk};

/// Narrower windows show cards, px.
const TABLE_FROM: f64 = 1080.0;

/// The section of the legs.
#[component]
pub(crate) fn Legs(
    /// Width of the window, px.
    window_width: ReadSignal<f64>,
) -> impl IntoView {
    let is_wide = Memo::new(move |_| TABLE_FROM <= window_width.get());
    view! {
        <section class="dw-legs" aria-labelledby="legs">
            <SectionHead id="legs" name="Legs" question="What is the tube made of, and what happens in each leg?">
                <Origins />
                <LegActions />
            </SectionHead>
            <Show when=move || is_wide.get() fallback=LegCards>
                <LegsTable />
            </Show>
        </section>
    }
}

/// The positions of the legs of a tube, each with the leg's id, by which rows are told apart.
pub(super) fn use_legs(tube: Tube) -> Memo<Vec<(usize, String)>> {
    let desk = use_desk();
    Memo::new(move |_| {
        desk.with(|project| {
            let legs = route(project, tube).map(|route| route.legs.as_slice());
            let ids = legs.unwrap_or_default().iter().map(|leg| leg.id.clone());
            ids.enumerate().collect()
        })
    })
}
