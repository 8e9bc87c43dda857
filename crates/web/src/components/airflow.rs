//! The section Airflow: what comes through, where the pressure goes, limits under a hand, and how the run is installed.

use std::sync::Arc;

use dewrun_desk::{Answered, Work, style_as_numbers};
use dewrun_drawing::escaped;
use leptos::prelude::*;

use super::entries::entries;
use super::limits::limits;
use super::opened_figure::opened_figure;
use super::parts::{section, table_behind, words};
use super::section_head::section_head;
use crate::element::{El, el};
use crate::hooks::after_paint::use_after_paint;
use crate::hooks::element_width::{ElementRoom, use_element_room};
use crate::hooks::workshop::{Told, Workshop, use_workshop};
use crate::state::{Desk, use_desk};

/// Narrower than this nothing can be drawn, px.
const LEAST: f64 = 160.0;

/// What the second module is asked about; free to copy.
#[derive(Clone, Copy)]
pub(super) struct Asking {
    pub(super) desk: Desk,
    pub(super) workshop: Workshop,
    answered: ReadSignal<Option<Arc<Answered>>>,
    room: ReadSignal<ElementRoom>,
}

impl Asking {
    /// What is asked about the open run, in the room that an element has.
    pub(super) fn of(place: &El) -> Self {
        let desk = use_desk();
        Self {
            desk,
            workshop: use_workshop(),
            answered: use_after_paint(desk.settled()),
            room: use_element_room(place),
        }
    }

    /// Its text, or why there is none; nothing before it stands.
    pub(super) fn text(self, work: Work, more: &[f64]) -> String {
        let room = self.room.get();
        let Some(answered) = self.answered.get().filter(|_| LEAST <= room.width) else {
            return String::new();
        };
        let mut numbers = style_as_numbers(self.desk.style()).to_vec();
        numbers.extend([room.width, room.text]);
        numbers.extend(more);
        match self.workshop.ask(work.name(), &answered, &numbers) {
            Some(Ok(Told::Text(text))) => text,
            // Its sentence stands once, over the section.
            Some(Err(sentence)) if work == Work::Airflow => {
                format!("<span class=\"dw-fault\">{}</span>", escaped(&sentence))
            }
            _ => String::new(),
        }
    }
}

/// The section of the airflow.
pub(crate) fn airflow() -> El {
    let place = el("div").class("dw-airflow");
    let asking = Asking::of(&place);
    let told = move |work| words(move || asking.text(work, &[]));
    let tables = el("div")
        .class("dw-airflow__tables")
        .html(told(Work::AirflowTables));
    let place = place
        .child(el("p").class("dw-airflow__head").html(told(Work::Airflow)))
        .child(el("div").html(told(Work::AirflowCharts)))
        .child(limits(asking))
        .child(table_behind("The airflow as tables", "", [tables]))
        .child(entries(
            asking,
            "How it is installed",
            (Work::Entries, Work::Entered),
        ));
    section("dw-airflow-section", "airflow", "airflow")
        .child(section_head(
            "airflow",
            "Airflow",
            "Does the air still arrive, and would the limits notice?",
            [],
        ))
        .child(place)
        .child(opened_figure("airflow"))
}
