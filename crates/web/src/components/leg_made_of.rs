//! What a leg is made of and lies in: rows of the library, and the figures that no table has room for.

use super::parts::{button, flag, words};
use super::pick_row::{Place, pick_row};
use super::text_field::text_field;
use crate::element::{El, el, when};
use crate::state::use_desk;
use dewrun_desk::{Field, Pick, TubeName, same_tube_everywhere};

/// Tube, insulation and space of a leg.
pub(super) fn leg_made_of(tube: TubeName, at: usize) -> El {
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
    let spread = move || {
        desk.change("Tube", |project| {
            // A leg that is gone has no tube to give.
            let _ = same_tube_everywhere(project, tube, at);
        });
    };
    let part = || el("div").class("dw-made-of__part");
    let fields = || el("div").class("dw-made-of__fields");
    let of_tube = part()
        .child(pick_row(Pick::Tube(tube, at), Place::Told))
        .child(
            fields()
                .child(text_field(Field::LegConductivity(tube, at), false))
                .child(text_field(Field::LegEmissivity(tube, at), false)),
        )
        .child(button("dw-link dw-made-of__all", spread).child("This tube for all legs"));
    let of_insulation = part()
        .child(pick_row(Pick::Insulation(tube, at), Place::Told))
        .child(when(is_insulated, move || {
            vec![fields().child(text_field(insulation, false))]
        }));
    let of_space = part()
        .child(el("p").class("dw-field__label").child("Space"))
        .child(el("p").class("dw-pick__told").child(space))
        .child(fields().child(text_field(Field::LegHangers(tube, at), false)));
    el("div")
        .class("dw-made-of")
        .child([of_tube, of_insulation, of_space])
}
