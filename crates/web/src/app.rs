//! The page as a whole: what stands on it, in which order.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::components::{
    Air, AnswerBand, Cautions, Legs, PageHead, RefusedFile, Route, Sensor, WorkedCases, close,
    provide_opened,
};
use crate::examples::{EXAMPLES, Example, example};
use crate::hooks::{escape, hash, window_width};
use crate::state::Desk;

/// The element that the page is put into.
const PLACE: &str = "app";

/// Opens the example that the address names and shows the page.
pub fn start() {
    let place = document().get_element_by_id(PLACE);
    let Some(place) = place.and_then(|element| element.dyn_into().ok()) else {
        return;
    };
    mount_to(place, App).forget();
}

/// The page.
#[component]
#[must_use]
pub fn App() -> impl IntoView {
    let address = hash::use_hash();
    let asked = move || example(&address.get());
    let Ok(project) = asked().unwrap_or(EXAMPLES[0]).project() else {
        return view! { <p role="alert">"The worked examples of this page can\u{2019}t be read."</p> }
            .into_any();
    };
    let desk = Desk::new(project);
    provide_context(desk);
    // Only an address that changes opens another example: what is on the desk stays otherwise.
    Effect::watch(
        asked,
        move |now: &Option<Example>, _, _| {
            if let Some(Ok(project)) = now.map(|example| example.project()) {
                desk.open(project);
            }
        },
        false,
    );
    let width = window_width::use_window_width();
    let opened = provide_opened();
    escape::on_escape(move || {
        if !close(opened) {
            desk.unselect();
        }
    });
    view! {
        <PageHead />
        <RefusedFile />
        <AnswerBand />
        <div class="dw-page">
            <Route />
            <Legs window_width=width />
            <Air />
            <Sensor />
            <WorkedCases />
        </div>
        <Cautions />
    }
    .into_any()
}
