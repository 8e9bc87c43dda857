//! The route: elevation, profile under it, and the profile as a table.

use dewrun_run::Tube;
use leptos::prelude::*;

use super::drawing::Drawing;
use super::profile_table::ProfileTable;
use super::section_head::SectionHead;
use super::tube_choice::TubeChoice;
use crate::state::use_desk;

/// The section of the route.
#[component]
pub(crate) fn Route() -> impl IntoView {
    let desk = use_desk();
    let has_exhaust = Memo::new(move |_| {
        desk.answered()
            .is_some_and(|answered| answered.outcome.exhaust.is_some())
    });
    // An exhaust tube that is deleted while it is looked at gives way to the intake tube.
    let tube = Memo::new(move |_| {
        if has_exhaust.get() {
            desk.tube()
        } else {
            Tube::Intake
        }
    });
    let note = RwSignal::new(String::new());
    view! {
        <section class="dw-route" aria-labelledby="route">
            <SectionHead id="route" name="Route" question="Where does water form, and which way does it run?">
                <Show when=move || has_exhaust.get()>
                    <TubeChoice />
                </Show>
            </SectionHead>
            <p class="dw-route__note">{move || note.get()}</p>
            <Drawing tube=tube note=note />
            <details class="dw-table-behind">
                <summary>"The profile as a table"</summary>
                <ProfileTable tube=tube />
            </details>
        </section>
    }
}
