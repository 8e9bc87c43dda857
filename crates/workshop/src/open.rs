//! The run that questions are about, and what was computed of it so far.

use std::cell::{OnceCell, RefCell};

use dewrun_advice::{
    OverDuct, Remedy, Resting, Subject, over_duct, remedies_of_geometry, rests_on, rests_on_whole,
};
use dewrun_desk::{Answered, OpenProject};
use dewrun_document::output::NoteOutput;
use dewrun_document::{
    DocumentError, Origin, installed_givens, located_whole, read, to_installation, whole_notes,
};
use dewrun_drawing::Elevation;
use dewrun_quantity::Pressure;
use dewrun_run::figure::Given;
use dewrun_run::{Installation, Whole, water_and_air};

/// A run of a project with its answer.
pub(crate) struct Open {
    pub(crate) answered: Answered,
    whole: OnceCell<Result<Whole, DocumentError>>,
    ranked: OnceCell<Vec<Resting>>,
    givens: OnceCell<Vec<Given>>,
    over_duct: OnceCell<Vec<OverDuct>>,
    remedies: OnceCell<Vec<Remedy>>,
    /// The elevation drawn last, and the numbers that asked for it.
    pub(crate) elevation: RefCell<Option<(Vec<f64>, Elevation)>>,
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
            givens: OnceCell::new(),
            over_duct: OnceCell::new(),
            remedies: OnceCell::new(),
            elevation: RefCell::new(None),
        })
    }

    /// Water and air of the run.
    ///
    /// # Errors
    /// What keeps them from being answered.
    pub(crate) fn whole(&self) -> Result<&Whole, &DocumentError> {
        self.whole.get_or_init(|| whole(&self.answered)).as_ref()
    }

    /// Every number that the answer is computed from, of how the run is installed too.
    pub(crate) fn givens(&self) -> &[Given] {
        self.givens.get_or_init(|| {
            let project = &self.answered.project;
            let mut givens = self.answered.givens.clone();
            if let Ok((_, installed)) = installed_givens(project, project.run) {
                givens.extend(installed);
            }
            givens
        })
    }

    /// The assumed values, the one that changes the answer most first.
    pub(crate) fn ranked(&self) -> &[Resting] {
        let answered = &self.answered;
        self.ranked.get_or_init(|| {
            let (run, outcome) = (&answered.run, &answered.outcome);
            let (Ok(whole), Some(installation)) = (self.whole(), self.installed()) else {
                return rests_on(run, outcome, &answered.givens);
            };
            rests_on_whole((run, &installation), (outcome, whole), self.givens())
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
            let found = self.installed().and_then(|installation| {
                over_duct(
                    &self.answered.run,
                    &installation,
                    &self.answered.outcome,
                    span,
                )
                .ok()
            });
            found.unwrap_or_default()
        })
    }

    /// Remedies of geometry that help.
    pub(crate) fn remedies(&self) -> &[Remedy] {
        self.remedies.get_or_init(|| {
            let (Ok(whole), Some(installation)) = (self.whole(), self.installed()) else {
                return Vec::new();
            };
            remedies_of_geometry(&Subject {
                run: &self.answered.run,
                installation: &installation,
                outcome: &self.answered.outcome,
                whole,
            })
        })
    }

    fn installed(&self) -> Option<Installation> {
        let project = &self.answered.project;
        let found = to_installation(project, project.run).ok()?;
        Some(found.0)
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
