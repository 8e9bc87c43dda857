//! Signals of one type only, so that the page stays small.

use leptos::prelude::*;

use crate::element::{El, el};

/// Words that follow from the state of the page.
pub(super) fn words(words: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    derived(Box::new(words))
}

/// Whether something holds.
pub(super) fn flag(holds: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    derived(Box::new(holds))
}

/// A signal of what is boxed, so that the program holds its making once for each type.
fn derived<T: Send + Sync + 'static>(read: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T> {
    Signal::derive(read)
}

/// A button that does something.
pub(super) fn button(class: &str, mut act: impl FnMut() + 'static) -> El {
    el("button")
        .attr("type", "button")
        .class(class)
        .on("click", move |_| act())
}

/// A part of a page under a name of its own.
pub(super) fn section(class: &str, named_by: &str, opens: &str) -> El {
    el("section")
        .class(class)
        .attr("aria-labelledby", named_by)
        .attr("data-opens", opens)
}

/// Words for those who listen only.
pub(super) fn spoken() -> El {
    el("span").class("dw-spoken")
}

/// Tables behind a drawing, folded away under a name.
pub(super) fn table_behind<const N: usize>(name: &str, class: &str, tables: [El; N]) -> El {
    let room = el("div")
        .class(&format!("dw-scroll {class}"))
        .attr("role", "region")
        .attr("aria-label", name)
        .attr("tabindex", "0")
        .child(tables);
    el("details")
        .class("dw-table-behind")
        .child(el("summary").child(name))
        .child(room)
}
