//! A run's year, marched in slices, and what it comes to.

use dewrun_run::{Grade, Installation, Run};
use dewrun_year::{
    Grid, HourSum, March, Month, Route, RouteDesign, Steps, YearSum, dry_by_bound, months,
    route_design, year_sum,
};

use crate::error::SeasonError;
use crate::hourly::Hourly;

/// A run's year on its way.
#[derive(Debug, Clone)]
pub struct YearWork {
    route: Route,
    hourly: Hourly,
    march: March,
    rating: Option<f64>,
}

/// What a run's year comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct YearOutcome {
    /// The hours that were marched.
    pub hourly: Hourly,
    /// What came of each.
    pub sums: Vec<HourSum>,
    /// All of them in a few numbers.
    pub sum: YearSum,
    /// By month, January first.
    pub months: [Month; 12],
    /// The hours at which 0.4, 1 and 2 % of all are wetter.
    pub design: Vec<RouteDesign>,
    /// Hours that are dry by bound: no wall is colder than the duct's dew point.
    pub by_bound_hours: f64,
    /// What the answer rests on: by bound where every hour is.
    pub grade: Grade,
    /// Water that is missing from the balance of the year, kg: the rounding.
    pub balance_off_kg: f64,
}

impl YearWork {
    /// At the start of the year, all walls dry.
    ///
    /// # Errors
    /// What keeps the run from being evaluated.
    pub fn new(
        run: &Run,
        installation: &Installation,
        hourly: Hourly,
    ) -> Result<Self, SeasonError> {
        let route = Route::of_run(run, installation.film)?;
        let steps = Steps::QuartersWhereDrying;
        let march = March::new(&route, &hourly.hours, Grid::PRODUCT, steps);
        let rating = run.detector.humidity_rating;
        Ok(Self {
            route,
            hourly,
            march,
            rating: rating.map(|rating| rating.to_fraction()),
        })
    }

    /// How many hours there are.
    #[must_use]
    pub fn hours(&self) -> usize {
        self.hourly.hours.len()
    }

    /// Marches on until so many hours are done, or all there are; true when all are.
    pub fn advance(&mut self, until: usize) -> bool {
        self.march.advance(&self.hourly.hours, until)
    }

    /// What the hours that are done come to.
    #[must_use]
    pub fn outcome(self) -> YearOutcome {
        let sums = self.march.hours().to_vec();
        let hours = &self.hourly.hours;
        let sum = year_sum(hours, &sums, self.rating);
        let (grade, by_bound_hours) = by_bound(&self.route, &self.hourly, &sums);
        YearOutcome {
            sum,
            months: months(&sums, |hour| self.hourly.month(hour)),
            design: route_design(&sums),
            by_bound_hours,
            grade,
            balance_off_kg: balance_off_kg(&sums),
            sums,
            hourly: self.hourly,
        }
    }
}

/// A run's year in one call.
///
/// # Errors
/// As [`YearWork::new`].
pub fn year_of(
    run: &Run,
    installation: &Installation,
    hourly: Hourly,
) -> Result<YearOutcome, SeasonError> {
    let mut work = YearWork::new(run, installation, hourly)?;
    let all = work.hours();
    while !work.advance(all) {}
    Ok(work.outcome())
}

/// Hours that need no tube relation, and whether all are such.
fn by_bound(route: &Route, hourly: &Hourly, sums: &[HourSum]) -> (Grade, f64) {
    let mut are_dry = true;
    let mut grade = Grade::ByBound;
    let mut hours = 0.0;
    for (at, sum) in sums.iter().enumerate() {
        if dry_by_bound(route, &hourly.hours, at, are_dry) {
            hours += sum.seconds / 3600.0;
        } else {
            grade = Grade::ByModel;
        }
        are_dry = sum.on_walls_kg() <= 0.0;
    }
    (grade, hours)
}

/// What comes in, less what leaves and what lies on the walls at the end, kg.
fn balance_off_kg(sums: &[HourSum]) -> f64 {
    let total = |of: fn(&HourSum) -> f64| sums.iter().map(of).sum::<f64>();
    let on_walls = sums.last().map_or(0.0, HourSum::on_walls_kg);
    let left = total(|hour| hour.water_out_kg) + total(|hour| hour.drained_kg) + on_walls;
    total(|hour| hour.water_in_kg) - left
}
