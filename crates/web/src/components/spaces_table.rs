//! The spaces that the tube passes: temperature, humidity and air speed of each.

use dewrun_quantity::measure::{AIR_SPEED, TEMPERATURE};
use leptos::prelude::*;

use super::fault_note::fault_note;
use super::humidity_kind::humidity_kind;
use super::parts::words;
use super::text_field::text_field;
use crate::element::{El, el, rows};
use crate::state::use_desk;
use dewrun_desk::{Field, HumidOf};

/// The spaces.
pub(super) fn spaces_table() -> El {
    let desk = use_desk();
    let count = Signal::derive(move || desk.with(|project| project.spaces.len()));
    let celsius = words(move || TEMPERATURE.unit(desk.style().units).name.to_owned());
    let speed = words(move || AIR_SPEED.unit(desk.style().units).name.to_owned());
    let name = |name: &str| el("th").attr("scope", "col").child(name);
    let number = |called: &str, unit: Signal<String>| {
        name(called)
            .class("dw-number")
            .child(el("br"))
            .child(el("span").class("dw-unit").child(unit))
    };
    let head = el("tr").child([
        name("Space"),
        number("Air", celsius),
        name("Humidity"),
        number("Speed", speed),
    ]);
    let table = el("table")
        .class("dw-table dw-spaces")
        .child(
            el("caption")
                .class("dw-spaces__name")
                .child("Spaces that the tube passes"),
        )
        .child(el("thead").child(head))
        .child(el("tbody").child(rows(count, space_row)));
    el("div").class("dw-scroll").child(table)
}

fn space_row(at: usize) -> Vec<El> {
    let desk = use_desk();
    let name = words(move || {
        desk.with(|project| project.spaces.get(at).map(|space| space.name.clone()))
            .unwrap_or_default()
    });
    let fields = [
        Field::SpaceTemperature(at),
        Field::SpaceHumidity(at),
        Field::SpaceWind(at),
    ];
    let [temperature, humidity, wind] = fields;
    let unit = words(move || {
        let shown = desk.with(|project| humidity.show(project, desk.style()));
        shown.map_or("", |(_, unit)| unit).to_owned()
    });
    let number = |field| el("td").class("dw-number").child(text_field(field, true));
    let humid = el("div")
        .class("dw-spaces__humidity")
        .child(humidity_kind(HumidOf::Space(at), true))
        .child(text_field(humidity, true))
        .child(el("span").class("dw-unit").child(unit));
    let row = el("tr")
        .child(el("th").attr("scope", "row").child(name))
        .child(number(temperature))
        .child(el("td").child(humid))
        .child(number(wind));
    let notes = fields
        .into_iter()
        .fold(el("td").attr("colspan", "4"), |cell, field| {
            cell.child(fault_note(field))
        });
    vec![row, el("tr").class("dw-legs-table__note").child(notes)]
}
