//! The members of a year's ensemble: one marched in a worker, all of them told where they come together.

use dewrun_advice::seed_of;
use dewrun_document::output::EnsembleOutput;
use dewrun_document::{
    EnsembleSaid, EnsembleTelling, ensemble_answer, measurements, read, to_ensemble,
    weather_reference,
};
use dewrun_drawing::{DoubtWords, assumed_name};
use dewrun_ensemble::{Gathered, Kept, Member, MemberWork, Plan, Span, Varied, reweighted, told};
use dewrun_quantity::Style;
use dewrun_season::YearOutcome;

use crate::held::Held;
use crate::year::Of;

/// Hours that are marched between two looks at the clock: a few milliseconds.
const TURN_H: usize = 96;

/// No ensemble of the page has more members.
const MOST_MEMBERS: usize = 256;

/// What an ensemble is made of.
pub(crate) struct Ensemble {
    of: Of,
    project: dewrun_document::Project,
    said: EnsembleSaid,
    plan: Plan,
    work: Option<MemberWork>,
}

/// How sure a year is.
pub(crate) struct Doubted {
    pub(crate) output: EnsembleOutput,
    /// What each of its spans is called.
    pub(crate) names: Vec<String>,
}

impl Ensemble {
    /// The ensemble of a run's year in the weather that is held.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub(crate) fn new(of: Of) -> Result<Self, String> {
        let project = read(&of.project).map_err(|error| error.to_string())?;
        let said = to_ensemble(&project, of.run).map_err(|error| error.to_string())?;
        let plan = Plan::new(said.usual.clone(), seed_of(&said.names.run));
        Ok(Self {
            of,
            project,
            said,
            plan,
            work: None,
        })
    }

    /// It is that of the same run in the same weather.
    pub(crate) fn is(&self, of: &Of) -> bool {
        self.of.is(of)
    }

    /// Begins a member by its number, without one the year as it is entered; false where its values leave what the relations hold for.
    pub(crate) fn begin(&mut self, number: Option<u32>) -> bool {
        let climate = self.of.climate();
        let rows = rows_of(&self.of.weather);
        self.work = match number {
            Some(number) => MemberWork::of(&self.plan, number, climate, rows).ok(),
            None => MemberWork::usual(&self.plan, climate, rows).ok(),
        };
        self.work.is_some()
    }

    /// Goes on with it for a moment: the hours that are done, none when all are.
    pub(crate) fn turn(&mut self, done: usize) -> Option<usize> {
        let until = done + TURN_H;
        let is_done = self.work.as_mut().is_none_or(|work| work.advance(until));
        (!is_done).then_some(until)
    }

    /// What it came to, as numbers and hours; none of either where it has no answer.
    pub(crate) fn end(&mut self) -> (Vec<f64>, Vec<u8>) {
        let work = self.work.take();
        let member = work.map(|work| work.member(self.of.climate()));
        member.as_ref().map_or_else(Default::default, carried)
    }

    /// What the year as it is entered came to, that was marched already.
    pub(crate) fn entered(&self, year: &YearOutcome) -> (Vec<f64>, Vec<u8>) {
        let rows = rows_of(&self.of.weather);
        carried(&Member::usual(&self.plan, year, self.of.climate(), rows))
    }

    /// What its members are made of.
    pub(crate) const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The start of each hour of its members.
    ///
    /// # Errors
    /// Why there is none, as a sentence.
    pub(crate) fn start_s(&self) -> Result<Vec<i64>, String> {
        let hourly = self.of.climate().hours(self.plan.usual());
        hourly
            .map(|hourly| hourly.start_s)
            .map_err(|error| error.to_string())
    }

    /// What members say that were carried here: the year as it is entered, then each by its number; an empty one has no answer.
    ///
    /// # Errors
    /// Why that can't be told, as a sentence.
    pub(crate) fn told(
        &self,
        held: &Held,
        usual: &[f64],
        members: &[&[f64]],
        style: Style,
    ) -> Result<Doubted, String> {
        let usual = Member::carried(&self.plan, None, usual);
        let usual = usual.ok_or("the year as it is entered has no answer")?;
        let mut gathered = Gathered::default();
        for (number, numbers) in (0..).zip(members) {
            match Member::carried(&self.plan, Some(number), numbers) {
                Some(member) => gathered.take(number, Ok(member)),
                None => gathered.has_none(number),
            }
        }
        let all = told(&self.plan, &gathered, None);
        let all = all.ok_or("no member of the ensemble has an answer")?;
        let is_typical = held.weather.series.timing.is_typical_year;
        let readings = measurements(&self.project, self.of.run, is_typical);
        let by = (!readings.is_empty()).then(|| reweighted(&gathered, &readings));
        let after = by
            .as_ref()
            .and_then(|by| told(&self.plan, &gathered, Some(&by.weights)));
        let measured = by.as_ref().zip(after.as_ref());
        let weather = weather_reference(&held.name, &held.weather);
        let sentences = DoubtWords {
            plan: &self.plan,
            spaces: &self.said.names.spaces,
            place: match weather.place.trim() {
                "" => weather.file.as_str(),
                place => place,
            },
            usual: &usual,
            told: &all,
            measured,
            style,
        }
        .sentences();
        let output = ensemble_answer(EnsembleTelling {
            sentences: &sentences,
            run_index: self.of.run,
            said: &self.said,
            plan: &self.plan,
            weather: &weather,
            bytes: 0,
            usual: Some(&usual),
            told: &all,
            measured,
        });
        Ok(Doubted {
            output,
            names: self.names(),
        })
    }

    /// What each span is called, the air of a space by the name of the space.
    fn names(&self) -> Vec<String> {
        let spaces = &self.said.names.spaces;
        let name = |span: &Span| match &span.varied {
            Varied::Input { figure, places } => {
                assumed_name(spaces, *figure, places.first().copied())
            }
            Varied::Season(input) => input.name().to_owned(),
            Varied::Relation(relation) => relation.name().to_owned(),
        };
        self.plan.spans().iter().map(name).collect()
    }
}

/// A member as numbers and hours.
fn carried(member: &Member) -> (Vec<f64>, Vec<u8>) {
    (member.as_numbers(), member.hours.as_bytes())
}

/// As many rows of a weather are kept as one hour of a member, so that all members fit.
pub(crate) fn rows_of(weather: &dewrun_weather::Weather) -> usize {
    Kept::rows_each(weather.series.len(), MOST_MEMBERS)
}
