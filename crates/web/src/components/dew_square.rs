//! The dew square, and behind it the same as tables; the second module draws it.

use std::sync::Arc;

use dewrun_desk::{Answered, Work, count_as_number, style_as_numbers};
use leptos::prelude::*;
use web_sys::js_sys::{Float64Array, Reflect};

use super::parts::{flag, table_behind, words};
use crate::element::{El, el};
use crate::hooks::element_width::use_element_room;
use crate::hooks::work::use_work;
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::use_desk;

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// The dew square of an answer, once there is time for it; the section of the year tells it its hours by an event `hours`.
pub(super) fn square(answered: ReadSignal<Option<Arc<Answered>>>) -> El {
    let (desk, workshop) = (use_desk(), use_workshop());
    let place = el("div").class("dw-square__drawing");
    let room = use_element_room(&place);
    let hours = RwSignal::new(Vec::<f64>::new());
    let numbers = move |boundary: &[f64]| {
        let room = room.get();
        let count = count_as_number(boundary.len());
        let mut numbers = style_as_numbers(desk.style()).to_vec();
        numbers.extend([room.width, room.text, count]);
        numbers.extend(boundary);
        hours.with(|hours| numbers.extend(hours));
        numbers
    };
    let about = move || answered.get().filter(|_| LEAST <= room.get().width);
    let asked = move || about().map(|answered| (answered, numbers(&[])));
    let found = use_work(Work::DryBoundary, Signal::derive(asked));
    let told = move |work: Work| {
        words(move || {
            let boundary = match found.get() {
                Some((_, Ok(Told::Numbers(numbers)))) => numbers,
                // Without a boundary the square says nothing about it.
                _ => Vec::new(),
            };
            let told =
                about().and_then(|about| workshop.text(work.name(), &about, &numbers(&boundary)));
            told.unwrap_or_default()
        })
    };
    let tables = el("div").html(told(Work::DewSquareTables));
    let tables = table_behind("The dew square as tables", "dw-square__tables", [tables]);
    let drawing = place
        .class_if("dw-stale", flag(move || desk.is_behind()))
        .html(told(Work::DewSquare));
    el("div")
        .class("dw-square")
        .child([drawing, el("div").class("dw-square__year"), tables])
        .on("hours", move |event| {
            let told = Reflect::get(&event, &"detail".into()).unwrap_or_default();
            hours.set(Float64Array::new(&told).to_vec());
        })
}
