//! `dewrun year`: a year of real weather, hour by hour.

pub(crate) mod files;
mod progress;
mod report;
mod words;

use std::io::{self, Write};

use dewrun_document::output::{AssessOutput, ErrorOutput, RunOutput, YearOutput};
use dewrun_document::{
    DocumentError, FieldPath, Names, Project, YearSaid, YearTelling, design_answers, installed,
    located, series_columns, stamp, to_run, to_season, year_answer, year_verdict,
};
use dewrun_quantity::decimal::shortest;
use dewrun_run::Run;
use dewrun_season::{Harder, SeasonError, YearOutcome, harder_hours_of, year_of};
use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

use crate::answer_json::write_answer;
use crate::args::Year;
use crate::exit::Ending;
use crate::project::{self, asked_runs, complain_of, name_of};
use crate::run_answer::{RunAnswer, write_text};
use crate::weather::given;
use files::{Files, Found};
use progress::Progress;

/// Runs that are marched before any of them is written, where every hour of them is.
const AT_A_TIME: usize = 16;

/// A year that is told.
pub(crate) struct Told {
    pub(crate) output: YearOutput,
    pub(crate) ending: Ending,
    /// Every hour as CSV, where that was asked for.
    pub(crate) csv: String,
    /// As it is drawn, where that was asked for and there is weather.
    pub(crate) drawn: Option<dewrun_drawing::year::Year>,
}

/// What of a year is wanted.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Wanted {
    pub(crate) series: bool,
    pub(crate) csv: bool,
    /// In harder weather too.
    pub(crate) stress: bool,
    /// As it is drawn.
    pub(crate) drawn: bool,
}

pub(crate) fn year(args: &Year, out: &mut impl Write) -> io::Result<Ending> {
    let said = match given(&args.said, args.units) {
        Ok(said) => said,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let name = name_of(&args.project);
    let packed = match project::load_packed(&args.project) {
        Ok(packed) => packed,
        Err(error) => return failed(args, &name, &error, out),
    };
    let asked = match asked_runs(&packed.project, args.run.as_deref()) {
        Ok(runs) => runs.into_iter().map(|(position, _)| position),
        Err(error) => return failed(args, &name, &error, out),
    };
    let positions: Vec<usize> = asked.collect();
    let files = Files::new(&args.project, packed.files).with(args.weather.as_deref(), said);
    let project = &packed.project;
    let wanted = Wanted {
        series: args.series && args.json,
        csv: args.csv,
        stress: args.stress,
        drawn: false,
    };
    let progress = Progress::new(positions.len());
    let mut ending = Ending::Dry;
    let mut answers = Vec::new();
    let at_a_time = if args.csv {
        AT_A_TIME
    } else {
        positions.len().max(1)
    };
    for (part, positions) in positions.chunks(at_a_time).enumerate() {
        let answered = of_runs(project, positions, &files, wanted, || progress.one_more());
        for one in answered {
            if let Err(error) = &one.result {
                complain_of(&name, error);
            }
            ending = ending.max(one.ending());
            if let (true, Ok(told)) = (args.csv, &one.result) {
                write_csv(told, part == 0 && answers.is_empty(), out)?;
            }
            answers.push(one.without_hours());
        }
    }
    progress.end();
    for missing in files.complaints() {
        eprintln!("dewrun: {name}: {missing}");
        ending = ending.max(Ending::Failed);
    }
    if args.json {
        return write_json(&name, project, answers, ending, out);
    }
    if !args.csv {
        let style = args.units.style();
        write_text(&answers, out, |told, run, out| {
            report::write(&told.output, &project.name, run, style, out)
        })?;
    }
    Ok(ending)
}

/// The years of some runs of a project, side by side; each says when it is done.
pub(crate) fn of_runs(
    project: &Project,
    positions: &[usize],
    files: &Files,
    wanted: Wanted,
    is_done: impl Fn() + Sync,
) -> Vec<RunAnswer<Told>> {
    let answered = positions.par_iter().map(|position| {
        let answered = of_run(project, *position, files, wanted);
        is_done();
        answered
    });
    answered.collect()
}

/// The year of one run of a project.
fn of_run(project: &Project, position: usize, files: &Files, wanted: Wanted) -> RunAnswer<Told> {
    RunAnswer::of(project, position, told(project, position, files, wanted))
}

fn told(
    project: &Project,
    position: usize,
    files: &Files,
    wanted: Wanted,
) -> Result<Told, DocumentError> {
    let said = to_season(project, position)?;
    let (run, names) = to_run(project, position)?;
    let weather = files.weather(said.weather.as_ref());
    let of = |weather: &Found, harder| {
        let found = (project, position, &run, &said);
        marched(found, weather, files, harder)
    };
    let outcome = weather
        .as_deref()
        .map(|weather| of(weather, Harder::AsItIs));
    let outcome = outcome.transpose()?;
    let mut stress = Vec::new();
    if let (true, Some(weather)) = (wanted.stress, weather.as_deref()) {
        for harder in [Harder::MoreHumid, Harder::Colder] {
            stress.push((harder, of(weather, harder)?));
        }
    }
    let reference = weather.as_ref().map(|found| &found.reference);
    let design = match reference.or(said.weather.as_ref()) {
        Some(reference) => design_answers(&run, &said, reference),
        None => Vec::new(),
    };
    let sentence = words::sentence(&said, reference, outcome.as_ref(), &design);
    let output = year_answer(YearTelling {
        sentence: &sentence,
        said: &said,
        weather: reference,
        outcome: outcome.as_ref(),
        design: &design,
        stress: &stress,
        series: wanted.series,
    });
    let csv = match &outcome {
        Some(outcome) if wanted.csv => csv(outcome, &names),
        _ => String::new(),
    };
    let ending = outcome.as_ref().map_or(Ending::Failed, ending);
    let drawn = outcome.as_ref().filter(|_| wanted.drawn);
    let drawn = drawn.map(|outcome| dewrun_drawing::year::year_shown(&run, outcome));
    Ok(Told {
        output,
        ending,
        csv,
        drawn,
    })
}

fn marched(
    (project, position, run, said): (&Project, usize, &Run, &YearSaid),
    weather: &Found,
    files: &Files,
    harder: Harder,
) -> Result<YearOutcome, DocumentError> {
    let located = |error: SeasonError| match error {
        SeasonError::Run(error) => located(position, error),
        error => DocumentError::Told {
            path: FieldPath::root().field("runs").index(position),
            sentence: error.to_string(),
        },
    };
    let measured = said.measured.as_ref().and_then(|file| files.named(file));
    let measured = measured.as_ref().map(|found| &found.weather.series);
    let built = installed(project, position)?;
    let series = &weather.weather.series;
    let hourly = harder_hours_of(run, &said.season, series, measured, harder);
    let hourly = hourly.map_err(located)?;
    year_of(run, &built.installation, hourly).map_err(located)
}

/// Blind where any hour is, else wet or dry.
fn ending(outcome: &YearOutcome) -> Ending {
    match &outcome.water {
        Ok(water) if 0.0 < water.sum.hours.blind => Ending::Blind,
        _ => year_verdict(outcome).into(),
    }
}

impl RunAnswer<Told> {
    pub(crate) fn ending(&self) -> Ending {
        self.result
            .as_ref()
            .map_or(Ending::Failed, |told| told.ending)
    }

    /// What has been written needs not be kept.
    fn without_hours(mut self) -> Self {
        if let Ok(told) = &mut self.result {
            told.csv = String::new();
        }
        self
    }
}

/// Every hour on a line, behind the name of the run.
fn csv(outcome: &YearOutcome, names: &Names) -> String {
    let columns = series_columns(outcome);
    let heads = columns.iter().map(|column| column.name.as_str());
    let mut text = format!("run,time,{}\n", heads.collect::<Vec<_>>().join(","));
    let run = quoted(&names.run);
    for hour in 0..outcome.sums.len() {
        text.push_str(&run);
        text.push(',');
        text.push_str(&stamp(outcome, hour).unwrap_or_default());
        for column in &columns {
            text.push(',');
            if let Some(value) = column.value(outcome, hour) {
                text.push_str(&shortest(value));
            }
        }
        text.push('\n');
    }
    text
}

/// A cell of CSV (RFC 4180).
pub(crate) fn quoted(text: &str) -> String {
    if text.contains([',', '"', '\n', '\r']) {
        return format!("\"{}\"", text.replace('"', "\"\""));
    }
    text.to_owned()
}

/// The rows of a run; the head stands once, unless the columns are others.
fn write_csv(told: &Told, is_first: bool, out: &mut impl Write) -> io::Result<()> {
    let rows = if is_first {
        told.csv.as_str()
    } else {
        told.csv.split_once('\n').map_or("", |(_, rows)| rows)
    };
    out.write_all(rows.as_bytes())
}

fn failed(
    args: &Year,
    name: &str,
    error: &DocumentError,
    out: &mut impl Write,
) -> io::Result<Ending> {
    complain_of(name, error);
    if args.json {
        let mut answer = AssessOutput::failed(error);
        answer.file = Some(name.to_owned());
        return write_answer(name, answer.to_json(false), Ending::Failed, out);
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
    let mut answer = AssessOutput::new(&project.name, runs.collect()).with_figures();
    answer.file = Some(name.to_owned());
    write_answer(name, answer.to_json(false), ending, out)
}

impl RunAnswer<Told> {
    fn into_output(self) -> RunOutput {
        let (year, error) = match self.result {
            Ok(told) => (Some(told.output), None),
            Err(error) => (None, Some(ErrorOutput::from(&error))),
        };
        RunOutput {
            id: self.id,
            name: self.name,
            steady: None,
            year,
            error,
        }
    }
}
