//! A figure opened in its place: how it follows from what, pushing down what stands below.

use dewrun_desk::{Work, style_as_numbers};
use dewrun_run::figure::{Figure, Spot};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition};

use super::parts::{flag, words};
use crate::element::{Part, el, when};
use crate::hooks::pressed::on_pressed;
use crate::hooks::workshop::use_workshop;
use crate::state::{Opened, Step, Trail, use_desk};

/// What can be pressed in a panel or to get one.
const PRESSED: &str = "[data-figure],[data-back],[data-close]";
/// The panel; that of a figure of the year is its section's own.
const PANEL: &str = ".dw-opened:not(.dw-year__opened)";
/// What stands in it where the module that opens figures did not arrive.
const LACKS: &str = "<p class=\"dw-opened__acts\">Where this comes from is told by a part of the page that did not arrive: open it again when there is a network. <button type=\"button\" class=\"dw-button\" data-close>Close</button></p>";

/// Lets every element with `data-figure` open its figure; once for the page.
pub(crate) fn provide_opened() -> Opened {
    let open = Opened::new();
    provide_context(open);
    on_pressed(PRESSED, move |element| pressed(open, element));
    let desk = use_desk();
    // The text of a figure is made anew with every answer: which one is opened is marked on whatever stands there then.
    Effect::new(move |_| {
        let trail = open.now();
        desk.answered();
        request_animation_frame(move || mark(trail.as_ref()));
    });
    open
}

/// The place under a section where its figures open; the section is named by what its element carries in `data-opens`.
pub(super) fn opened_figure(section: &'static str) -> Part {
    let desk = use_desk();
    let Some(open) = use_context::<Opened>() else {
        return Part::None;
    };
    let workshop = use_workshop();
    let html = Memo::new(move |_| {
        let told = open.trail(section).zip(desk.answered());
        let (trail, answered) = told?;
        if workshop.lacks() {
            return Some(LACKS.to_owned());
        }
        let kind = question(&trail);
        workshop.text(&kind, &answered, &style_as_numbers(desk.style()))
    });
    let is_shown = flag(move || html.with(Option::is_some));
    Effect::new(move |_| {
        let Some(trail) = open.trail(section) else {
            return;
        };
        // On the empty page nobody has loaded it.
        workshop.load_after_paint();
        if is_shown.get() {
            request_animation_frame(move || show(trail.steps.len()));
        }
    });
    when(is_shown, move || {
        let html = words(move || html.get().unwrap_or_default());
        vec![
            el("div")
                .class("dw-opened")
                .class_if("dw-stale", flag(move || desk.is_stale()))
                .attr("role", "region")
                .attr("aria-label", "Where the figure comes from")
                .html(html),
        ]
    })
}

/// The figure shown, where it is read, and the figure before it, as they are asked for.
fn question(trail: &Trail) -> String {
    let mut question = Work::Opened.name().to_owned();
    let mut steps = trail.steps.iter().rev();
    if let Some((figure, spot)) = steps.next() {
        question.push_str(&format!(" {} {spot}", figure.id()));
    }
    if let Some((figure, _)) = steps.next() {
        question.push_str(&format!(" {}", figure.id()));
    }
    question
}

fn pressed(open: Opened, element: &Element) {
    if element.has_attribute("data-close") {
        close(open);
        return;
    }
    if element.has_attribute("data-back") {
        open.back();
        return;
    }
    let Some(step) = step_of(element) else { return };
    if element.closest(PANEL).is_ok_and(|panel| panel.is_some()) {
        open.follow(step);
        return;
    }
    let section = element.closest("[data-opens]").ok().flatten();
    if let Some(section) = section.and_then(|section| section.get_attribute("data-opens")) {
        open.turn(section, step);
    }
}

fn step_of(element: &Element) -> Option<Step> {
    let figure = Figure::from_id(&element.get_attribute("data-figure")?)?;
    let spot = Spot::parse(&element.get_attribute("data-at")?)?;
    Some((figure, spot))
}

/// Closes what is open and gives the focus back to what opened it; false where nothing was open.
pub(crate) fn close(open: Opened) -> bool {
    let Some(trail) = open.close() else {
        return false;
    };
    if let Some(opener) = opener(&trail) {
        // What has gone meanwhile can't be gone to.
        let _ = opener.focus();
    }
    true
}

/// The element that opened a trail.
fn opener(trail: &Trail) -> Option<HtmlElement> {
    let (figure, spot) = trail.steps.first()?;
    let selector = format!(
        "[data-opens=\"{}\"] [data-figure=\"{}\"][data-at=\"{spot}\"]",
        trail.section,
        figure.id()
    );
    let found = document().query_selector(&selector).ok().flatten()?;
    found.dyn_into().ok()
}

/// Says of every figure outside a panel whether it is the one that is opened.
fn mark(trail: Option<&Trail>) {
    let opened = trail.and_then(opener);
    if let Ok(marked) = document().query_selector_all("[data-figure][aria-expanded=\"true\"]") {
        for at in 0..marked.length() {
            let element = marked
                .item(at)
                .and_then(|node| node.dyn_into::<Element>().ok());
            if let Some(element) = element {
                // An attribute of that name can be set on any element.
                let _ = element.set_attribute("aria-expanded", "false");
            }
        }
    }
    if let Some(element) = opened {
        let _ = element.set_attribute("aria-expanded", "true");
    }
}

/// Brings the head of the panel into view; followed within, its head has the focus, since what was pressed is gone.
fn show(steps: usize) {
    let Some(panel) = document().query_selector(PANEL).ok().flatten() else {
        return;
    };
    let head = panel.query_selector("[tabindex]").ok().flatten();
    let Some(head) = head.and_then(|head| head.dyn_into::<HtmlElement>().ok()) else {
        return;
    };
    let options = ScrollIntoViewOptions::new();
    options.set_block(ScrollLogicalPosition::Nearest);
    head.scroll_into_view_with_scroll_into_view_options(&options);
    let active = document().active_element();
    if 1 < steps || active.is_none_or(|element| element.tag_name() == "BODY") {
        // A head that can't take the focus leaves it where it is.
        let _ = head.focus();
    }
}
