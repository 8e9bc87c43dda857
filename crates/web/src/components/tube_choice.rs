//! Which of the two tubes is drawn.

use dewrun_run::Tube;
use leptos::prelude::*;

use crate::state::use_desk;

/// Intake or exhaust tube.
#[component]
pub(crate) fn TubeChoice() -> impl IntoView {
    let desk = use_desk();
    let choice = move |tube: Tube, name: &'static str| {
        view! {
            <button
                type="button"
                class="dw-choice"
                aria-pressed=move || (desk.tube() == tube).to_string()
                on:click=move |_| desk.show_tube(tube)
            >
                {name}
            </button>
        }
    };
    view! {
        <div class="dw-choices" role="group" aria-label="Tube shown">
            <span aria-hidden="true">"Tube"</span>
            {choice(Tube::Intake, "intake")}
            {choice(Tube::Exhaust, "exhaust")}
        </div>
    }
}
