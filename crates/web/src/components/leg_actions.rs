//! What can be done with the leg that is chosen.

use super::parts::{button, flag, words};
use crate::element::{El, Part, el, when};
use crate::state::use_desk;
use dewrun_desk::{OpenProject, TubeName, add_leg, delete_leg, leg_number, split_leg};

/// Split, add, delete.
pub(super) fn leg_actions() -> Part {
    let desk = use_desk();
    when(flag(move || desk.selected().is_some()), || {
        vec![
            el("div")
                .class("dw-leg-actions")
                .attr("role", "group")
                .attr("aria-label", "Chosen leg")
                .child(act("Split", split_leg))
                .child(act("Add behind", add_leg))
                .child(act("Delete", delete_leg)),
        ]
    })
}

fn act(word: &'static str, act: fn(&mut OpenProject, TubeName, usize)) -> El {
    let desk = use_desk();
    let words = words(move || {
        let number = desk
            .selected()
            .map(|(tube, at)| desk.with(|project| leg_number(project, tube, at)));
        format!("{word} leg {}", number.unwrap_or_default())
    });
    let run = move || {
        if let Some((tube, at)) = desk.selected_now() {
            desk.change(word, |project| act(project, tube, at));
        }
    };
    button("dw-act", run).child(words)
}
