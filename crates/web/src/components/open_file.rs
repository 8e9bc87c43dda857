//! Opening a project file; a file that can't be used never costs the open project.

use super::fault_note::fault_sign;
use super::parts::{button, flag, words};
use crate::element::{El, el, when};
use crate::hooks::file_text::read_chosen;
use crate::state::use_desk;

/// The way to open a project file.
pub(super) fn open_file() -> El {
    let desk = use_desk();
    let input = el("input")
        .class("dw-spoken")
        .attr("type", "file")
        .attr("accept", ".json,application/json")
        .on("change", move |event| {
            read_chosen(&event, move |name, text| {
                desk.open_text(&name, text.as_deref());
            });
        });
    el("label")
        .class("dw-act dw-open")
        .child("Open")
        .child(el("span").class("dw-open__what").child(" file"))
        .child(input)
}

/// Why a file was not taken in.
pub(crate) fn refused_file() -> El {
    let desk = use_desk();
    let refused = move || desk.refused_file();
    let told = when(flag(move || refused().is_some()), move || {
        let headline = words(move || refused().map(|file| file.headline).unwrap_or_default());
        let sentence = words(move || refused().map(|file| file.sentence).unwrap_or_default());
        let why = el("p")
            .class("dw-refused__why")
            .child(fault_sign())
            .child(sentence);
        let words = el("div")
            .child(el("p").child(el("b").child(headline)))
            .child(why);
        let leave = button("dw-button", move || desk.forget_refused_file()).child("Leave it");
        vec![el("div").class("dw-refused").child(words).child(leave)]
    });
    el("div").attr("role", "alert").child(told)
}
