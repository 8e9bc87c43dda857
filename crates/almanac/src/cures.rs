//! The remedies of the year that was found, sought in turns.

use dewrun_desk::count_of;
use dewrun_document::output::RemediesOutput;
use dewrun_document::{
    Access, Project, RemediesTelling, access_of, called, installed, make_alterations, read,
    remedies_answer, target_of, write,
};
use dewrun_drawing::remedy::{Shown, first, sentences, table, worded};
use dewrun_quantity::Style;
use dewrun_remedies::{Inputs, RankBy, Search, Subject, Tried, pairs, rank, searches};
use dewrun_run::Factors;

use crate::year::{Found, Of, TURN_H};

/// The remedies of a run, on their way.
pub(crate) struct Cures {
    of: Of,
    project: Project,
    spaces: Vec<String>,
    subject: Subject,
    waiting: Vec<Search>,
    done: usize,
    all: usize,
    has_pairs: bool,
    tried: Vec<Tried>,
}

impl Cures {
    /// At the start of the search, of the year that was found.
    ///
    /// # Errors
    /// Why there are none, as a sentence.
    pub(crate) fn begin(found: &Found) -> Result<Self, String> {
        let project = read(&found.of.project).map_err(|error| error.to_string())?;
        let built = installed(&project, found.of.run).map_err(|error| error.to_string())?;
        let inputs = Inputs {
            run: found.run.clone(),
            installation: built.installation,
            season: found.season.clone(),
            factors: Factors::PUBLISHED,
        };
        let year = Some(found.outcome.clone());
        let target = target_of(&project).map_err(|error| error.to_string())?;
        let subject = Subject::with_year(inputs, target, year);
        let subject = subject.map_err(|error| error.to_string())?;
        let mut waiting = searches(&subject);
        let all = waiting.len();
        waiting.reverse();
        let spaces = project.spaces.iter();
        Ok(Self {
            of: found.of.clone(),
            spaces: spaces.map(|space| called(&space.name, &space.id)).collect(),
            project,
            subject,
            waiting,
            done: 0,
            all,
            has_pairs: false,
            tried: Vec::new(),
        })
    }

    /// Goes on for a moment; how much is done, 1 when all is.
    pub(crate) fn turn(&mut self) -> f64 {
        let climate = self.of.climate();
        let Some(search) = self.waiting.last_mut() else {
            if self.has_pairs {
                return 1.0;
            }
            self.has_pairs = true;
            self.waiting = pairs(&self.tried);
            self.all += self.waiting.len();
            return self.share();
        };
        if search.turn(&self.subject, Some(climate), TURN_H)
            && let Some(search) = self.waiting.pop()
        {
            self.done += 1;
            self.tried.extend(search.end());
        }
        self.share()
    }

    /// Never all of it while something may be left.
    fn share(&self) -> f64 {
        let count = |number: usize| u32::try_from(number).map_or(0.0, f64::from);
        (count(self.done) / count(self.all).max(1.0)).min(0.999)
    }

    /// How many remedies are known.
    pub(crate) fn count(&self) -> usize {
        self.tried.len()
    }

    /// What is known as a table, ranked by the column of a number.
    pub(crate) fn told(&self, style: Style, rank: f64) -> String {
        if self.subject.is_met() {
            return "<p>The run as drawn meets it: nothing has to be done.</p>".to_owned();
        }
        let run = (&self.subject.inputs.run, self.spaces.as_slice());
        table(run, &self.subject.left, &self.ranked(rank), style)
    }

    /// The first of them as rows for the answer; nothing where nothing has to be done, or before all are known.
    pub(crate) fn first(&self, style: Style, rank: f64) -> String {
        if self.subject.is_met() || !self.is_done() {
            return String::new();
        }
        let run = (&self.subject.inputs.run, self.spaces.as_slice());
        first(run, &self.subject.left, &self.ranked(rank), style)
    }

    fn ranked(&self, rank: f64) -> Vec<Shown<'_>> {
        let by = count_of(rank).and_then(|rank| RankBy::ALL.get(rank).copied());
        let by = by.unwrap_or_default();
        let known = self.tried.iter().enumerate();
        let mut shown: Vec<Shown<'_>> = known
            .filter(|(_, tried)| tried.is_cure || tried.kinds.len() == 1)
            .map(|(number, tried)| Shown {
                number,
                tried,
                access: access_of(&self.project, self.of.run, &tried.alterations)
                    .map_or("", Access::words),
            })
            .collect();
        shown.sort_by(|one, next| by.compare(one.tried, next.tried));
        shown
    }

    /// Nothing is left to seek.
    fn is_done(&self) -> bool {
        self.waiting.is_empty() && (self.has_pairs || self.subject.is_met())
    }

    /// Whether they are sought for a year.
    pub(crate) fn are_of(&self, of: &Of) -> bool {
        self.of.is(of)
    }

    /// The answer about them, as on the command line; none while something may be left to seek.
    pub(crate) fn output(&self, style: Style) -> Option<RemediesOutput> {
        if !self.is_done() {
            return None;
        }
        let mut tried = self.tried.clone();
        rank(&mut tried, RankBy::default());
        let sentences = sentences(&self.subject, &self.spaces, &tried, style);
        let telling = RemediesTelling {
            subject: &self.subject,
            of: (&self.project, self.of.run),
            weather: None,
            sentences: &sentences,
            tried: &tried,
        };
        Some(remedies_answer(&telling, |one| {
            worded(&self.subject, &self.spaces, one, style)
        }))
    }

    /// The project with a remedy made.
    ///
    /// # Errors
    /// There is no such remedy, as a sentence.
    pub(crate) fn made(&self, number: usize) -> Result<String, String> {
        let tried = self.tried.get(number).ok_or("there is no such remedy")?;
        let mut project = self.project.clone();
        make_alterations(&mut project, self.of.run, &tried.alterations);
        write(&project).map_err(|error| error.to_string())
    }
}
