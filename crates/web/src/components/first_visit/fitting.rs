//! The tube that is being fitted: which it is, then leg by leg which way, how far and through what.

use dewrun_drawing::html;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::question::question;
use crate::components::legs::count;
use crate::components::parts::{button, flag, words};
use crate::components::text_field::text_field;
use crate::element::{El, el, rows, when};
use crate::state::use_desk;
use dewrun_desk::{Field, Question};

/// What is asked of it.
pub(super) fn fitting() -> Vec<El> {
    let legs = el("ol")
        .class("dw-fitted")
        .child(rows(count(Tube::Intake), leg));
    vec![
        question(Question::Tube, ""),
        question(Question::Air, ""),
        question(Question::Weather, ""),
        legs,
        question(Question::NextLeg, ""),
    ]
}

/// A leg; the last one is open as long as none was chosen.
fn leg(at: usize) -> Vec<El> {
    let desk = use_desk();
    let count = count(Tube::Intake);
    let is_open = flag(move || match desk.selected() {
        Some((_, chosen)) => chosen == at,
        None => at + 1 == count.get(),
    });
    let is_stale = flag(move || desk.is_stale());
    let told = words(move || {
        let answered = desk.answered();
        let view = answered.as_ref();
        let view = view.map(|answered| answered.view(Tube::Intake, desk.style()));
        view.map(|view| html::leg_fitted_head(&view, at))
            .unwrap_or_default()
    });
    let turn = move || {
        if is_open.get_untracked() {
            desk.unselect();
        } else {
            desk.select(Tube::Intake, at);
        }
    };
    let head = button("dw-leg-card__head", turn)
        .class_if("dw-stale", is_stale)
        .live_attr("aria-expanded", words(move || is_open.get().to_string()))
        .html(told);
    let whose = format!(" Leg {}", at + 1);
    let asked = when(is_open, move || {
        vec![
            question(Question::LegWay(at), &whose),
            text_field(Field::LegLength(Tube::Intake, at), false),
            question(Question::LegSpace(at), &whose),
        ]
    });
    vec![
        el("li")
            .class("dw-leg-card")
            .class_if("dw-leg-card--open", is_open)
            .child(head)
            .child(asked),
    ]
}
