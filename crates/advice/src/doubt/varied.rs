//! What varies from case to case, and how far.

use dewrun_numeric::quantile::triangular;
use dewrun_run::figure::{Given, set};
use dewrun_run::{Factors, Run};

use super::Relation;
use crate::assumption::{Assumption, assumptions};

/// What varies from case to case.
#[derive(Debug, Clone, PartialEq)]
pub enum Varied {
    /// An assumed value, from its low over its usual to its high.
    Assumed(Assumption),
    /// A relation, within its known spread.
    Relation(Relation),
}

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
        let relations = Relation::OF_HEAT.into_iter().map(Self::Relation);
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
            Self::Relation(relation) => relation.put(relation.factor(share), factors),
        }
        Some(())
    }
}
