//! The answer: one sentence, what stands beside it, and for what it still holds where an entry can't be used.

use dewrun_drawing::{Answer, answer, html};
use leptos::prelude::*;

use super::opened_figure::opened_figure;
use super::parts::{flag, words};
use super::remedies::remedies;
use super::stale_note::stale_note;
use crate::element::{El, el, when};
use crate::hooks::after_paint::use_after_paint;
use crate::hooks::scrolled::use_scrolled_past;
use crate::hooks::work::{Found, use_work};
use crate::hooks::workshop::{Told, use_workshop};
use crate::state::{Desk, use_desk};
use dewrun_desk::{Answered, Work, notes_html, style_as_numbers};

/// The answer; once scrolled past, its sentence stays at the top of the window.
pub(crate) fn answer_band() -> El {
    let desk = use_desk();
    let after_paint = use_after_paint(desk.settled());
    let asked = move || Some((after_paint.get()?, Vec::new()));
    let doubt = use_work(Work::Doubt, Signal::derive(asked));
    let styled = move || Some((after_paint.get()?, style_as_numbers(desk.style()).to_vec()));
    let styled = Signal::derive(styled);
    let cures = use_work(Work::Remedies, styled);
    // Every assumed value is taken to its ends, which takes longer than a frame.
    let ranked = use_work(Work::RestsOn, styled);
    let sentence = words(move || {
        told(desk, doubt, Work::Sentence, |_, answer| {
            html::sentence(answer)
        })
        .unwrap_or_else(|| "This run has no answer yet.".to_owned())
    });
    let beside = words(move || {
        let steady = |answered: &Answered, answer: &Answer| {
            html::asides(answer) + &notes_html(&answered.notes)
        };
        told(desk, doubt, Work::Beside, steady).unwrap_or_default()
    });
    let more =
        words(move || told(desk, doubt, Work::More, |_, _| String::new()).unwrap_or_default());
    let once_more = words(move || {
        let steady = |_: &Answered, answer: &Answer| html::plain_sentence(answer);
        told(desk, doubt, Work::PlainSentence, steady).unwrap_or_default()
    });
    let rests_on = words(move || match told_of_run(desk, ranked) {
        Some(Told::Text(text)) => text,
        _ => String::new(),
    });
    let is_stale = flag(move || desk.is_stale());
    let is_unsure = flag(move || !is_current(desk, doubt));
    let is_busy = words(move || {
        let all = [doubt, ranked, cures].map(|found| is_current(desk, found));
        let is_busy = all.contains(&false) && !use_workshop().lacks();
        is_busy.to_string()
    });
    let told = el("div")
        .class("dw-answer__words")
        .class_if("dw-stale", is_stale)
        .class_if("dw-answer__words--unsure", is_unsure)
        .child(
            el("p")
                .class("dw-answer__sentence")
                .attr("role", "status")
                .html(sentence),
        )
        .child(el("div").class("dw-answer__rests").html(rests_on))
        .child(el("p").class("dw-answer__beside").html(beside))
        .child(
            el("details")
                .class("dw-answer__more dw-rests")
                .flag("hidden", flag(move || more.with(String::is_empty)))
                .html(more),
        );
    let band = el("section")
        .class("dw-answer")
        .attr("aria-label", "Answer")
        .live_attr("aria-busy", is_busy)
        .attr("data-opens", "answer")
        .child(told)
        // Those of a year, put there by its script, stand for those of the conditions entered.
        .child(el("div").class("dw-answer__cures"))
        .child(remedies(cures))
        .child(stale_note())
        .child(opened_figure("answer"));
    let past = use_scrolled_past(&band);
    // It only repeats, so that it is kept from those who listen.
    let slim = when(flag(move || past.get()), move || {
        vec![
            el("p")
                .class("dw-answer-slim")
                .class_if("dw-stale", is_stale)
                .attr("aria-hidden", "true")
                .html(once_more),
        ]
    });
    el("div").child(band).child(slim)
}

/// The answer with water and air, and how sure it is once that is found; the steady one until the module that tells them stands.
fn told(
    desk: Desk,
    doubt: ReadSignal<Option<Found>>,
    whole: Work,
    steady: fn(&Answered, &Answer) -> String,
) -> Option<String> {
    let answered = desk.answered()?;
    let style = desk.style();
    let mut numbers = style_as_numbers(style).to_vec();
    if let Some(Told::Numbers(doubt)) = told_of_run(desk, doubt) {
        numbers.extend(doubt);
    }
    let told = use_workshop().text(whole.name(), &answered, &numbers);
    Some(told.unwrap_or_else(|| {
        let answer = answer(&answered.run, &answered.outcome, style);
        steady(&answered, &answer)
    }))
}

/// What was found last; nothing once the band has gone, which what it shows may outlive by a moment.
fn latest(found: ReadSignal<Option<Found>>) -> Option<Found> {
    found.try_get().flatten()
}

/// What was found is about what is shown.
pub(super) fn is_current(desk: Desk, found: ReadSignal<Option<Found>>) -> bool {
    desk.answered() == latest(found).map(|(about, _)| about)
}

/// What was found of the run that is shown; what was found before its last change stands, told apart, until it is found anew.
pub(super) fn told_of_run(desk: Desk, found: ReadSignal<Option<Found>>) -> Option<Told> {
    let (about, told) = latest(found)?;
    let now = desk.answered()?;
    let is_same = about.project.run == now.project.run && about.project.name == now.project.name;
    told.ok().filter(|_| is_same)
}
