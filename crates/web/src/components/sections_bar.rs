//! The names of the sections at the thumb, on a phone.

use leptos::prelude::*;

use super::parts::{button, words};
use crate::element::{El, el};
use crate::hooks::section_in_view::use_section_in_view;
use crate::hooks::top::go_to;

/// The sections that have content, in the order of the page: each by the id of its head.
const IDS: [&str; 9] = [
    "route", "legs", "air", "year", "remedies", "airflow", "sensor", "troubles", "sheets",
];
const NAMES: [&str; 9] = [
    "Route", "Legs", "Air", "Year", "Remedies", "Airflow", "Sensor", "Troubles", "Sheets",
];

/// The bar; wide pages have no need of it and do not show it.
pub(crate) fn sections_bar() -> El {
    let read = use_section_in_view(&IDS);
    let bar = el("nav")
        .class("dw-sections")
        .attr("aria-label", "Sections");
    (0..IDS.len()).fold(bar, |bar, at| {
        let is_read = words(move || (read.get() == at).to_string());
        bar.child(
            button("dw-sections__name", move || go_to(IDS[at]))
                .live_attr("aria-current", is_read)
                .child(NAMES[at]),
        )
    })
}
