//! Projects and runs on the desk: which there are, and which is open.

use dewrun_desk::{Answered, OpenProject, Store, TubeName, layouts};
use leptos::prelude::*;

use super::Desk;

impl Desk {
    /// Looks at all projects.
    pub(crate) fn with_store<T>(&self, look: impl FnOnce(&Store) -> T) -> T {
        self.store.with(look)
    }

    /// Looks at all projects once, without following them.
    pub(crate) fn with_store_untracked<T>(&self, look: impl FnOnce(&Store) -> T) -> T {
        self.store.with_untracked(look)
    }

    /// Changes what is known of all projects.
    pub(crate) fn update_store(&self, change: impl FnOnce(&mut Store)) {
        self.store.update(change);
    }

    /// Changes what is known of all projects, without showing anything anew.
    pub(crate) fn update_store_untracked<T: Default>(
        &self,
        change: impl FnOnce(&mut Store) -> T,
    ) -> T {
        let mut changed = T::default();
        self.store.update_untracked(|store| changed = change(store));
        changed
    }

    /// Puts a project on the desk that was aside.
    pub(crate) fn go_on_with(&self, key: u64) {
        self.act(|store| {
            store.go_on_with(key);
        });
    }

    /// Deletes a project that is aside; undoing brings it back.
    pub(crate) fn delete_project(&self, key: u64) {
        self.act(|store| store.delete(key));
    }

    /// Adds or deletes runs.
    pub(crate) fn change_runs(&self, what: &str, change: fn(&mut OpenProject)) {
        self.compare(None);
        self.selected.set(None);
        self.tube.set(TubeName::Intake);
        self.change(what, change);
    }

    /// Position of the run that the open one is compared with.
    pub(crate) fn compared(&self) -> Option<usize> {
        let at = self.compared.get();
        at.filter(|at| self.with(|project| *at != project.run && layouts(project).contains(at)))
    }

    /// Compares the open run with another layout of the same detector.
    pub(crate) fn compare(&self, at: Option<usize>) {
        self.compared.set(at);
    }

    /// The answer of the run that the open one is compared with.
    pub(crate) fn compared_answer(&self) -> Option<Answered> {
        let at = self.compared()?;
        let mut other = self.with(Clone::clone);
        other.run = at;
        Answered::unranked(&other).ok()
    }

    /// Changes a name, letter by letter one step.
    pub(crate) fn name(&self, what: &str, change: impl FnOnce(&mut OpenProject)) {
        let mut project = self.with_untracked(Clone::clone);
        change(&mut project);
        self.update_store(|store| store.change(what, project));
    }

    /// The next change is a step of its own.
    pub(crate) fn part(&self) {
        self.update_store_untracked(Store::part);
    }

    /// Shows another run of the open project.
    pub(crate) fn show_run(&self, run: usize) {
        self.act(|store| store.show_run(run));
    }
}
