//! What was kept of an earlier visit joins what is on the desk now.

use core::mem::replace;

use super::Store;
use crate::history::Step;
use crate::kept::{self, Kept};
use crate::record::Record;
use crate::{Stage, Way};

impl Store {
    /// A desk with what an address asks for: of what was kept the last of it, else something new under a key; none where the library lacks a row.
    pub fn started(asked: Option<Stage>, kept: Vec<Record>, key: u64) -> Option<Self> {
        let new = |stage: Stage| {
            let project = stage.project()?;
            Some(Self::new(Kept {
                key,
                project,
                stage,
                changed: 0,
            }))
        };
        let empty = Stage::First(Way::Drawing);
        let mut store = asked.and_then(new).or_else(|| new(empty))?;
        store.come_in(asked, kept);
        Some(store)
    }

    /// Takes in all that was kept; where nothing was done yet, the last of what the address asks for comes on the desk.
    pub fn come_in(&mut self, asked: Option<Stage>, mut kept: Vec<Record>) {
        let last = kept
            .iter()
            .map(|record| &record.kept)
            .filter(|kept| is_open_to(asked, kept.stage))
            .max_by_key(|kept| kept.changed)
            .filter(|kept| self.history.is_empty() && self.now.changed < kept.changed)
            .map(|kept| kept.key);
        if let Some(at) = kept.iter().position(|one| Some(one.kept.key) == last) {
            let record = kept.swap_remove(at);
            let before = replace(&mut self.now, record.kept);
            self.history = record.history;
            kept::take(&mut self.aside, self.now.key);
            // What nobody has touched is not worth keeping.
            if before.changed != 0 && before.key != self.now.key {
                self.join_aside(before);
            }
        }
        for record in kept {
            self.join(record);
        }
    }

    /// Takes in what was kept of a project: aside, or under what has been done since it was opened.
    pub fn join(&mut self, record: Record) {
        let Record { kept, history, .. } = record;
        if kept.key != self.now.key {
            return self.join_aside(kept);
        }
        let first = self.first_of(kept.key);
        if self.history.is_empty() && (first.changed < kept.changed || *first == kept) {
            self.now = kept;
            self.history = history;
            return;
        }
        let is_bridged = first.project != kept.project || first.stage != kept.stage;
        let mut past = history.past;
        if is_bridged {
            let was = vec![(kept.key, Some(kept))];
            let now = self.now.key;
            past.push(Step { now, was });
        }
        self.history.prepend(past);
    }

    fn join_aside(&mut self, kept: Kept) {
        if matches!(kept.stage, Stage::Example(_)) {
            // What became of an example gives way to the same example only: another may be open in another window.
            if kept.stage == self.now.stage {
                self.touch(kept.key);
            }
            return;
        }
        let is_older = |one: &Kept| one.changed < kept.changed;
        if self.find(kept.key).is_none_or(is_older) {
            kept::take(&mut self.aside, kept.key);
            kept::put(&mut self.aside, kept);
        }
    }

    /// The open project as it was before all that can be undone.
    fn first_of(&self, key: u64) -> &Kept {
        let steps = self.history.past.iter();
        let mut states = steps.flat_map(|step| &step.was);
        let first = states.find(|(own, _)| *own == key);
        first.and_then(|(_, was)| was.as_ref()).unwrap_or(&self.now)
    }

    /// Gives the open project another key, since something else was kept under its own meanwhile; its name says that there are two.
    pub fn part_from(&mut self, other: Kept, key: u64) {
        let old = self.now.key;
        self.now.key = key;
        let name = &mut self.now.project.project.name;
        name.push_str(" (2)");
        let (past, future) = (&mut self.history.past, &mut self.history.future);
        for step in past.iter_mut().chain(future) {
            if step.now == old {
                step.now = key;
            }
            for (own, was) in &mut step.was {
                if *own == old {
                    *own = key;
                    if let Some(was) = was {
                        was.key = key;
                    }
                }
            }
        }
        kept::take(&mut self.aside, old);
        kept::put(&mut self.aside, other);
        self.touch(key);
    }
}

/// Whether an address leads to what was open; the bare one takes whatever is one's own.
fn is_open_to(asked: Option<Stage>, was: Stage) -> bool {
    match asked {
        None | Some(Stage::First(Way::Drawing)) => !matches!(was, Stage::Example(_)),
        Some(asked) => asked == was,
    }
}
