//! The section Remedies: what it shows is put there by a script, once the year stands.

use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};

/// The section of remedies over the year.
pub(crate) fn cures() -> El {
    let question = "What is the smallest change that makes it dry enough?";
    section("dw-cures-section", "remedies", "remedies")
        .child(section_head("remedies", "Remedies", question, []))
        .child(el("div").class("dw-cures"))
}
