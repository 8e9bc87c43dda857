//! The legs of both tubes: a table where there is room, cards on a phone.

use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_actions::leg_actions;
use super::leg_card::leg_card;
use super::leg_made_of::leg_made_of;
use super::legs_table::legs_table;
use super::opened_figure::opened_figure;
use super::origins::origins;
use super::parts::{flag, section, words};
use super::section_head::section_head;
use crate::element::{El, Part, each, el, rows, when};
use crate::hooks::printing::use_printing;
use crate::state::use_desk;
use dewrun_desk::{leg_number, route};

/// Narrower windows show cards, px.
const TABLE_FROM: f64 = 1080.0;

/// The section of the legs, in a window of a width in px.
pub(crate) fn legs(window_width: ReadSignal<f64>) -> El {
    let is_printing = use_printing();
    let is_wide = flag(move || TABLE_FROM <= window_width.get() || is_printing.get());
    let head = section_head(
        "legs",
        "Legs",
        "What is the tube made of, and what happens in each leg?",
        [
            origins().into(),
            when(is_wide, || vec![el("div").child(leg_actions())]),
        ],
    );
    section("dw-legs", "legs", "legs")
        .child(head)
        .child(when(is_wide, || {
            vec![
                legs_table(),
                el("div").child(opened_figure("legs")).child(chosen_leg()),
            ]
        }))
        .child(when(flag(move || !is_wide.get()), || {
            vec![
                cards(Tube::Intake, "Intake tube, from the duct to the detector"),
                cards(Tube::Exhaust, "Exhaust tube, from the detector to the duct")
                    .flag("hidden", has_no_legs(Tube::Exhaust)),
            ]
        }))
}

/// What the chosen leg is made of; the first one as long as none is chosen.
fn chosen_leg() -> Part {
    let desk = use_desk();
    let chosen = Memo::new(move |_| desk.selected().unwrap_or((Tube::Intake, 0)));
    each(move || {
        let (tube, at) = chosen.get();
        let number = words(move || {
            let number = desk.with(|project| leg_number(project, tube, at));
            format!("What leg {number} is made of")
        });
        let name = el("h3").class("dw-legs__tube").child(number);
        vec![name, leg_made_of(tube, at)]
    })
}

fn cards(tube: Tube, name: &str) -> El {
    let list = el("ul")
        .class("dw-legs__cards")
        .child(rows(count(tube), move |at| leg_card(tube, at)));
    el("div")
        .child(el("h3").class("dw-legs__tube").child(name))
        .child(list)
}

/// Whether a tube is not drawn.
pub(super) fn has_no_legs(tube: Tube) -> Signal<bool> {
    let count = count(tube);
    flag(move || count.get() == 0)
}

/// How many legs a tube has.
pub(in crate::components) fn count(tube: Tube) -> Signal<usize> {
    let desk = use_desk();
    Signal::derive(move || {
        desk.with(|project| route(project, tube).map_or(0, |route| route.legs.len()))
    })
}
