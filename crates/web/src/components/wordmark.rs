//! The sign of the page: a tube with a low point in which water stands.

use crate::element::{El, svg_el};

/// The sign alone, for those who see it.
pub(super) fn wordmark() -> El {
    svg_el("svg")
        .attr("class", "dw-wordmark")
        .attr("viewBox", "0 0 56 30")
        .attr("width", "28")
        .attr("height", "15")
        .attr("aria-hidden", "true")
        .inert("<path class=\"dw-wordmark__water\" d=\"M21 18.5 28 23l7-4.5z\"/><path class=\"dw-wordmark__tube\" d=\"M2 2l26 17 26-12M2 11l26 17 26-12\"/>")
}
