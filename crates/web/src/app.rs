//! The page as a whole: what stands on it, in which order.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::components::{
    Air, AnswerBand, Cautions, FirstVisit, HEAD_ID, Legs, PageHead, RefusedFile, Route, Sensor,
    WorkedCases, close, provide_opened,
};
use crate::hooks::{escape, file_text, hash, top, window_width};
use crate::state::{Desk, Stage};

/// The element that the page is put into.
const PLACE: &str = "app";

/// Opens what the address names and shows the page.
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
    let asked = move || Stage::asked(&address.get());
    let Some(desk) = Desk::at(untrack(asked)) else {
        return view! { <p role="alert">"The rows that this page begins with can\u{2019}t be read."</p> }
            .into_any();
    };
    provide_context(desk);
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
    let stage = Memo::new(move |_| desk.stage());
    Effect::watch(
        move || stage.get(),
        move |stage: &Stage, _, _| {
            hash::write(&stage.address());
            top::go_to_top(HEAD_ID);
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
    file_text::on_given(move |name, text| desk.open_text(&name, text.as_deref()));
    view! {
        <PageHead />
        <RefusedFile />
        {move || match stage.get() {
            Stage::First => view! { <FirstVisit /> }.into_any(),
            _ => view! { <OpenProject width=width /> }.into_any(),
        }}
        <Cautions />
    }
    .into_any()
}

/// The open project: its answer and all that can be entered.
#[component]
fn OpenProject(
    /// Width of the window, px.
    width: ReadSignal<f64>,
) -> impl IntoView {
    view! {
        <AnswerBand />
        <div class="dw-page">
            <Route />
            <Legs window_width=width />
            <Air />
            <Sensor />
            <WorkedCases />
        </div>
    }
    .into_any()
}
