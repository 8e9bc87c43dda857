//! What is known of a run's year, and the inputs of each member of its ensemble.

use dewrun_advice::Relation;
use dewrun_numeric::sobol::{Dimension, Sobol};
use dewrun_run::figure::{Given, set, set_installed};
use dewrun_run::{Factors, Installation, Run};
use dewrun_season::{Hourly, Season, SeasonError, hours_of};
use dewrun_weather::Series;

use crate::season_input::{Follow, SeasonSpan, follow, set_season};
use crate::span::{Span, Varied};

/// A run's year as it stands, and where its numbers came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Usual {
    /// The run, its installation and its season.
    pub inputs: Inputs,
    /// Inputs of the run and of how it is installed.
    pub givens: Vec<Given>,
    /// Numbers of the season that are assumed.
    pub season: Vec<SeasonSpan>,
    /// What of the season is as the run says.
    pub follows: Vec<Follow>,
}

/// What a year is made of beside the weather.
#[derive(Debug, Clone, PartialEq)]
pub struct Inputs {
    /// The run.
    pub run: Run,
    /// How it is installed.
    pub installation: Installation,
    /// Where its duct's air comes from and what surrounds it.
    pub season: Season,
    /// What its relations are multiplied by.
    pub factors: Factors,
}

/// The weather of a year, and what was measured in the duct.
#[derive(Debug, Clone, Copy)]
pub struct Climate<'a> {
    /// The weather.
    pub weather: &'a Series,
    /// Air that was measured in the duct, where the season says so.
    pub measured: Option<&'a Series>,
}

/// The members of a run's ensemble, by their numbers.
///
/// # Source
/// Values vary as triangular distributions from low over usual to high, independently of each other; members are scrambled Sobol points, see [`Sobol`].
#[derive(Debug, Clone)]
pub struct Plan {
    usual: Inputs,
    follows: Vec<Follow>,
    spans: Vec<Span>,
    dimensions: Vec<Dimension>,
}

impl Climate<'_> {
    /// The hours that these inputs meet in it.
    ///
    /// # Errors
    /// As [`hours_of`].
    pub fn hours(&self, inputs: &Inputs) -> Result<Hourly, SeasonError> {
        hours_of(&inputs.run, &inputs.season, self.weather, self.measured)
    }
}

impl Plan {
    /// The plan of a run's ensemble; the same seed gives the same members.
    #[must_use]
    pub fn new(usual: Usual, seed: u64) -> Self {
        let sequence = Sobol::new(seed);
        let mut tried = usual.inputs.clone();
        let spans = Span::of(&usual.givens, &usual.season);
        let spans: Vec<Span> = spans
            .into_iter()
            .filter(|span| put(&mut tried, span, span.usual).is_some())
            .collect();
        Self {
            dimensions: (0..spans.len()).map(|at| sequence.dimension(at)).collect(),
            usual: usual.inputs,
            follows: usual.follows,
            spans,
        }
    }

    /// What varies.
    #[must_use]
    pub fn spans(&self) -> &[Span] {
        &self.spans
    }

    /// The year as it stands.
    #[must_use]
    pub const fn usual(&self) -> &Inputs {
        &self.usual
    }

    /// Where in each span a member lies, as the share of all members that lie below.
    #[must_use]
    pub fn point(&self, member: u32) -> Vec<f64> {
        self.dimensions.iter().map(|one| one.at(member)).collect()
    }

    /// The values of a member, span by span.
    #[must_use]
    pub fn values(&self, member: u32) -> Vec<f64> {
        let point = self.point(member);
        let pairs = self.spans.iter().zip(point);
        pairs.map(|(span, share)| span.at(share)).collect()
    }

    /// What a year is made of that has these values, span by span.
    #[must_use]
    pub fn with(&self, values: &[f64]) -> Inputs {
        let mut inputs = self.usual.clone();
        for (span, value) in self.spans.iter().zip(values) {
            // What can't be set was left out before.
            let _ = put(&mut inputs, span, *value);
        }
        for what in &self.follows {
            let _ = follow(&mut inputs.season, &inputs.run, *what);
        }
        inputs
    }

    /// What the year of a member is made of.
    #[must_use]
    pub fn inputs(&self, member: u32) -> Inputs {
        self.with(&self.values(member))
    }
}

fn put(inputs: &mut Inputs, span: &Span, value: f64) -> Option<()> {
    match &span.varied {
        Varied::Input { figure, places } => {
            for place in places {
                set(&mut inputs.run, *figure, *place, value)
                    .or_else(|| set_installed(&mut inputs.installation, *figure, *place, value))?;
            }
            Some(())
        }
        Varied::Season(input) => set_season(&mut inputs.season, *input, value),
        Varied::Relation(Relation::Friction) => {
            inputs.installation.transition = value;
            Some(())
        }
        Varied::Relation(relation) => {
            relation.put(value, &mut inputs.factors);
            Some(())
        }
    }
}
