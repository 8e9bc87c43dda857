//! How the origin of a value is drawn, shown once by example.

use crate::element::{El, el};

/// Typed, assumed, measured, computed.
pub(super) fn origins() -> El {
    el("ul")
        .class("dw-origins")
        .attr("aria-label", "How the origin of a value is drawn")
        .inert(concat!(
            "<li class=\"dw-origins__one dw-origins__one--typed\">typed</li>",
            "<li class=\"dw-origins__one dw-origins__one--assumed\">assumed</li>",
            "<li class=\"dw-origins__one dw-origins__one--measured\">measured</li>",
            "<li>computed: no line, opens when pressed</li>",
        ))
}
