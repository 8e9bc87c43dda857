//! The section Year: what stands in it is put there by the script of the sections that the second module fills.

use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};

/// The section of the year.
pub(crate) fn year() -> El {
    section("dw-year-section", "year", "year")
        .child(section_head("year", "Year", "When does it happen?", []))
        .child(el("div").class("dw-year"))
}
