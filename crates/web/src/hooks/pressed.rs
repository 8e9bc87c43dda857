//! Presses of elements that carry what is to happen in an attribute, wherever on the page they are.

use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// Runs something with the nearest element around each press that matches a selector.
pub(crate) fn on_pressed(selector: &'static str, act: impl Fn(&Element) + 'static) {
    let listening = window_event_listener(ev::click, move |event| {
        let target = event
            .target()
            .and_then(|target| target.dyn_into::<Element>().ok());
        let found = target.and_then(|element| element.closest(selector).ok().flatten());
        if let Some(element) = found {
            act(&element);
        }
    });
    on_cleanup(move || listening.remove());
}
