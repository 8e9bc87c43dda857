//! `dewrun troubles`: which cause explains a log, and what to look at next.

mod report;
mod said;

use std::io::{self, Write};
use std::path::Path;

use dewrun_advice::seed_of;
use dewrun_document::output::{TroublesFile, TroublesOutput};
use dewrun_document::{
    DocumentError, Project, TroublesAsked, TroublesFound, TroublesSaid, to_ensemble, troubles_found,
};
use dewrun_ensemble::{Climate, Kept, Plan};
use dewrun_troubles::{Answers, Known, Modelled};

use crate::answer_json::write_answer;
use crate::args::Troubles;
use crate::doubt::{gather, no_file, not_marched, told_of};
use crate::exit::Ending;
use crate::project::{self, asked_runs, complain_of, name_of};
use crate::report::CAUTIONS;
use crate::weather::given;
use crate::year::files::Files;
pub(crate) use said::Said;

pub(crate) fn troubles(args: &Troubles, out: &mut impl Write) -> io::Result<Ending> {
    let understanding = given(&args.said, crate::args::System::Si);
    let (understanding, said) = match understanding.and_then(|one| Ok((one, Said::of(args)?))) {
        Ok(both) => both,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let bytes = match args.log.as_deref().map(log_of).transpose() {
        Ok(bytes) => bytes,
        Err(sentence) => return failed(args, &sentence, out),
    };
    let name = name_of(&args.project);
    let packed = match project::load_packed(&args.project) {
        Ok(packed) => packed,
        Err(error) => return failed_by(args, &name, &error, out),
    };
    let files =
        Files::new(&args.project, packed.files).with(args.weather.as_deref(), understanding);
    let answered = asked_runs(&packed.project, args.run.as_deref()).and_then(|runs| {
        let position = runs.first().map_or(0, |(position, _)| *position);
        let asked = Asked {
            said: Some(&said),
            members: args.members,
            log: bytes.as_deref(),
        };
        found_of(&asked, (&packed.project, position), &files).map(|(_, output)| output)
    });
    let output = match answered {
        Ok(output) => output,
        Err(error) => return failed_by(args, &name, &error, out),
    };
    if !args.json {
        report::write(&output, &packed.project.name, out)?;
        writeln!(out, "\n{CAUTIONS}")?;
        return Ok(Ending::Dry);
    }
    let mut answer = TroublesFile::new(&packed.project.name, output);
    answer.log = args.log.as_deref().map(name_of);
    write_answer(&name, answer.to_json(), Ending::Dry, out)
}

/// The bytes of a log; where there are none a sentence names it.
pub(crate) fn log_of(path: &Path) -> Result<Vec<u8>, String> {
    let bytes = project::bytes_of(path);
    bytes.map_err(|error| format!("{}: {error}", name_of(path)))
}

/// What is asked of a run's troubles.
pub(crate) struct Asked<'a> {
    /// What the command line says of them.
    pub(crate) said: Option<&'a Said>,
    pub(crate) members: u32,
    /// The bytes of a log.
    pub(crate) log: Option<&'a [u8]>,
}

/// What is found of a run's troubles, and the answer.
pub(crate) fn found_of(
    asked: &Asked<'_>,
    (project, position): (&Project, usize),
    files: &Files,
) -> Result<(TroublesFound, TroublesOutput), DocumentError> {
    let ensemble = to_ensemble(project, position)?;
    let Some(weather) = files.weather(ensemble.said.weather.as_ref()) else {
        return Err(no_file(position, &files.complaints()));
    };
    let measured = ensemble
        .said
        .measured
        .as_ref()
        .map(|file| files.named(file));
    let measured = match &measured {
        Some(None) => return Err(no_file(position, &files.complaints())),
        Some(Some(found)) => Some(&found.weather.series),
        None => None,
    };
    let series = &weather.weather.series;
    let climate = Climate {
        weather: series,
        measured,
    };
    let place = &weather.weather.place;
    let kept = TroublesSaid::of(project, position)?;
    let plan = Plan::new(ensemble.usual.clone(), seed_of(&ensemble.names.run));
    let hourly = climate.hours(plan.usual());
    let hourly = hourly.map_err(|error| not_marched(position, error))?;
    let members = usize::try_from(asked.members).unwrap_or(usize::MAX);
    let rows_each = Kept::rows_each(climate.weather.len(), members);
    let gathered = gather(&plan, climate, (asked.members, rows_each));
    let modelled = Modelled::of(&Known {
        plan: &plan,
        gathered: &gathered,
        weights: None,
        start_s: &hourly.start_s,
    });
    let Some(modelled) = modelled else {
        return Err(told_of(position, "no member of the ensemble has an answer"));
    };
    let mut answers = match asked.said {
        Some(said) => said.answers(&project.note),
        None => Answers::of_note(&project.note),
    };
    answers.southern = place.latitude_deg.is_some_and(|degrees| degrees < 0.0);
    let said = match asked.said {
        Some(said) => said.over(kept),
        None => kept,
    };
    let asked = TroublesAsked {
        run: &ensemble.names.run,
        weather_file: &weather.reference.file,
        weather_offset_h: series.timing.utc_offset_h.or(place.zone_h).unwrap_or(0.0),
        members: gathered.count(),
        modelled: &modelled,
        answers: &answers,
        log: asked.log,
    };
    let found = troubles_found(&said, &asked);
    let found = found.map_err(|sentence| told_of(position, &sentence))?;
    let output = found.output(&asked);
    Ok((found, output))
}

fn failed(args: &Troubles, sentence: &str, out: &mut impl Write) -> io::Result<Ending> {
    eprintln!("dewrun: {sentence}");
    let error = DocumentError::Unreadable {
        reason: sentence.to_owned(),
    };
    json_of(args, &error, out)
}

fn failed_by(
    args: &Troubles,
    name: &str,
    error: &DocumentError,
    out: &mut impl Write,
) -> io::Result<Ending> {
    complain_of(name, error);
    json_of(args, error, out)
}

fn json_of(args: &Troubles, error: &DocumentError, out: &mut impl Write) -> io::Result<Ending> {
    if args.json {
        let mut answer = TroublesFile::failed(error);
        answer.log = args.log.as_deref().map(name_of);
        return write_answer("troubles", answer.to_json(), Ending::Failed, out);
    }
    Ok(Ending::Failed)
}
