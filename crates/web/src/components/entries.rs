//! How the run is installed and what its year goes by, in fields that the second module makes and reads.

use dewrun_desk::Work;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement};

use super::airflow::Asking;
use super::made::make;
use crate::element::{El, el, typed};

/// The fields under a name, and by which questions they are made and read; what is being typed, and what can't be used, is never written over.
pub(super) fn entries(asking: Asking, name: &str, works: (Work, Work)) -> El {
    el("details")
        .class("dw-entries-place")
        .attr("open", "")
        .child(el("summary").child(name))
        .child(fields("dw-entries", asking, works))
}

/// The same of a class, without a name.
pub(super) fn fields(class: &str, asking: Asking, (made, read): (Work, Work)) -> El {
    let desk = asking.desk;
    let left = RwSignal::new(0_u32);
    let fields = el("div").class(class);
    let element = fields.dom().clone();
    let place = element.clone();
    let mut last = String::new();
    Effect::new(move |_| {
        left.track();
        let html = asking.text(made, &[]);
        let found = |what| element.query_selector(what).ok().flatten();
        // What is put there anew takes the focus away, which asks for it once more.
        if last == html || found("input:focus, [aria-invalid]").is_some() {
            return;
        }
        if found(":active").is_some() {
            once_let_go(element.clone(), left);
            return;
        }
        let held = found(":focus").map(|held| held.id());
        element.set_inner_html(&html);
        last = html;
        if let Some(held) = held {
            // What was pressed to take something away has gone with it.
            let held = document()
                .get_element_by_id(&held)
                .or_else(|| found("select"));
            if let Some(held) = held {
                let _ = held.unchecked_into::<HtmlElement>().focus();
            }
        }
    });
    let take = move |input: &Element, name: &str, text: &str| {
        let kind = format!("{} {name} {text}", read.name());
        let taken = make((desk, asking.workshop), &kind, &[], name);
        tell(input, taken.err().as_deref());
    };
    fields
        .on("input", move |event| {
            if let Some((input, name)) = entry(&event) {
                take(&input, &name, &typed(&event));
            }
        })
        .on("click", move |event| {
            if let Some((button, name)) = entry(&event)
                && button.tag_name() == "BUTTON"
            {
                // Every press is a step of its own.
                desk.part();
                take(
                    &button,
                    &name,
                    &button.get_attribute("value").unwrap_or_default(),
                );
            }
        })
        .on("focusout", move |_| {
            desk.part();
            // The focus has gone when this turn is over.
            once_let_go(place.clone(), left);
        })
}

/// Looks again in the next frame in which nothing is pressed: what is replaced under a press never hears of it.
fn once_let_go(place: Element, left: RwSignal<u32>) {
    request_animation_frame(move || {
        if place.query_selector(":active").ok().flatten().is_some() {
            once_let_go(place, left);
        } else {
            left.update(|left| *left = left.wrapping_add(1));
        }
    });
}

/// The field that an event is of, and its name.
fn entry(event: &Event) -> Option<(Element, String)> {
    let input: Element = event.target()?.dyn_into().ok()?;
    let name = input.get_attribute("data-entry")?;
    Some((input, name))
}

/// Puts a sentence at a field, or takes it away.
fn tell(input: &Element, sentence: Option<&str>) {
    let note = document().get_element_by_id(&format!("{}-fault", input.id()));
    if let Some(note) = note {
        note.set_text_content(sentence);
    }
    let field = input.closest(".dw-field").ok().flatten();
    let classes = field.map(|field| field.class_list());
    if sentence.is_some() {
        let _ = input.set_attribute("aria-invalid", "true");
        let _ = classes.map(|classes| classes.add_1("dw-field--wrong"));
    } else {
        let _ = input.remove_attribute("aria-invalid");
        let _ = classes.map(|classes| classes.remove_1("dw-field--wrong"));
    }
}
