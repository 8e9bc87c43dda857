//! A link that carries the open project: copied, or shown where the browser does not let a page copy.

use leptos::prelude::*;

use super::parts::{button, flag, words};
use crate::element::{El, el, when};
use crate::hooks::link::{Made, copy_link as copy};
use crate::state::{Desk, use_desk};

/// The last link, until it is left: empty where it lies in the clipboard, itself where it has to be copied by hand.
pub(super) type LastLink = RwSignal<Option<String>>;

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
        Made::Copied => last.set(Some(String::new())),
        Made::Here(link) => last.set(Some(link)),
        Made::Refused(sentence) => desk.refuse_link(sentence),
    });
}

/// What became of the last link.
pub(super) fn copied_link(last: LastLink) -> El {
    let link = words(move || last.get().unwrap_or_default());
    let sentence = words(move || {
        let sentence = if link.get().is_empty() {
            "Link copied. It carries the project as it is now, and nothing was sent anywhere."
        } else {
            "The browser does not let this page copy. Copy the link from here; it carries the project as it is now."
        };
        sentence.to_owned()
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
