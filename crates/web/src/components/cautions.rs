//! What every reader of a result must know: this is a life-safety device.

use crate::element::{El, el};

/// The foot of the page.
pub(crate) fn cautions() -> El {
    el("footer")
        .class("dw-cautions")
        .attr("aria-label", "Cautions")
        .inert(concat!(
            include_str!("../../../drawing/src/html/cautions.html"),
            include_str!("does_not_answer.html")
        ))
}
