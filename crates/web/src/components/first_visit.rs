//! The empty page: three ways in and one sentence with blanks, answered at each key.

mod sentence;

use dewrun_drawing::{first_answer, html};
use leptos::prelude::*;

use super::opened_figure::opened_figure;
use super::parts::{button, flag, words};
use super::preview::preview;
use super::section_head::section_head;
use super::stale_note::stale_note;
use super::toggle::Toggle;
use super::worked_cases::worked_cases;
use crate::element::{El, el};
use crate::state::use_desk;
use dewrun_desk::{Stage, Way};
use sentence::sentence;

/// What each way gets so far.
const LEADS: [&str; 3] = [
    "Overwrite what the drawing says; the answer follows each key. Then draw the route and refine it leg by leg.",
    "Overwrite what you are fitting. Drawn, it is split into legs, each with its own fall and space; where a trap goes is not worked out yet.",
    "Enter the air of an hour in which the trouble came. Wet: water may be the cause. Dry: look for another one first. Other causes are not weighed yet.",
];

/// The empty page.
pub(crate) fn first_visit() -> Vec<El> {
    let desk = use_desk();
    let way = Memo::new(move |before: Option<&usize>| match desk.stage() {
        Stage::First(way) => way.place(),
        // The page is about to go.
        _ => before.copied().unwrap_or_default(),
    });
    let lead = words(move || LEADS.get(way.get()).copied().unwrap_or_default().to_owned());
    let told = move || {
        let style = desk.style();
        desk.answered()
            .map(|answered| first_answer(&answered.outcome, style))
    };
    let answer = words(move || told().map_or_else(String::new, |answer| html::sentence(&answer)));
    let beside = words(move || told().map_or_else(String::new, |answer| html::asides(&answer)));
    let is_stale = flag(move || desk.is_stale());
    let toggle = Toggle {
        label: "What you have",
        name: "I have",
        kind: "dw-toggle--words",
        options: &Way::WORDS,
        spoken: "",
        chosen: way.into(),
        choose: Callback::new(move |at: usize| desk.go_to(Stage::First(Way::ALL[at]))),
    };
    let told = el("div")
        .class("dw-first__words")
        .class_if("dw-stale", is_stale)
        .child(
            el("p")
                .class("dw-first__told")
                .attr("role", "status")
                .html(answer),
        )
        .child(el("p").class("dw-first__beside").html(beside));
    let draw =
        button("dw-button dw-button--first", move || desk.draw_route()).child("Draw this route");
    let first = el("section")
        .class("dw-first")
        .attr("aria-label", "First answer")
        .attr("data-opens", "first")
        .child(toggle.control())
        .child(el("p").class("dw-first__lead").child(lead))
        .child(sentence())
        .child(el("div").class("dw-first__answer").child(draw).child(told))
        .child(stale_note())
        .child(opened_figure("first"));
    let route = el("section")
        .attr("aria-labelledby", "route")
        .child(section_head(
            "route",
            "Route",
            "Drawn from the sentence",
            [],
        ))
        .child(preview());
    let page = el("div")
        .class("dw-page")
        .child(route)
        .child(worked_cases(true));
    vec![first, page]
}
