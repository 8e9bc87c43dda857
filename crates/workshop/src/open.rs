//! The run that questions are about, and what was computed of it so far.

use std::cell::OnceCell;

use dewrun_advice::{Resting, rests_on};
use dewrun_desk::{Answered, OpenProject};
use dewrun_document::output::NoteOutput;
use dewrun_document::{DocumentError, located_whole, read, to_installation, whole_notes};
use dewrun_run::{Whole, water_and_air};

/// A run of a project with its answer.
pub(crate) struct Open {
    pub(crate) answered: Answered,
    whole: OnceCell<Result<Whole, DocumentError>>,
    ranked: OnceCell<Vec<Resting>>,
}

impl Open {
    /// Reads a project file and evaluates one of its runs.
    ///
    /// # Errors
    /// What is wrong with the project, or why there is no answer.
    pub(crate) fn read(project: &str, run: usize) -> Result<Self, String> {
        let project = read(project).map_err(|error| error.to_string())?;
        let answered = Answered::unranked(&OpenProject { project, run });
        Ok(Self {
            answered: answered.map_err(|error| error.to_string())?,
            whole: OnceCell::new(),
            ranked: OnceCell::new(),
        })
    }

    /// Water and air of the run.
    ///
    /// # Errors
    /// What keeps them from being answered.
    pub(crate) fn whole(&self) -> Result<&Whole, &DocumentError> {
        self.whole.get_or_init(|| whole(&self.answered)).as_ref()
    }

    /// The assumed values, the one that changes the answer most first.
    pub(crate) fn ranked(&self) -> &[Resting] {
        let answered = &self.answered;
        self.ranked
            .get_or_init(|| rests_on(&answered.run, &answered.outcome, &answered.givens))
    }

    /// What has to be said beside water and air.
    pub(crate) fn whole_notes(&self) -> Vec<NoteOutput> {
        let run = self.answered.project.run;
        self.whole()
            .map_or_else(|_| Vec::new(), |whole| whole_notes(run, whole))
    }
}

fn whole(answered: &Answered) -> Result<Whole, DocumentError> {
    let index = answered.project.run;
    let (installation, _) = to_installation(&answered.project, index)?;
    let found = water_and_air(&answered.run, &installation, &answered.outcome);
    found.map_err(|error| located_whole(index, &error))
}
