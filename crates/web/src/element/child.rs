//! What stands in an element: text, elements, and parts that come and go.

use leptos::prelude::*;
use web_sys::{Element, Node};

use super::El;
use super::live::follow;

/// What can stand in an element.
pub(crate) enum Child {
    Text(String),
    Live(Signal<String>),
    One(El),
    Many(Vec<El>),
    /// A part that is there as long as a signal holds.
    When(Signal<bool>, Make),
    /// As many parts as a signal says.
    Rows(Signal<usize>, Box<dyn Fn(usize) -> Vec<El>>),
    /// A part that is made anew whenever a signal that it was made by changes.
    Each(Make),
}

/// Makes a part of the page.
type Make = Box<dyn Fn() -> Vec<El>>;

/// A part that is there as long as a signal holds, and made anew each time.
pub(crate) fn when(holds: Signal<bool>, make: impl Fn() -> Vec<El> + 'static) -> Child {
    Child::When(holds, Box::new(make))
}

/// Parts that are told apart by their position.
pub(crate) fn rows(count: Signal<usize>, make: impl Fn(usize) -> Vec<El> + 'static) -> Child {
    Child::Rows(count, Box::new(make))
}

/// A part that is made anew whenever a signal that it was made by changes.
pub(crate) fn each(make: impl Fn() -> Vec<El> + 'static) -> Child {
    Child::Each(Box::new(make))
}

impl From<&str> for Child {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Child {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<Signal<String>> for Child {
    fn from(text: Signal<String>) -> Self {
        Self::Live(text)
    }
}

impl From<El> for Child {
    fn from(element: El) -> Self {
        Self::One(element)
    }
}

impl From<Vec<El>> for Child {
    fn from(elements: Vec<El>) -> Self {
        Self::Many(elements)
    }
}

impl<const N: usize> From<[El; N]> for Child {
    fn from(elements: [El; N]) -> Self {
        Self::Many(elements.into())
    }
}

pub(super) fn append(parent: &Element, child: Child) {
    match child {
        Child::Text(text) => put(parent, &document().create_text_node(&text), None),
        Child::Live(text) => {
            let node = document().create_text_node("");
            put(parent, &node, None);
            follow(move || text.with(|text| node.set_data(text)));
        }
        Child::One(element) => put(parent, element.dom(), None),
        Child::Many(elements) => {
            for element in elements {
                put(parent, element.dom(), None);
            }
        }
        Child::When(holds, make) => {
            let count = Memo::new(move |_| usize::from(holds.get()));
            append_rows(parent, count.into(), Box::new(move |_| make()));
        }
        Child::Rows(count, make) => append_rows(parent, count, make),
        Child::Each(make) => append_each(parent, make),
    }
}

/// One part of several, and what it keeps alive.
struct Part {
    owner: Owner,
    elements: Vec<El>,
}

impl Part {
    /// Makes a part and puts it before a mark.
    fn before(mark: &Node, owner: Option<&Owner>, make: impl FnOnce() -> Vec<El>) -> Self {
        let owner = owner.map_or_else(Owner::new, Owner::child);
        let elements = owner.with(make);
        if let Some(parent) = mark.parent_node() {
            for element in &elements {
                put(&parent, element.dom(), Some(mark));
            }
        }
        Self { owner, elements }
    }

    fn go(self) {
        // Elements first: a field that has the focus still hears that it loses it.
        for element in &self.elements {
            element.dom().remove();
        }
        self.owner.cleanup();
    }
}

fn append_rows(parent: &Element, count: Signal<usize>, make: Box<dyn Fn(usize) -> Vec<El>>) {
    let (mark, owner) = (mark_in(parent), Owner::current());
    let mut parts = Vec::<Part>::new();
    follow(move || {
        let wanted = count.get();
        while wanted < parts.len() {
            parts.pop().map(Part::go);
        }
        for at in parts.len()..wanted {
            let part = untrack(|| Part::before(&mark, owner.as_ref(), || make(at)));
            parts.push(part);
        }
    });
}

fn append_each(parent: &Element, make: Make) {
    let (mark, owner) = (mark_in(parent), Owner::current());
    let mut last: Option<Part> = None;
    follow(move || {
        last.take().map(Part::go);
        last = Some(Part::before(&mark, owner.as_ref(), &make));
    });
}

/// A mark in an element, before which a part comes and goes.
fn mark_in(parent: &Element) -> Node {
    let mark: Node = document().create_comment("").into();
    put(parent, &mark, None);
    mark
}

fn put(parent: &Node, node: &Node, before: Option<&Node>) {
    // What is put in is new, and no part of itself.
    let _ = parent.insert_before(node, before);
}
