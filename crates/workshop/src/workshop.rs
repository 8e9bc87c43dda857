//! Where questions are asked: it keeps the run that the last one was about.

use std::rc::Rc;

use dewrun_desk::Work;

use crate::answer::{Answer, Turn};
use crate::asked::Asked;
use crate::job::Job;
use crate::kinds::{Found, found};
use crate::open::Open;

/// Answers questions about runs; several about one run evaluate it once.
#[derive(Default)]
pub struct Workshop {
    last: Option<Last>,
    job: Option<Box<dyn Job>>,
}

/// The run that the last question was about, as it was given.
struct Last {
    project: String,
    run: usize,
    open: Rc<Open>,
}

impl Workshop {
    /// Answers a question about a run of a project file, however long it takes.
    ///
    /// `kind` begins with its name ([`Work::name`]); words that belong to the question follow it.
    pub fn ask(&mut self, kind: &str, project: &str, run: usize, numbers: &[f64]) -> Answer {
        match self.found(kind, project, run, numbers) {
            Ok(Found::Answer(answer)) => answer,
            Ok(Found::Job(mut job)) => job.rest(),
            Err(sentence) => Answer::Sentence(sentence),
        }
    }

    /// Begins to answer a question in turns; what was begun before is given up.
    pub fn begin(&mut self, kind: &str, project: &str, run: usize, numbers: &[f64]) -> Turn {
        self.job = None;
        match self.found(kind, project, run, numbers) {
            Ok(Found::Answer(answer)) => Turn::Done(answer),
            Ok(Found::Job(job)) => {
                self.job = Some(job);
                Turn::Going(0.0)
            }
            Err(sentence) => Turn::Done(Answer::Sentence(sentence)),
        }
    }

    /// Goes on with what was begun; none where nothing is.
    pub fn turn(&mut self) -> Option<Turn> {
        let turn = self.job.as_mut()?.turn();
        if matches!(turn, Turn::Done(_)) {
            self.job = None;
        }
        Some(turn)
    }

    fn found(
        &mut self,
        kind: &str,
        project: &str,
        run: usize,
        numbers: &[f64],
    ) -> Result<Found, String> {
        let (name, words) = kind.split_once(' ').unwrap_or((kind, ""));
        let work =
            Work::named(name).ok_or_else(|| format!("nothing answers \u{201c}{name}\u{201d}"))?;
        let asked = Asked {
            open: self.opened(project, run)?,
            words,
            numbers,
        };
        found(work, &asked)
    }

    /// The run, evaluated; the one of the last question where it is that.
    fn opened(&mut self, project: &str, run: usize) -> Result<Rc<Open>, String> {
        if let Some(last) = &self.last
            && last.run == run
            && last.project == project
        {
            return Ok(Rc::clone(&last.open));
        }
        let open = Rc::new(Open::read(project, run)?);
        self.last = Some(Last {
            project: project.to_owned(),
            run,
            open: Rc::clone(&open),
        });
        Ok(open)
    }
}
