//! The dew square, and behind it the same as tables.

use std::sync::Arc;

use dewrun_advice::BoundaryPoint;
use dewrun_drawing::{Room, boundary_temperatures, dew_square, html, svg};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::{flag, table_behind, words};
use crate::element::{El, el};
use crate::hooks::element_width::use_element_room;
use crate::hooks::work::use_work;
use crate::hooks::workshop::Told;
use crate::state::use_desk;
use dewrun_desk::{Answered, Work, boundary_of};

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// The dew square of an answer, once there is time for it.
pub(super) fn square(answered: ReadSignal<Option<Arc<Answered>>>) -> El {
    let desk = use_desk();
    let place = el("div").class("dw-square__drawing");
    let room = use_element_room(&place);
    let room = move || {
        let room = room.get();
        Room {
            width: room.width,
            text: room.text,
        }
    };
    let temperatures = Memo::new(move |_| {
        let answered = answered.get();
        answered.map_or_else(Vec::new, |answered| {
            boundary_temperatures(&answered.view(Tube::Intake, desk.style()), room())
        })
    });
    let asked = move || {
        let at = temperatures.get().iter().map(|t| t.to_celsius()).collect();
        answered.get().map(|answered| (answered, at))
    };
    let found = use_work(Work::DryBoundary, Signal::derive(asked));
    let boundary = Memo::new(move |_| -> Vec<BoundaryPoint> {
        // Without a boundary the square says nothing about it.
        match found.get() {
            Some((_, Ok(Told::Numbers(numbers)))) => boundary_of(&numbers).unwrap_or_default(),
            _ => Vec::new(),
        }
    });
    let drawn = words(move || {
        let room = room();
        match answered.get() {
            Some(answered) if LEAST <= room.width => {
                let view = answered.view(Tube::Intake, desk.style());
                svg(&boundary
                    .with(|boundary| dew_square(&view, boundary, room))
                    .scene)
            }
            _ => String::new(),
        }
    });
    let table = move |make: fn(&Answered, &[BoundaryPoint], dewrun_quantity::Style) -> String| {
        words(move || {
            let answered = answered.get();
            answered.map_or_else(String::new, |answered| {
                boundary.with(|boundary| make(&answered, boundary, desk.style()))
            })
        })
    };
    let path = table(|answered, _, style| html::path_table(&answered.view(Tube::Intake, style)));
    let limit = table(|answered, boundary, style| {
        html::boundary_table(&answered.view(Tube::Intake, style), boundary)
    });
    let of = |name: &str, rows: Signal<String>| {
        el("table")
            .class("dw-table")
            .attr("aria-label", name)
            .html(rows)
    };
    let tables = table_behind(
        "The dew square as tables",
        "dw-square__tables",
        [
            of("The air from the duct to the sensor", path),
            of("Dry boundary", limit),
        ],
    );
    let drawing = place
        .class_if("dw-stale", flag(move || desk.is_behind()))
        .html(drawn);
    el("div").class("dw-square").child([drawing, tables])
}
