//! The legs as a table: inputs at the left, what becomes of each leg at the right.

use dewrun_drawing::html;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::leg_row::leg_row;
use super::legs::{count, has_no_legs};
use super::parts::{flag, words};
use crate::element::{El, el, rows};
use crate::state::use_desk;

/// The legs of both tubes.
pub(super) fn legs_table() -> El {
    let desk = use_desk();
    let settled = desk.settled();
    let head = words(move || {
        let answered = settled.get();
        html::legs_head(
            answered.as_ref().map(|answered| &answered.outcome),
            desk.style(),
        )
    });
    let table = el("table")
        .class("dw-table dw-legs-table")
        .class_if("dw-legs-table--stale", flag(move || desk.is_behind()))
        .attr(
            "aria-label",
            "The legs of both tubes in the direction of the air",
        )
        .child(el("thead").html(head))
        .child(body(
            Tube::Intake,
            "Intake tube, from the duct to the detector",
        ))
        .child(
            body(Tube::Exhaust, "Exhaust tube, from the detector to the duct")
                .flag("hidden", has_no_legs(Tube::Exhaust)),
        );
    el("div").class("dw-scroll").child(table)
}

fn body(tube: Tube, name: &str) -> El {
    let head = el("th")
        .attr("scope", "rowgroup")
        .attr("colspan", "16")
        .class("dw-legs-table__tube")
        .child(name);
    el("tbody")
        .child(el("tr").child(head))
        .child(rows(count(tube), move |at| leg_row(tube, at)))
}
