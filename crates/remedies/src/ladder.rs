//! Sizes of each remedy, rising: the ladders on which the smallest that does is sought.

mod bore;
mod detector_place;
mod fall;
mod flow;
mod insulation;
mod pairs;
mod shedding;
mod space;
mod tracing;
mod trap;
mod warming;

pub(crate) use pairs::pairs;

use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// The sizes of a remedy, the smallest first; each is all that is done to the run.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Ladder {
    /// What it does.
    pub(crate) kinds: Vec<Kind>,
    /// The sizes.
    pub(crate) rungs: Vec<Vec<Alteration>>,
    /// What a size meets, larger ones meet too.
    pub(crate) is_monotone: bool,
    /// The same done to more of the run, where not even the largest of these does.
    pub(crate) wider: Option<Box<Ladder>>,
}

impl Ladder {
    /// Sizes of one kind of which larger ones do what smaller ones do; none where there is no size.
    fn rising(kind: Kind, rungs: Vec<Vec<Alteration>>) -> Option<Self> {
        let rungs: Vec<Vec<Alteration>> =
            rungs.into_iter().filter(|rung| !rung.is_empty()).collect();
        (!rungs.is_empty()).then(|| Self {
            kinds: vec![kind],
            rungs,
            is_monotone: true,
            wider: None,
        })
    }

    /// Sizes of which a larger one may do less than a smaller one.
    fn in_order(kind: Kind, rungs: Vec<Vec<Alteration>>) -> Option<Self> {
        Some(Self {
            is_monotone: false,
            ..Self::rising(kind, rungs)?
        })
    }

    fn or_wider(self, wider: Option<Self>) -> Self {
        let wider = wider.filter(|wider| wider.rungs != self.rungs);
        Self {
            wider: wider.map(Box::new),
            ..self
        }
    }
}

/// The ladders of every kind that this run has, those first that cure most often.
pub(crate) fn ladders(subject: &Subject) -> Vec<Ladder> {
    let mut all: Vec<Ladder> = Vec::new();
    all.extend(insulation::insulation(subject));
    all.extend(tracing::tracing(subject));
    all.extend(trap::missing(subject));
    all.extend(trap::larger(subject));
    all.extend(fall::falls(subject));
    all.extend(detector_place::places(subject));
    all.extend(space::spaces(subject));
    all.extend(shedding::shedding(subject));
    all.extend(flow::flows(subject));
    all.extend(warming::warming(subject));
    all.extend(bore::bores(subject));
    all
}
