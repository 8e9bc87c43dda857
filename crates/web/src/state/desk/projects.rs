//! Projects and runs on the desk: which there are, and which is open.

use dewrun_desk::{OpenProject, Store};
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
    pub(crate) fn update_store_untracked<T>(
        &self,
        change: impl FnOnce(&mut Store) -> T,
    ) -> Option<T> {
        let mut changed = None;
        self.store
            .update_untracked(|store| changed = Some(change(store)));
        changed
    }

    /// Key of the open project, without following it.
    pub(crate) fn open_key(&self) -> u64 {
        self.with_store_untracked(|store| store.now().key)
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
