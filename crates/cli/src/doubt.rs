//! `dewrun doubt`: how sure a year is, by the year again and again.

mod progress;
pub(crate) mod readings;
mod report;

use std::io::{self, Write};

use dewrun_advice::seed_of;
use dewrun_document::output::{DoubtFile, DoubtRunOutput, EnsembleOutput, ErrorOutput};
use dewrun_document::{
    DocumentError, EnsembleTelling, FieldPath, Project, ensemble_answer, located, measurements,
    to_ensemble,
};
use dewrun_drawing::DoubtWords;
use dewrun_ensemble::{
    Climate, Gathered, Kept, Measurement, Member, MemberWork, Plan, Quantity, reweighted, told,
};
use dewrun_quantity::Style;
use dewrun_season::SeasonError;
use rayon::iter::{IntoParallelIterator, ParallelIterator};

use crate::answer_json::write_answer;
use crate::args::Doubt;
use crate::exit::Ending;
use crate::project::{self, asked_runs, complain_of, name_of};
use crate::run_answer::{RunAnswer, write_text};
use crate::weather::given;
use crate::year::files::Files;
use progress::Progress;

/// Members that are taken at once, so that the first say something soon.
const AT_ONCE: u32 = 32;

/// The doubt of a run's year, and how the command ends for it.
pub(crate) struct Told {
    pub(crate) output: EnsembleOutput,
    ending: Ending,
}

/// What is asked of an ensemble.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked<'a> {
    /// Its members.
    pub(crate) members: u32,
    /// Readings beside those of visits.
    pub(crate) readings: &'a [readings::Said],
    /// Without those of visits.
    pub(crate) without_visits: bool,
    pub(crate) style: Style,
}

pub(crate) fn doubt(args: &Doubt, out: &mut impl Write) -> io::Result<Ending> {
    let name = name_of(&args.project);
    let said = match given(&args.said, args.units) {
        Ok(said) => said,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let given = match readings::read(&args.measured) {
        Ok(given) => given,
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
    let asked = Asked {
        members: args.members,
        readings: &given,
        without_visits: args.without_visits,
        style: args.units.style(),
    };
    let project = &packed.project;
    let mut ending = Ending::Dry;
    let mut answers = Vec::new();
    for position in positions {
        let result = of_run(asked, project, position, &files);
        if let Err(error) = &result {
            complain_of(&name, error);
        }
        ending = ending.max(result.as_ref().map_or(Ending::Failed, |told| told.ending));
        answers.push(RunAnswer::of(project, position, result));
    }
    if args.json {
        return write_json(&name, project, answers, ending, out);
    }
    let style = args.units.style();
    write_text(&answers, out, |told, run, out| {
        report::write(&told.output, &project.name, run, style, out)
    })?;
    Ok(ending)
}

/// The doubt of the year of one run.
pub(crate) fn of_run(
    asked: Asked<'_>,
    project: &Project,
    position: usize,
    files: &Files,
) -> Result<Told, DocumentError> {
    let said = to_ensemble(project, position)?;
    let Some(weather) = files.weather(said.said.weather.as_ref()) else {
        return Err(no_file(position, &files.complaints()));
    };
    let measured = said.said.measured.as_ref().map(|file| files.named(file));
    let measured = match &measured {
        Some(None) => return Err(no_file(position, &files.complaints())),
        Some(Some(found)) => Some(&found.weather.series),
        None => None,
    };
    let climate = Climate {
        weather: &weather.weather.series,
        measured,
    };
    let plan = Plan::new(said.usual.clone(), seed_of(&said.names.run));
    let rows = climate.weather.len();
    let members = usize::try_from(asked.members).unwrap_or(usize::MAX);
    let rows_each = Kept::rows_each(rows, members);
    let usual = MemberWork::usual(&plan, climate, rows_each);
    let usual = usual.map_err(|error| not_marched(position, error))?;
    let usual = usual.finished(climate);
    let gathered = gather(&plan, climate, (asked.members, rows_each));
    let Some(all) = told(&plan, &gathered, None) else {
        return Err(told_of(position, "no member of the ensemble has an answer"));
    };
    let readings = all_readings(asked, (project, position), climate);
    let by = (!readings.is_empty()).then(|| reweighted(&gathered, &readings));
    let after = by
        .as_ref()
        .and_then(|by| told(&plan, &gathered, Some(&by.weights)));
    let measured = by.as_ref().zip(after.as_ref());
    let reference = &weather.reference;
    let sentences = DoubtWords {
        plan: &plan,
        spaces: &said.names.spaces,
        place: match reference.place.trim() {
            "" => reference.file.as_str(),
            place => place,
        },
        usual: &usual,
        told: &all,
        measured,
        style: asked.style,
    }
    .sentences();
    let output = ensemble_answer(EnsembleTelling {
        sentences: &sentences,
        run_index: position,
        said: &said,
        plan: &plan,
        weather: &weather.reference,
        bytes: Kept::bytes(rows, gathered.count()),
        usual: Some(&usual),
        told: &all,
        measured,
    });
    Ok(Told {
        output,
        ending: ending(&usual),
    })
}

/// Members side by side, some at a time.
pub(crate) fn gather(
    plan: &Plan,
    climate: Climate<'_>,
    (members, rows_each): (u32, usize),
) -> Gathered {
    let progress = Progress::new(members);
    let mut gathered = Gathered::default();
    let mut from = 0;
    while from < members {
        let until = (from + AT_ONCE).min(members);
        let some = (from..until).into_par_iter().map(|number| {
            let work = MemberWork::of(plan, number, climate, rows_each);
            let member = work.map(|work| work.finished(climate));
            progress.one_more();
            (number, member)
        });
        for (number, member) in some.collect::<Vec<_>>() {
            gathered.take(number, member);
        }
        from = until;
    }
    progress.end();
    gathered
}

/// Readings of the command line, and those of the visits.
fn all_readings(
    asked: Asked<'_>,
    (project, position): (&Project, usize),
    climate: Climate<'_>,
) -> Vec<Measurement> {
    let is_typical = climate.weather.timing.is_typical_year;
    let mut all: Vec<Measurement> = asked
        .readings
        .iter()
        .map(|one| one.measurement(is_typical))
        .collect();
    if !asked.without_visits {
        all.extend(measurements(project, position, is_typical));
    }
    all
}

/// As the year stands: blind, wet or dry.
fn ending(usual: &Member) -> Ending {
    let is_any = |quantity| usual.totals.get(quantity).is_some_and(|hours| 0.0 < hours);
    if is_any(Quantity::BlindHours) {
        Ending::Blind
    } else if is_any(Quantity::WetHours) || is_any(Quantity::MistHours) {
        Ending::Wet
    } else {
        Ending::Dry
    }
}

/// A sentence about a run.
pub(crate) fn told_of(position: usize, sentence: &str) -> DocumentError {
    DocumentError::Told {
        path: FieldPath::root().field("runs").index(position),
        sentence: sentence.to_owned(),
    }
}

pub(crate) fn no_file(position: usize, complaints: &[String]) -> DocumentError {
    let missing = complaints.first().map(String::as_str);
    told_of(
        position,
        missing.unwrap_or("the weather file is missing, so there is no year"),
    )
}

/// Why a run has no year.
pub(crate) fn not_marched(position: usize, error: SeasonError) -> DocumentError {
    match error {
        SeasonError::Run(error) => located(position, error),
        error => told_of(position, &error.to_string()),
    }
}

fn failed(
    args: &Doubt,
    name: &str,
    error: &DocumentError,
    out: &mut impl Write,
) -> io::Result<Ending> {
    complain_of(name, error);
    if args.json {
        let mut answer = DoubtFile::failed(error);
        answer.file = Some(name.to_owned());
        return write_answer(name, answer.to_json(), Ending::Failed, out);
    }
    Ok(Ending::Failed)
}

fn write_json(
    name: &str,
    project: &Project,
    answers: Vec<RunAnswer<Told>>,
    ending: Ending,
    out: &mut impl Write,
) -> io::Result<Ending> {
    let runs = answers.into_iter().map(RunAnswer::into_output);
    let mut answer = DoubtFile::new(&project.name, runs.collect());
    answer.file = Some(name.to_owned());
    write_answer(name, answer.to_json(), ending, out)
}

impl RunAnswer<Told> {
    fn into_output(self) -> DoubtRunOutput {
        let (doubt, error) = match self.result {
            Ok(told) => (Some(told.output), None),
            Err(error) => (None, Some(ErrorOutput::from(&error))),
        };
        DoubtRunOutput {
            id: self.id,
            name: self.name,
            doubt,
            error,
        }
    }
}
