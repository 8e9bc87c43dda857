//! A run and its answer, as all of the page shows it.

use dewrun_document::output::NoteOutput;
use dewrun_document::{DocumentError, givens, located, note, to_run};
use dewrun_drawing::{Fitted, Names, View};
use dewrun_quantity::{Length, Style};
use dewrun_run::figure::Given;
use dewrun_run::{Outcome, Run, Tube, evaluate};

use super::{OpenProject, route, trap_places};

/// A run, its names and its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Answered {
    /// The project, and which of its runs this is.
    pub project: OpenProject,
    /// The run as it is entered.
    pub run: Run,
    /// What its parts are called.
    pub names: Names,
    /// What follows from it.
    pub outcome: Outcome,
    /// Where a range was left.
    pub notes: Vec<NoteOutput>,
    /// Its inputs, each with where it came from.
    pub givens: Vec<Given>,
}

impl Answered {
    /// Evaluates the open run; what its answer rests on is not ranked.
    pub fn unranked(project: &OpenProject) -> Result<Self, DocumentError> {
        let (run, names) = to_run(project, project.run)?;
        let answer = evaluate(&run).map_err(|error| located(project.run, error))?;
        Ok(Self {
            project: project.clone(),
            givens: givens(project, project.run),
            names: Names {
                run: names.run,
                duct: names.duct,
                spaces: names.spaces,
                intake_falls: names.intake_falls,
                exhaust_falls: names.exhaust_falls,
                intake_fitted: fitted(project, Tube::Intake),
                exhaust_fitted: fitted(project, Tube::Exhaust),
            },
            notes: answer
                .notes
                .iter()
                .map(|one| note(project.run, one))
                .collect(),
            outcome: answer.value,
            run,
        })
    }

    /// One of its tubes, to be drawn.
    pub fn view(&self, tube: Tube, style: Style) -> View<'_> {
        View {
            run: &self.run,
            outcome: &self.outcome,
            names: &self.names,
            style,
            tube,
        }
    }
}

/// What is fitted to a tube of the open run.
fn fitted(project: &OpenProject, tube: Tube) -> Fitted {
    let Some(route) = route(project, tube) else {
        return Fitted::default();
    };
    let hangers = route.legs.iter().map(|leg| leg.hanger_spacing_m.as_ref());
    Fitted {
        traps: trap_places(project, tube),
        hangers: hangers
            .map(|spacing| spacing.map(|spacing| Length::metres(spacing.value)))
            .collect(),
    }
}
