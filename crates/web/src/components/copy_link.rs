//! A link that carries the open project: copied, or shown where the browser does not let a page copy.

use leptos::prelude::*;

use super::parts::{button, flag, words};
use crate::element::{El, el, when};
use crate::hooks::link::{Made, copy_link as copy};
use crate::state::{Desk, use_desk};

/// What there is to tell of the last link.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Told {
    /// It lies in the clipboard.
    Copied,
    /// It has to be copied by hand.
    ByHand(String),
}

/// The last link, until it is left.
pub(super) type LastLink = RwSignal<Option<Told>>;

/// The way to a link.
pub(super) fn copy_link(last: LastLink) -> El {
    let desk = use_desk();
    button("dw-act", move || make(desk, last))
        .child(el("span").class("dw-open__what").child("Copy "))
        .child(el("span").class("dw-copied__word").child("link"))
}

fn make(desk: Desk, last: LastLink) {
    last.set(None);
    let Some(text) = desk.link_text() else { return };
    copy(text, move |made| match made {
        Made::Copied => last.set(Some(Told::Copied)),
        Made::Here(link) => last.set(Some(Told::ByHand(link))),
        Made::Refused(sentence) => desk.refuse_link(sentence),
    });
}

/// What became of the last link.
pub(super) fn copied_link(last: LastLink) -> El {
    let sentence = words(move || {
        let sentence = match last.get() {
            Some(Told::ByHand(_)) => {
                "The browser does not let this page copy. Copy the link from here; it carries the project as it is now."
            }
            _ => "Link copied. It carries the project as it is now, and nothing was sent anywhere.",
        };
        sentence.to_owned()
    });
    let link = words(move || match last.get() {
        Some(Told::ByHand(link)) => link,
        _ => String::new(),
    });
    let by_hand = flag(move || !link.get().is_empty());
    let told = when(flag(move || last.get().is_some()), move || {
        let shown = when(by_hand, move || {
            vec![
                el("input")
                    .class("dw-copied__link")
                    .attr("readonly", "")
                    .attr("aria-label", "Link to copy")
                    .value(link),
            ]
        });
        let leave = button("dw-button", move || last.set(None)).child("Done");
        let told = el("p").child(sentence);
        vec![
            el("div")
                .class("dw-notice")
                .child(told)
                .child(shown)
                .child(leave),
        ]
    });
    el("div").attr("role", "status").child(told)
}
