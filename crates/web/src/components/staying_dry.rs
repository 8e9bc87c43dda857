//! What would stay dry: the most humid duct air, the coldest space, the longest tube, one change at a time.

use std::sync::Arc;

use dewrun_advice::staying_dry;
use dewrun_drawing::{dry_limits, html};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::{flag, words};
use crate::element::{El, el, when};
use crate::state::use_desk;
use dewrun_desk::Answered;

/// The limits of the route as it is drawn, once there is time for them.
pub(super) fn stays_dry(answered: ReadSignal<Option<Arc<Answered>>>) -> El {
    let desk = use_desk();
    let found = Memo::new(move |_| {
        let answered = answered.get()?;
        Some(staying_dry(&answered.run, &answered.outcome))
    });
    let table = words(move || match (answered.get(), found.get()) {
        (Some(answered), Some(Ok(found))) => {
            let view = answered.view(Tube::Intake, desk.style());
            html::staying_dry(&dry_limits(&view, &found))
        }
        _ => String::new(),
    });
    let failure = words(move || match found.get() {
        Some(Err(error)) => format!("Not found: {error}."),
        _ => String::new(),
    });
    let is_found = flag(move || matches!(found.get(), Some(Ok(_))));
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
