//! All projects of a person: the one on the desk, those put aside, and every change so far, which can be undone.

mod joined;

use core::mem::{replace, take};

use crate::history::{History, Step};
use crate::kept::{self, Kept};
use crate::{OpenProject, Stage};

/// The project on the desk, the others, and what can be undone.
#[derive(Debug, Clone)]
pub struct Store {
    now: Kept,
    /// In the order of their keys.
    aside: Vec<Kept>,
    history: History,
    /// Keys of what has to be kept anew, or is gone.
    touched: Vec<u64>,
}

impl Store {
    /// A desk with one project on it and none aside.
    #[must_use]
    pub fn new(now: Kept) -> Self {
        Self {
            now,
            aside: Vec::new(),
            history: History::default(),
            touched: Vec::new(),
        }
    }

    /// What is on the desk.
    #[must_use]
    pub const fn now(&self) -> &Kept {
        &self.now
    }

    /// What is put aside.
    #[must_use]
    pub fn aside(&self) -> &[Kept] {
        &self.aside
    }

    /// The projects of one's own that are put aside, the one changed last first.
    #[must_use]
    pub fn projects_aside(&self) -> Vec<&Kept> {
        let own = |one: &&Kept| one.stage == Stage::Project;
        let mut sorted: Vec<&Kept> = Vec::new();
        // One by one: a person has a handful, and a general sort would weigh more on the page than all of this file.
        for one in self.aside.iter().filter(own) {
            let at = sorted.partition_point(|other| one.changed <= other.changed);
            sorted.insert(at, one);
        }
        sorted
    }

    /// What was undone and what can be.
    pub(crate) const fn history(&self) -> &History {
        &self.history
    }

    /// The project of a key, on the desk or aside.
    #[must_use]
    pub fn find(&self, key: u64) -> Option<&Kept> {
        if self.now.key == key {
            return Some(&self.now);
        }
        self.aside.iter().find(|one| one.key == key)
    }

    /// Puts another state of the open project in its place; changes about the same thing in a row are one step.
    pub fn change(&mut self, about: &str, project: OpenProject) {
        if self.now.project != project {
            let before = self.now.clone();
            self.now.project = project;
            self.note(vec![(before.key, Some(before))], about);
        }
    }

    /// Shows a state of the open project on the way to another, which is no step yet.
    pub fn draw(&mut self, project: OpenProject) {
        self.now.project = project;
    }

    /// What the open project has come to on the way from another state is one step.
    pub fn drawn_from(&mut self, project: OpenProject) {
        let before = Kept {
            project,
            ..self.now.clone()
        };
        self.part();
        self.note(vec![(before.key, Some(before))], "");
        self.part();
    }

    /// Takes back the last step as if it had never been.
    pub fn take_back(&mut self) {
        if let Some(step) = self.history.take_back() {
            self.swap(step);
        }
    }

    /// The next change is a step of its own, whatever it is about.
    pub fn part(&mut self) {
        self.history.part();
    }

    /// Shows another run of the open project; that changes nothing, so that there is nothing to undo.
    pub fn show_run(&mut self, run: usize) {
        if run < self.now.project.runs.len() {
            self.history.part();
            self.now.project.run = run;
            self.touch(self.now.key);
        }
    }

    /// Puts something new on the desk; what was there is put aside, unless it is an example.
    pub fn open(&mut self, new: Kept) {
        let was = vec![(new.key, None)];
        self.exchange(new, was, |stage| !matches!(stage, Stage::Example(_)));
    }

    /// Puts on the desk what was begun on the empty page or is a project of one's own, unless it is there; whether there is such a thing.
    pub fn go_back_to(&mut self, stage: Stage) -> bool {
        if self.now.stage == stage {
            return true;
        }
        let fits = |one: &&Kept| one.stage == stage;
        let last = self.aside.iter().filter(fits).max_by_key(|one| one.changed);
        let key = last.map(|one| one.key);
        key.is_some_and(|key| self.go_on_with(key))
    }

    /// Puts on the desk what was aside; whether it was.
    pub fn go_on_with(&mut self, key: u64) -> bool {
        let Some(found) = kept::take(&mut self.aside, key) else {
            return false;
        };
        let was = vec![(key, Some(found.clone()))];
        self.exchange(found, was, |stage| !matches!(stage, Stage::Example(_)));
        true
    }

    /// Forgets what was begun on the empty page and puts a new beginning on the desk.
    pub fn begin_anew(&mut self, new: Kept) {
        let (begun, others) = take(&mut self.aside)
            .into_iter()
            .partition::<Vec<_>, _>(|one| one.stage.is_first());
        self.aside = others;
        let mut was = vec![(new.key, None)];
        was.extend(begun.into_iter().map(|one| (one.key, Some(one))));
        self.exchange(new, was, |stage| stage == Stage::Project);
    }

    /// Deletes a project that is put aside; undoing brings it back.
    pub fn delete(&mut self, key: u64) {
        if let Some(gone) = kept::take(&mut self.aside, key) {
            self.part();
            self.note(vec![(key, Some(gone))], "");
            self.part();
        }
    }

    /// Goes a step back.
    pub fn undo(&mut self) {
        if let Some(step) = self.history.past.pop() {
            let back = self.swap(step);
            self.history.future.push(back);
        }
    }

    /// Goes forward again.
    pub fn redo(&mut self) {
        if let Some(step) = self.history.future.pop() {
            let back = self.swap(step);
            self.history.past.push(back);
        }
    }

    /// Whether there is a step to go back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.history.past.is_empty()
    }

    /// Whether there is a step to go forward again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        !self.history.future.is_empty()
    }

    /// Hands over the keys of all that changed since it was asked last; what the store has not any more is gone.
    pub fn take_touched(&mut self) -> Vec<u64> {
        take(&mut self.touched)
    }

    /// Notes when a project is kept.
    pub fn set_changed(&mut self, key: u64, time: u64) {
        let aside = self.aside.iter_mut();
        let own = aside.chain([&mut self.now]).find(|one| one.key == key);
        if let Some(own) = own {
            own.changed = time;
        }
    }

    fn touch(&mut self, key: u64) {
        if !self.touched.contains(&key) {
            self.touched.push(key);
        }
    }

    /// Puts another thing on the desk, and what was there aside where its stage says so.
    fn exchange(
        &mut self,
        other: Kept,
        mut was: Vec<(u64, Option<Kept>)>,
        stays: fn(Stage) -> bool,
    ) {
        let before = replace(&mut self.now, other);
        let left = before.key;
        if stays(before.stage) {
            kept::put(&mut self.aside, before);
        } else {
            was.push((left, Some(before)));
        }
        self.part();
        self.note_of(left, was, "");
        self.part();
        // Undoing leads back to it after a reload too.
        self.touch(left);
    }

    fn note(&mut self, was: Vec<(u64, Option<Kept>)>, about: &str) {
        self.note_of(self.now.key, was, about);
    }

    fn note_of(&mut self, now: u64, was: Vec<(u64, Option<Kept>)>, about: &str) {
        for (key, _) in &was {
            self.touch(*key);
        }
        // What can be undone is kept with what is open.
        self.touch(self.now.key);
        self.history.note(Step { now, was }, about);
    }

    /// Brings about the state that a step leads to and says what leads back.
    fn swap(&mut self, step: Step) -> Step {
        self.part();
        let now = self.now.key;
        kept::put(&mut self.aside, self.now.clone());
        let mut was = Vec::new();
        for (key, one) in step.was {
            was.push((key, kept::take(&mut self.aside, key)));
            if let Some(one) = one {
                kept::put(&mut self.aside, one);
            }
            self.touch(key);
        }
        // A history that was read may lead to what is nowhere; then the desk stays as it is.
        if let Some(one) = kept::take(&mut self.aside, step.now) {
            self.now = one;
        } else {
            kept::take(&mut self.aside, now);
        }
        self.touch(self.now.key);
        Step { now, was }
    }
}
