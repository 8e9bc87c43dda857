//! What goes on site, and what comes of it: the site card, the stopwatch, visits.

use std::sync::Arc;

use dewrun_desk::{Work, style_as_numbers};
use dewrun_document::read_keeping_years;
use dewrun_drawing::escaped;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use web_sys::js_sys::{Array, Float64Array};

use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};
use crate::hooks::after_paint::use_after_paint;
use crate::hooks::orientation::today;
use crate::hooks::sheets::Room;
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::use_desk;

/// The section of sheets; what stands in it is made by the second module.
pub(crate) fn sheets() -> El {
    let (desk, workshop) = (use_desk(), use_workshop());
    let settled = desk.settled();
    let ask = move |kind: &str, rest: &[f64]| {
        // What stands in the room may ask once more after the section has gone.
        let answered: Arc<_> = settled.try_get().flatten()?;
        let numbers = [&style_as_numbers(desk.style()), rest].concat();
        workshop.ask(kind, &answered, &numbers)
    };
    let room = el("div").class("dw-sheets");
    let asked = move |kind: String, numbers: Float64Array| {
        untrack(|| match ask(&kind, &numbers.to_vec()) {
            Some(Ok(Told::Text(text))) => JsValue::from(text),
            Some(Err(sentence)) => Array::of1(&sentence.into()).into(),
            _ => JsValue::UNDEFINED,
        })
    };
    let take = move |text: String| {
        if let Ok(taken) = read_keeping_years(&text) {
            desk.change("Visit", |project| project.project = taken);
        }
    };
    let place = Room::new(room.dom(), asked, take, today());
    let after_paint = use_after_paint(settled);
    Effect::new(move |_| {
        let Some(answered) = after_paint.get() else {
            return;
        };
        let style = style_as_numbers(desk.style());
        match workshop.ask(Work::Sheets.name(), &answered, &style) {
            Some(Ok(Told::Text(html))) => place.put(&html),
            Some(Err(sentence)) => place.put(&format!("<p>{}.</p>", escaped(&sentence))),
            _ => {}
        }
    });
    section("dw-sheets-section", "sheets", "sheets")
        .child(section_head(
            "sheets",
            "Sheets",
            "What goes on site, and what comes of it?",
            [],
        ))
        .child(room)
}
