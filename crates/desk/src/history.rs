//! Undo and redo: what each change replaced, whole, since it is small.

use crate::Kept;

/// So many steps can be undone.
pub(crate) const DEPTH: usize = 200;

/// What leads from one state of the desk to another: the project that is open there, and all that is another there.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Key of the project that is open.
    pub now: u64,
    /// By their keys what the projects are that the change touched; none for one that is not there.
    pub was: Vec<(u64, Option<Kept>)>,
}

/// What was before, and what has been undone; the last of each comes next.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct History {
    pub(crate) past: Vec<Step>,
    pub(crate) future: Vec<Step>,
    /// What the last step was about; keystrokes in one field are one step.
    about: Option<String>,
}

impl History {
    /// What was read of a desk that was left.
    pub(crate) const fn of(past: Vec<Step>, future: Vec<Step>) -> Self {
        Self {
            past,
            future,
            about: None,
        }
    }

    /// Notes what was before a change; changes about the same thing in a row are one step.
    pub(crate) fn note(&mut self, before: Step, about: &str) {
        self.future.clear();
        if self.about.as_deref() == Some(about) {
            return;
        }
        self.past.push(before);
        self.keep_in_depth();
        self.about = Some(about.to_owned());
    }

    /// The next change is a step of its own, whatever it is about.
    pub(crate) fn part(&mut self) {
        self.about = None;
    }

    /// Puts what was before all of it under it.
    pub(crate) fn prepend(&mut self, mut past: Vec<Step>) {
        past.append(&mut self.past);
        self.past = past;
        self.keep_in_depth();
    }

    /// What was before the last step, which is forgotten.
    pub(crate) fn take_back(&mut self) -> Option<Step> {
        self.about = None;
        self.past.pop()
    }

    fn keep_in_depth(&mut self) {
        let over = self.past.len().saturating_sub(DEPTH);
        self.past.drain(..over);
    }

    /// Nothing was done yet.
    pub(crate) fn is_empty(&self) -> bool {
        self.past.is_empty() && self.future.is_empty()
    }
}
