//! The run that questions are about, and what was computed of it so far.

use std::cell::OnceCell;

use dewrun_advice::{
    OverDuct, Remedy, Resting, Subject, over_duct, remedies_of_geometry, rests_on, rests_on_whole,
};
use dewrun_desk::{Answered, OpenProject};
use dewrun_document::output::NoteOutput;
use dewrun_document::{
    DocumentError, Installed, Origin, installed, located_whole, read_keeping_years, whole_notes,
};
use dewrun_drawing::{Answer, Elevation};
use dewrun_quantity::Pressure;
use dewrun_run::figure::Given;
use dewrun_run::{Whole, water_and_air};

use crate::last::Last;

/// A run of a project with its answer.
pub(crate) struct Open {
    pub(crate) answered: Answered,
    installed: OnceCell<Result<Installed, DocumentError>>,
    whole: OnceCell<Result<Whole, DocumentError>>,
    ranked: OnceCell<Vec<Resting>>,
    givens: OnceCell<Vec<Given>>,
    over_duct: OnceCell<Vec<OverDuct>>,
    remedies: OnceCell<Vec<Remedy>>,
    /// The answer in words.
    pub(crate) told: Last<Answer>,
    /// The elevation.
    pub(crate) elevation: Last<Elevation>,
}

impl Open {
    /// Reads a project file and evaluates one of its runs.
    ///
    /// # Errors
    /// What is wrong with the project, or why there is no answer.
    pub(crate) fn read(project: &str, run: usize) -> Result<Self, String> {
        let project = read_keeping_years(project).map_err(|error| error.to_string())?;
        let answered = Answered::unranked(&OpenProject { project, run });
        Ok(Self {
            answered: answered.map_err(|error| error.to_string())?,
            installed: OnceCell::new(),
            whole: OnceCell::new(),
            ranked: OnceCell::new(),
            givens: OnceCell::new(),
            over_duct: OnceCell::new(),
            remedies: OnceCell::new(),
            told: Last::default(),
            elevation: Last::default(),
        })
    }

    /// Water and air of the run.
    ///
    /// # Errors
    /// What keeps them from being answered.
    pub(crate) fn whole(&self) -> Result<&Whole, &DocumentError> {
        self.whole
            .get_or_init(|| {
                let Answered {
                    run,
                    outcome,
                    project,
                    ..
                } = &self.answered;
                let installed = self.installed().map_err(Clone::clone)?;
                water_and_air(run, &installed.installation, outcome)
                    .map_err(|error| located_whole(project.run, &error))
            })
            .as_ref()
    }

    /// How the run is installed.
    ///
    /// # Errors
    /// What of it can't be used.
    pub(crate) fn installed(&self) -> Result<&Installed, &DocumentError> {
        let project = &self.answered.project;
        self.installed
            .get_or_init(|| installed(project, project.run))
            .as_ref()
    }

    /// Every number that the answer is computed from, of how the run is installed too.
    pub(crate) fn givens(&self) -> &[Given] {
        self.givens.get_or_init(|| {
            let mut givens = self.answered.givens.clone();
            if let Ok(installed) = self.installed() {
                givens.extend(installed.givens.iter().cloned());
            }
            givens
        })
    }

    /// The assumed values, the one that changes the answer most first.
    pub(crate) fn ranked(&self) -> &[Resting] {
        let answered = &self.answered;
        self.ranked.get_or_init(|| {
            let (run, outcome) = (&answered.run, &answered.outcome);
            let (Ok(whole), Ok(installed)) = (self.whole(), self.installed()) else {
                return rests_on(run, outcome, &answered.givens);
            };
            let installed = (run, &installed.installation);
            rests_on_whole(installed, (outcome, whole), self.givens())
        })
    }

    /// What becomes of faults over the duct's plausible static pressures; nothing where it is not assumed.
    pub(crate) fn over_duct(&self) -> &[OverDuct] {
        self.over_duct.get_or_init(|| {
            let project = &self.answered.project;
            let duct = project.open_run().map(|run| &run.duct.static_pa.origin);
            let Some(Origin::Assumed { low, high, .. }) = duct else {
                return Vec::new();
            };
            let span = [*low, *high].map(Pressure::pascals);
            let Answered { run, outcome, .. } = &self.answered;
            let found = self
                .installed()
                .ok()
                .and_then(|installed| over_duct(run, &installed.installation, outcome, span).ok());
            found.unwrap_or_default()
        })
    }

    /// Remedies of geometry that help.
    pub(crate) fn remedies(&self) -> &[Remedy] {
        self.remedies.get_or_init(|| {
            let (Ok(whole), Ok(installed)) = (self.whole(), self.installed()) else {
                return Vec::new();
            };
            remedies_of_geometry(&Subject {
                run: &self.answered.run,
                installation: &installed.installation,
                outcome: &self.answered.outcome,
                whole,
            })
        })
    }

    /// What has to be said beside water and air.
    pub(crate) fn whole_notes(&self) -> Vec<NoteOutput> {
        let run = self.answered.project.run;
        self.whole()
            .map_or_else(|_| Vec::new(), |whole| whole_notes(run, whole))
    }
}
