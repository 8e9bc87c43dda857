//! Which figure is opened, in which section, and through which others it was reached.

use dewrun_run::figure::{Figure, Spot};
use leptos::prelude::*;

/// A figure and where it is read.
pub(crate) type Step = (Figure, Spot);

/// The figures opened one from another, in a section of the page.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Trail {
    /// The section, by what its element carries in `data-opens`.
    pub(crate) section: String,
    /// From the one opened first to the one shown.
    pub(crate) steps: Vec<Step>,
}

/// The trail of opened figures, if any; one panel is open at a time.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Opened(RwSignal<Option<Trail>>);

impl Opened {
    /// Nothing opened yet.
    pub(crate) fn new() -> Self {
        Self(RwSignal::new(None))
    }

    /// The trail in a section.
    pub(crate) fn trail(&self, section: &str) -> Option<Trail> {
        self.0.get().filter(|trail| trail.section == section)
    }

    /// Whatever is opened.
    pub(crate) fn now(&self) -> Option<Trail> {
        self.0.get()
    }

    /// Opens a figure; shown already, it is closed.
    pub(crate) fn turn(&self, section: String, step: Step) {
        let is_open =
            |trail: &Trail| trail.section == section && trail.steps.first() == Some(&step);
        if self
            .0
            .with_untracked(|trail| trail.as_ref().is_some_and(is_open))
        {
            self.0.set(None);
            return;
        }
        self.0.set(Some(Trail {
            section,
            steps: vec![step],
        }));
    }

    /// Follows an input of the figure shown.
    pub(crate) fn follow(&self, step: Step) {
        self.0.update(|trail| {
            if let Some(trail) = trail {
                trail.steps.push(step);
            }
        });
    }

    /// Goes back to the figure before.
    pub(crate) fn back(&self) {
        self.0.update(|trail| {
            if let Some(trail) = trail
                && 1 < trail.steps.len()
            {
                trail.steps.pop();
            }
        });
    }

    /// Closes the panel and hands over what was opened; none where nothing was.
    pub(crate) fn close(&self) -> Option<Trail> {
        let trail = self.0.get_untracked()?;
        self.0.set(None);
        Some(trail)
    }
}
