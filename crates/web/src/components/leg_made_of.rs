//! What a leg is made of and lies in: rows of the library, and the figures that no table has room for.

use leptos::prelude::*;

use super::parts::{When, flag, words};
use super::pick_row::PickRow;
use super::text_field::TextField;
use crate::state::{Field, Pick, TubeName, same_tube_everywhere, use_desk};

/// Tube, insulation and space of a leg.
#[component]
pub(super) fn LegMadeOf(
    /// Its tube.
    tube: TubeName,
    /// Its position there.
    at: usize,
) -> impl IntoView {
    let desk = use_desk();
    let insulation = Field::InsulationConductivity(tube, at);
    let is_insulated = flag(move || desk.with(|project| insulation.input(project).is_some()));
    let space = words(move || {
        let style = desk.style();
        let told = desk.with(|project| Pick::Space(tube, at).told(project, style));
        if told.is_empty() {
            "As entered below.".to_owned()
        } else {
            told
        }
    });
    let spread = move |_| {
        desk.change("Tube", |project| {
            // A leg that is gone has no tube to give.
            let _ = same_tube_everywhere(project, tube, at);
        });
    };
    view! {
        <div class="dw-made-of">
            <div class="dw-made-of__part">
                <PickRow pick=Pick::Tube(tube, at) />
                <div class="dw-made-of__fields">
                    <TextField field=Field::LegConductivity(tube, at) />
                    <TextField field=Field::LegEmissivity(tube, at) />
                </div>
                <button type="button" class="dw-link dw-made-of__all" on:click=spread>
                    "This tube for all legs"
                </button>
            </div>
            <div class="dw-made-of__part">
                <PickRow pick=Pick::Insulation(tube, at) />
                <When holds=is_insulated>
                    <div class="dw-made-of__fields">
                        <TextField field=insulation />
                    </div>
                </When>
            </div>
            <div class="dw-made-of__part">
                <p class="dw-field__label">"Space"</p>
                <p class="dw-pick__told">{space}</p>
            </div>
        </div>
    }
    .into_any()
}
