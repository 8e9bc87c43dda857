//! The route: elevation, profile under it, and the profile as a table.

use dewrun_drawing::html;
use dewrun_run::Tube;
use leptos::prelude::*;

use super::drawing::drawing;
use super::opened_figure::opened_figure;
use super::parts::{flag, section, table_behind, words};
use super::section_head::section_head;
use super::toggle::Toggle;
use crate::element::{El, el, when};
use crate::state::{Desk, use_desk};

const TUBES: [Tube; 2] = [Tube::Intake, Tube::Exhaust];
const WORDS: [&str; 2] = ["intake", "exhaust"];

/// The section of the route.
pub(crate) fn route_section() -> El {
    let desk = use_desk();
    let has_exhaust = flag(move || {
        desk.answered()
            .is_some_and(|answered| answered.outcome.exhaust.is_some())
    });
    let chosen = Signal::derive(move || usize::from(desk.tube() == Tube::Exhaust));
    // Behind the drawing it need not follow a hand.
    let settled = desk.settled();
    let table = words(move || {
        settled
            .get()
            .map(|answered| html::profile_table(&answered.view(desk.tube(), desk.style())))
            .unwrap_or_default()
    });
    let tubes = when(has_exhaust, move || {
        let toggle = Toggle {
            label: "Tube shown",
            name: "Tube",
            kind: "dw-toggle--words",
            options: &WORDS,
            spoken: " tube",
            chosen,
            choose: Callback::new(move |at: usize| desk.show_tube(TUBES[at])),
        };
        vec![toggle.control()]
    });
    let table = el("table")
        .class("dw-table")
        .attr("aria-label", "Temperatures and water along the tube")
        .html(table);
    section("dw-route", "route", "route")
        .child(section_head(
            "route",
            "Route",
            "Where does water form, and which way does it run?",
            [tubes],
        ))
        .child(drawing())
        .child(side_by_side(desk))
        .child(table_behind("The profile as a table", "", [table]))
        .child(opened_figure("route"))
}

/// The open layout and the one that it is compared with.
fn side_by_side(desk: Desk) -> El {
    let compared = words(move || {
        let both = desk.answered().zip(desk.compared_answer());
        both.map_or_else(String::new, |(open, other)| {
            let (tube, style) = (Tube::Intake, desk.style());
            html::side_by_side(&open.view(tube, style), &other.view(tube, style))
        })
    });
    let table = el("table")
        .class("dw-table")
        .attr("aria-label", "Open and compared variant")
        .html(compared);
    el("div")
        .class("dw-scroll dw-route__both")
        .flag("hidden", flag(move || desk.compared().is_none()))
        .child(table)
}
