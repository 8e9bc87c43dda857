//! Undo and redo: what was on the desk before each change, whole, since it is small.

use super::{OpenProject, Stage};

/// So many steps can be undone.
const DEPTH: usize = 200;

/// A project, and as what it was open.
#[derive(Debug, Clone)]
pub struct Step {
    /// What was on the desk.
    pub project: OpenProject,
    /// As what.
    pub stage: Stage,
}

/// What was before, and what has been undone.
#[derive(Debug, Clone, Default)]
pub struct History {
    past: Vec<Step>,
    future: Vec<Step>,
    /// What the last step was about; keystrokes in one field are one step.
    about: Option<String>,
}

impl History {
    /// Notes what was before a change; changes about the same thing in a row are one step.
    pub fn note(&mut self, before: Step, about: String) {
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
    pub fn part(&mut self) {
        self.about = None;
    }

    /// Goes a step back from `now`.
    pub fn undo(&mut self, now: Step) -> Option<Step> {
        let before = self.past.pop()?;
        self.future.push(now);
        self.about = None;
        Some(before)
    }

    /// What was before the last step, which is forgotten.
    pub fn take_back(&mut self) -> Option<Step> {
        self.about = None;
        self.past.pop()
    }

    /// Goes forward again from `now`.
    pub fn redo(&mut self, now: Step) -> Option<Step> {
        let after = self.future.pop()?;
        self.past.push(now);
        self.about = None;
        Some(after)
    }

    /// What was on the desk last as a project of one's own.
    pub fn last_project(&self) -> Option<&Step> {
        let mut past = self.past.iter().rev();
        past.find(|step| step.stage == Stage::Project)
    }

    /// Whether there is a step to go back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is a step to go forward again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}
