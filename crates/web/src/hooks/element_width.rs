//! How much room an element has, and how large the page's text is.

use dewrun_quantity::parse;
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{HtmlElement, ResizeObserver};

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
pub(crate) fn use_element_room(element: NodeRef<Div>) -> ReadSignal<ElementRoom> {
    let (room, set_room) = signal(ElementRoom {
        width: 0.0,
        text: 1.0,
    });
    Effect::new(move |_| {
        let Some(element) = element.get() else { return };
        let element: HtmlElement = element.unchecked_into();
        let watched = element.clone();
        let measure = move || {
            let now = ElementRoom {
                width: f64::from(watched.client_width()),
                text: root_text_px() / USUAL_TEXT,
            };
            if room.get_untracked() != now {
                set_room.set(now);
            }
        };
        measure();
        let resized = Closure::<dyn FnMut()>::new(measure);
        if let Ok(observer) = ResizeObserver::new(resized.as_ref().unchecked_ref()) {
            observer.observe(&element);
            let kept = StoredValue::new_local((observer, resized));
            on_cleanup(move || {
                // The observer must not call a closure that is gone.
                kept.try_update_value(|(observer, _)| observer.disconnect());
            });
        }
    });
    room
}

fn root_text_px() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.and_then(|size| parse::number(size.trim_end_matches("px")).ok())
        .unwrap_or(USUAL_TEXT)
}
