//! `dewrun lines`: projects in, answers out, one a line.

use std::fs::File;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::path::Path;

use dewrun_document::output::{AssessOutput, ErrorOutput};
use dewrun_document::{DocumentError, Project, limits};

use crate::args::{Lines, Telling};
use crate::evaluate::{evaluate, output, worst};
use crate::exit::Ending;
use crate::project::of_bytes;
use crate::year::files::Files;
use crate::year::{Wanted, of_runs};

pub(crate) fn lines(args: &Lines, out: &mut impl Write) -> io::Result<Ending> {
    if args.files.is_empty() {
        let files = files(args, Path::new(""));
        return all(io::stdin().lock(), None, (args.telling, &files), out);
    }
    let mut ending = Ending::Dry;
    for path in &args.files {
        let name = path.display().to_string();
        let files = files(args, path);
        let ended = if path == Path::new("-") {
            all(io::stdin().lock(), None, (args.telling, &files), out)?
        } else {
            match File::open(path) {
                Ok(file) => all(
                    BufReader::new(file),
                    Some(&name),
                    (args.telling, &files),
                    out,
                )?,
                Err(error) => {
                    eprintln!("dewrun: {name}: {error}");
                    Ending::Failed
                }
            }
        };
        ending = ending.max(ended);
    }
    Ok(ending)
}

/// Answers every line of a text.
fn all(
    mut text: impl BufRead,
    file: Option<&str>,
    (telling, files): (Telling, &Files),
    out: &mut impl Write,
) -> io::Result<Ending> {
    let mut ending = Ending::Dry;
    let mut number = 0;
    loop {
        let line = match next(&mut text) {
            Ok(Some(line)) => line,
            Ok(None) => {
                for complaint in files.complaints() {
                    eprintln!(
                        "dewrun: {}: {complaint}",
                        file.unwrap_or("the standard input")
                    );
                }
                return Ok(ending);
            }
            Err(error) => {
                eprintln!(
                    "dewrun: {} could not be read further: {error}",
                    file.unwrap_or("the standard input")
                );
                return Ok(Ending::Failed);
            }
        };
        number += 1;
        if line.is_ok_and_blank() {
            continue;
        }
        let (mut answer, ended) = one(line, telling, files);
        answer.file = file.map(ToOwned::to_owned);
        answer.line = Some(number);
        ending = ending.max(ended);
        writeln!(out, "{}", json(&answer))?;
        out.flush()?;
    }
}

/// One line of a text, or its length where it is longer than any project.
enum Line {
    Whole(Vec<u8>),
    TooLong(usize),
}

impl Line {
    fn is_ok_and_blank(&self) -> bool {
        matches!(self, Self::Whole(bytes) if bytes.trim_ascii().is_empty())
    }
}

/// The next line without its end; what goes beyond the longest project is counted, not kept.
fn next(text: &mut impl BufRead) -> io::Result<Option<Line>> {
    let most = u64::try_from(limits::TEXT_BYTES).unwrap_or(u64::MAX);
    let mut bytes = Vec::new();
    let mut count = text.by_ref().take(most + 2).read_until(b'\n', &mut bytes)?;
    if count == 0 {
        return Ok(None);
    }
    if bytes.last() == Some(&b'\n') {
        bytes.pop();
        return Ok(Some(Line::Whole(bytes)));
    }
    if count <= limits::TEXT_BYTES {
        return Ok(Some(Line::Whole(bytes)));
    }
    loop {
        bytes.clear();
        let more = text.by_ref().take(most).read_until(b'\n', &mut bytes)?;
        count += more;
        if more == 0 || bytes.last() == Some(&b'\n') {
            return Ok(Some(Line::TooLong(count)));
        }
    }
}

fn one(line: Line, telling: Telling, files: &Files) -> (AssessOutput, Ending) {
    let project = match line {
        Line::Whole(bytes) => of_bytes(&bytes),
        Line::TooLong(bytes) => Err(DocumentError::TooLong {
            bytes,
            max: limits::TEXT_BYTES,
        }),
    };
    let evaluated = project.and_then(|project| Ok((evaluate(&project, None)?, project)));
    match evaluated {
        Ok((runs, project)) => {
            let mut answer = output(&project, &runs, telling);
            let ending = add_years(&project, &mut answer, files);
            (answer, ending.max(worst(&runs)))
        }
        Err(error) => (AssessOutput::failed(&error), Ending::Failed),
    }
}

/// Adds the year of each run where the project names a weather file; how they ended.
fn add_years(project: &Project, answer: &mut AssessOutput, files: &Files) -> Ending {
    if project.weather.is_none() {
        return Ending::Dry;
    }
    let mut ending = Ending::Dry;
    let positions: Vec<usize> = (0..project.runs.len()).collect();
    let years = of_runs(project, &positions, files, Wanted::default(), || {});
    for (run, year) in answer.runs.iter_mut().zip(years) {
        ending = ending.max(year.ending());
        match year.result {
            Ok(told) => run.year = Some(told.output),
            Err(error) => {
                run.error.get_or_insert_with(|| ErrorOutput::from(&error));
            }
        }
    }
    ending
}

/// The weather files of a text of lines: in the folder that was said, or else beside it.
fn files(args: &Lines, path: &Path) -> Files {
    let beside = path.parent().unwrap_or(Path::new(""));
    let folder = args.weather_in.as_deref().unwrap_or(beside);
    Files::beside(folder.to_owned())
}

/// The answer on one line; where a figure of it is no number, the error instead.
fn json(answer: &AssessOutput) -> String {
    answer.to_json(true).unwrap_or_else(|error| {
        let failed = AssessOutput {
            file: answer.file.clone(),
            line: answer.line,
            ..AssessOutput::failed(&error)
        };
        failed.to_json(true).unwrap_or_default()
    })
}
