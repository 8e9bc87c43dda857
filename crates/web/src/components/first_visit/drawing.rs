//! What is asked of a duct on a drawing: rows to tap, the sentence with blanks, and in which weather it is worst.

use dewrun_drawing::weather_answer;
use leptos::prelude::*;

use super::question::question;
use super::sentence::sentence;
use crate::components::parts::words;
use crate::element::{El, el};
use crate::hooks::after_paint::use_after_paint;
use crate::state::use_desk;
use dewrun_desk::{Question, weathers};

/// What is asked of it.
pub(super) fn drawing() -> Vec<El> {
    let desk = use_desk();
    // Four runs more are worked out: never before the answer to this one is seen.
    let answered = use_after_paint(Signal::derive(move || desk.answered()));
    let worst = words(move || {
        if answered.get().is_none() {
            return String::new();
        }
        let weathers = desk.with_untracked(weathers);
        let outcomes = weathers.iter().map(|(word, it)| (*word, &it.outcome));
        let outcomes: Vec<_> = outcomes.collect();
        weather_answer(&outcomes, desk.style())
    });
    let asked = [
        Question::Air,
        Question::Weather,
        Question::Spaces,
        Question::Tube,
    ];
    let mut parts: Vec<El> = asked.map(|asked| question(asked, "")).into();
    parts.push(el("p").class("dw-first__worst").child(worst));
    parts.extend(sentence());
    parts
}
