//! `dewrun troubles`: which cause explains a log, and what to look at next.

mod report;
mod said;

use std::io::{self, Write};
use std::path::Path;

use dewrun_advice::seed_of;
use dewrun_document::output::{TroublesFile, TroublesOutput};
use dewrun_document::{
    DocumentError, Project, TroublesAsked, TroublesSaid, to_ensemble, troubles_found,
};
use dewrun_ensemble::{Climate, Kept, Plan};
use dewrun_troubles::{Known, Modelled};

use crate::answer_json::write_answer;
use crate::args::Troubles;
use crate::doubt::{gather, no_file, not_marched, told_of};
use crate::exit::Ending;
use crate::project::{self, asked_runs, complain_of, name_of};
use crate::report::CAUTIONS;
use crate::weather::given;
use crate::year::files::Files;
use said::Said;

pub(crate) fn troubles(args: &Troubles, out: &mut impl Write) -> io::Result<Ending> {
    let understanding = given(&args.said, crate::args::System::Si);
    let (understanding, said) = match understanding.and_then(|one| Ok((one, Said::of(args)?))) {
        Ok(both) => both,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let bytes = match args.log.as_deref().map(read).transpose() {
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
        of_run(
            args,
            &said,
            (&packed.project, position),
            bytes.as_deref(),
            &files,
        )
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

/// The bytes of a log.
fn read(path: &Path) -> Result<Vec<u8>, String> {
    let bytes = project::bytes_of(path);
    bytes.map_err(|error| format!("{}: {error}", name_of(path)))
}

fn of_run(
    args: &Troubles,
    said: &Said,
    (project, position): (&Project, usize),
    bytes: Option<&[u8]>,
    files: &Files,
) -> Result<TroublesOutput, DocumentError> {
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
    let members = usize::try_from(args.members).unwrap_or(usize::MAX);
    let rows_each = Kept::rows_each(climate.weather.len(), members);
    let gathered = gather(&plan, climate, (args.members, rows_each));
    let modelled = Modelled::of(&Known {
        plan: &plan,
        gathered: &gathered,
        weights: None,
        start_s: &hourly.start_s,
    });
    let Some(modelled) = modelled else {
        return Err(told_of(position, "no member of the ensemble has an answer"));
    };
    let mut answers = said.answers(&project.note);
    answers.southern = place.latitude_deg.is_some_and(|degrees| degrees < 0.0);
    let asked = TroublesAsked {
        run: &ensemble.names.run,
        weather_file: &weather.reference.file,
        weather_offset_h: series.timing.utc_offset_h.or(place.zone_h).unwrap_or(0.0),
        members: gathered.count(),
        modelled: &modelled,
        answers: &answers,
        log: bytes,
    };
    let found = troubles_found(&said.over(kept), &asked);
    let found = found.map_err(|sentence| told_of(position, &sentence))?;
    Ok(found.output(&asked))
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
