//! The page as a whole: what stands on it, in which order.

use dewrun_document::is_link;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::components::{
    HEAD_ID, air, airflow, answer_band, cautions, close, cures, first_visit, follow_year,
    kept_notes, legs, page_head, provide_opened, refused_file, route_section, runs_bar,
    sections_bar, sensor, sheets, troubles, worked_cases, year,
};
use crate::element::{El, Root, each, el, when};
use crate::hooks::{escape, file_text, hash, top, window_width, workshop};
use crate::state::{Desk, Found, Keeping, use_desk};
use dewrun_desk::{Stage, Way};

/// The element that the page is put into.
const PLACE: &str = "app";

/// Opens what the address names and shows the page.
pub fn start() {
    let place = document().get_element_by_id(PLACE);
    let Some(place) = place.and_then(|element| element.dyn_into().ok()) else {
        return;
    };
    mount_to(place, || Root::of(page())).forget();
}

/// The page.
#[must_use]
pub fn page() -> El {
    let address = hash::use_hash();
    let asked = move || Stage::asked(&address.get());
    let found = Found::quick();
    let seen = found.seen();
    let first_asked = untrack(asked);
    let Found {
        records, set_aside, ..
    } = found;
    let Some(desk) = Desk::at(first_asked, records) else {
        return el("p")
            .attr("role", "alert")
            .child("The rows that this page begins with can\u{2019}t be read.");
    };
    provide_context(desk);
    provide_context(Keeping::begin(desk, first_asked, seen, set_aside));
    // Only an address that changes opens something else: what is on the desk stays otherwise.
    Effect::watch(
        asked,
        move |now: &Option<Stage>, _, _| {
            if let Some(stage) = now {
                desk.go_to(*stage);
            }
        },
        false,
    );
    // A link is taken off the address: what it carries becomes a project of one's own, which has a short one.
    Effect::new(move |_| {
        let hash = address.get();
        if is_link(&hash) {
            hash::put(&untrack(move || desk.stage()).address());
            desk.open_link(&hash);
        }
    });
    let stage = Memo::new(move |_| desk.stage());
    // What was open last may be something else than the address says.
    if first_asked.is_some() {
        hash::put(&untrack(move || stage.get()).address());
    }
    Effect::watch(
        move || stage.get(),
        move |stage: &Stage, _, _| hash::write(&stage.address()),
        false,
    );
    // The ways in are one page: who goes from one to another stays where they are on it.
    let opened = Memo::new(move |_| match stage.get() {
        Stage::First(_) => Stage::First(Way::Drawing),
        other => other,
    });
    Effect::watch(
        move || opened.get(),
        move |_, _, _| top::go_to_top(HEAD_ID),
        false,
    );
    let width = window_width::use_window_width();
    workshop::provide_workshop();
    let figures = provide_opened();
    escape::on_escape(move || {
        if !close(figures) {
            desk.unselect();
        }
    });
    file_text::on_given(move |name, text| desk.open_text(&name, text.as_deref()));
    let is_open = Signal::derive(move || !opened.get().is_first());
    let open = each(move || match opened.get() {
        Stage::First(_) => untrack(first_visit),
        _ => untrack(|| open_project(width)),
    });
    el("div")
        .child(page_head())
        .child(kept_notes())
        .child(refused_file())
        .child(open)
        .child(cautions())
        .child(when(is_open, || vec![sections_bar()]))
}

/// The open project, its answer and all that can be entered, in a window of a width in px.
fn open_project(width: ReadSignal<f64>) -> Vec<El> {
    let desk = use_desk();
    workshop::use_workshop().load_after_paint();
    follow_year();
    let is_held = Signal::derive(move || desk.is_held());
    let parts = el("div")
        .class("dw-page")
        .class_if("dw-page--held", is_held)
        .child([
            route_section(),
            legs(width),
            air(),
            year(),
            cures(),
            airflow(),
            sensor(),
            troubles(),
            sheets(),
            worked_cases(false),
        ]);
    vec![runs_bar(), answer_band(), parts]
}
