//! `dewrun remedies`: the smallest change of each kind that makes a run dry enough, over its year.

mod report;
mod target;

use std::fs;
use std::io::{self, Write};

use dewrun_document::output::{ErrorOutput, RemediesFile, RemediesOutput, RemediesRunOutput};
use dewrun_document::{
    DocumentError, Project, RemediesTelling, make_alterations, remedies_answer, target_of,
    to_ensemble, write as written,
};
use dewrun_drawing::remedy::{sentences, worded};
use dewrun_ensemble::Climate;
use dewrun_quantity::Style;
use dewrun_remedies::{RankBy, Search, Subject, Target, Tried, pairs, rank, searches};
use rayon::iter::{IntoParallelIterator, ParallelIterator};

use crate::answer_json::write_answer;
use crate::args::{Rank, Remedies};
use crate::doubt::{not_marched, told_of};
use crate::exit::Ending;
use crate::project::{self, asked_runs, complain_of, name_of};
use crate::run_answer::{RunAnswer, write_text};
use crate::weather::given;
use crate::year::files::Files;

/// Remedies that are told.
pub(crate) struct Told {
    pub(crate) output: RemediesOutput,
    tried: Vec<Tried>,
    ending: Ending,
}

pub(crate) fn remedies(args: &Remedies, out: &mut impl Write) -> io::Result<Ending> {
    let name = name_of(&args.project);
    let said = given(&args.said, args.units);
    let target = args.target.as_deref().map(target::read).transpose();
    let (said, target) = match said.and_then(|said| Ok((said, target?))) {
        Ok(both) => both,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let packed = match project::load_packed(&args.project) {
        Ok(packed) => packed,
        Err(error) => return failed(args, &name, &error, out),
    };
    let positions: Vec<usize> = match asked_runs(&packed.project, args.run.as_deref()) {
        Ok(runs) => runs.into_iter().map(|(position, _)| position).collect(),
        Err(error) => return failed(args, &name, &error, out),
    };
    let files = Files::new(&args.project, packed.files).with(args.weather.as_deref(), said);
    let project = &packed.project;
    let mut ending = Ending::Dry;
    let mut answers = Vec::new();
    for position in positions {
        let asked = Asked {
            target,
            rank: rank_by(args.rank),
            style: args.units.style(),
        };
        let result = of_run(asked, (project, position), &files);
        if let Err(error) = &result {
            complain_of(&name, error);
        }
        ending = ending.max(result.as_ref().map_or(Ending::Failed, |told| told.ending));
        answers.push(RunAnswer::of(project, position, result));
    }
    if let Some(number) = args.apply {
        return apply(args, number, project, &answers, out);
    }
    if args.json {
        let runs = answers.into_iter().map(RunAnswer::into_output);
        let mut answer = RemediesFile::new(&project.name, runs.collect());
        answer.file = Some(name.clone());
        return write_answer(&name, answer.to_json(), ending, out);
    }
    let style = args.units.style();
    write_text(&answers, out, |told, run, out| {
        report::write(&told.output, &project.name, run, style, out)
    })?;
    Ok(ending)
}

/// What is asked of the remedies of a run.
#[derive(Clone, Copy)]
pub(crate) struct Asked {
    /// What counts as dry enough; none: what the project says.
    pub(crate) target: Option<Target>,
    pub(crate) rank: RankBy,
    pub(crate) style: Style,
}

/// The remedies of one run.
pub(crate) fn of_run(
    asked: Asked,
    (project, position): (&Project, usize),
    files: &Files,
) -> Result<Told, DocumentError> {
    let target = match asked.target {
        Some(target) => target,
        None => target_of(project)?,
    };
    let said = to_ensemble(project, position)?;
    let weather = files.weather(said.said.weather.as_ref());
    if let (None, Some(missing)) = (
        &weather,
        said.said.weather.as_ref().and(files.complaints().first()),
    ) {
        return Err(told_of(position, missing));
    }
    let measured = said
        .said
        .measured
        .as_ref()
        .and_then(|file| files.named(file));
    let climate = weather.as_ref().map(|found| Climate {
        weather: &found.weather.series,
        measured: measured.as_ref().map(|found| &found.weather.series),
    });
    let subject = Subject::new(said.usual.inputs, target, climate);
    let subject = subject.map_err(|error| not_marched(position, error))?;
    let mut tried = finished(&subject, climate, searches(&subject));
    tried.extend(finished(&subject, climate, pairs(&tried)));
    rank(&mut tried, asked.rank);
    let reference = weather.as_ref().map(|found| &found.reference);
    let spaces = &said.names.spaces;
    let sentences = sentences(&subject, spaces, &tried, asked.style);
    let telling = RemediesTelling {
        subject: &subject,
        of: (project, position),
        weather: reference,
        sentences: &sentences,
        tried: &tried,
    };
    let output = remedies_answer(&telling, |one| worded(&subject, spaces, one, asked.style));
    let ending = if subject.is_met() {
        Ending::Dry
    } else if tried.iter().any(|one| one.is_cure) {
        Ending::Wet
    } else {
        Ending::Blind
    };
    Ok(Told {
        output,
        tried,
        ending,
    })
}

/// Searches side by side, in their order.
fn finished(subject: &Subject, climate: Option<Climate<'_>>, searches: Vec<Search>) -> Vec<Tried> {
    let found = searches.into_par_iter();
    let found = found.map(|search| search.finished(subject, climate));
    found.collect::<Vec<_>>().into_iter().flatten().collect()
}

const fn rank_by(rank: Rank) -> RankBy {
    match rank {
        Rank::Left => RankBy::Left,
        Rank::Work => RankBy::Work,
        Rank::Energy => RankBy::Energy,
        Rank::Transport => RankBy::Transport,
    }
}

/// Writes the project with a remedy made.
fn apply(
    args: &Remedies,
    number: u32,
    project: &Project,
    answers: &[RunAnswer<Told>],
    out: &mut impl Write,
) -> io::Result<Ending> {
    let [one] = answers else {
        eprintln!("dewrun: say by `--run` of which run the remedy is");
        return Ok(Ending::WrongCommandLine);
    };
    let Ok(told) = &one.result else {
        return Ok(Ending::Failed);
    };
    let place = usize::try_from(number).unwrap_or(usize::MAX) - 1;
    let Some(tried) = told.tried.get(place) else {
        eprintln!(
            "dewrun: there is no remedy {number}; there are {}",
            told.tried.len()
        );
        return Ok(Ending::WrongCommandLine);
    };
    let mut changed = project.clone();
    make_alterations(&mut changed, one.position, &tried.alterations);
    let text = match written(&changed) {
        Ok(text) => text,
        Err(error) => {
            complain_of(&name_of(&args.project), &error);
            return Ok(Ending::Failed);
        }
    };
    match &args.out {
        Some(path) => fs::write(path, text)?,
        None => out.write_all(text.as_bytes())?,
    }
    Ok(Ending::Dry)
}

fn failed(
    args: &Remedies,
    name: &str,
    error: &DocumentError,
    out: &mut impl Write,
) -> io::Result<Ending> {
    complain_of(name, error);
    if args.json {
        let mut answer = RemediesFile::failed(error);
        answer.file = Some(name.to_owned());
        return write_answer(name, answer.to_json(), Ending::Failed, out);
    }
    Ok(Ending::Failed)
}

impl RunAnswer<Told> {
    fn into_output(self) -> RemediesRunOutput {
        let (remedies, error) = match self.result {
            Ok(told) => (Some(told.output), None),
            Err(error) => (None, Some(ErrorOutput::from(&error))),
        };
        RemediesRunOutput {
            id: self.id,
            name: self.name,
            remedies,
            error,
        }
    }
}
