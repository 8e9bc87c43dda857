//! What can be done with the leg that is chosen.

use dewrun_document::Project;
use leptos::prelude::*;

use super::parts::{When, flag, words};
use crate::state::{TubeName, add_leg, delete_leg, leg_number, split_leg, use_desk};

/// Split, add, delete.
#[component]
pub(super) fn LegActions() -> impl IntoView {
    let desk = use_desk();
    let act = move |word: &'static str, act: fn(&mut Project, TubeName, usize)| {
        let words = words(move || {
            let number = desk
                .selected()
                .map(|(tube, at)| desk.with(|project| leg_number(project, tube, at)));
            format!("{word} leg {}", number.unwrap_or_default())
        });
        let run = move |_| {
            if let Some((tube, at)) = desk.selected_now() {
                desk.change(word, |project| act(project, tube, at));
            }
        };
        view! { <button type="button" class="dw-act" on:click=run>{words}</button> }
    };
    view! {
        <When holds=flag(move || desk.selected().is_some())>
            <div class="dw-leg-actions" role="group" aria-label="Chosen leg">
                {act("Split", split_leg)}
                {act("Add behind", add_leg)}
                {act("Delete", delete_leg)}
            </div>
        </When>
    }
}
