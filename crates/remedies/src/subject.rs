//! The run whose remedies are sought: as it is drawn, and what is left of its trouble.

use dewrun_advice::Subject as WaterSubject;
use dewrun_ensemble::{Climate, Inputs};
use dewrun_quantity::MassFlow;
use dewrun_run::{Outcome, Tube, Whole, evaluate, water_and_air};
use dewrun_season::{SeasonError, YearOutcome, year_of};

use crate::alteration::{Alteration, altered};
use crate::left::{EnteredLeft, Left, YearLeft};
use crate::sample::Sample;
use crate::target::Target;

/// Legs with less than this part of a year's water are let be at first.
const LEAST_PART: f64 = 0.02;

/// The run whose remedies are sought, with all that is answered of it.
#[derive(Debug, Clone)]
pub struct Subject {
    /// The run, its installation and its year as they are drawn.
    pub inputs: Inputs,
    /// What counts as dry enough.
    pub target: Target,
    /// What there is now.
    pub left: Left,
    /// The highest relative humidity that the device bears, 0 to 1.
    pub rating: Option<f64>,
    pub(crate) outcome: Outcome,
    pub(crate) whole: Option<Whole>,
    pub(crate) year: Option<YearOutcome>,
    pub(crate) sample: Option<Sample>,
    /// The warmest air of each space in the year, °C; none where there is no year.
    pub(crate) warmest_c: Vec<f64>,
}

impl Subject {
    /// A run and what is wanted of it, in its weather where there is any.
    ///
    /// # Errors
    /// What keeps it from being answered.
    pub fn new(
        inputs: Inputs,
        target: Target,
        climate: Option<Climate<'_>>,
    ) -> Result<Self, SeasonError> {
        let year = climate.map(|climate| {
            let hourly = climate.hours(&inputs)?;
            year_of(&inputs.run, &inputs.installation, hourly)
        });
        Self::with_year(inputs, target, year.transpose()?)
    }

    /// As [`Subject::new`], with a year that is marched already.
    ///
    /// # Errors
    /// What keeps the run from being answered.
    pub fn with_year(
        inputs: Inputs,
        target: Target,
        year: Option<YearOutcome>,
    ) -> Result<Self, SeasonError> {
        let outcome = evaluate(&inputs.run)?.value;
        let whole = water_and_air(&inputs.run, &inputs.installation, &outcome).ok();
        let rating = inputs.run.detector.humidity_rating;
        let rating = rating.map(|rating| rating.to_fraction());
        let entered = EnteredLeft::told(&outcome, whole.as_ref());
        let left = Left {
            entered,
            year: year.as_ref().map(YearLeft::of),
        };
        let sample = year.as_ref();
        let sample = sample.and_then(|year| Sample::of(&target, year, rating));
        Ok(Self {
            inputs,
            target,
            left,
            rating,
            outcome,
            whole,
            sample,
            warmest_c: warmest_c(year.as_ref()),
            year,
        })
    }

    /// Whether nothing has to be done.
    #[must_use]
    pub fn is_met(&self) -> bool {
        self.target.is_met(&self.left, self.rating)
    }

    /// The legs in which water or frost forms as entered, or much of that of the year where the target is about the year; in flow order.
    pub(crate) fn wet_legs(&self) -> Vec<(Tube, usize)> {
        let exhaust = self.outcome.exhaust.as_ref();
        let of_exhaust = exhaust.map(|tube| tube.legs.as_slice()).unwrap_or_default();
        let steady = self.outcome.intake.legs.iter().chain(of_exhaust);
        let year = self.year.as_ref().map(|year| year.legs.as_slice());
        let year = year.filter(|_| self.target.is_about_year());
        let year = year.unwrap_or_default();
        let all_kg: f64 = year.iter().map(|leg| leg.condensed_kg).sum();
        let places = self.all_legs().into_iter().zip(steady).enumerate();
        places
            .filter(|(at, (_, leg))| {
                let in_year = year.get(*at);
                let in_year = in_year.is_some_and(|leg| LEAST_PART * all_kg < leg.condensed_kg);
                MassFlow::ZERO < leg.condensate || in_year
            })
            .map(|(_, (place, _))| place)
            .collect()
    }

    /// The wet legs with those in which it would be wet instead as entered, were these treated.
    pub(crate) fn wet_legs_with(
        &self,
        treated: impl Fn(&[(Tube, usize)]) -> Vec<Alteration>,
    ) -> Vec<(Tube, usize)> {
        let all = self.all_legs();
        let mut wet = self.wet_legs();
        loop {
            let run = altered(&self.inputs, &treated(&wet)).run;
            let Ok(outcome) = evaluate(&run) else {
                return wet;
            };
            let outcome = outcome.value;
            let exhaust = outcome.exhaust.iter().flat_map(|tube| &tube.legs);
            let legs = outcome.intake.legs.iter().chain(exhaust);
            let is_wet = all.iter().zip(legs);
            let is_wet = is_wet.filter(|(_, leg)| MassFlow::ZERO < leg.condensate);
            let before = wet.len();
            for (place, _) in is_wet {
                if !wet.contains(place) {
                    wet.push(*place);
                }
            }
            if wet.len() == before {
                break;
            }
        }
        all.into_iter()
            .filter(|place| wet.contains(place))
            .collect()
    }

    /// All legs, in flow order.
    pub(crate) fn all_legs(&self) -> Vec<(Tube, usize)> {
        let run = &self.inputs.run;
        let intake = (0..run.intake.len()).map(|leg| (Tube::Intake, leg));
        let exhaust = (0..run.exhaust.len()).map(|leg| (Tube::Exhaust, leg));
        intake.chain(exhaust).collect()
    }

    /// What water and air of the run answer, for remedies of geometry.
    pub(crate) fn of_geometry(&self) -> Option<WaterSubject<'_>> {
        Some(WaterSubject {
            run: &self.inputs.run,
            installation: &self.inputs.installation,
            outcome: &self.outcome,
            whole: self.whole.as_ref()?,
        })
    }
}

fn warmest_c(year: Option<&YearOutcome>) -> Vec<f64> {
    let Some(year) = year else {
        return Vec::new();
    };
    let hours = &year.hourly.hours;
    let warmest = |space: usize| {
        let airs = (0..hours.len()).filter_map(|hour| hours.around(hour, space));
        airs.map(|air| air.air_c).fold(f64::NEG_INFINITY, f64::max)
    };
    (0..hours.spaces()).map(warmest).collect()
}
