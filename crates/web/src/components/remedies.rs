//! What to do first: remedies with before and after, each with a button that makes it.

use std::sync::Arc;

use dewrun_desk::{Work, style_as_numbers};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::made::make;
use super::parts::words;
use crate::element::{El, el};
use crate::hooks::after_paint::use_after_paint;
use crate::hooks::work::use_work;
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::use_desk;

/// The rows, once there is time for them; of an answer that is none any more there are none.
pub(super) fn remedies() -> El {
    let (desk, workshop) = (use_desk(), use_workshop());
    let answered = use_after_paint(desk.settled());
    let asked = move || Some((answered.get()?, style_as_numbers(desk.style()).to_vec()));
    let found = use_work(Work::Remedies, Signal::derive(asked));
    let rows = words(move || match (found.get(), desk.answered()) {
        (Some((about, Ok(Told::Text(rows)))), Some(now)) if Arc::ptr_eq(&about, &now) => rows,
        _ => String::new(),
    });
    el("div")
        .class("dw-answer__remedies")
        .html(rows)
        .on("click", move |event| {
            let target = event.target();
            let target = target.and_then(|target| target.dyn_into::<Element>().ok());
            let number = target.and_then(|target| target.get_attribute("data-remedy"));
            if let Some(number) = number {
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
