//! The answers of a project's runs, one after another.

use std::io::{self, Write};

use dewrun_document::{DocumentError, Project, called};

use crate::report::CAUTIONS;

/// What became of a run's question.
pub(crate) struct RunAnswer<T> {
    pub(crate) position: usize,
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) result: Result<T, DocumentError>,
}

impl<T> RunAnswer<T> {
    /// The answer of the run at a position of its project.
    pub(crate) fn of(project: &Project, position: usize, result: Result<T, DocumentError>) -> Self {
        let run = project.runs.get(position);
        Self {
            position,
            id: run.map(|run| run.id.clone()).unwrap_or_default(),
            name: run.map(|run| run.name.clone()).unwrap_or_default(),
            result,
        }
    }
}

/// Writes every answer that there is, each with the name of its run, and the cautions after them.
pub(crate) fn write_text<T, W: Write>(
    answers: &[RunAnswer<T>],
    out: &mut W,
    mut write: impl FnMut(&T, &str, &mut W) -> io::Result<()>,
) -> io::Result<()> {
    let mut is_answered = false;
    for one in answers {
        let Ok(told) = &one.result else {
            continue;
        };
        is_answered = true;
        write(told, &called(&one.name, &one.id), out)?;
        writeln!(out)?;
    }
    if is_answered {
        writeln!(out, "{CAUTIONS}")?;
    }
    Ok(())
}
