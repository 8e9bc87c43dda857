//! One member of an ensemble: its year on its way, and what is kept of it.

use dewrun_run::{Whole, evaluate_with, water_and_air};
use dewrun_season::{SeasonError, YearOutcome, YearWork};

use crate::hours::Kept;
use crate::measured::OnSiteTold;
use crate::plan::{Climate, Inputs, Plan};
use crate::quantity::Totals;
use crate::wet_along::wet_along;

/// What is kept of a member.
#[derive(Debug, Clone, PartialEq)]
pub struct Member {
    /// Where it lies in each span, as the share of all members that lie below.
    pub point: Vec<f64>,
    /// Its values, span by span.
    pub values: Vec<f64>,
    /// What its year comes to.
    pub totals: Totals,
    /// At which places of the intake and of the exhaust it is wet in the wettest hour of a month, a decimetre from one to the next.
    pub wet_along: [Vec<bool>; 2],
    /// Its hours, kept small.
    pub hours: Kept,
    /// What it says of readings on site.
    pub on_site: OnSiteTold,
}

/// A member's year on its way.
#[derive(Debug, Clone)]
pub struct MemberWork {
    inputs: Inputs,
    point: Vec<f64>,
    values: Vec<f64>,
    work: YearWork,
    rows_each: usize,
}

impl MemberWork {
    /// At the start of the year of a member, by its number; so many rows of the weather are kept as one.
    ///
    /// # Errors
    /// What keeps its year from being marched: values that go beyond what the relations hold for.
    pub fn of(
        plan: &Plan,
        member: u32,
        climate: Climate<'_>,
        rows_each: usize,
    ) -> Result<Self, SeasonError> {
        let (point, values) = (plan.point(member), plan.values(member));
        Self::begin(plan.with(&values), (point, values), climate, rows_each)
    }

    /// At the start of the year with all values as they stand.
    ///
    /// # Errors
    /// As [`MemberWork::of`].
    pub fn usual(plan: &Plan, climate: Climate<'_>, rows_each: usize) -> Result<Self, SeasonError> {
        let inputs = plan.usual().clone();
        Self::begin(inputs, usual_place(plan), climate, rows_each)
    }

    fn begin(
        inputs: Inputs,
        (point, values): (Vec<f64>, Vec<f64>),
        climate: Climate<'_>,
        rows_each: usize,
    ) -> Result<Self, SeasonError> {
        let hourly = climate.hours(&inputs)?;
        let work = YearWork::new(&inputs.run, &inputs.installation, hourly)?;
        let work = work.with_factors(inputs.factors);
        Ok(Self {
            inputs,
            point,
            values,
            work,
            rows_each,
        })
    }

    /// How many hours there are.
    #[must_use]
    pub fn hours(&self) -> usize {
        self.work.hours()
    }

    /// Marches on until so many hours are done, or all there are; true when all are.
    pub fn advance(&mut self, until: usize) -> bool {
        self.work.advance(until)
    }

    /// The member, from the hours that are done.
    #[must_use]
    pub fn member(self, climate: Climate<'_>) -> Member {
        let Self {
            inputs,
            point,
            values,
            work,
            rows_each,
        } = self;
        let year = work.outcome();
        kept(&inputs, (point, values), &year, climate, rows_each)
    }

    /// All of the year at once.
    #[must_use]
    pub fn finished(mut self, climate: Climate<'_>) -> Member {
        let all = self.hours();
        while !self.advance(all) {}
        self.member(climate)
    }

    /// All of the year as it was marched, for those who want every hour.
    #[must_use]
    pub fn year(mut self) -> YearOutcome {
        let all = self.hours();
        while !self.advance(all) {}
        self.work.outcome()
    }
}

impl Member {
    /// The year with all values as they stand, as it was marched elsewhere.
    #[must_use]
    pub fn usual(plan: &Plan, year: &YearOutcome, climate: Climate<'_>, rows_each: usize) -> Self {
        kept(plan.usual(), usual_place(plan), year, climate, rows_each)
    }
}

/// Where the year with all values as they stand lies, and its values.
fn usual_place(plan: &Plan) -> (Vec<f64>, Vec<f64>) {
    let values: Vec<f64> = plan.spans().iter().map(|span| span.usual).collect();
    (vec![0.5; values.len()], values)
}

/// What is kept of a year.
fn kept(
    inputs: &Inputs,
    (point, values): (Vec<f64>, Vec<f64>),
    year: &YearOutcome,
    climate: Climate<'_>,
    rows_each: usize,
) -> Member {
    let rating = inputs.run.detector.humidity_rating;
    let whole = whole(inputs);
    Member {
        point,
        values,
        totals: Totals::of(year),
        wet_along: wet_along(inputs, year, climate),
        hours: Kept::of(year, rating.map(|rating| rating.to_fraction()), rows_each),
        on_site: OnSiteTold::of(&inputs.run, whole.as_ref(), year),
    }
}

fn whole(inputs: &Inputs) -> Option<Whole> {
    let steady = evaluate_with(&inputs.run, inputs.factors).ok()?.value;
    water_and_air(&inputs.run, &inputs.installation, &steady).ok()
}
