//! Elements of the page, made one call a property.
//!
//! One type stands for every element, so that the program holds the making of elements once and not once for each shape:
//! a first visit loads a third less.
//! What changes is a signal; it is followed as long as the part of the page that made the element lives.

mod child;
mod live;
mod patch;
mod render;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, HtmlInputElement, HtmlSelectElement};

pub(crate) use child::{Child, Part, each, rows, when};
use live::follow;
pub(crate) use patch::patch;
pub use render::Root;

const SVG: &str = "http://www.w3.org/2000/svg";

/// An element of the page.
#[derive(Debug, Clone)]
pub struct El(Element);

/// A new element.
pub(crate) fn el(tag: &str) -> El {
    let made = document().create_element(tag);
    El(made.unwrap_or_else(|_| not_made()))
}

/// A new element of a drawing.
pub(crate) fn svg_el(tag: &str) -> El {
    let made = document().create_element_ns(Some(SVG), tag);
    El(made.unwrap_or_else(|_| not_made()))
}

/// Tags are written in this program, so that a browser refuses none.
fn not_made() -> Element {
    unreachable!("a browser makes every element that has a valid name")
}

impl El {
    /// The element of the browser.
    pub(crate) fn dom(&self) -> &Element {
        &self.0
    }

    /// Sets an attribute.
    pub(crate) fn attr(self, name: &str, value: &str) -> Self {
        // Names are written in this program; a browser refuses none of them.
        let _ = self.0.set_attribute(name, value);
        self
    }

    /// Sets the class.
    pub(crate) fn class(self, names: &str) -> Self {
        self.0.set_class_name(names);
        self
    }

    /// Adds text, an element, several elements, or a part that comes and goes.
    pub(crate) fn child(self, child: impl Child) -> Self {
        child.put_into(&self.0);
        self
    }

    /// An attribute that follows a signal.
    pub(crate) fn live_attr(self, name: &'static str, value: Signal<String>) -> Self {
        let element = self.0.clone();
        follow(move || {
            let _ = element.set_attribute(name, &value.get());
        });
        self
    }

    /// An attribute that is there as long as a signal holds something.
    pub(crate) fn maybe_attr(self, name: &'static str, value: Signal<Option<String>>) -> Self {
        let element = self.0.clone();
        follow(move || {
            let _ = match value.get() {
                Some(value) => element.set_attribute(name, &value),
                None => element.remove_attribute(name),
            };
        });
        self
    }

    /// An attribute without a value that is there as long as a signal holds.
    pub(crate) fn flag(self, name: &'static str, holds: Signal<bool>) -> Self {
        let element = self.0.clone();
        follow(move || {
            let _ = if holds.get() {
                element.set_attribute(name, "")
            } else {
                element.remove_attribute(name)
            };
        });
        self
    }

    /// A class that follows a signal.
    pub(crate) fn live_class(self, names: Signal<String>) -> Self {
        self.live_attr("class", names)
    }

    /// Adds a class as long as a signal holds, beside those that are set once.
    pub(crate) fn class_if(self, name: &'static str, holds: Signal<bool>) -> Self {
        let element = self.0.clone();
        follow(move || {
            let classes = element.class_list();
            let _ = if holds.get() {
                classes.add_1(name)
            } else {
                classes.remove_1(name)
            };
        });
        self
    }

    /// What stands in it follows a signal of mark-up.
    pub(crate) fn html(self, html: Signal<String>) -> Self {
        let element = self.0.clone();
        let mut last = String::new();
        follow(move || {
            html.with(|html| {
                // Most of a page stays as it is when one thing changes, and mark-up is dear to read.
                if last != *html {
                    patch(&element, html);
                    last.clone_from(html);
                }
            });
        });
        self
    }

    /// What stands in it, as mark-up that does not change.
    pub(crate) fn inert(self, html: &str) -> Self {
        self.0.set_inner_html(html);
        self
    }

    /// A property of its style that follows a signal, such as `--x`.
    pub(crate) fn live_style(self, name: &'static str, value: Signal<String>) -> Self {
        let element: web_sys::HtmlElement = self.0.clone().unchecked_into();
        follow(move || {
            let _ = element.style().set_property(name, &value.get());
        });
        self
    }

    /// The value of a field or a choice follows a signal.
    pub(crate) fn value(self, value: Signal<String>) -> Self {
        let element = self.0.clone();
        follow(move || {
            let value = value.get();
            if let Some(input) = element.dyn_ref::<HtmlInputElement>() {
                input.set_value(&value);
            } else if let Some(select) = element.dyn_ref::<HtmlSelectElement>() {
                select.set_value(&value);
            }
        });
        self
    }

    /// Does something at an event.
    pub(crate) fn on(self, event: &str, act: impl FnMut(Event) + 'static) -> Self {
        self.listen(event, Box::new(act));
        self
    }

    /// What stands in a field now.
    pub(crate) fn entered(&self) -> String {
        let input = self.0.dyn_ref::<HtmlInputElement>();
        input.map(HtmlInputElement::value).unwrap_or_default()
    }

    /// Gives it the focus, where it can have it.
    pub(crate) fn focus(&self) {
        if let Some(element) = self.0.dyn_ref::<web_sys::HtmlElement>() {
            let _ = element.focus();
        }
    }

    fn listen(&self, event: &str, act: Box<dyn FnMut(Event)>) {
        let act = Closure::wrap(act).into_js_value();
        // The browser lets go of the listener with the element.
        let _ = self
            .0
            .add_event_listener_with_callback(event, act.unchecked_ref());
    }
}

/// The text in the field that an event comes from.
pub(crate) fn typed(event: &Event) -> String {
    event_target_value(event)
}
