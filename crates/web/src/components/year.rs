//! The section Year: what it shows is put there by a script, what it goes by stands in fields of the second module.

use dewrun_desk::Work;

use super::airflow::Asking;
use super::entries::entries;
use super::opened_figure::opened_figure;
use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};

/// The section of the year.
pub(crate) fn year() -> El {
    let place = el("div");
    let asking = Asking::of(&place);
    let fields = entries(
        asking,
        "What the year goes by",
        (Work::YearEntries, Work::YearEntered),
    );
    section("dw-year-section", "year", "year")
        .child(section_head("year", "Year", "When does it happen?", []))
        .child(el("div").class("dw-year"))
        .child(opened_figure("year"))
        .child(place.child(fields))
}
