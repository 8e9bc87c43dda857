//! Whether the detector is blind: reversed, diluted, iced or sealed before its traps are next emptied.

use dewrun_airflow::{BLIND_SHARE, Direction};
use dewrun_quantity::Time;
use dewrun_tube::STAGNANT_KG_S;
use dewrun_water::time_to_trouble::{Trouble, TroubleAt};

use super::outcome::{AirflowOutcome, Blind, TubeWater};
use crate::error::Tube;
use crate::installation::Installation;
use crate::outcome::Outcome;

/// Why the detector may not be sampling its duct; what is so now comes before what comes soonest.
pub(super) fn blind(
    steady: &Outcome,
    installation: &Installation,
    airflow: &AirflowOutcome,
    intake: &TubeWater,
    exhaust: Option<&TubeWater>,
) -> Option<Blind> {
    let now = &airflow.now;
    // A flow of none that was entered counts, whatever a fan would give.
    if steady.dry_air.to_kilograms_per_second() <= STAGNANT_KG_S {
        return Some(Blind::Still);
    }
    match now.direction {
        Direction::Reversed => return Some(Blind::Reversed),
        Direction::Still => return Some(Blind::Still),
        Direction::Forward if now.share < BLIND_SHARE => {
            return Some(Blind::Diluted { share: now.share });
        }
        Direction::Forward => {}
    }
    let mut soonest: Option<(Time, Blind)> = None;
    for (tube, water) in [(Tube::Intake, Some(intake)), (Tube::Exhaust, exhaust)] {
        for (after, blind) in water.into_iter().flat_map(|water| closings(tube, water)) {
            let is_sooner = soonest.is_none_or(|(before, _)| after < before);
            if after < installation.drain_interval && is_sooner {
                soonest = Some((after, blind));
            }
        }
    }
    soonest.map(|(_, blind)| blind)
}

/// Every time at which frost or water closes a tube.
fn closings(tube: Tube, water: &TubeWater) -> Vec<(Time, Blind)> {
    let iced = water.ice.iter().filter_map(|ice| {
        let after = ice.closed?;
        let at = ice.at;
        Some((after, Blind::Iced { tube, at, after }))
    });
    let sealed = water.troubles.iter().filter_map(|trouble| {
        let TroubleAt::Pool(number) = trouble.at else {
            return None;
        };
        let at = water.drainage.pools.get(number)?.at;
        let after = trouble.after;
        (trouble.trouble == Trouble::Sealed).then_some((after, Blind::Sealed { tube, at, after }))
    });
    iced.chain(sealed).collect()
}
