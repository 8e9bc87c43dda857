//! A part that a row of the library may stand for, picked by name, with what is assumed of it and from where.

use leptos::prelude::*;

use super::choice::{Choice, ChoiceOption, Options};
use super::parts::words;
use crate::element::{El, el};
use crate::state::use_desk;
use dewrun_desk::Pick;

/// Where a choice stands, and what it says beside the row.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// With what is assumed under it.
    Told,
    /// What is assumed is told elsewhere.
    Untold,
    /// In a table whose head names it.
    Table,
}

/// The choice of a row for what `pick` says.
pub(super) fn pick_row(pick: Pick, place: Place) -> El {
    let desk = use_desk();
    let picked = words(move || desk.with(|project| pick.picked(project)));
    let options = Signal::derive(move || -> Options {
        let options = desk.with(|project| pick.options(project)).into_iter();
        options
            .map(|option| ChoiceOption {
                group: option.group,
                value: option.value,
                name: option.name,
            })
            .collect()
    });
    let choose = Callback::new(move |value: String| {
        desk.change(pick.name(), |project| {
            // Own values are no row: nothing is to be written.
            let _ = pick.take(project, &value);
        });
    });
    let choice = Choice {
        id: pick.id(),
        name: pick.name(),
        whose: words(move || desk.with(|project| pick.whose(project))),
        options,
        chosen: picked,
        choose,
        in_table: place == Place::Table,
    };
    let made = el("div").class("dw-pick").child(choice.control());
    if place != Place::Told {
        return made;
    }
    let told = words(move || {
        let style = desk.style();
        desk.with(|project| pick.told(project, style))
    });
    made.child(el("p").class("dw-pick__told").child(told))
}
