//! The section Year: what it shows is put there by a script, what it goes by stands in fields of the second module.

use dewrun_desk::{Work, style_as_numbers};
use dewrun_document::read_keeping_years;
use leptos::prelude::*;

use super::airflow::Asking;
use super::entries::entries;
use super::opened_figure::opened_figure;
use super::parts::section;
use super::section_head::section_head;
use crate::element::{El, el};
use crate::hooks::workshop::use_workshop;
use crate::hooks::year::Follower;
use crate::state::use_desk;

/// The year follows the open run: it is on its way before the sections are told anew and before the paint.
pub(crate) fn follow_year() {
    let (desk, workshop) = (use_desk(), use_workshop());
    let settled = desk.settled();
    let follower = Follower::new(move |text| {
        if let Ok(taken) = read_keeping_years(&text) {
            desk.change("Year", |project| project.project = taken);
        }
    });
    Effect::new(move |_| {
        let answered = settled.get()?;
        let numbers = style_as_numbers(desk.style());
        let told = workshop.text(Work::YearOf.name(), &answered, &numbers)?;
        follower.follow(&told);
        Some(())
    });
}

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
