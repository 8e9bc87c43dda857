//! From a project to the answers of its runs, for every subcommand that takes projects.

use dewrun_advice::{
    Resting, StayingDry, SteadyDoubt, SteadyDoubts, rests_on, rests_on_whole, seed_of, staying_dry,
};
use dewrun_document::output::{AssessOutput, ErrorOutput, RunOutput};
use dewrun_document::{
    Assumed, DocumentError, Installed, Names, Project, answer, givens, installed, located,
    located_whole, to_run,
};
use dewrun_drawing::{Answer, DryLimit, Rests, View, whole_answer};
use dewrun_quantity::{Noted, Style};
use dewrun_run::figure::Given;
use dewrun_run::{Outcome, Run, RunNote, Tube, Whole, water_and_air};

use crate::args::Telling;
use crate::exit::Ending;
use crate::project::asked_runs;

/// A run of a project and what became of it.
pub(crate) struct Evaluated {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) result: Result<Answered, DocumentError>,
}

/// A run that has an answer.
pub(crate) struct Answered {
    pub(crate) run_index: usize,
    pub(crate) run: Run,
    pub(crate) names: Names,
    pub(crate) outcome: Noted<Outcome, RunNote>,
    /// The assumed values that the answer rests on.
    pub(crate) ranked: Vec<Resting>,
    /// What it would still take dry; none where a run on the way has no answer.
    pub(crate) staying: Option<StayingDry>,
    /// Water and air, and how the run is installed; or what keeps them from being answered.
    pub(crate) whole: Result<(Whole, Installed), DocumentError>,
    /// How sure the answer is; none where no case has one.
    pub(crate) doubt: Option<SteadyDoubt>,
}

/// So many cases say how sure an answer is, within 2 of 100.
const CASES: u32 = 1024;

/// Evaluates the runs of a project, or the one of that id.
pub(crate) fn evaluate(
    project: &Project,
    only: Option<&str>,
) -> Result<Vec<Evaluated>, DocumentError> {
    let runs = asked_runs(project, only)?.into_iter();
    Ok(runs
        .map(|(run_index, run)| Evaluated {
            id: run.id.clone(),
            name: run.name.clone(),
            result: answered(project, run_index),
        })
        .collect())
}

fn answered(project: &Project, run_index: usize) -> Result<Answered, DocumentError> {
    let (run, names) = to_run(project, run_index)?;
    let outcome = dewrun_run::evaluate(&run).map_err(|error| located(run_index, error))?;
    let staying = staying_dry(&run, &outcome.value).ok();
    let given = givens(project, run_index);
    let mut doubts = SteadyDoubts::new(&run, &given, seed_of(&names.run));
    doubts.take(CASES);
    let whole = whole(project, run_index, &run, &outcome.value);
    let ranked = ranked((&run, &outcome.value), &whole, given);
    Ok(Answered {
        doubt: doubts.so_far(),
        whole,
        ranked,
        staying,
        run_index,
        run,
        names,
        outcome,
    })
}

/// What the answer rests on, water and air included where they are answered.
fn ranked(
    (run, outcome): (&Run, &Outcome),
    whole: &Result<(Whole, Installed), DocumentError>,
    mut givens: Vec<Given>,
) -> Vec<Resting> {
    let Ok((whole, installed)) = whole else {
        return rests_on(run, outcome, &givens);
    };
    givens.extend(installed.givens.iter().cloned());
    rests_on_whole((run, &installed.installation), (outcome, whole), &givens)
}

/// Water and air of a run, from its steady answer, and how the run is installed.
fn whole(
    project: &Project,
    run_index: usize,
    run: &Run,
    outcome: &Outcome,
) -> Result<(Whole, Installed), DocumentError> {
    let installed = installed(project, run_index)?;
    let found = water_and_air(run, &installed.installation, outcome);
    let found = found.map_err(|error| located_whole(run_index, &error))?;
    Ok((found, installed))
}

impl Evaluated {
    pub(crate) fn ending(&self) -> Ending {
        let Ok(answered) = &self.result else {
            return Ending::Failed;
        };
        match &answered.whole {
            Err(_) => Ending::Failed,
            Ok((whole, _)) if whole.blind.is_some() => Ending::Blind,
            Ok(_) => answered.outcome.value.verdict.into(),
        }
    }

    /// What keeps the run, or its water and air, from being answered.
    pub(crate) fn error(&self) -> Option<&DocumentError> {
        match &self.result {
            Ok(answered) => answered.whole.as_ref().err(),
            Err(error) => Some(error),
        }
    }

    fn output(&self, telling: Telling) -> RunOutput {
        let steady = self.result.as_ref().ok().map(|answered| {
            let style = telling.units.style();
            let (told, rests) = (answered.told(style).plain(), answered.rests(style).plain());
            let sentence = format!("{told} {rests}");
            let telling = dewrun_document::Telling {
                sentence: &sentence,
                profile: telling.profile,
                rests_on: &answered.ranked,
                staying_dry: answered.staying.as_ref(),
                whole: answered.told_whole(),
                doubt: answered.doubt.as_ref(),
            };
            let Answered {
                run_index,
                run,
                names,
                outcome,
                ..
            } = answered;
            answer(*run_index, run, names, outcome, telling)
        });
        RunOutput {
            id: self.id.clone(),
            name: self.name.clone(),
            steady,
            year: None,
            error: self.error().map(ErrorOutput::from),
        }
    }
}

impl Answered {
    /// The answer in words.
    pub(crate) fn told(&self, style: Style) -> Answer {
        let outcome = &self.outcome.value;
        let told = match &self.whole {
            Ok((whole, _)) => whole_answer(&self.run, outcome, whole, style),
            Err(_) => dewrun_drawing::answer(&self.run, outcome, style),
        };
        match &self.doubt {
            Some(doubt) => told.with_doubt(outcome, doubt, style),
            None => told,
        }
    }

    /// Water and air with what is assumed of them, where they are answered.
    fn told_whole(&self) -> Option<(&Whole, &[Assumed])> {
        let (whole, installed) = self.whole.as_ref().ok()?;
        Some((whole, installed.assumed.as_slice()))
    }

    /// What it would still take dry, in words.
    pub(crate) fn dry_limits(&self, found: &StayingDry, style: Style) -> [DryLimit; 3] {
        let names = dewrun_drawing::Names {
            spaces: self.names.spaces.clone(),
            ..dewrun_drawing::Names::default()
        };
        let view = View {
            run: &self.run,
            outcome: &self.outcome.value,
            names: &names,
            style,
            tube: Tube::Intake,
        };
        dewrun_drawing::dry_limits(&view, found)
    }

    /// What it rests on, in words.
    pub(crate) fn rests(&self, style: Style) -> Rests {
        dewrun_drawing::rests(&self.run, &self.names.spaces, &self.ranked, style)
    }
}

/// The worst ending of many.
pub(crate) fn worst(runs: &[Evaluated]) -> Ending {
    runs.iter()
        .map(Evaluated::ending)
        .max()
        .unwrap_or(Ending::Dry)
}

/// The answer file of a project.
pub(crate) fn output(project: &Project, runs: &[Evaluated], telling: Telling) -> AssessOutput {
    let runs = runs.iter().map(|run| run.output(telling)).collect();
    AssessOutput::new(&project.name, runs)
}
