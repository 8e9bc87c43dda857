//! Changes by hand: followed on the way, and one step to undo when the hand lets go.

use std::sync::Arc;

use dewrun_desk::{Answered, History, OpenProject, Step};
use leptos::prelude::*;

use super::Desk;

impl Desk {
    /// A hand takes hold of something: until it lets go, what it does is no step yet.
    pub(crate) fn hold(&self) {
        self.let_go();
        // Fields show what the hand does: what was typed there and can't be used is given up.
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.held.set(Some(self.now()));
    }

    /// What the hand does to the project as it was when it was taken hold of.
    pub(crate) fn draw(&self, change: impl FnOnce(&mut OpenProject)) {
        let before = self
            .held
            .with_untracked(|held| held.as_ref().map(|held| held.project.clone()));
        let Some(mut project) = before else {
            return;
        };
        change(&mut project);
        if self.project.with_untracked(|now| *now != project) {
            self.project.set(project);
        }
    }

    /// The hand lets go: all that it did is one step.
    pub(crate) fn let_go(&self) {
        let Some(before) = self.held.get_untracked() else {
            return;
        };
        if self.project.with_untracked(|now| *now != before.project) {
            self.history.update(|history| {
                history.part();
                history.note(before, String::new());
                history.part();
            });
        }
        self.held.set(None);
    }

    /// As it was before the hand took hold.
    pub(crate) fn put_back(&self) {
        if let Some(Step { project, .. }) = self.held.get_untracked() {
            self.project.set(project);
            self.held.set(None);
        }
    }

    /// Whether a hand holds something: what takes longer than a frame waits until it lets go.
    pub(crate) fn is_held(&self) -> bool {
        self.held.with(Option::is_some)
    }

    /// The last answer there was when no hand was on the project.
    pub(crate) fn settled(&self) -> Signal<Option<Arc<Answered>>> {
        let desk = *self;
        let settled = Memo::new(move |last: Option<&Option<Arc<Answered>>>| {
            if desk.is_held() {
                return last.cloned().flatten();
            }
            desk.answered()
        });
        settled.into()
    }

    /// What takes longer than a frame is not the answer to what is entered now.
    pub(crate) fn is_behind(&self) -> bool {
        self.is_stale() || self.is_held()
    }

    /// Changes the project by a key; such changes in a row are one step.
    pub(crate) fn change_in_a_row(&self, about: &str, change: impl FnOnce(&mut OpenProject)) {
        let mut project = self.project.get_untracked();
        change(&mut project);
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.replace(project, about.to_owned());
    }

    /// The row of changes has ended.
    pub(crate) fn end_row(&self) {
        self.history.update_untracked(History::part);
    }

    /// Takes back the last step as if it had never been.
    pub(crate) fn take_back(&self) {
        let before = self.history.try_update(History::take_back).flatten();
        if let Some(step) = before {
            self.faults.set(Vec::new());
            self.project.set(step.project);
        }
    }
}
