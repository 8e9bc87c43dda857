//! Elevation and profile on one length axis, as wide as there is room or wider, and what a hand does on both.

use std::sync::Arc;

use dewrun_drawing::{
    Elevation, Grips, Held, Rail, Room, Sheet, compare_elevation, compare_profile, elevation,
    elevation_held, elevation_on_paper, elevation_undrawn, profile, svg,
};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent};

use super::hand::{Hand, stop};
use super::handles::{handles, trap_sign};
use super::parts::{flag, words};
use super::pointer::{Pointing, pointer};
use super::zoom::{Zoom, zoom_buttons};
use crate::element::{El, el};
use crate::hooks::element_width::use_element_room;
use crate::hooks::printing::use_printing;
use crate::hooks::workshop::{Workshop, use_workshop};
use crate::state::{Desk, use_desk};
use dewrun_desk::{Answered, ElevationAsked, Work};

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

const HINT: &str = "Drag a diamond: along for length, up and down for fall. Press twice or long on the tube to split a leg.";

/// Both drawings as text, and what a hand can do on them.
#[derive(Clone, PartialEq)]
pub(super) struct Drawn {
    elevation: String,
    profile: String,
    scale_note: String,
    pub(super) rail: Option<Rail>,
    pub(super) grips: Grips,
}

/// Both drawings of the tube that is chosen.
pub(super) fn drawing() -> [El; 2] {
    let desk = use_desk();
    let place = el("div").class("dw-drawings");
    let (window, sheet) = (el("div").class("dw-pan"), el("div").class("dw-pan__sheet"));
    let seen = use_element_room(&place);
    let is_printing = use_printing();
    let held = RwSignal::new(None);
    let zoom = Zoom::new(desk, &window, seen);
    let room = Memo::new(move |_| {
        let seen = seen.get();
        Room {
            width: seen.width * zoom.times(),
            text: seen.text,
        }
    });
    let workshop = use_workshop();
    let drawn =
        Memo::new(move |_| drawn(desk, workshop, room.get(), held.get(), is_printing.get()));
    let part = move |part: fn(&Drawn) -> &String| {
        words(move || {
            drawn
                .with(|drawn| drawn.as_ref().map(|drawn| part(drawn).clone()))
                .unwrap_or_default()
        })
    };
    let pointing = Pointing::new(desk, &sheet, drawn);
    let hand = Hand::new(desk, &sheet, drawn, held);
    let above = el("div")
        .class("dw-elevation")
        .child(el("div").html(part(|drawn| &drawn.elevation)))
        .child(handles(hand, pointing));
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
    let sheet = sheet
        .on("keydown", move |event| {
            key_on_pointer(hand, pointing, &event)
        })
        .child([on_elevation(above, hand), below, pointer(pointing)]);
    let note = el("p")
        .class("dw-drawings__note")
        .child(part(|drawn| &drawn.scale_note))
        .child(el("span").class("dw-drawings__hint").child(HINT));
    let head = el("div").class("dw-drawings__head").child([
        note,
        zoom_buttons(zoom, drawn).child(trap_sign(hand, pointing)),
    ]);
    let both = place
        .class_if("dw-stale", flag(move || desk.is_stale()))
        .child(zoom.over(window, drawn).child(sheet))
        .child(zoom.strip(drawn));
    [head, both]
}

fn drawn(
    desk: Desk,
    workshop: Workshop,
    room: Room,
    held: Option<Held>,
    on_paper: bool,
) -> Option<Drawn> {
    let answered = desk.drawn()?;
    if room.width < LEAST {
        return None;
    }
    let view = answered.view(desk.tube(), desk.style());
    let other = desk.compared_answer();
    let sheet = Sheet {
        room,
        on_paper,
        held,
    };
    let asked = ElevationAsked {
        style: view.style,
        tube: view.tube,
        compared: other.as_ref().map(|other| other.project.run),
        sheet,
    };
    let with_water = with_water(workshop, &answered, &asked);
    let (elevation, drawing, scale_note) = with_water.unwrap_or_else(|| {
        let mut elevation = match &sheet.held {
            _ if on_paper => elevation_on_paper(&view),
            Some(held) => elevation_held(&view, room, held),
            None => elevation(&view, room),
        };
        if let Some(other) = &other {
            compare_elevation(&mut elevation, &other.view(view.tube, view.style));
        }
        let (drawing, scale_note) = (svg(&elevation.scene), elevation.scale_note.clone());
        (elevation, drawing, scale_note)
    });
    let mut profile = profile(&view, &elevation.frame);
    if let (Some(other), Some(profile)) = (&other, &mut profile) {
        compare_profile(
            profile,
            &elevation.frame,
            &other.view(view.tube, view.style),
        );
    }
    Some(Drawn {
        rail: profile
            .as_ref()
            .map(|profile| Rail::new(&elevation, profile)),
        grips: Grips::new(&elevation),
        elevation: drawing,
        profile: profile
            .map(|profile| svg(&profile.scene))
            .unwrap_or_default(),
        scale_note,
    })
}

/// What a hand meets of the elevation with its water, the drawing, and to what scale it is; none until the module that draws it stands.
fn with_water(
    workshop: Workshop,
    answered: &Arc<Answered>,
    asked: &ElevationAsked,
) -> Option<(Elevation, String, String)> {
    let numbers = asked.as_numbers();
    let text = |kind: Work| workshop.text(kind.name(), answered, &numbers);
    let (drawing, scale_note) = (text(Work::Elevation)?, text(Work::ElevationNote)?);
    let places = workshop.numbers(Work::ElevationPlaces.name(), answered, &numbers)?;
    let mut elevation = elevation_undrawn(&answered.view(asked.tube, asked.style), &asked.sheet);
    elevation.take_places(&places);
    Some((elevation, drawing, scale_note))
}

/// What a hand does on the elevation.
fn on_elevation(elevation: El, hand: Hand) -> El {
    let pointer = |act: fn(Hand, &web_sys::PointerEvent)| {
        move |event: Event| act(hand, event.unchecked_ref())
    };
    elevation
        .on("pointerdown", pointer(Hand::down))
        .on("pointermove", pointer(Hand::moved))
        .on("pointerup", pointer(Hand::up))
        .on("pointercancel", move |_| {
            hand.give_up();
        })
        .on("click", move |event| hand.choose(event.unchecked_ref()))
        .on("dblclick", move |event| hand.split(event.unchecked_ref()))
        // A finger that rests on the tube means no menu.
        .on("contextmenu", |event| event.prevent_default())
}

/// Keys of the pointer that change the route where it is.
fn key_on_pointer(hand: Hand, pointing: Pointing, event: &Event) {
    let target = event.target();
    let target = target.and_then(|target| target.dyn_into::<Element>().ok());
    let is_pointer = target.is_some_and(|target| target.class_list().contains("dw-pointer"));
    let event: &KeyboardEvent = event.unchecked_ref();
    if !is_pointer || event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    match (event.key().as_str(), hand.place(pointing.along())) {
        ("s" | "S", Some((leg, from_start))) => hand.split_at(leg, from_start),
        ("t" | "T", Some(_)) => hand.trap(pointing.along()),
        _ => return,
    }
    stop(event);
}
