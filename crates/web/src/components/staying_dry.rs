//! What would stay dry: the most humid duct air, the coldest space, the longest tube, one change at a time.

use std::sync::Arc;

use leptos::prelude::*;

use super::parts::{flag, words};
use crate::element::{El, el, when};
use crate::hooks::work::use_work;
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::use_desk;
use dewrun_desk::{Answered, Work, style_as_numbers};

/// The limits of the route as it is drawn, once there is time for them.
pub(super) fn stays_dry(answered: ReadSignal<Option<Arc<Answered>>>) -> El {
    let (desk, workshop) = (use_desk(), use_workshop());
    let asked = move || answered.get().map(|answered| (answered, Vec::new()));
    let found = use_work(Work::StayingDry, Signal::derive(asked));
    let table = words(move || {
        let Some((answered, Ok(Told::Numbers(numbers)))) = found.get() else {
            return String::new();
        };
        let numbers = [&style_as_numbers(desk.style())[..], &numbers].concat();
        let told = workshop.text(Work::StayingDryTold.name(), &answered, &numbers);
        told.unwrap_or_default()
    });
    let failure = words(move || match found.get() {
        Some((_, Err(sentence))) => format!("Not found: {sentence}."),
        _ => String::new(),
    });
    let is_found = flag(move || matches!(found.get(), Some((_, Ok(_)))));
    let name = el("h3")
        .attr("id", "staying-dry")
        .class("dw-air__name")
        .child("What would stay dry ")
        .child(
            el("span")
                .class("dw-air__which")
                .child("this route, one change at a time"),
        );
    let limits = when(is_found, move || {
        vec![
            el("table")
                .class("dw-table dw-dry")
                .class_if("dw-stale", flag(move || desk.is_behind()))
                .attr("aria-labelledby", "staying-dry")
                .child(el("tbody").html(table)),
        ]
    });
    el("div")
        .attr("role", "group")
        .attr("aria-labelledby", "staying-dry")
        .child(name)
        .child(limits)
        .child(el("p").class("dw-air__note").child(failure))
}
