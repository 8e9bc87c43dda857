//! Beginning to read at the top.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Scrolls to the top of the page and gives the focus to an element there, so that who listens hears what has opened.
pub(crate) fn go_to_top(id: &str) {
    window().scroll_to_with_x_and_y(0.0, 0.0);
    focus(id);
}

/// Scrolls an element to the top of the window and gives it the focus, so that who listens goes on from there.
pub(crate) fn go_to(id: &str) {
    if let Some(element) = document().get_element_by_id(id) {
        element.scroll_into_view();
    }
    focus(id);
}

fn focus(id: &str) {
    let element = document().get_element_by_id(id);
    if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        // A head that can't be focused is read all the same.
        let _ = element.focus();
    }
}
