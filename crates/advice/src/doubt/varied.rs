//! What varies from case to case, and how far.

use dewrun_numeric::quantile::triangular;
use dewrun_run::figure::{Given, set};
use dewrun_run::{Factors, Run};

use crate::assumption::{Assumption, assumptions};

/// What varies from case to case.
#[derive(Debug, Clone, PartialEq)]
pub enum Varied {
    /// An assumed value, from its low over its usual to its high.
    Assumed(Assumption),
    /// The film inside the tubes: mixed convection at low speed.
    InsideFilm,
    /// Natural convection around the tubes.
    OutsideFilm,
    /// Diffusivity of vapour in air.
    Diffusivity,
}

/// Known spread of the relations, either way.
///
/// # Source
/// Inside, mixed convection at low speed 25 %; outside, natural convection of thin tubes 20 %: Morgan 1975 lies as far above Churchill & Chu 1975; diffusivity 3 %: Marrero & Mason 1972.
const RELATIONS: [(Varied, f64); 3] = [
    (Varied::InsideFilm, 0.25),
    (Varied::OutsideFilm, 0.20),
    (Varied::Diffusivity, 0.03),
];

impl Varied {
    /// Everything that varies in a run's steady answer.
    ///
    /// Values that somebody typed or measured stand as they are.
    #[must_use]
    pub fn of(run: &Run, givens: &[Given]) -> Vec<Self> {
        let mut tried = run.clone();
        let assumed = assumptions(givens).into_iter().filter(|one| {
            one.low < one.high
                && (one.places.iter())
                    .all(|place| set(&mut tried, one.figure, *place, one.value).is_some())
        });
        let relations = RELATIONS.into_iter().map(|(relation, _)| relation);
        assumed.map(Self::Assumed).chain(relations).collect()
    }

    /// Takes a run and its relations to the value below which a share of all cases lies; none where the run has no such input.
    pub(super) fn take(&self, share: f64, run: &mut Run, factors: &mut Factors) -> Option<()> {
        match self {
            Self::Assumed(one) => {
                // An assumed value may stand outside its row's span.
                let usual = one.value.max(one.low).min(one.high);
                let value = triangular(one.low, usual, one.high, share);
                for place in &one.places {
                    set(run, one.figure, *place, value)?;
                }
            }
            Self::InsideFilm => factors.inside = self.factor(share),
            Self::OutsideFilm => factors.outside = self.factor(share),
            Self::Diffusivity => factors.diffusivity = self.factor(share),
        }
        Some(())
    }

    fn factor(&self, share: f64) -> f64 {
        let found = RELATIONS.iter().find(|(relation, _)| relation == self);
        let spread = found.map_or(0.0, |(_, spread)| *spread);
        triangular(1.0 - spread, 1.0, 1.0 + spread, share)
    }
}
