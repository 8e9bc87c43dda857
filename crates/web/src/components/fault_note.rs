//! The sentence at a field whose text can't be used, with an offer to go back to the value that holds.

use super::parts::{flag, words};
use crate::element::{El, Part, el, svg_el, when};
use crate::state::use_desk;
use dewrun_desk::{Fault, Field};

/// The sentence at a field, if there is one.
pub(super) fn fault_note(field: Field) -> Part {
    let desk = use_desk();
    let fault = move || desk.fault(field).filter(|fault| !fault.is_unfinished);
    let of = move |read: fn(Fault) -> String| words(move || fault().map(read).unwrap_or_default());
    when(flag(move || fault().is_some()), move || {
        let back = el("button")
            .attr("type", "button")
            .class("dw-link")
            .on("click", move |_| desk.give_back(field))
            .child("Use ")
            .child(of(|fault| fault.held));
        let told = el("p")
            .child(el("b").child(of(|fault| format!("{}: ", fault.name))))
            .child(of(|fault| format!("{} ", fault.sentence)))
            .child(back);
        vec![
            el("div")
                .class("dw-fault")
                .attr("id", &field.note_id())
                .child(fault_sign())
                .child(told),
        ]
    })
}

/// The sign of a fault, beside words that say so.
pub(super) fn fault_sign() -> El {
    svg_el("svg")
        .attr("class", "dw-fault__sign")
        .attr("viewBox", "0 0 20 18")
        .attr("width", "16")
        .attr("height", "14.4")
        .attr("aria-hidden", "true")
        .inert("<path d=\"M10 1.5 18.6 16.5H1.4z\"/><path d=\"M10 6.6v5M10 13.2v1.7\"/>")
}
