//! Two remedies together, where neither does alone.

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::search::Tried;

/// So many pairs are tried.
const MOST: usize = 4;
/// What takes water out, or leads it away.
const OUT: [Kind; 3] = [Kind::Trap, Kind::DrainingTrap, Kind::Fall];
/// What lets less of it form.
const LESS: [Kind; 5] = [
    Kind::Insulate,
    Kind::Trace,
    Kind::Warm,
    Kind::MoreFlow,
    Kind::LessFlow,
];

/// The largest of what takes water out, with each size of what lets less of it form.
pub(crate) fn pairs(tried: &[Tried]) -> Vec<Ladder> {
    let misses = |kinds: &'static [Kind]| {
        tried.iter().filter(move |one| {
            let of_these = one.kinds.first().is_some_and(|kind| kinds.contains(kind));
            of_these && one.kinds.len() == 1 && !one.is_cure
        })
    };
    let mut found = Vec::new();
    for out in misses(&OUT) {
        for less in misses(&LESS) {
            let rung = |rung: &Vec<Alteration>| [out.alterations.clone(), rung.clone()].concat();
            found.push(Ladder {
                kinds: [out.kinds.clone(), less.kinds.clone()].concat(),
                rungs: less.rungs.iter().map(rung).collect(),
                is_monotone: false,
                wider: None,
            });
        }
    }
    found.truncate(MOST);
    found
}
