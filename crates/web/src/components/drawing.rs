//! Elevation and profile on one length axis, as wide as there is room, and the pointer along both.

use dewrun_drawing::{Rail, Room, elevation, elevation_on_paper, profile, svg};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::parts::{flag, words};
use super::pointer::{Pointing, pointer};
use crate::element::{El, el};
use crate::hooks::element_width::use_element_room;
use crate::hooks::printing::use_printing;
use crate::state::use_desk;

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// Both drawings as text, and what the pointer slides on.
#[derive(Clone, PartialEq)]
pub(super) struct Drawn {
    elevation: String,
    profile: String,
    scale_note: String,
    pub(super) rail: Option<Rail>,
}

/// Both drawings of the tube that is chosen.
pub(super) fn drawing() -> [El; 2] {
    let desk = use_desk();
    let place = el("div").class("dw-drawings");
    let room = use_element_room(&place);
    let is_printing = use_printing();
    let drawn = Memo::new(move |_| {
        let room = room.get();
        let answered = desk.answered()?;
        if room.width < LEAST {
            return None;
        }
        let view = answered.view(desk.tube(), desk.style());
        let (width, text) = (room.width, room.text);
        let elevation = if is_printing.get() {
            elevation_on_paper(&view)
        } else {
            elevation(&view, Room { width, text })
        };
        let profile = profile(&view, &elevation.frame);
        Some(Drawn {
            rail: profile
                .as_ref()
                .map(|profile| Rail::new(&elevation, profile)),
            elevation: svg(&elevation.scene),
            profile: profile
                .map(|profile| svg(&profile.scene))
                .unwrap_or_default(),
            scale_note: elevation.scale_note,
        })
    });
    let part = move |part: fn(&Drawn) -> &String| {
        words(move || {
            drawn
                .with(|drawn| drawn.as_ref().map(|drawn| part(drawn).clone()))
                .unwrap_or_default()
        })
    };
    let pointing = Pointing::new(desk, &place, drawn);
    let below = el("div")
        .class("dw-drawings__profile")
        .html(part(|drawn| &drawn.profile))
        .on("pointerdown", move |event| {
            pointing.hold(event.unchecked_ref());
        })
        .on("pointermove", move |event| {
            pointing.drag(event.unchecked_ref());
        })
        .on("click", move |event| {
            pointing.point_at(event.unchecked_ref());
        });
    let note = el("p")
        .class("dw-drawings__note")
        .child(part(|drawn| &drawn.scale_note));
    let both = place
        .class_if("dw-stale", flag(move || desk.is_stale()))
        .child(el("div").html(part(|drawn| &drawn.elevation)))
        .child([below, pointer(pointing)]);
    [note, both]
}
