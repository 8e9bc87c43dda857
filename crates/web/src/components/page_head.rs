//! The head of the page: what it is for or what is open, undo and redo, files, the units.

use dewrun_quantity::Units;
use leptos::prelude::*;

use super::copy_link::{LastLink, copied_link, copy_link};
use super::open_file::open_file;
use super::parts::{button, flag, words};
use super::save_file::save_file;
use super::toggle::Toggle;
use super::wordmark::wordmark;
use crate::element::{El, el, when};
use crate::state::{Desk, use_desk};

const UNITS: [Units; 2] = [Units::Si, Units::InchPound];
const WORDS: [&str; 2] = ["SI", "in-lb"];

/// What the note of a worked example begins with.
const EXAMPLE: &str = "Example, not your site";

/// What the page is for, in the head of the empty page.
const PURPOSE: &str =
    "where, when and how much water forms in the tube of a remote duct smoke detector";

/// The id of the head, which gets the focus when something else is opened.
pub(crate) const HEAD_ID: &str = "open";

/// The head of the page.
pub(crate) fn page_head() -> El {
    let desk = use_desk();
    let is_first = flag(move || desk.stage().is_first());
    let is_open = flag(move || !is_first.get());
    let open = el("h1")
        .class("dw-head__open")
        .attr("id", HEAD_ID)
        .attr("tabindex", "-1")
        .child(when(is_first, || {
            vec![el("span").class("dw-head__purpose").child(PURPOSE)]
        }))
        .child(when(is_open, what_is_open));
    let last_link = LastLink::new(None);
    let head = el("header")
        .class("dw-head")
        .child(wordmark())
        .child(el("span").class("dw-head__sign").child("Dewrun"))
        .child(open)
        .child(acts(desk, is_first, is_open, last_link));
    el("div").child([head, copied_link(last_link)])
}

fn acts(desk: Desk, is_first: Signal<bool>, is_open: Signal<bool>, last: LastLink) -> El {
    let act = move |word: &str, is_idle: Signal<bool>, act: fn(&Desk)| {
        // On the empty page what can't be done takes no room.
        let is_hidden = flag(move || is_first.get() && is_idle.get());
        button("dw-act", move || act(&desk))
            .flag("disabled", is_idle)
            .flag("hidden", is_hidden)
            .child(word)
    };
    let units = Toggle {
        label: "Units",
        name: "",
        kind: "dw-toggle--box",
        options: &WORDS,
        spoken: " units",
        chosen: Signal::derive(move || usize::from(desk.style().units == Units::InchPound)),
        choose: Callback::new(move |at: usize| desk.set_units(UNITS[at])),
    };
    let is_more = RwSignal::new(false);
    // On a phone the rest is folded away behind a word; elsewhere it always stands there.
    let more = button("dw-act dw-head__more", move || {
        is_more.update(|is| *is = !*is)
    })
    .live_attr("aria-expanded", words(move || is_more.get().to_string()))
    .child("More");
    let rest = el("div")
        .class("dw-head__rest")
        .class_if("dw-head__rest--open", is_more.into())
        .child(when(is_open, move || {
            vec![button("dw-act", move || desk.begin_anew()).child("New")]
        }))
        .child(open_file())
        .child(when(is_open, move || vec![save_file(), copy_link(last)]))
        .child(when(is_first, || {
            vec![
                el("a")
                    .class("dw-act dw-act--link")
                    .attr("href", "#does-not-answer")
                    .child("What it does not answer"),
            ]
        }))
        .child(units.control());
    el("div")
        .class("dw-head__acts")
        .child(act("Undo", flag(move || !desk.can_undo()), Desk::undo))
        .child(act("Redo", flag(move || !desk.can_redo()), Desk::redo))
        .child([more, rest])
}

/// What is open.
fn what_is_open() -> Vec<El> {
    let desk = use_desk();
    let run = words(move || {
        desk.with(|project| project.open_run().map(|run| run.name.clone()))
            .unwrap_or_default()
    });
    let project = words(move || desk.with(|project| project.name.clone()));
    let example = words(move || {
        let is_example = desk.with(|project| project.note.starts_with(EXAMPLE));
        if is_example { EXAMPLE } else { "" }.to_owned()
    });
    vec![
        el("span")
            .class("dw-head__project")
            .child(project)
            .child(" / "),
        el("b").child(run),
        el("span").class("dw-head__example").child(example),
    ]
}
