//! The section Remedies: its target is a sentence with blanks of the second module; what it shows is put there by a script, once the year stands.

use dewrun_desk::Work;

use super::airflow::Asking;
use super::entries::fields;
use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};

/// The section of remedies over the year.
pub(crate) fn cures() -> El {
    let question = "What is the smallest change that makes it dry enough?";
    let place = el("div");
    let asking = Asking::of(&place);
    let target = fields("", asking, (Work::Target, Work::TargetEntered));
    section("dw-cures-section", "remedies", "remedies")
        .child(section_head("remedies", "Remedies", question, []))
        .child(place.child(target).child(el("div").class("dw-cures")))
}
