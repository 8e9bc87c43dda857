//! The diamonds on the drawing, and what stands at the tube's ends: reached by Tab in the order of the air, moved by arrows.

use dewrun_desk::{Field, add_leg, delete_leg, delete_trap, move_leg};
use dewrun_drawing::{DIAMOND, Point, TRAP, leg_name, trap_name};
use dewrun_quantity::format::machine;
use dewrun_run::Tube;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, KeyboardEvent};

use super::hand::{Hand, stop};
use super::parts::{button, flag, spoken, words};
use super::pointer::Pointing;
use crate::element::{El, el, rows};

const HELP: &str = "drawing-help";
const TRAP_HELP: &str = "trap-help";

/// All that can be reached on the elevation.
pub(super) fn handles(hand: Hand, pointing: Pointing) -> El {
    let desk = hand.desk;
    let count = Signal::derive(move || hand.count());
    let name = words(move || {
        match desk.tube() {
            Tube::Intake => "Legs of the intake tube, on the drawing",
            Tube::Exhaust => "Legs of the exhaust tube, on the drawing",
        }
        .to_owned()
    });
    let help = spoken().attr("id", HELP).child(
        "Arrows change length and fall by one step, Escape puts it back. Enter chooses the leg, Enter again goes to its fields. \
         S splits it at the pointer, T puts a trap at its end, I adds a leg behind it, Delete takes it away, Shift with left or right moves it.",
    );
    let trap_help = spoken()
        .attr("id", TRAP_HELP)
        .child("Left and right move it along the tube, Escape puts it back, Delete takes it away.");
    let traps = Signal::derive(move || hand.with(|grips| grips.traps.len()).unwrap_or(0));
    let told = spoken()
        .attr("role", "status")
        .child(words(move || hand.told.get()));
    let chosen = words(move || {
        let chosen = desk.selected().filter(|(tube, _)| *tube == desk.tube());
        let Some((_, leg)) = chosen else {
            return String::new();
        };
        hand.viewed(|view| hand.with(|grips| grips.chosen(view, leg)))
            .flatten()
            .unwrap_or_default()
    });
    el("div")
        .class("dw-handles")
        .attr("role", "application")
        .live_attr("aria-label", name)
        .child(el("div").class("dw-handles__chosen").html(chosen))
        .child(end(hand, 0))
        .child(rows(count, move |leg| vec![handle(hand, pointing, leg)]))
        .child(rows(traps, move |which| vec![trap(hand, which)]))
        .child(end(hand, 1))
        .child(hand_flag(hand))
        .child([help, trap_help, told])
}

/// The diamond of a leg.
fn handle(hand: Hand, pointing: Pointing, leg: usize) -> El {
    let desk = hand.desk;
    let name = words(move || hand.viewed(|view| leg_name(view, leg)).unwrap_or_default());
    let is_chosen = move || {
        let chosen = desk.selected().filter(|(tube, _)| *tube == desk.tube());
        chosen.map(|(_, at)| at)
    };
    // Both ends of the chosen leg are in hand.
    let is_marked = flag(move || is_chosen().is_some_and(|at| at == leg || at == leg + 1));
    let at = move |of: fn(&Point) -> f64| {
        words(move || {
            let at = hand.with(|grips| grips.handles.get(leg).map(|handle| of(&handle.at)));
            px(at.flatten().unwrap_or_default())
        })
    };
    button("dw-handle", || ())
        .class_if("dw-handle--chosen", is_marked)
        .live_attr("aria-label", name)
        .live_attr(
            "aria-pressed",
            words(move || (is_chosen() == Some(leg)).to_string()),
        )
        .attr("aria-describedby", HELP)
        .live_style("--x", at(|at| at.x))
        .live_style("--y", at(|at| at.y))
        .inert(DIAMOND)
        .on("keydown", move |event| {
            key(hand, pointing, leg, event.unchecked_ref());
        })
        .on("blur", move |_| hand.left())
}

fn key(hand: Hand, pointing: Pointing, leg: usize, event: &KeyboardEvent) {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    let (desk, tube) = (hand.desk, hand.tube());
    let style = untrack(|| desk.style());
    match (event.key().as_str(), event.shift_key()) {
        ("ArrowRight", true) => reorder(hand, leg, true),
        ("ArrowLeft", true) => reorder(hand, leg, false),
        ("ArrowRight", _) => hand.step(leg, |shape| shape.longer(true, style)),
        ("ArrowLeft", _) => hand.step(leg, |shape| shape.longer(false, style)),
        ("ArrowUp", _) => hand.step(leg, |shape| shape.tipped(false)),
        ("ArrowDown", _) => hand.step(leg, |shape| shape.tipped(true)),
        ("Escape", _) => {
            if !hand.give_up() && !hand.take_back() {
                return;
            }
            hand.tell(leg);
        }
        ("Enter", _) => {
            if desk.selected_now() == Some((tube, leg)) {
                focus(&Field::LegLength(tube, leg).id());
            }
            desk.select(tube, leg);
        }
        ("s" | "S", _) => match hand.place(pointing.along()) {
            Some((at, from_start)) if at == leg => hand.split_at(leg, from_start),
            _ => hand.split_middle(leg),
        },
        ("t" | "T", _) => hand.trap(hand.end_of(leg)),
        ("i" | "I", _) => {
            hand.act("Add behind", |project| add_leg(project, tube, leg));
            desk.select(tube, leg + 1);
            hand.tell(leg + 1);
        }
        ("Delete" | "Backspace", _) => {
            // The last handle goes with its leg.
            if leg + 1 == untrack(|| hand.count()) {
                hand.focus(leg.saturating_sub(1));
            }
            hand.act("Delete", |project| delete_leg(project, tube, leg));
            desk.unselect();
            hand.told.set("taken away".to_owned());
        }
        _ => return,
    }
    stop(event);
}

fn reorder(hand: Hand, leg: usize, on: bool) {
    let (desk, tube) = (hand.desk, hand.tube());
    let mut to = None;
    hand.act("Move", |project| to = move_leg(project, tube, leg, on));
    if let Some(to) = to {
        desk.select(tube, to);
        hand.focus(to);
        hand.tell(to);
    }
}

/// The duct or the detector, from where one goes to what is entered about it.
fn end(hand: Hand, which: usize) -> El {
    let is_duct = move || (hand.desk.tube() == Tube::Intake) == (which == 0);
    let name = words(move || {
        if is_duct() {
            let name = hand.viewed(|view| view.names.duct.clone());
            format!("Duct, {}", name.unwrap_or_default())
        } else {
            "Detector".to_owned()
        }
    });
    let side = move |of: fn(&dewrun_drawing::Rect) -> f64| {
        words(move || {
            px(hand
                .with(|grips| of(&grips.ends[which]))
                .unwrap_or_default())
        })
    };
    let go = move || {
        let field = if untrack(is_duct) {
            Field::DuctFirst
        } else {
            Field::DetectorHeat
        };
        focus(&field.id());
    };
    button("dw-handles__end", go)
        .live_attr("aria-label", name)
        .live_style("--x", side(|rect| rect.x))
        .live_style("--y", side(|rect| rect.y))
        .live_style("--wide", side(|rect| rect.width))
        .live_style("--high", side(|rect| rect.height))
}

/// What is in the hand, in words beside it.
fn hand_flag(hand: Hand) -> El {
    let read = Memo::new(move |_| hand.read());
    let at = move |of: fn(&Point) -> f64| {
        words(move || px(read.with(|read| read.as_ref().map_or(0.0, |(at, _)| of(at)))))
    };
    let spoken = words(move || {
        read.with(|read| read.as_ref().map(|(_, words)| words.clone()))
            .unwrap_or_default()
    });
    el("div")
        .class("dw-handles__read")
        .attr("aria-hidden", "true")
        .flag("hidden", flag(move || read.with(Option::is_none)))
        .live_style("--x", at(|at| at.x))
        .live_style("--y", at(|at| at.y))
        .child(spoken)
}

/// A trap, which is moved along the tube.
fn trap(hand: Hand, which: usize) -> El {
    let name = words(move || {
        hand.viewed(|view| trap_name(view, which))
            .unwrap_or_default()
    });
    let at = move |of: fn(&Point) -> f64| {
        words(move || {
            let at = hand.with(|grips| grips.traps.get(which).map(|trap| of(&trap.at)));
            px(at.flatten().unwrap_or_default())
        })
    };
    button("dw-trap", || ())
        .live_attr("aria-label", name)
        .attr("aria-describedby", TRAP_HELP)
        .live_style("--x", at(|at| at.x))
        .live_style("--y", at(|at| at.y))
        .on("keydown", move |event| {
            trap_key(hand, which, event.unchecked_ref());
        })
        .on("blur", move |_| hand.left())
}

fn trap_key(hand: Hand, which: usize, event: &KeyboardEvent) {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    let by = if event.shift_key() { 0.5 } else { 0.05 };
    match event.key().as_str() {
        "ArrowRight" | "ArrowUp" => hand.step_trap(which, by),
        "ArrowLeft" | "ArrowDown" => hand.step_trap(which, -by),
        "Escape" => {
            if !hand.give_up() && !hand.take_back() {
                return;
            }
        }
        "Delete" | "Backspace" => {
            let tube = hand.tube();
            hand.act("Delete trap", |project| delete_trap(project, tube, which));
            hand.told.set("taken away".to_owned());
        }
        _ => return,
    }
    stop(event);
}

/// The sign of a trap beside the drawing: dragged onto the tube, or pressed for one at the pointer.
pub(super) fn trap_sign(hand: Hand, pointing: Pointing) -> El {
    let pointer = |act: fn(Hand, &web_sys::PointerEvent)| {
        move |event: web_sys::Event| act(hand, event.unchecked_ref())
    };
    // A sign that was carried somewhere is a press, too, to the browser.
    let is_carried = StoredValue::new(false);
    button("dw-act dw-trap-sign", move || {
        if !is_carried.get_value() {
            hand.trap(pointing.along());
        }
        is_carried.set_value(false);
    })
    .attr("aria-label", "Trap at the pointer")
    .child(el("span").inert(TRAP))
    .child("Trap")
    .on("pointerdown", pointer(Hand::take_sign))
    .on("pointermove", pointer(Hand::carry))
    .on("pointercancel", move |_| hand.forget_sign())
    .on("pointerup", move |_| {
        is_carried.set_value(hand.drop_sign());
    })
}

/// Goes to a field; the browser brings it into view.
fn focus(id: &str) {
    let field = document().get_element_by_id(id);
    if let Some(field) = field.and_then(|field| field.dyn_into::<HtmlElement>().ok()) {
        let _ = field.focus();
    }
}

fn px(length: f64) -> String {
    format!("{}px", machine(length, 1))
}
