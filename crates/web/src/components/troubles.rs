//! The section Troubles: what it shows is put there by a script, once the section is in sight.

use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};

/// The section of causes, checks and the log.
pub(crate) fn troubles() -> El {
    section("dw-troubles-section", "troubles", "troubles")
        .child(section_head(
            "troubles",
            "Troubles",
            "Why do they keep coming back?",
            [],
        ))
        .child(el("div").class("dw-troubles"))
}
