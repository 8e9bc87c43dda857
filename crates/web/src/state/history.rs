//! Undo and redo: the project before each change, whole, since it is small.

use dewrun_document::Project;

/// So many steps can be undone.
const DEPTH: usize = 200;

/// What was before, and what has been undone.
#[derive(Debug, Clone, Default)]
pub(crate) struct History {
    past: Vec<Project>,
    future: Vec<Project>,
    /// What the last step was about; keystrokes in one field are one step.
    about: Option<String>,
}

impl History {
    /// Notes the project before a change; changes about the same thing in a row are one step.
    pub(crate) fn note(&mut self, before: Project, about: String) {
        self.future.clear();
        if self.about.as_ref() == Some(&about) {
            return;
        }
        if self.past.len() == DEPTH {
            self.past.remove(0);
        }
        self.past.push(before);
        self.about = Some(about);
    }

    /// The next change is a step of its own, whatever it is about.
    pub(crate) fn part(&mut self) {
        self.about = None;
    }

    /// Goes a step back from `now`.
    pub(crate) fn undo(&mut self, now: Project) -> Option<Project> {
        let before = self.past.pop()?;
        self.future.push(now);
        self.about = None;
        Some(before)
    }

    /// Goes forward again from `now`.
    pub(crate) fn redo(&mut self, now: Project) -> Option<Project> {
        let after = self.future.pop()?;
        self.past.push(now);
        self.about = None;
        Some(after)
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}
