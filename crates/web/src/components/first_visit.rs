//! The empty page: three ways in and one sentence with blanks, answered at each key.

mod sentence;

use dewrun_drawing::{first_answer, html};
use leptos::prelude::*;

use super::opened_figure::OpenedFigure;
use super::parts::{flag, words};
use super::preview::Preview;
use super::section_head::SectionHead;
use super::stale_note::StaleNote;
use super::toggle::{Choosable, Toggle};
use super::worked_cases::WorkedCases;
use crate::state::use_desk;
use sentence::Sentence;

const WAYS: [Choosable; 3] = [
    Choosable {
        word: "a duct on a drawing",
        spoken: "",
    },
    Choosable {
        word: "a tube I am fitting",
        spoken: "",
    },
    Choosable {
        word: "a trouble that comes back",
        spoken: "",
    },
];

/// What each way gets so far.
const LEADS: [&str; 3] = [
    "Overwrite what the drawing says; the answer follows each key. Then draw the route and refine it leg by leg.",
    "Overwrite what you are fitting. Drawn, it is split into legs, each with its own fall and space; where a trap goes is not worked out yet.",
    "Enter the air of an hour in which the trouble came. Wet: water may be the cause. Dry: look for another one first. Other causes are not weighed yet.",
];

/// The empty page.
#[component]
pub(crate) fn FirstVisit() -> impl IntoView {
    let desk = use_desk();
    let way = RwSignal::new(0_usize);
    let lead = words(move || LEADS.get(way.get()).copied().unwrap_or_default().to_owned());
    let told = move || {
        let style = desk.style();
        desk.answered()
            .map(|answered| first_answer(&answered.outcome, style))
    };
    let answer = words(move || told().map_or_else(String::new, |answer| html::sentence(&answer)));
    let beside = words(move || told().map_or_else(String::new, |answer| html::asides(&answer)));
    let is_stale = flag(move || desk.is_stale());
    view! {
        <section class="dw-first" aria-label="First answer" data-opens="first">
            <Toggle
                label="What you have"
                name="I have"
                kind="dw-toggle--words"
                options=&WAYS
                chosen=way.into()
                choose=Callback::new(move |at| way.set(at))
            />
            <p class="dw-first__lead">{lead}</p>
            <Sentence />
            <div class="dw-first__answer">
                <button type="button" class="dw-button dw-button--first" on:click=move |_| desk.draw_route()>
                    "Draw this route"
                </button>
                <div class="dw-first__words" class=("dw-stale", is_stale)>
                    <p class="dw-first__told" role="status" inner_html=answer />
                    <p class="dw-first__beside" inner_html=beside />
                </div>
            </div>
            <StaleNote />
            <OpenedFigure section="first" />
        </section>
        <div class="dw-page">
            <section aria-labelledby="route">
                <SectionHead id="route" name="Route" question="Drawn from the sentence" />
                <Preview />
            </section>
            <WorkedCases first=true />
        </div>
    }
    .into_any()
}
