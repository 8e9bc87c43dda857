//! A project of which one run is open.

use core::ops::{Deref, DerefMut};

use dewrun_document::{Project, Run};

/// A project, and which of its runs is open; it reads and changes as the project.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenProject {
    /// The whole of it.
    pub project: Project,
    /// Position of the open run.
    pub run: usize,
}

impl OpenProject {
    /// The open run.
    #[must_use]
    pub fn open_run(&self) -> Option<&Run> {
        self.project.runs.get(self.run)
    }

    /// The open run, to change it.
    pub(crate) fn open_run_mut(&mut self) -> Option<&mut Run> {
        self.project.runs.get_mut(self.run)
    }
}

impl From<Project> for OpenProject {
    /// A project whose first run is open.
    fn from(project: Project) -> Self {
        Self { project, run: 0 }
    }
}

impl Deref for OpenProject {
    type Target = Project;

    fn deref(&self) -> &Project {
        &self.project
    }
}

impl DerefMut for OpenProject {
    fn deref_mut(&mut self) -> &mut Project {
        &mut self.project
    }
}
