//! One of a few words, the chosen one set off.

use leptos::prelude::*;

use super::parts::{button, spoken, words};
use crate::element::{El, el};

/// A choice of one of a few words.
pub(super) struct Toggle {
    /// What is chosen, for those who listen.
    pub(super) label: &'static str,
    /// The same in a word for those who see, empty where the options say enough.
    pub(super) name: &'static str,
    /// How it is drawn: `dw-toggle--box` or `dw-toggle--words`.
    pub(super) kind: &'static str,
    /// The words.
    pub(super) options: &'static [&'static str],
    /// What is spoken after each.
    pub(super) spoken: &'static str,
    /// Which one is chosen.
    pub(super) chosen: Signal<usize>,
    /// Chooses one.
    pub(super) choose: Callback<usize>,
}

impl Toggle {
    /// The control.
    pub(super) fn control(self) -> El {
        let (chosen, choose) = (self.chosen, self.choose);
        let name = el("span")
            .class("dw-toggle__name")
            .attr("aria-hidden", "true")
            .child(self.name);
        let made = el("div")
            .class(&format!("dw-toggle {}", self.kind))
            .attr("role", "group")
            .attr("aria-label", self.label)
            .child(name);
        self.options
            .iter()
            .enumerate()
            .fold(made, |made, (at, word)| {
                made.child(
                    button("dw-toggle__word", move || choose.run(at))
                        .live_attr(
                            "aria-pressed",
                            words(move || (chosen.get() == at).to_string()),
                        )
                        .child(*word)
                        .child(spoken().child(self.spoken)),
                )
            })
    }
}
