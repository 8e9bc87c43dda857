//! Elevation and profile on one length axis, as wide as there is room.

use dewrun_drawing::{Room, elevation, profile, svg};
use dewrun_run::Tube;
use leptos::html::Div;
use leptos::prelude::*;

use crate::hooks::element_width::use_element_room;
use crate::state::use_desk;

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// Both drawings of a tube.
#[component]
pub(crate) fn Drawing(
    /// The tube.
    tube: Memo<Tube>,
    /// Takes what the drawing is to scale with, in words.
    note: RwSignal<String>,
) -> impl IntoView {
    let desk = use_desk();
    let place = NodeRef::<Div>::new();
    let room = use_element_room(place);
    let drawn = Memo::new(move |_| {
        let room = room.get();
        let answered = desk.answered()?;
        if room.width < LEAST {
            return None;
        }
        let view = answered.view(tube.get(), desk.style());
        let elevation = elevation(
            &view,
            Room {
                width: room.width,
                text: room.text,
            },
        );
        let profile = profile(&view, &elevation.frame);
        let below = profile
            .map(|profile| svg(&profile.scene))
            .unwrap_or_default();
        Some((svg(&elevation.scene), below, elevation.scale_note))
    });
    Effect::new(move |_| {
        let words = drawn.with(|drawn| drawn.as_ref().map(|(_, _, words)| words.clone()));
        note.set(words.unwrap_or_default());
    });
    let above = move || drawn.with(|drawn| drawn.as_ref().map(|(above, ..)| above.clone()));
    let below = move || drawn.with(|drawn| drawn.as_ref().map(|(_, below, _)| below.clone()));
    view! {
        <div class="dw-drawings" class=("dw-stale", move || desk.is_stale()) node_ref=place>
            <div inner_html=move || above().unwrap_or_default() />
            <div inner_html=move || below().unwrap_or_default() />
        </div>
    }
}
