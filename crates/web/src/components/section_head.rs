//! The head of a section: its name, the question that it answers, and its options.

use crate::element::{El, Part, el};

/// A ruled line, a name and a question, and what can be chosen in the section; `id` is that by which it is named.
pub(super) fn section_head<const N: usize>(
    id: &str,
    name: &str,
    question: &str,
    options: [Part; N],
) -> El {
    let chosen = options
        .into_iter()
        .fold(el("div").class("dw-section-head__options"), El::child);
    el("div")
        .class("dw-section-head")
        .child(
            el("h2")
                .attr("id", id)
                .attr("tabindex", "-1")
                .class("dw-section-head__name")
                .child(name),
        )
        .child(el("p").class("dw-section-head__question").child(question))
        .child(chosen)
}
