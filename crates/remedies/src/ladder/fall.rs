//! Legs with another fall, the flattest first: the falls that hands snap to.

use dewrun_advice::regrades;

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// Falls as one in so many.
const ONE_IN: [f64; 9] = [200.0, 150.0, 100.0, 60.0, 50.0, 40.0, 30.0, 20.0, 10.0];

/// Of the ways to turn a low point's legs, the first as it stands and the others where that does not do.
pub(super) fn falls(subject: &Subject) -> Option<Ladder> {
    let geometry = subject.of_geometry()?;
    let ladder = |way: &dewrun_advice::Regrade| {
        let rungs = ONE_IN.iter().filter_map(|one_in| {
            let changes = way.changes(&subject.inputs.run, *one_in)?;
            Some(changes.into_iter().map(Alteration::Geometry).collect())
        });
        Ladder::in_order(Kind::Fall, rungs.collect())
    };
    let ways = regrades(&geometry);
    let all: Vec<Ladder> = ways.iter().filter_map(ladder).collect();
    let mut all = all.into_iter().rev();
    let last = all.next()?;
    Some(all.fold(last, |wider, way| way.or_wider(Some(wider))))
}
