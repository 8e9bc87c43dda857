//! What stands in an element: text, elements, and parts that come and go.

use leptos::prelude::*;
use web_sys::{Element, Node};

use super::El;
use super::live::follow;

/// What can stand in an element.
pub(crate) trait Child {
    /// Puts it behind all that stands there.
    fn put_into(self, parent: &Element);
}

/// An element, or a part that comes and goes.
pub(crate) enum Part {
    /// Nothing at all.
    None,
    /// An element that stays.
    One(El),
    /// A part that is there as long as a signal holds.
    When(Signal<bool>, Make),
    /// As many parts as a signal says.
    Rows(Signal<usize>, Box<dyn Fn(usize) -> Vec<El>>),
    /// A part that is made anew whenever a signal that it was made by changes.
    Each(Make),
}

/// Makes a part of the page.
pub(crate) type Make = Box<dyn Fn() -> Vec<El>>;

/// A part that is there as long as a signal holds, and made anew each time.
pub(crate) fn when(holds: Signal<bool>, make: impl Fn() -> Vec<El> + 'static) -> Part {
    Part::When(holds, Box::new(make))
}

/// Parts that are told apart by their position.
pub(crate) fn rows(count: Signal<usize>, make: impl Fn(usize) -> Vec<El> + 'static) -> Part {
    Part::Rows(count, Box::new(make))
}

/// A part that is made anew whenever a signal that it was made by changes.
pub(crate) fn each(make: impl Fn() -> Vec<El> + 'static) -> Part {
    Part::Each(Box::new(make))
}

impl From<El> for Part {
    fn from(element: El) -> Self {
        Self::One(element)
    }
}

impl Child for &str {
    fn put_into(self, parent: &Element) {
        put(parent, &document().create_text_node(self), None);
    }
}

impl Child for String {
    fn put_into(self, parent: &Element) {
        self.as_str().put_into(parent);
    }
}

impl Child for Signal<String> {
    fn put_into(self, parent: &Element) {
        let node = document().create_text_node("");
        put(parent, &node, None);
        follow(move || self.with(|text| node.set_data(text)));
    }
}

impl Child for El {
    fn put_into(self, parent: &Element) {
        put(parent, self.dom(), None);
    }
}

impl<const N: usize> Child for [El; N] {
    fn put_into(self, parent: &Element) {
        for element in self {
            element.put_into(parent);
        }
    }
}

impl Child for Vec<El> {
    fn put_into(self, parent: &Element) {
        for element in self {
            element.put_into(parent);
        }
    }
}

impl Child for Part {
    fn put_into(self, parent: &Element) {
        match self {
            Self::None => {}
            Self::One(element) => element.put_into(parent),
            Self::When(holds, make) => {
                let count = Memo::new(move |_| usize::from(holds.get()));
                append_rows(parent, count.into(), Box::new(move |_| make()));
            }
            Self::Rows(count, make) => append_rows(parent, count, make),
            Self::Each(make) => append_each(parent, make),
        }
    }
}

/// One part of several, and what it keeps alive.
struct Shown {
    owner: Owner,
    elements: Vec<El>,
}

impl Shown {
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
    let mut parts = Vec::<Shown>::new();
    follow(move || {
        let wanted = count.get();
        for gone in parts.drain(wanted.min(parts.len())..).rev() {
            gone.go();
        }
        for at in parts.len()..wanted {
            let part = untrack(|| Shown::before(&mark, owner.as_ref(), || make(at)));
            parts.push(part);
        }
    });
}

fn append_each(parent: &Element, make: Make) {
    let (mark, owner) = (mark_in(parent), Owner::current());
    let mut last: Option<Shown> = None;
    follow(move || {
        if let Some(last) = last.take() {
            last.go();
        }
        last = Some(Shown::before(&mark, owner.as_ref(), &make));
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
