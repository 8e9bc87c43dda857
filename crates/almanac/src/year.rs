//! The year of a run, marched in turns.

use std::rc::Rc;

use dewrun_document::output::YearOutput;
use dewrun_document::{
    WeatherReference, YearSaid, YearTelling, design_answers, installed, read, to_run, to_season,
    weather_reference, year_answer,
};
use dewrun_drawing::year::{Year, plain_sentence, year_shown};
use dewrun_ensemble::Climate;
use dewrun_run::Run;
use dewrun_season::{Season, SeasonError, YearOutcome, YearWork, hours_of};
use dewrun_weather::Weather;

use crate::granted::granted;
use crate::held::Held;

/// Hours that are marched between two looks at the clock: a few milliseconds.
pub(crate) const TURN_H: usize = 96;

/// What a year is the year of.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Of {
    pub(crate) project: String,
    pub(crate) run: usize,
    /// The weather file as it was read.
    pub(crate) weather: Rc<Weather>,
    /// The file that was measured in the duct, where its air is said to be that and the file is held.
    pub(crate) in_duct: Option<Rc<Weather>>,
}

/// A year on its way.
pub(crate) struct March {
    of: Of,
    run: Run,
    said: YearSaid,
    weather: WeatherReference,
    work: YearWork,
    until: usize,
}

/// A year that was marched, and what it was marched from.
pub(crate) struct Found {
    pub(crate) of: Of,
    pub(crate) run: Run,
    pub(crate) season: Season,
    /// What is taken for granted of it, in sentences.
    pub(crate) granted: Vec<String>,
    /// Row of the weather file of each step.
    pub(crate) rows: Vec<usize>,
    pub(crate) year: Year,
    /// Its answer.
    pub(crate) output: YearOutput,
    /// All of it, for those who ask what would change it.
    pub(crate) outcome: YearOutcome,
}

impl Of {
    pub(crate) fn new(project: &str, run: usize, held: &Held, in_duct: Option<&Held>) -> Self {
        Self {
            project: project.to_owned(),
            run,
            weather: Rc::clone(&held.weather),
            in_duct: in_duct.map(|held| Rc::clone(&held.weather)),
        }
    }

    /// The weather, and what was measured in the duct.
    pub(crate) fn climate(&self) -> Climate<'_> {
        Climate {
            weather: &self.weather.series,
            measured: self.in_duct.as_ref().map(|file| &file.series),
        }
    }

    /// It is the year of the same run in the same weather, read in the same way.
    pub(crate) fn is(&self, other: &Self) -> bool {
        let in_duct = match (&self.in_duct, &other.in_duct) {
            (None, None) => true,
            (Some(file), Some(other)) => Rc::ptr_eq(file, other),
            _ => false,
        };
        Rc::ptr_eq(&self.weather, &other.weather)
            && in_duct
            && self.run == other.run
            && self.project == other.project
    }
}

impl March {
    /// At the start of the year.
    ///
    /// # Errors
    /// Why the run has none, as a sentence.
    pub(crate) fn begin(of: Of, held: &Held) -> Result<Self, String> {
        let project = read(&of.project).map_err(|error| error.to_string())?;
        let said = to_season(&project, of.run).map_err(|error| error.to_string())?;
        let (run, _) = to_run(&project, of.run).map_err(|error| error.to_string())?;
        let built = installed(&project, of.run).map_err(|error| error.to_string())?;
        let told = |error: SeasonError| error.to_string();
        let climate = of.climate();
        let hourly = hours_of(&run, &said.season, climate.weather, climate.measured);
        let hourly = hourly.map_err(told)?;
        let work = YearWork::new(&run, &built.installation, hourly).map_err(told)?;
        Ok(Self {
            of,
            run,
            said,
            weather: weather_reference(&held.name, &held.weather),
            work,
            until: 0,
        })
    }

    /// Goes on for a moment; the share that is done, none when all is.
    pub(crate) fn turn(&mut self) -> Option<f64> {
        self.until += TURN_H;
        if self.work.advance(self.until) {
            return None;
        }
        let count = |hours: usize| u32::try_from(hours).map_or(f64::INFINITY, f64::from);
        Some(count(self.until) / count(self.work.hours()))
    }

    /// What it came to.
    pub(crate) fn end(self) -> Found {
        let outcome = self.work.outcome();
        let year = year_shown(&self.run, &outcome);
        let output = year_answer(YearTelling {
            sentence: &plain_sentence(&year),
            said: &self.said,
            weather: Some(&self.weather),
            outcome: Some(&outcome),
            design: &design_answers(&self.run, &self.said, &self.weather),
            stress: &[],
            series: false,
        });
        Found {
            granted: granted(&self.said, &outcome),
            year,
            output,
            rows: outcome.hourly.rows.clone(),
            of: self.of,
            run: self.run,
            season: self.said.season,
            outcome,
        }
    }
}
