//! `dewrun assess`: is it dry enough as drawn, and what happens in each leg.

use std::io::{self, Write};
use std::path::Path;

use dewrun_document::output::AssessOutput;
use dewrun_document::{DocumentError, Project};

use crate::answer_json::write_answer;
use crate::args::Assess;
use crate::evaluate::{Evaluated, evaluate, output, worst};
use crate::exit::Ending;
use crate::project::{self, complain_of, name_of};
use crate::report::{CAUTIONS, write_run};

pub(crate) fn assess(args: &Assess, out: &mut impl Write) -> io::Result<Ending> {
    let mut ending = Ending::Dry;
    let mut is_answered = false;
    for path in &args.projects {
        let name = name_of(path);
        let loaded = load(path, args.run.as_deref());
        complain(&name, &loaded);
        is_answered |= loaded
            .as_ref()
            .is_ok_and(|(_, runs)| runs.iter().any(|run| run.result.is_ok()));
        let ended = if args.json {
            write_json(args, &name, &loaded, out)?
        } else {
            write_text(args, &loaded, out)?
        };
        ending = ending.max(ended);
    }
    if is_answered && !args.json {
        writeln!(out, "{CAUTIONS}")?;
    }
    Ok(ending)
}

/// A project and what became of its runs.
type Loaded = Result<(Project, Vec<Evaluated>), DocumentError>;

fn load(path: &Path, only: Option<&str>) -> Loaded {
    let project = project::load(path)?;
    let runs = evaluate(&project, only)?;
    Ok((project, runs))
}

/// Says on the standard error what has no answer and why, with the file and the place in it.
fn complain(file: &str, loaded: &Loaded) {
    let say = |error: &DocumentError| complain_of(file, error);
    match loaded {
        Ok((_, runs)) => runs.iter().filter_map(Evaluated::error).for_each(say),
        Err(error) => say(error),
    }
}

fn write_json(
    args: &Assess,
    file: &str,
    loaded: &Loaded,
    out: &mut impl Write,
) -> io::Result<Ending> {
    let (mut answer, ending) = match loaded {
        Ok((project, runs)) => {
            let answer = output(project, runs, args.telling);
            (answer.with_figures(), worst(runs))
        }
        Err(error) => (AssessOutput::failed(error), Ending::Failed),
    };
    answer.file = Some(file.to_owned());
    write_answer(file, answer.to_json(1 < args.projects.len()), ending, out)
}

fn write_text(args: &Assess, loaded: &Loaded, out: &mut impl Write) -> io::Result<Ending> {
    let Ok((project, runs)) = loaded else {
        return Ok(Ending::Failed);
    };
    for answered in runs.iter().filter_map(|run| run.result.as_ref().ok()) {
        write_run(answered, project, args.telling.units.style(), out)?;
        writeln!(out)?;
    }
    Ok(worst(runs))
}
