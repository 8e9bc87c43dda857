//! The elevation of the route that the sentence describes.

use dewrun_drawing::{Room, elevation, svg};
use dewrun_run::Tube;
use leptos::prelude::*;

use super::parts::{flag, words};
use crate::element::{El, el};
use crate::hooks::element_width::use_element_room;
use crate::state::use_desk;

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// The intake tube as it would be drawn.
pub(super) fn preview() -> [El; 2] {
    let desk = use_desk();
    let place = el("div").class("dw-preview");
    let room = use_element_room(&place);
    let drawn = Memo::new(move |_| {
        let room = room.get();
        if room.width < LEAST {
            return <[String; 2]>::default();
        }
        let room = Room {
            width: room.width,
            text: room.text,
        };
        let answered = desk.answered();
        answered.map_or_else(Default::default, |answered| {
            let elevation = elevation(&answered.view(Tube::Intake, desk.style()), room);
            [svg(&elevation.scene), elevation.scale_note]
        })
    });
    let part = move |at: usize| words(move || drawn.with(|drawn| drawn[at].clone()));
    let is_stale = flag(move || desk.is_stale());
    let note = el("p").class("dw-drawings__note").child(part(1));
    [note, place.class_if("dw-stale", is_stale).html(part(0))]
}
