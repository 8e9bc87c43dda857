//! Changes by hand: followed on the way, and one step to undo when the hand lets go.

use std::sync::Arc;
use std::time::Duration;

use dewrun_desk::{Answered, OpenProject, Store};
use leptos::prelude::*;

use super::Desk;

/// How often words follow a hand that moves, and how long it lies still until it rests.
const BEAT: Duration = Duration::from_millis(100);

impl Desk {
    /// A hand takes hold of something: until it lets go, what it does is no step yet.
    pub(crate) fn hold(&self) {
        self.let_go();
        // Fields show what the hand does: what was typed there and can't be used is given up.
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.held.set(Some(self.with_untracked(Clone::clone)));
    }

    /// What the hand does to the project as it was when it was taken hold of.
    pub(crate) fn draw(&self, change: impl FnOnce(&mut OpenProject)) {
        let Some(mut project) = self.held.get_untracked() else {
            return;
        };
        change(&mut project);
        if self.with_untracked(|now| *now != project) {
            self.store.update_untracked(|store| store.draw(project));
            self.moves.update(|moves| *moves = moves.wrapping_add(1));
            if !self.is_beating.get_value() {
                self.is_beating.set_value(true);
                self.beat();
            }
        }
    }

    /// Nobody reads words that change with each frame: they are told at the next beat in a task of their own, and fields and tables once the hand rests.
    fn beat(self) {
        let before = self.moves.get_untracked();
        let tell = move || {
            let Some(moves) = self.moves.try_get_untracked() else {
                return;
            };
            self.beats.update(|beats| *beats = beats.wrapping_add(1));
            if moves != before {
                self.beat();
                return;
            }
            self.is_beating.set_value(false);
            if self.held.with_untracked(Option::is_some) {
                self.store.notify();
            }
        };
        set_timeout(tell, BEAT);
    }

    /// The hand lets go: all that it did is one step.
    pub(crate) fn let_go(&self) {
        let Some(before) = self.held.get_untracked() else {
            return;
        };
        if self.with_untracked(|now| *now != before) {
            self.store.update(|store| store.drawn_from(before));
        }
        self.held.set(None);
    }

    /// As it was before the hand took hold.
    pub(crate) fn put_back(&self) {
        if let Some(before) = self.held.get_untracked() {
            self.store.update(|store| store.draw(before));
            self.held.set(None);
        }
    }

    /// Whether a hand holds something: what takes longer than a frame waits until it lets go.
    pub(crate) fn is_held(&self) -> bool {
        self.held.with(Option::is_some)
    }

    /// The last answer there was when no hand was on the project.
    pub(crate) fn settled(&self) -> Signal<Option<Arc<Answered>>> {
        self.settled.into()
    }

    /// What takes longer than a frame is not the answer to what is entered now.
    pub(crate) fn is_behind(&self) -> bool {
        self.is_stale() || self.is_held()
    }

    /// Changes the project by a key; such changes in a row are one step.
    pub(crate) fn change_in_a_row(&self, about: &str, change: impl FnOnce(&mut OpenProject)) {
        let mut project = self.with_untracked(Clone::clone);
        change(&mut project);
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.replace(project, about);
    }

    /// The row of changes has ended.
    pub(crate) fn end_row(&self) {
        self.store.update_untracked(Store::part);
    }

    /// Takes back the last step as if it had never been.
    pub(crate) fn take_back(&self) {
        self.faults.set(Vec::new());
        self.store.update(Store::take_back);
    }
}
