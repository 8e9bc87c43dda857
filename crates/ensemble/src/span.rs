//! What varies from member to member, and how far.

use dewrun_advice::{Assumption, Relation, assumptions};
use dewrun_numeric::quantile::triangular;
use dewrun_run::Place;
use dewrun_run::figure::{Figure, Given, Origin as GivenOrigin};

use crate::season_input::{SeasonInput, SeasonSpan};

/// What varies.
#[derive(Debug, Clone, PartialEq)]
pub enum Varied {
    /// An input of the run or of how it is installed, at all the places that share it.
    Input {
        /// What it is.
        figure: Figure,
        /// The parts of the run that have it.
        places: Vec<Place>,
    },
    /// A number of the year.
    Season(SeasonInput),
    /// A factor on a relation.
    Relation(Relation),
}

/// Why a value may lie off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// It is assumed, by a row of the library.
    Assumed {
        /// The row, by its id.
        row: String,
    },
    /// It was measured, and no better than one can measure it.
    Measured,
    /// It is a relation, and known no better.
    Known,
}

/// What varies, and how far.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// What.
    pub varied: Varied,
    /// Why.
    pub origin: Origin,
    /// The lowest value.
    pub low: f64,
    /// The value as it stands.
    pub usual: f64,
    /// The highest value.
    pub high: f64,
}

impl Span {
    /// Everything that varies in a run's year; values that somebody typed stand as they are.
    #[must_use]
    pub fn of(givens: &[Given], season: &[SeasonSpan]) -> Vec<Self> {
        let assumed = assumptions(givens).into_iter().map(Self::assumed);
        let measured = givens.iter().filter_map(Self::measured);
        let season = season.iter().map(|one| Self {
            varied: Varied::Season(one.input),
            origin: Origin::Assumed {
                row: one.row.clone(),
            },
            low: one.low,
            usual: one.value,
            high: one.high,
        });
        let relations = Relation::ALL.into_iter().map(Self::of_relation);
        let all = assumed.chain(measured).chain(season).chain(relations);
        all.filter(|span| span.low < span.high).collect()
    }

    fn assumed(one: Assumption) -> Self {
        Self {
            varied: Varied::Input {
                figure: one.figure,
                places: one.places,
            },
            origin: Origin::Assumed { row: one.row },
            low: one.low,
            usual: one.value,
            high: one.high,
        }
    }

    fn of_relation(relation: Relation) -> Self {
        let (low, high) = relation.span();
        Self {
            varied: Varied::Relation(relation),
            origin: Origin::Known,
            low,
            usual: 1.0,
            high,
        }
    }

    fn measured(given: &Given) -> Option<Self> {
        let GivenOrigin::Measured { .. } = given.origin else {
            return None;
        };
        let off = measuring_spread(given.figure, given.value)?;
        Some(Self {
            varied: Varied::Input {
                figure: given.figure,
                places: vec![given.place],
            },
            origin: Origin::Measured,
            low: given.value - off,
            usual: given.value,
            high: given.value + off,
        })
    }

    /// The value below which a share of all members lies.
    #[must_use]
    pub fn at(&self, share: f64) -> f64 {
        // An assumed value may stand outside its row's span.
        let usual = self.usual.max(self.low).min(self.high);
        triangular(self.low, usual, self.high, share)
    }
}

/// How far off a measured value may be at the most, either way, in the unit of the figure's kind; none where it is counted and not measured.
///
/// # Source
/// What pocket instruments and loggers are sold for; common practice, no source.
#[must_use]
pub fn measuring_spread(figure: Figure, value: f64) -> Option<f64> {
    let part = |share: f64, least: f64| Some((share * value.abs()).max(least));
    match figure {
        Figure::Pressure => part(0.0, 150.0),
        Figure::Altitude => part(0.0, 50.0),
        Figure::DuctTemperature
        | Figure::SpaceTemperature
        | Figure::DuctWetBulb
        | Figure::SpaceWetBulb => part(0.0, 0.7),
        Figure::DuctDewPoint
        | Figure::DuctFrostPoint
        | Figure::SpaceDewPoint
        | Figure::SpaceFrostPoint => part(0.0, 1.0),
        Figure::RadiantTemperature => part(0.0, 1.5),
        Figure::DuctRelative | Figure::SpaceRelative => part(0.0, 4.0),
        Figure::Flow => part(0.05, 0.5),
        Figure::DuctStatic | Figure::DuctVelocity | Figure::SpacePressure => part(0.03, 3.0),
        Figure::Length => part(0.01, 0.02),
        Figure::Rise => part(0.01, 0.005),
        Figure::Bore | Figure::OutsideDiameter => part(0.0, 0.1),
        Figure::InsulationThickness => part(0.1, 1.0),
        Figure::HoleCount | Figure::DrainInterval => None,
        _ => part(0.05, 0.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(origin: GivenOrigin) -> Given {
        Given {
            figure: Figure::SpaceTemperature,
            place: Place::Space(0),
            value: 20.0,
            origin,
        }
    }

    /// Assumed: the row's span. Measured: 0.7 K either way. Typed: it stands.
    #[test]
    fn spans_go_by_where_a_value_came_from() {
        let assumed = given(GivenOrigin::Assumed {
            row: "corridor".to_owned(),
            low: 16.0,
            high: 24.0,
        });
        let measured = given(GivenOrigin::Measured {
            on: "2026-05-12".to_owned(),
            by: "J. Orre".to_owned(),
        });
        let of = |given: Given| {
            let spans = Span::of(&[given], &[]);
            spans
                .first()
                .map(|span| (span.low, span.at(0.5), span.high))
        };
        assert_eq!(of(assumed), Some((16.0, 20.0, 24.0)), "its row");
        let (low, middle, high) = of(measured).expect("it varies");
        assert_eq!(middle, 20.0, "as read");
        assert!(
            (low - 19.3).abs() < 1e-12 && (high - 20.7).abs() < 1e-12,
            "{low} {high}"
        );
        assert_eq!(
            of(given(GivenOrigin::Typed)),
            Some((0.75, 1.0, 1.25)),
            "it stands: the first that varies is the film inside"
        );
    }
}
