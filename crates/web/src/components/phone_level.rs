//! The phone as a level: it lies on a leg, is turned end for end, and its fall is written as measured.

use core::cell::Cell;
use std::rc::Rc;

use dewrun_desk::{Levelling, TubeName, measured_fall, measurer};
use leptos::prelude::*;
use send_wrapper::SendWrapper;

use super::parts::{button, flag, words};
use crate::element::{El, el, when};
use crate::hooks::orientation::{ask, read, today};
use crate::state::use_desk;

/// How far the measuring is.
#[derive(Debug, Clone, Copy, Default)]
struct Measuring {
    levelling: Levelling,
    is_reading: bool,
}

/// The measuring of one leg: what is known of it, and a signal that tells when that changed.
#[derive(Clone)]
struct Level {
    place: (TubeName, usize),
    now: SendWrapper<Rc<Cell<Measuring>>>,
    changed: RwSignal<bool>,
    is_open: RwSignal<bool>,
}

impl Level {
    /// Follows it.
    fn get(&self) -> Measuring {
        self.changed.get();
        self.now.get()
    }

    fn set(&self, now: Measuring) {
        self.now.set(now);
        self.changed.set(true);
    }

    /// Takes what the sensor said.
    fn take(&self, said: &[f64]) {
        let mut levelling = self.now.get().levelling;
        levelling.take(said);
        self.set(Measuring {
            levelling,
            is_reading: false,
        });
    }

    /// Whether something holds of it, followed.
    fn flag(&self, holds: fn(&Measuring) -> bool) -> Signal<bool> {
        let level = self.clone();
        flag(move || holds(&level.get()))
    }
}

/// The way to measure the fall of a leg.
pub(super) fn phone_level(tube: TubeName, at: usize) -> El {
    let level = Level {
        place: (tube, at),
        now: SendWrapper::new(Rc::default()),
        changed: RwSignal::new(false),
        is_open: RwSignal::new(false),
    };
    let is_open = level.is_open;
    let asking = level.clone();
    let turn = move || {
        if is_open.get_untracked() {
            return is_open.set(false);
        }
        let level = asking.clone();
        ask(move |is_allowed| {
            level.set(Measuring::default());
            if !is_allowed {
                level.take(&[]);
            }
            is_open.set(true);
        });
    };
    let turn = button("dw-link dw-level__turn", turn)
        .live_attr("aria-expanded", words(move || is_open.get().to_string()))
        .child("Measure with this phone");
    let way_back = turn.clone();
    el("div")
        .class("dw-level")
        .child(turn)
        .child(when(is_open.into(), move || panel(&level, &way_back)))
}

fn panel(level: &Level, way_back: &El) -> Vec<El> {
    let desk = use_desk();
    let is_found = level.flag(|now| now.levelling.found().is_some());
    let can_read = level.flag(|now| now.levelling.found().is_none() && !now.levelling.is_blind());
    let is_reading = level.flag(|now| now.is_reading);
    let followed = level.clone();
    let told = words(move || match followed.get() {
        now if now.is_reading => "Reading. Leave it lying.".to_owned(),
        now if now.levelling.is_blind() => String::new(),
        now => now.levelling.told(desk.style()),
    });
    let followed = level.clone();
    let refused = words(move || {
        let now = followed.get();
        let refused = now.levelling.refused().filter(|_| !now.is_reading);
        refused.unwrap_or_default()
    });
    let reading = level.clone();
    let take = move || {
        let now = reading.now.get();
        if !now.is_reading {
            reading.set(Measuring {
                is_reading: true,
                ..now
            });
            let level = reading.clone();
            read(move |said| level.take(&said));
        }
    };
    let read_button = when(can_read, move || {
        vec![
            button("dw-button dw-level__read", take.clone())
                .live_attr("aria-disabled", words(move || is_reading.get().to_string()))
                .child("Read"),
        ]
    });
    let (found, way_back) = (level.clone(), way_back.clone());
    let result = when(is_found, move || written(&found, &way_back));
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
fn written(level: &Level, way_back: &El) -> Vec<El> {
    let desk = use_desk();
    let name = el("input")
        .class("dw-level__by")
        .attr("type", "text")
        .attr("autocomplete", "name")
        .attr("value", &untrack(|| desk.with(measurer)));
    let (level, way_back, by) = (level.clone(), way_back.clone(), name.clone());
    let write = move || {
        if let Some(found) = level.now.get().levelling.found() {
            let (tube, at) = level.place;
            let day_and_person = [&*today(), &*by.entered()];
            desk.change("Fall", |project| {
                measured_fall(project, tube, at, &found, day_and_person);
            });
        }
        level.is_open.set(false);
        // What had the focus is gone.
        way_back.focus();
    };
    let by = el("label")
        .class("dw-level__label")
        .child("Measured by")
        .child(name);
    let write = button("dw-button dw-button--first", write).child("Write it as measured");
    vec![by, write]
}
