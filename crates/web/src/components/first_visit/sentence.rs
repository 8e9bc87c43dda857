//! The sentence with blanks.

use leptos::prelude::*;

use crate::components::choice::{Choice, ChoiceOption};
use crate::components::fault_note::fault_note;
use crate::components::parts::{flag, words};
use crate::components::text_field::text_field;
use crate::element::{El, el, rows};
use crate::state::use_desk;
use dewrun_desk::{Blank, Field, humid_with, is_above, is_side_assumed, passing, put_above};

/// The words before each blank, and the blank, from behind the duct air up to the spaces.
const BLANKS: [(&str, Field); 3] = [
    (" is drawn at ", Field::Flow),
    (" through ", Field::First(Blank::Length)),
    (" of ", Field::First(Blank::Bore)),
];

/// The last blank.
const HEIGHT: Field = Field::First(Blank::Height);

/// The sentence, and under it what can't be used of it.
pub(super) fn sentence() -> [El; 2] {
    let desk = use_desk();
    let count = Signal::derive(move || desk.with(|project| project.spaces.len()));
    let spaces = rows(count, move |at| {
        let before = words(move || desk.with(|project| passing(project, at)));
        let before = el("span").child(before);
        vec![before, blank(Field::SpaceTemperature(at))]
    });
    let mut filled = el("div")
        .class("dw-sentence")
        .attr("role", "group")
        .attr("aria-label", "The sentence to fill in")
        .child("Duct air of ")
        .child(blank(Field::DuctFirst))
        .child(words(move || desk.with(humid_with)))
        .child(blank(Field::DuctSecond));
    let mut notes = el("div")
        .child(fault_note(Field::DuctFirst))
        .child(fault_note(Field::DuctSecond));
    for (before, field) in BLANKS {
        filled = filled.child(before).child(blank(field));
        notes = notes.child(fault_note(field));
    }
    let notes = notes
        .child(rows(count, |at| {
            vec![el("div").child(fault_note(Field::SpaceTemperature(at)))]
        }))
        .child(fault_note(HEIGHT));
    let filled = filled
        .child(spaces)
        .child(", to a detector ")
        .child(blank(HEIGHT));
    [filled.child(" ").child(side()).child(" the duct."), notes]
}

/// A blank with its unit, which never part.
fn blank(field: Field) -> El {
    let desk = use_desk();
    let unit = words(move || {
        let shown = desk.with(|project| field.show(project, desk.style()));
        shown.map_or_else(String::new, |(_, unit)| format!("\u{a0}{unit}"))
    });
    el("span")
        .class("dw-unbroken")
        .child(text_field(field, true))
        .child(unit)
}

/// Below or above.
fn side() -> El {
    const SIDES: [&str; 2] = ["below", "above"];
    let desk = use_desk();
    let chosen = words(move || {
        let above = desk.with(is_above).unwrap_or_default();
        SIDES[usize::from(above)].to_owned()
    });
    let options = Signal::derive(|| {
        let option = |side: &str| ChoiceOption::new(side.to_owned(), side.to_owned());
        SIDES.map(option).to_vec()
    });
    let choose = Callback::new(move |side: String| {
        desk.change("side", |project| {
            // A detector level with the duct is on neither side.
            let _ = put_above(project, side == SIDES[1]);
        });
    });
    let is_assumed = flag(move || desk.with(is_side_assumed));
    let choice = Choice {
        id: "side-of-detector".to_owned(),
        name: "Side",
        whose: words(|| " of the duct on which the detector is".to_owned()),
        options,
        chosen,
        choose,
        in_table: true,
    };
    el("span")
        .class("dw-sentence__side")
        .class_if("dw-sentence__side--assumed", is_assumed)
        .child(choice.control())
}
