//! The phone as a level: it lies on a leg, is turned end for end, and its fall is written as measured.

use dewrun_desk::{Levelling, TubeName, measured_fall, measurer};
use leptos::prelude::*;

use super::parts::{button, flag, words};
use crate::element::{El, el, typed, when};
use crate::hooks::orientation::{ask, read, today};
use crate::state::use_desk;

/// How far the measuring is.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Measuring {
    levelling: Levelling,
    is_reading: bool,
}

/// The way to measure the fall of a leg.
pub(super) fn phone_level(tube: TubeName, at: usize) -> El {
    let measuring = RwSignal::new(None::<Measuring>);
    let is_open = flag(move || measuring.get().is_some());
    let turn = move || {
        if measuring.get_untracked().is_some() {
            return measuring.set(None);
        }
        ask(move |is_allowed| {
            let mut levelling = Levelling::default();
            if !is_allowed {
                levelling.take(&[]);
            }
            measuring.set(Some(Measuring {
                levelling,
                is_reading: false,
            }));
        });
    };
    let turn = button("dw-link dw-level__turn", turn)
        .live_attr("aria-expanded", words(move || is_open.get().to_string()))
        .child("Measure with this phone");
    let way_back = turn.clone();
    el("div")
        .class("dw-level")
        .child(turn)
        .child(when(is_open, move || {
            panel(tube, at, measuring, way_back.clone())
        }))
}

fn panel(
    tube: TubeName,
    at: usize,
    measuring: RwSignal<Option<Measuring>>,
    way_back: El,
) -> Vec<El> {
    let desk = use_desk();
    let of = move |look: fn(&Levelling) -> bool| {
        flag(move || measuring.with(|now| now.is_some_and(|now| look(&now.levelling))))
    };
    let is_found = of(|levelling| levelling.found().is_some());
    let can_read = of(|levelling| levelling.found().is_none() && !levelling.is_blind());
    let is_reading = flag(move || measuring.get().is_some_and(|now| now.is_reading));
    let told = words(move || match measuring.get() {
        Some(now) if now.is_reading => "Reading. Leave it lying.".to_owned(),
        Some(now) if now.levelling.is_blind() => String::new(),
        Some(now) => now.levelling.told(desk.style()),
        None => String::new(),
    });
    let refused = words(move || {
        let now = measuring.get().filter(|now| !now.is_reading);
        now.and_then(|now| now.levelling.refused())
            .unwrap_or_default()
    });
    let take = move || {
        if is_reading.get_untracked() {
            return;
        }
        let turn = move |is_reading, said: Option<Vec<f64>>| {
            measuring.update(|now| {
                if let Some(now) = now {
                    now.is_reading = is_reading;
                    said.iter().for_each(|said| now.levelling.take(said));
                }
            });
        };
        turn(true, None);
        read(move |said| turn(false, Some(said)));
    };
    let read_button = when(can_read, move || {
        vec![
            button("dw-button dw-level__read", take)
                .live_attr("aria-disabled", words(move || is_reading.get().to_string()))
                .child("Read"),
        ]
    });
    let result = when(is_found, move || {
        written(tube, at, measuring, way_back.clone())
    });
    let said = el("div")
        .attr("role", "status")
        .child(el("p").child(told))
        .child(el("p").class("dw-level__refused").child(refused));
    let acts = el("div")
        .class("dw-level__acts")
        .child(read_button)
        .child(result);
    vec![el("div").class("dw-level__panel").child(said).child(acts)]
}

/// Who has measured, and the way to write what was found into the leg.
fn written(
    tube: TubeName,
    at: usize,
    measuring: RwSignal<Option<Measuring>>,
    way_back: El,
) -> Vec<El> {
    let desk = use_desk();
    let by = RwSignal::new(untrack(|| desk.with(measurer)));
    let write = move || {
        let found = measuring
            .get_untracked()
            .and_then(|now| now.levelling.found());
        if let Some(found) = found {
            let (on, by) = (today(), by.get_untracked());
            desk.change("Fall", |project| {
                measured_fall(project, tube, at, &found, [&on, &by])
            });
        }
        measuring.set(None);
        // What had the focus is gone.
        way_back.focus();
    };
    let name = el("input")
        .class("dw-level__by")
        .attr("type", "text")
        .attr("autocomplete", "name")
        .value(by.into())
        .on("input", move |event| by.set(typed(&event)));
    let by = el("label")
        .class("dw-level__label")
        .child("Measured by")
        .child(name);
    let write = button("dw-button dw-button--first", write).child("Write it as measured");
    vec![by, write]
}
