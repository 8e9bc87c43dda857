//! The section Troubles: what it shows is put there by a script, once the section is in sight; and the likely causes on the empty page.

use dewrun_desk::{project_text, style_as_numbers};
use leptos::prelude::*;

use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};
use crate::hooks::causes::rank;
use crate::state::use_desk;

/// The section of causes, checks and the log.
pub(crate) fn troubles() -> El {
    section("dw-troubles-section", "troubles", "troubles")
        .child(section_head(
            "troubles",
            "Troubles",
            "Why do they keep coming back?",
            [],
        ))
        .child(el("div").class("dw-troubles"))
}

/// The likely causes by what was tapped, and what to look at next.
pub(super) fn likely_causes() -> El {
    let desk = use_desk();
    let room = el("div")
        .class("dw-troubles")
        .attr("role", "region")
        .attr("aria-label", "Likely causes");
    let place = room.dom().clone();
    Effect::new(move |_| {
        if let Ok(text) = desk.with(project_text) {
            rank(&place, &text, &style_as_numbers(desk.style()));
        }
    });
    room
}
