//! The smallest size of one remedy that meets the target: tried on the worst hours, confirmed by the whole year, and one step smaller seen to miss it.

use dewrun_ensemble::Climate;
use dewrun_season::{Hourly, YearOutcome, YearWork};

use crate::alteration::{Alteration, altered};
use crate::kind::Kind;
use crate::ladder::Ladder;
use crate::left::{EnteredLeft, Left, YearLeft};
use crate::powered::{Powered, without_power};
use crate::subject::Subject;
use crate::walk::Walk;

/// The search for the smallest size of one remedy, on its way.
#[derive(Debug, Clone)]
pub struct Search {
    ladder: Ladder,
    stage: Stage,
    /// What is left as entered of the sizes looked at so far; none of those that have no answer.
    entered: Vec<Option<EnteredLeft>>,
    /// Sizes that meet the target as entered.
    may: Vec<usize>,
    /// What a whole year left of the size that was marched last, and of the smallest that met.
    last: Option<(usize, Left)>,
    met: Option<(usize, Left)>,
    march: Option<Box<YearWork>>,
    tried: Option<Tried>,
}

#[derive(Debug, Clone)]
enum Stage {
    /// Each size in the conditions entered.
    Entered,
    /// Sizes on the worst hours, by their place among those that may do.
    Sample(Walk),
    /// Sizes through the whole year, likewise.
    Year(Walk),
    /// The largest of all, to tell what it leaves.
    Largest,
    /// What was found, without its power.
    Failed,
    /// All is known.
    Done,
}

/// What became of a remedy.
#[derive(Debug, Clone, PartialEq)]
pub struct Tried {
    /// What it does; two where one alone does not do.
    pub kinds: Vec<Kind>,
    /// All that is changed.
    pub alterations: Vec<Alteration>,
    /// Whether the target is met with it; else it is the largest size there is.
    pub is_cure: bool,
    /// What is left with it.
    pub left: Left,
    /// The next smaller size of a cure, which misses the target; none where it is the smallest there is.
    pub smaller: Option<Vec<Alteration>>,
    /// What it takes of power, and what comes of its failure; none where it needs none.
    pub powered: Option<Powered>,
    /// All sizes that there are, the smallest first.
    pub(crate) rungs: Vec<Vec<Alteration>>,
}

impl Search {
    pub(crate) const fn new(ladder: Ladder) -> Self {
        Self {
            ladder,
            stage: Stage::Entered,
            entered: Vec::new(),
            may: Vec::new(),
            last: None,
            met: None,
            march: None,
            tried: None,
        }
    }

    /// What is sought.
    #[must_use]
    pub fn kinds(&self) -> &[Kind] {
        &self.ladder.kinds
    }

    /// Goes on by so many hours of a year, or by another piece of work that is no longer; true when all is known.
    pub fn turn(&mut self, subject: &Subject, climate: Option<Climate<'_>>, hours: usize) -> bool {
        match &self.stage {
            Stage::Entered => self.look(subject),
            Stage::Sample(walk) => match walk.next() {
                None => self.guessed(walk.end()),
                Some(step) => self.sample(step, subject, climate),
            },
            Stage::Year(walk) => match walk.next() {
                None => self.settled(walk.end()),
                Some(step) => {
                    let rung = self.may.get(step).copied();
                    if let Some((rung, year)) = rung.zip(self.year(rung, subject, climate, hours)) {
                        self.judge(step, rung, year.map(|year| YearLeft::of(&year)), subject);
                    }
                }
            },
            Stage::Largest => {
                let top = self.ladder.rungs.len() - 1;
                if let Some(year) = self.year(Some(top), subject, climate, hours) {
                    let left = self.left(top, year.map(|year| YearLeft::of(&year)));
                    self.ends_without(top, left);
                }
            }
            Stage::Failed => self.fail(subject, climate, hours),
            Stage::Done => return true,
        }
        matches!(self.stage, Stage::Done)
    }

    /// All of it at once.
    #[must_use]
    pub fn finished(mut self, subject: &Subject, climate: Option<Climate<'_>>) -> Option<Tried> {
        while !self.turn(subject, climate, usize::MAX) {}
        self.tried
    }

    /// What became of it; none where no size has an answer, or it is not done.
    #[must_use]
    pub fn end(self) -> Option<Tried> {
        self.tried
    }

    /// The next size as entered.
    fn look(&mut self, subject: &Subject) {
        let Some(rung) = self.ladder.rungs.get(self.entered.len()) else {
            return self.looked(subject);
        };
        let entered = EnteredLeft::of(&altered(&subject.inputs, rung));
        if let Some(entered) = &entered {
            let left = Left {
                entered: entered.clone(),
                // Parts of the target that are about the year are looked at by its hours.
                year: subject.left.year.clone(),
            };
            if subject.target.missed_as_entered(&left).is_empty() {
                self.may.push(self.entered.len());
            }
        }
        self.entered.push(entered);
    }

    /// All sizes are looked at as entered.
    fn looked(&mut self, subject: &Subject) {
        let has_year = subject.year.is_some();
        let count = self.may.len();
        self.stage = match (count, has_year) {
            (0, true) => Stage::Largest,
            (0, false) => {
                let top = self.ladder.rungs.len() - 1;
                let left = self.left(top, None);
                return self.ends_without(top, left);
            }
            (_, false) => {
                let rung = self.may.iter().copied().find(|rung| {
                    let left = self.left(*rung, None);
                    left.is_some_and(|left| subject.target.is_met(&left, subject.rating))
                });
                let Some(rung) = rung else {
                    let top = self.ladder.rungs.len() - 1;
                    let left = self.left(top, None);
                    return self.ends_without(top, left);
                };
                self.met = self.left(rung, None).map(|left| (rung, left));
                return self.found();
            }
            (count, true) if subject.sample.is_some() => {
                Stage::Sample(Walk::new(count, self.ladder.is_monotone))
            }
            (count, true) => Stage::Year(Walk::around(count, 0, self.ladder.is_monotone)),
        };
    }

    fn sample(&mut self, step: usize, subject: &Subject, climate: Option<Climate<'_>>) {
        let rung = self.may.get(step).copied();
        let is_met = rung.is_some_and(|rung| self.is_met_in_worst(rung, subject, climate));
        if let Stage::Sample(walk) = &mut self.stage {
            walk.learn(step, is_met);
        }
    }

    fn is_met_in_worst(
        &self,
        rung: usize,
        subject: &Subject,
        climate: Option<Climate<'_>>,
    ) -> bool {
        let (Some(sample), Some(rung)) = (&subject.sample, self.ladder.rungs.get(rung)) else {
            return false;
        };
        let inputs = altered(&subject.inputs, rung);
        let Some(hourly) = hours_of(rung, subject, climate) else {
            return false;
        };
        let work = YearWork::new(&inputs.run, &inputs.installation, sample.hours_of(&hourly));
        work.is_ok_and(|mut work| {
            let all = work.hours();
            while !work.advance(all) {}
            sample.is_met(&work.outcome())
        })
    }

    fn guessed(&mut self, guess: usize) {
        let walk = Walk::around(self.may.len(), guess, self.ladder.is_monotone);
        self.stage = Stage::Year(walk);
    }

    /// Marches the year of a size; none while it is not done, and then none within where it has no answer.
    fn year(
        &mut self,
        rung: Option<usize>,
        subject: &Subject,
        climate: Option<Climate<'_>>,
        hours: usize,
    ) -> Option<Option<YearOutcome>> {
        let rung = rung.and_then(|rung| self.ladder.rungs.get(rung));
        let Some(rung) = rung else {
            return Some(None);
        };
        march(&mut self.march, rung, subject, climate, hours)
    }

    fn left(&self, rung: usize, year: Option<YearLeft>) -> Option<Left> {
        let entered = self.entered.get(rung)?.clone()?;
        Some(Left { entered, year })
    }

    fn judge(&mut self, step: usize, rung: usize, year: Option<YearLeft>, subject: &Subject) {
        let left = year.and_then(|year| self.left(rung, Some(year)));
        let is_met = left
            .as_ref()
            .is_some_and(|left| subject.target.is_met(left, subject.rating));
        let marched = left.map(|left| (rung, left));
        if is_met {
            self.met = marched;
        } else {
            self.last = marched;
        }
        if let Stage::Year(walk) = &mut self.stage {
            walk.learn(step, is_met);
        }
    }

    /// The walk through the years is at its end.
    fn settled(&mut self, end: usize) {
        if end < self.may.len() {
            return self.found();
        }
        let top = self.ladder.rungs.len() - 1;
        match self.last.take() {
            Some((rung, left)) if rung == top => self.ends_without(top, Some(left)),
            _ => self.stage = Stage::Largest,
        }
    }

    fn found(&mut self) {
        let Some((rung, left)) = self.met.take() else {
            self.stage = Stage::Done;
            return;
        };
        let smaller = rung.checked_sub(1);
        let rungs = &self.ladder.rungs;
        self.tried = rungs.get(rung).map(|alterations| Tried {
            kinds: self.ladder.kinds.clone(),
            alterations: alterations.clone(),
            is_cure: true,
            left,
            smaller: smaller.and_then(|rung| rungs.get(rung)).cloned(),
            powered: None,
            rungs: rungs.clone(),
        });
        self.without_power();
    }

    /// No size of the ladder does: a wider one is tried, or the largest is told.
    fn ends_without(&mut self, top: usize, left: Option<Left>) {
        if let Some(wider) = self.ladder.wider.take() {
            *self = Self::new(*wider);
            return;
        }
        let rungs = &self.ladder.rungs;
        self.tried = left.zip(rungs.get(top)).map(|(left, alterations)| Tried {
            kinds: self.ladder.kinds.clone(),
            alterations: alterations.clone(),
            is_cure: false,
            left,
            smaller: None,
            powered: None,
            rungs: rungs.clone(),
        });
        self.without_power();
    }

    fn without_power(&mut self) {
        let has_power = self.tried.as_ref().is_some_and(|tried| {
            tried.is_cure && tried.alterations.iter().any(Alteration::has_power)
        });
        self.stage = if has_power {
            Stage::Failed
        } else {
            Stage::Done
        };
    }

    fn fail(&mut self, subject: &Subject, climate: Option<Climate<'_>>, hours: usize) {
        let Some(tried) = &mut self.tried else {
            self.stage = Stage::Done;
            return;
        };
        let own = subject.inputs.run.detector.heat;
        let failed: Vec<Alteration> = tried
            .alterations
            .iter()
            .map(|one| one.failed(own))
            .collect();
        let year = if subject.year.is_some() {
            match march(&mut self.march, &failed, subject, climate, hours) {
                None => return,
                Some(year) => year,
            }
        } else {
            None
        };
        tried.powered = without_power(subject, &tried.alterations, &failed, year.as_ref());
        self.stage = Stage::Done;
    }
}

/// Marches the year with alterations; none while it is not done, and then none within where it has no answer.
fn march(
    march: &mut Option<Box<YearWork>>,
    alterations: &[Alteration],
    subject: &Subject,
    climate: Option<Climate<'_>>,
    hours: usize,
) -> Option<Option<YearOutcome>> {
    let mut work = match march.take() {
        Some(work) => work,
        None => {
            let inputs = altered(&subject.inputs, alterations);
            let hourly = hours_of(alterations, subject, climate);
            let work = hourly
                .and_then(|hourly| YearWork::new(&inputs.run, &inputs.installation, hourly).ok());
            match work {
                Some(work) => Box::new(work),
                None => return Some(None),
            }
        }
    };
    let until = work.done().saturating_add(hours);
    if work.advance(until) {
        return Some(Some(work.outcome()));
    }
    *march = Some(work);
    None
}

/// The hours that a run with alterations meets: those of the run as drawn, unless what is altered moves the air or its spaces.
fn hours_of(
    alterations: &[Alteration],
    subject: &Subject,
    climate: Option<Climate<'_>>,
) -> Option<Hourly> {
    let moves = alterations.iter().any(|one| {
        matches!(
            one,
            Alteration::Flow(_) | Alteration::Space { .. } | Alteration::DetectorAt { .. }
        )
    });
    if moves {
        return climate?.hours(&altered(&subject.inputs, alterations)).ok();
    }
    subject.year.as_ref().map(|year| year.hourly.clone())
}
