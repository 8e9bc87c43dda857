//! How much room an element has, and how large the page's text is.

use dewrun_quantity::parse;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

use crate::element::El;

/// Size of the page's text where nobody has changed it, CSS px.
const USUAL_TEXT: f64 = 16.0;

/// Room that an element gives to a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ElementRoom {
    /// Width, CSS px; 0 before the element is there.
    pub(crate) width: f64,
    /// The page's text over its usual size.
    pub(crate) text: f64,
}

/// Watches the width of an element.
pub(crate) fn use_element_room(element: &El) -> ReadSignal<ElementRoom> {
    let (room, set_room) = signal(ElementRoom {
        width: 0.0,
        text: 1.0,
    });
    let watched = element.dom().clone();
    let measure = move || {
        let now = ElementRoom {
            width: f64::from(watched.client_width()),
            text: root_text_px() / USUAL_TEXT,
        };
        if room.try_get_untracked().is_some_and(|before| before != now) {
            set_room.set(now);
        }
    };
    // The observer calls first when the element has got its place.
    let resized = Closure::<dyn FnMut()>::new(measure);
    if let Ok(observer) = ResizeObserver::new(resized.as_ref().unchecked_ref()) {
        observer.observe(element.dom());
        let kept = SendWrapper::new((observer, resized));
        on_cleanup(move || {
            // The observer must not call a closure that is gone.
            kept.0.disconnect();
        });
    }
    room
}

fn root_text_px() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.and_then(|size| parse::number(size.trim_end_matches("px")).ok())
        .unwrap_or(USUAL_TEXT)
}
