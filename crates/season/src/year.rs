//! A run's year, marched in slices, and what it comes to.

use dewrun_run::{Factors, Grade, Installation, Run, WholeError, evaluate, water_and_air};
use dewrun_year::{
    Grid, HourSum, March, Month, Route, RouteDesign, Steps, StorePlace, Visits, Water,
    WaterBalance, WaterHour, WaterSum, YearSum, dry_by_bound, months, route_design, water_balance,
    water_sum, year_sum,
};

use crate::error::SeasonError;
use crate::hourly::Hourly;

/// A run's year on its way.
#[derive(Debug, Clone)]
pub struct YearWork {
    route: Route,
    hourly: Hourly,
    march: March,
    no_water: Option<WholeError>,
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
    /// What came of each leg, in flow order.
    pub legs: Vec<LegYear>,
    /// Where all water went.
    pub balance: WaterBalance,
    /// Water that stands, and the air over it; or why it could not be followed.
    pub water: Result<WaterYear, WholeError>,
}

/// What a year comes to in one leg.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LegYear {
    /// Water and frost that deposited inside, kg.
    pub condensed_kg: f64,
    /// Sweat and rime outside, kg.
    pub sweat_kg: f64,
}

/// Water that stood in a year, and the air over it.
#[derive(Debug, Clone, PartialEq)]
pub struct WaterYear {
    /// All hours in a few numbers.
    pub sum: WaterSum,
    /// Each hour.
    pub hours: Vec<WaterHour>,
    /// Low and high limit of the airflow as parts of the reading as fitted: those in use, or else those advised.
    pub limits: Option<[f64; 2]>,
    /// Pools and traps.
    pub stores: Vec<StorePlace>,
    /// What stands in each of them at the end of each hour, kg, store by store within an hour.
    pub levels_kg: Vec<f64>,
}

impl YearWork {
    /// At the start of the year, all walls dry, seals filled, traps emptied at the drain interval.
    ///
    /// Where water and air of the run have no answer, the walls alone are followed.
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
        let (march, no_water) = match water_of(run, installation)? {
            Ok(water) => {
                let ways = (Grid::PRODUCT, steps);
                (March::with_water(&route, &hourly.hours, ways, water), None)
            }
            Err(error) => {
                let march = March::new(&route, &hourly.hours, Grid::PRODUCT, steps);
                (march, Some(error))
            }
        };
        let rating = run.detector.humidity_rating;
        Ok(Self {
            route,
            hourly,
            march,
            no_water,
            rating: rating.map(|rating| rating.to_fraction()),
        })
    }

    /// The same, but the films and the diffusivity of vapour are multiplied by factors, to carry their known spread through the year.
    ///
    /// # Range
    /// Before the first hour is marched. The airflow has the factor of its own in [`Installation::transition`](dewrun_run::Installation::transition).
    #[must_use]
    pub fn with_factors(self, factors: Factors) -> Self {
        Self {
            march: self.march.with_factors(factors),
            ..self
        }
    }

    /// How many hours there are.
    #[must_use]
    pub fn hours(&self) -> usize {
        self.hourly.hours.len()
    }

    /// How many of them are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.march.hours().len()
    }

    /// Marches on until so many hours are done, or all there are; true when all are.
    pub fn advance(&mut self, until: usize) -> bool {
        self.march.advance(&self.hourly.hours, until)
    }

    /// What the hours that are done come to.
    #[must_use]
    pub fn outcome(self) -> YearOutcome {
        let (march, hours) = (&self.march, &self.hourly.hours);
        let (sums, standing) = (march.hours(), march.water_hours());
        let sum = year_sum(hours, sums, self.rating);
        let (grade, by_bound_hours) = by_bound(&self.route, &self.hourly, sums, standing);
        let months = months(sums, |hour| self.hourly.month(hour));
        let design = route_design(sums);
        let legs = legs(march, sums.len());
        let balance = water_balance(march);
        let of_water = WaterYear {
            sum: water_sum(standing),
            hours: Vec::new(),
            limits: march.water().and_then(Water::limits),
            stores: march.water().map(Water::stores).unwrap_or_default(),
            levels_kg: Vec::new(),
        };
        let done = self.march.into_done();
        let water = WaterYear {
            hours: done.water_hours,
            levels_kg: done.levels_kg,
            ..of_water
        };
        YearOutcome {
            sum,
            months,
            design,
            by_bound_hours,
            grade,
            legs,
            balance,
            water: self.no_water.map_or(Ok(water), Err),
            sums: done.hours,
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

fn legs(march: &March, hours: usize) -> Vec<LegYear> {
    let mut legs: Vec<LegYear> = Vec::new();
    for hour in 0..hours {
        let of_hour = march.legs(hour);
        legs.resize(of_hour.len(), LegYear::default());
        for (leg, sum) in legs.iter_mut().zip(of_hour) {
            leg.condensed_kg += sum.condensed_kg;
            leg.sweat_kg += sum.sweat_kg;
        }
    }
    legs
}

/// Hours that need no tube relation, and whether all are such.
fn by_bound(
    route: &Route,
    hourly: &Hourly,
    sums: &[HourSum],
    standing: &[WaterHour],
) -> (Grade, f64) {
    let mut are_dry = true;
    let mut grade = Grade::ByBound;
    let mut hours = 0.0;
    for (at, sum) in sums.iter().enumerate() {
        if dry_by_bound(route, &hourly.hours, at, are_dry) {
            hours += sum.seconds / 3600.0;
        } else {
            grade = Grade::ByModel;
        }
        let pools_kg = standing.get(at).map_or(0.0, |hour| hour.standing_kg);
        are_dry = sum.on_walls_kg() + pools_kg <= 0.0;
    }
    (grade, hours)
}

/// The water of a run, followed from its steady answer; or what keeps it from being followed.
fn water_of(
    run: &Run,
    installation: &Installation,
) -> Result<Result<Water, WholeError>, SeasonError> {
    let steady = evaluate(run)?.value;
    let water = water_and_air(run, installation, &steady).and_then(|whole| {
        let visits = Visits::Every(installation.drain_interval);
        Water::of_run(run, installation, &steady, &whole, visits)
    });
    Ok(water)
}
