//! What can be done with the leg that is chosen.

use leptos::prelude::*;

use super::parts::{button, flag, words};
use crate::element::{El, Part, el, when};
use crate::state::use_desk;
use dewrun_desk::{OpenProject, TubeName, add_leg, delete_leg, leg_number, move_leg, split_leg};

/// Split, add, delete, move.
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
                .child(act("Delete", delete_leg))
                .child(shift(" back", false))
                .child(shift(" on", true)),
        ]
    })
}

fn act(word: &'static str, act: fn(&mut OpenProject, TubeName, usize)) -> El {
    let desk = use_desk();
    let run = move || {
        if let Some((tube, at)) = desk.selected_now() {
            desk.change(word, |project| act(project, tube, at));
        }
    };
    button("dw-act", run).child(named(word, ""))
}

/// Changes places with the leg before it or behind it, and stays chosen.
fn shift(after: &'static str, on: bool) -> El {
    let desk = use_desk();
    let run = move || {
        let Some((tube, at)) = desk.selected_now() else {
            return;
        };
        let mut to = None;
        desk.change("Move", |project| to = move_leg(project, tube, at, on));
        if let Some(to) = to {
            desk.select(tube, to);
        }
    };
    button("dw-act", run).child(named("Move", after))
}

fn named(word: &'static str, after: &'static str) -> Signal<String> {
    let desk = use_desk();
    words(move || {
        let number = desk
            .selected()
            .map(|(tube, at)| desk.with(|project| leg_number(project, tube, at)));
        format!("{word} leg {}{after}", number.unwrap_or_default())
    })
}
