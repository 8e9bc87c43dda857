//! The place for a trap that a person can reach: the lowest one to which the water comes.

use dewrun_quantity::{Length, MassFlow, Volume};

use super::descent::{Descent, Receiver};
use super::tube::{DrainTube, DrainageError, Formed};
use super::{Destination, Drainage, Traps};

/// A place at which water has to be taken out, and the trap proposed for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProposedTrap {
    /// Where the water comes to now: a pool or an end.
    pub instead_of: Destination,
    /// How much comes there in the end.
    pub rate: MassFlow,
    /// Where that is.
    pub low_point: Length,
    /// Where the trap goes; none where no leg that leads there can be reached.
    pub at: Option<Length>,
    /// How much higher the trap lies than the low point.
    pub over: Length,
    /// What will stand below the trap for good.
    pub leaves: Volume,
}

/// Traps for a tube: one for each low point to which water comes, and for an end that water must not reach.
///
/// Each goes to the lowest reachable place of all that drain there; of several as low, to the one nearest to the low point.
///
/// # Range
/// As [`Drainage::of`]; traps that are there already take their water first.
/// # Accuracy
/// That of the rates.
/// # Errors
/// [`DrainageError`] where a leg, a trap or a stretch is none.
/// # Source
/// Water runs downhill; that a trap nobody can reach is not emptied is common practice, no source.
///
/// ```
/// use dewrun_quantity::{Length, MassFlow, Temperature};
/// use dewrun_water::{Water, drainage::{DrainLeg, DrainTube, Formed, propose}, held::Keeping};
/// let leg = |rise_mm, reachable| DrainLeg {
///     length: Length::metres(4.0),
///     rise: Length::millimetres(rise_mm),
///     bore: Length::millimetres(19.0),
///     keeping: Keeping::USUAL,
///     reachable,
/// };
/// let tube = DrainTube {
///     legs: vec![leg(-80.0, false), leg(80.0, true)],
///     traps: vec![],
///     water: Water::at(Temperature::celsius(15.0)),
/// };
/// let forms = Formed { from: Length::ZERO, to: Length::metres(8.0), rate: MassFlow::grams_per_hour(8.0) };
/// let traps = propose(&tube, &[forms], None).unwrap();
/// assert_eq!(traps[0].at, Some(Length::metres(4.0)), "where both legs meet");
/// ```
pub fn propose(
    tube: &DrainTube,
    formed: &[Formed],
    keep_from: Option<Destination>,
) -> Result<Vec<ProposedTrap>, DrainageError> {
    let drainage = Drainage::of(tube, formed, Traps::Emptied)?;
    let mut proposed = Vec::new();
    for (number, pool) in drainage.pools.iter().enumerate() {
        let rate = pool.inflow.final_rate();
        if !pool.joins.is_empty() || rate <= MassFlow::ZERO {
            continue;
        }
        let low_m = pool.at.to_metres();
        let place = lowest(tube, pool.catchment, low_m);
        let over = place.map_or(Length::ZERO, |(_, z_m)| {
            Length::metres(z_m) - pool.elevation
        });
        let over = over.max(Length::ZERO);
        proposed.push(ProposedTrap {
            instead_of: Destination::Pool(number),
            rate,
            low_point: pool.at,
            at: place.map(|(at_m, _)| Length::metres(at_m)),
            over,
            leaves: pool.shape.volume(over).min(pool.shape.capacity()),
        });
    }
    if let Some(end) = keep_from {
        proposed.extend(before_end(tube, formed, &drainage, end));
    }
    Ok(proposed)
}

/// The trap that keeps water from an end, where any comes to it.
fn before_end(
    tube: &DrainTube,
    formed: &[Formed],
    drainage: &Drainage,
    end: Destination,
) -> Option<ProposedTrap> {
    let (inflow, end_m) = match end {
        Destination::Start => (&drainage.out_at_start, 0.0),
        Destination::End => (&drainage.out_at_end, tube.end_m()),
        _ => return None,
    };
    let rate = inflow.final_rate();
    if rate <= MassFlow::ZERO {
        return None;
    }
    let descent = Descent::new(tube, formed, Traps::Emptied);
    let leads_there = |receiver: &Receiver| *receiver == Receiver::Sink(end);
    let stretch = descent.stretches.iter().find(|stretch| {
        let mut all = stretch.received.iter();
        all.any(|received| leads_there(&received.receiver))
    })?;
    let crest = match end {
        Destination::Start => stretch.crests.first(),
        _ => stretch.crests.last(),
    };
    let crest_m = crest?.at_m;
    let range = [crest_m.min(end_m), crest_m.max(end_m)].map(Length::metres);
    let place = lowest(tube, range, end_m);
    Some(ProposedTrap {
        instead_of: end,
        rate,
        low_point: Length::metres(end_m),
        at: place.map(|(at_m, _)| Length::metres(at_m)),
        over: place.map_or(Length::ZERO, |(_, z_m)| {
            Length::metres(z_m - tube.height_m(end_m))
        }),
        leaves: Volume::ZERO,
    })
}

/// The lowest place of all reachable legs within a range, and its height \[m\].
fn lowest(tube: &DrainTube, [from, to]: [Length; 2], near_m: f64) -> Option<(f64, f64)> {
    let (from_m, to_m) = (from.to_metres(), to.to_metres());
    let mut best: Option<(f64, f64)> = None;
    let mut at_m = 0.0;
    for leg in &tube.legs {
        let (start_m, end_m) = (at_m, at_m + leg.length.to_metres());
        at_m = end_m;
        let (first_m, last_m) = (start_m.max(from_m), end_m.min(to_m));
        if !leg.reachable || last_m < first_m {
            continue;
        }
        let nearest_m = near_m.max(first_m).min(last_m);
        for candidate_m in [first_m, last_m, nearest_m] {
            let z_m = tube.height_m(candidate_m);
            let better = best.is_none_or(|(best_m, best_z_m)| {
                z_m < best_z_m
                    || (z_m == best_z_m && (candidate_m - near_m).abs() < (best_m - near_m).abs())
            });
            if better {
                best = Some((candidate_m, z_m));
            }
        }
    }
    best
}
