//! Changes by hand: followed on the way, and one step to undo when the hand lets go.

use std::sync::Arc;
use std::time::Duration;

use dewrun_desk::{Answered, OpenProject, Store};
use leptos::prelude::*;

use super::Desk;

/// A hand that has not moved for so long rests.
const REST: Duration = Duration::from_millis(120);

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
            self.store.update(|store| store.draw(project));
            self.tell_when_resting();
        }
    }

    fn tell_when_resting(&self) {
        let moves = self.moves;
        let before = moves.get_untracked();
        let now = before.wrapping_add(1);
        moves.update_untracked(|moves| *moves = now);
        let tell = move || {
            if moves.try_get_untracked() == Some(now) {
                moves.set(now);
            }
        };
        set_timeout(tell, REST);
    }

    /// Looks at the project; what a hand does to it is seen when the hand rests, since nobody reads numbers that change with each frame.
    pub(crate) fn with_at_rest<T>(&self, look: impl FnOnce(&OpenProject) -> T) -> T {
        if self.is_held() {
            self.moves.track();
        } else {
            self.store.track();
        }
        self.with_untracked(look)
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
