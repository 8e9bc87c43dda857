//! The empty page: three ways in, what each asks, and an answer at each tap and key.

mod drawing;
mod fitting;
mod question;
mod sentence;

use dewrun_drawing::{first_answer, html};
use leptos::prelude::*;

use super::opened_figure::opened_figure;
use super::parts::{button, flag, words};
use super::preview::preview;
use super::projects::projects;
use super::section_head::section_head;
use super::stale_note::stale_note;
use super::toggle::Toggle;
use super::troubles::likely_causes;
use super::worked_cases::worked_cases;
use crate::element::{El, each, el};
use crate::state::use_desk;
use dewrun_desk::{Question, Stage, Way};
use drawing::drawing;
use fitting::fitting;
use question::question;

/// The empty page.
pub(crate) fn first_visit() -> Vec<El> {
    let desk = use_desk();
    let place = Memo::new(move |before: Option<&usize>| match desk.stage() {
        Stage::First(way) => way.place(),
        // The page is about to go.
        _ => before.copied().unwrap_or_default(),
    });
    let told = Memo::new(move |_| {
        let (way, style) = (Way::ALL[place.get()], desk.style());
        let Some(answered) = desk.answered() else {
            return <[String; 2]>::default();
        };
        let outcome = &answered.outcome;
        let begins = desk.with(|project| way.begins(project));
        let answer = first_answer(outcome, &begins, way.beside(outcome.verdict), style);
        [html::sentence(&answer), html::asides(&answer)]
    });
    let part = move |at: usize| words(move || told.with(|told| told[at].clone()));
    let is_stale = flag(move || desk.is_stale());
    let toggle = Toggle {
        label: "What you have",
        name: "I have",
        kind: "dw-toggle--words",
        options: &Way::WORDS,
        spoken: "",
        chosen: place.into(),
        choose: Callback::new(move |at: usize| desk.go_to(Stage::First(Way::ALL[at]))),
    };
    let told = el("div")
        .class("dw-first__words")
        .class_if("dw-stale", is_stale)
        .child(
            el("p")
                .class("dw-first__told")
                .attr("role", "status")
                .html(part(0)),
        )
        .child(el("p").class("dw-first__beside").html(part(1)));
    let draw =
        button("dw-button dw-button--first", move || desk.draw_route()).child("Draw this route");
    let asked = each(move || {
        let way = Way::ALL[place.get()];
        let lead = el("p").class("dw-first__lead").child(way.lead());
        let asked = untrack(|| match way {
            Way::Drawing => drawing(),
            Way::Fitting => fitting(),
            Way::Trouble => trouble(),
        });
        let class = match way {
            Way::Trouble => "dw-first__asked dw-first__asked--counted",
            _ => "dw-first__asked",
        };
        vec![lead, el("div").class(class).child(asked)]
    });
    let first = el("section")
        .class("dw-first")
        .attr("aria-label", "First answer")
        .attr("data-opens", "first")
        .child(toggle.control())
        .child(asked)
        .child(el("div").class("dw-first__answer").child(draw).child(told))
        .child(stale_note())
        .child(each(move || match Way::ALL[place.get()] {
            Way::Trouble => vec![untrack(likely_causes)],
            _ => Vec::new(),
        }))
        .child(opened_figure("first"));
    let route = el("section")
        .attr("aria-labelledby", "route")
        .child(section_head(
            "route",
            "Route",
            "Drawn from what you answered",
            [],
        ))
        .child(preview());
    let page = el("div")
        .class("dw-page")
        .child(route)
        .child(projects())
        .child(worked_cases(true));
    vec![first, page]
}

/// What a technician is asked, one under another.
fn trouble() -> Vec<El> {
    let asked = Question::TROUBLE.into_iter();
    asked.map(|asked| question(asked, "")).collect()
}
