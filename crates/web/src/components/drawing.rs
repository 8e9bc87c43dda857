//! Elevation and profile on one length axis, as wide as there is room.

use dewrun_drawing::{Room, elevation, profile, svg};
use leptos::html::Div;
use leptos::prelude::*;

use super::parts::{flag, words};
use crate::hooks::element_width::use_element_room;
use crate::state::use_desk;

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// Both drawings of the tube that is chosen.
#[component]
pub(super) fn Drawing() -> impl IntoView {
    let desk = use_desk();
    let place = NodeRef::<Div>::new();
    let room = use_element_room(place);
    let drawn = Memo::new(move |_| {
        let room = room.get();
        let answered = desk.answered()?;
        if room.width < LEAST {
            return None;
        }
        let view = answered.view(desk.tube(), desk.style());
        let elevation = elevation(
            &view,
            Room {
                width: room.width,
                text: room.text,
            },
        );
        let below = profile(&view, &elevation.frame).map(|profile| svg(&profile.scene));
        Some([
            svg(&elevation.scene),
            below.unwrap_or_default(),
            elevation.scale_note,
        ])
    });
    let part = move |at: usize| {
        words(move || {
            drawn
                .with(|drawn| drawn.as_ref().map(|parts| parts[at].clone()))
                .unwrap_or_default()
        })
    };
    view! {
        <p class="dw-drawings__note">{part(2)}</p>
        <div class="dw-drawings" class=("dw-stale", flag(move || desk.is_stale())) node_ref=place>
            <div inner_html=part(0) />
            <div inner_html=part(1) />
        </div>
    }
}
