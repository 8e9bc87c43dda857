//! The airflow limits as sliders: drawn by a pointer or moved by keys, each act one step that can be undone.

use dewrun_desk::Work;
use dewrun_quantity::parse;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement, KeyboardEvent, PointerEvent, SvgElement};

use super::airflow::Asking;
use super::hand::stop;
use super::made::make;
use crate::element::{El, el};
use crate::hooks::workshop::Workshop;
use crate::state::Desk;

/// Limits lie between these, %.
const SPAN: [f64; 2] = [0.0, 200.0];

/// The desk and what changes the project on it.
type On = (Desk, Workshop);

/// A limit under a pointer.
#[derive(Clone, Copy, PartialEq)]
struct Held {
    is_low: bool,
    limits: [f64; 2],
}

/// States, faults and limits.
pub(super) fn limits(asking: Asking) -> El {
    let on = (asking.desk, asking.workshop);
    let held = RwSignal::new(None::<Held>);
    let place = el("div").class("dw-limits-place");
    let element = place.dom().clone();
    let mut last = String::new();
    Effect::new(move |_| {
        let more = held
            .get()
            .map_or_else(Vec::new, |held| held.limits.to_vec());
        let html = asking.text(Work::AirflowLimits, &more);
        if html != last {
            put(&element, &html);
            last = html;
        }
    });
    let place_of = place.dom().clone();
    let at = place.dom().clone();
    place
        .on("keydown", move |event| key(on, event.unchecked_ref()))
        .on("click", move |event| click(on, &event))
        .on("pointerdown", move |event| {
            let Some((limit, limits)) = limit_of(&event).filter(|_| is_slider(&event)) else {
                return;
            };
            let event: &PointerEvent = event.unchecked_ref();
            let _ = place_of.set_pointer_capture(event.pointer_id());
            let is_low = limit == "low";
            held.set(Some(Held { is_low, limits }));
        })
        .on("pointermove", move |event| {
            if let Some(now) = held.get_untracked()
                && let Some(percent) = percent_at(&at, event.unchecked_ref())
            {
                held.set(Some(Held {
                    limits: moved(now.limits, now.is_low, percent),
                    ..now
                }));
            }
        })
        .on("pointerup", move |_| {
            if let Some(now) = held.get_untracked() {
                set(on, now.limits);
                held.set(None);
            }
        })
        .on("pointercancel", move |_| held.set(None))
}

/// Puts the mark-up in, and gives the focus back to what has it.
fn put(element: &Element, html: &str) {
    let focused = document()
        .active_element()
        .filter(|active| element.contains(Some(active)))
        .and_then(|active| {
            let limit = active.get_attribute("data-limit")?;
            let step = active.get_attribute("data-step");
            Some(match step {
                Some(step) => format!("[data-limit={limit}][data-step=\"{step}\"]"),
                None => format!("[data-limit={limit}][role=slider]"),
            })
        });
    element.set_inner_html(html);
    let again = focused.and_then(|focused| element.query_selector(&focused).ok().flatten());
    if let Some(again) = again {
        // A slider is a shape of a drawing, a step is a button.
        let _ = match again.dyn_ref::<SvgElement>() {
            Some(shape) => shape.focus(),
            None => again.unchecked_ref::<HtmlElement>().focus(),
        };
    }
}

/// The limit that an event is at, and where both stand.
fn limit_of(event: &Event) -> Option<(String, [f64; 2])> {
    let target: Element = event.target()?.dyn_into().ok()?;
    let hand = target.closest("[data-limit]").ok().flatten()?;
    Some((hand.get_attribute("data-limit")?, both(&hand)?))
}

/// Whether an event is at a slider rather than at a step beside it.
fn is_slider(event: &Event) -> bool {
    let target = event
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok());
    target.is_some_and(|target| matches!(target.closest("[role=slider]"), Ok(Some(_))))
}

/// Where both limits stand, %.
fn both(within: &Element) -> Option<[f64; 2]> {
    let place = within.closest(".dw-limits-place").ok().flatten()?;
    let now = |limit: &str| {
        let slider = format!("[data-limit={limit}][role=slider]");
        let slider = place.query_selector(&slider).ok().flatten()?;
        parse::number(&slider.get_attribute("aria-valuenow")?).ok()
    };
    Some([now("low")?, now("high")?])
}

/// The whole percent under a pointer.
fn percent_at(place: &Element, event: &PointerEvent) -> Option<f64> {
    let hands = place.query_selector("[data-per]").ok().flatten()?;
    let number = |name: &str| parse::number(&hands.get_attribute(name)?).ok();
    let left = hands.get_bounding_client_rect().left();
    let from = number("data-from")?;
    Some(((f64::from(event.client_x()) - left - from) / number("data-per")?).round())
}

/// Both limits with one of them at another place; they do not pass each other.
fn moved([low, high]: [f64; 2], is_low: bool, to: f64) -> [f64; 2] {
    let [least, most] = SPAN;
    if is_low {
        [to.min(high - 1.0).max(least), high]
    } else {
        [low, to.max(low + 1.0).min(most)]
    }
}

fn key(on: On, event: &KeyboardEvent) {
    let Some((limit, limits)) = limit_of(event) else {
        return;
    };
    let by = match event.key().as_str() {
        "ArrowLeft" | "ArrowDown" => -1.0,
        "ArrowRight" | "ArrowUp" => 1.0,
        "PageDown" => -10.0,
        "PageUp" => 10.0,
        "Home" => -SPAN[1],
        "End" => SPAN[1],
        _ => return,
    };
    if is_slider(event) {
        stop(event);
        step(on, &limit, limits, by);
    }
}

fn click(on: On, event: &Event) {
    let target = event
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok());
    let Some(target) = target else { return };
    let taken = target.get_attribute("data-take-limits");
    let pair = taken.as_deref().and_then(|pair| pair.split_once(' '));
    if let Some((low, high)) = pair
        && let (Ok(low), Ok(high)) = (parse::number(low), parse::number(high))
    {
        set(on, [low, high]);
    }
    let by = target.get_attribute("data-step");
    if let Some(by) = by.and_then(|by| parse::number(&by).ok())
        && let Some((limit, limits)) = limit_of(event)
    {
        step(on, &limit, limits, by);
    }
}

fn step(on: On, limit: &str, limits: [f64; 2], by: f64) {
    let is_low = limit == "low";
    let [low, high] = limits;
    let from = if is_low { low } else { high };
    set(on, moved(limits, is_low, from + by));
}

fn set(on: On, limits: [f64; 2]) {
    on.0.part();
    // Limits that do not cross are limits.
    let _ = make(on, "entered limits", &limits, "limits");
}
