//! What to do first: remedies with before and after, each with a button that makes it.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::answer_band::{is_current, told_of_run};
use super::made::make;
use super::parts::{flag, words};
use crate::element::{El, el};
use crate::hooks::work::Found;
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::use_desk;

/// The rows, once there is time for them; those of the run before its last change stand, and can't be made, until there are new ones.
pub(super) fn remedies(found: ReadSignal<Option<Found>>) -> El {
    let (desk, workshop) = (use_desk(), use_workshop());
    let rows = words(move || match told_of_run(desk, found) {
        Some(Told::Text(rows)) => rows,
        _ => String::new(),
    });
    el("div")
        .class("dw-answer__remedies")
        .class_if("dw-stale", flag(move || !is_current(desk, found)))
        .html(rows)
        .on("click", move |event| {
            let target = event.target();
            let target = target.and_then(|target| target.dyn_into::<Element>().ok());
            let number = target.and_then(|target| target.get_attribute("data-remedy"));
            if let Some(number) = number.filter(|_| untrack(|| is_current(desk, found))) {
                desk.part();
                // What was offered of this very project can be made.
                let _ = make(
                    (desk, workshop),
                    &format!("remedied {number}"),
                    &[],
                    "remedy",
                );
            }
        })
}
