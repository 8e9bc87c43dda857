//! What can be done with the leg that is chosen.

use dewrun_document::Project;
use leptos::prelude::*;

use crate::state::{TubeName, add_leg, delete_leg, leg_number, split_leg, use_desk};

/// Split, add, delete.
#[component]
pub(crate) fn LegActions() -> impl IntoView {
    let desk = use_desk();
    let act = move |word: &'static str, act: fn(&mut Project, TubeName, usize)| {
        move |(tube, at): (TubeName, usize)| {
            let number = desk.with(|project| leg_number(project, tube, at));
            view! {
                <button
                    type="button"
                    class="dw-act"
                    on:click=move |_| desk.change(word, |project| act(project, tube, at))
                >
                    {format!("{word} leg {number}")}
                </button>
            }
        }
    };
    let acts = move || {
        desk.selected().map(|leg| {
            view! {
                <div class="dw-leg-actions" role="group" aria-label="Chosen leg">
                    {act("Split", split_leg)(leg)}
                    {act("Add behind", add_leg)(leg)}
                    {act("Delete", delete_leg)(leg)}
                </div>
            }
        })
    };
    view! { {acts} }
}
