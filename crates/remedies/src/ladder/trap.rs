//! Traps where they are missing, and larger ones where they are too small.

use dewrun_advice::{Change, missing_traps};
use dewrun_quantity::{Mass, Time};
use dewrun_run::{Drain, Tube, Whole};

use super::Ladder;
use crate::alteration::Alteration;
use crate::kind::Kind;
use crate::subject::Subject;

/// What traps that are emptied by hand take, mL; common trade sizes, no source.
const CAPACITIES_ML: [f64; 8] = [100.0, 250.0, 500.0, 1000.0, 1500.0, 2000.0, 2500.0, 5000.0];

/// Traps are emptied at such intervals, days.
const INTERVALS_DAYS: [f64; 6] = [90.0, 60.0, 30.0, 14.0, 7.0, 3.0];
/// Nobody comes more often than this where the target does not say, days.
const LEAST_DAYS: f64 = 7.0;

/// All that are missing: of one size, emptied as often as they fill in the conditions entered; and such that drain themselves.
pub(super) fn missing(subject: &Subject) -> Vec<Ladder> {
    let Some(geometry) = subject.of_geometry() else {
        return Vec::new();
    };
    let traps = missing_traps(&geometry);
    if traps.is_empty() {
        return Vec::new();
    }
    let fastest_g_h = fastest_g_h(geometry.whole);
    let by_hand = CAPACITIES_ML.iter().filter_map(|ml| {
        let every = emptied_every(subject, ml / fastest_g_h)?;
        let mut rung = with(&traps, Drain::ByHand, *ml);
        if every < subject.inputs.installation.drain_interval {
            rung.push(Alteration::DrainEvery(every));
        }
        Some(rung)
    });
    let by_hand = Ladder::rising(Kind::Trap, by_hand.collect());
    let is_too_much =
        |change: &Change| matches!(change, Change::Trap { drain, .. } if *drain == Drain::ByItself);
    let by_itself = traps.iter().any(is_too_much);
    let by_itself = by_itself.then(|| vec![with(&traps, Drain::ByItself, 0.0)]);
    let by_itself = by_itself.and_then(|rungs| Ladder::rising(Kind::DrainingTrap, rungs));
    by_hand.into_iter().chain(by_itself).collect()
}

/// What comes to the trap that most comes to, g/h.
fn fastest_g_h(whole: &Whole) -> f64 {
    let tubes = [Some(&whole.intake), whole.exhaust.as_ref()];
    let proposals = tubes.into_iter().flatten().flat_map(|tube| &tube.proposals);
    let rates = proposals.map(|proposal| proposal.trap.rate.to_grams_per_hour());
    rates.fold(1e-6, f64::max)
}

/// The longest interval at which a trap that fills in so many hours is emptied in time; none where that is too often.
fn emptied_every(subject: &Subject, fills_h: f64) -> Option<Time> {
    let now = subject.inputs.installation.drain_interval;
    if now.to_hours() <= fills_h {
        return Some(now);
    }
    let least = subject.target.trap_days.unwrap_or(LEAST_DAYS);
    let fits = |days: &&f64| least <= **days && Time::days(**days).to_hours() <= fills_h;
    INTERVALS_DAYS
        .iter()
        .find(fits)
        .map(|days| Time::days(*days))
}

/// Each of them with a drain and a size.
fn with(traps: &[Change], drain: Drain, capacity_ml: f64) -> Vec<Alteration> {
    let of = |trap: &Change| match *trap {
        Change::Trap {
            tube,
            at,
            seal,
            outlet_drop,
            ..
        } => Alteration::Geometry(Change::Trap {
            tube,
            at,
            drain,
            capacity: Mass::grams(capacity_ml),
            seal,
            outlet_drop,
        }),
        other => Alteration::Geometry(other),
    };
    traps.iter().map(of).collect()
}

/// All traps that are emptied by hand, larger than they are.
pub(super) fn larger(subject: &Subject) -> Option<Ladder> {
    let built = &subject.inputs.installation;
    let tubes = [
        (Tube::Intake, &built.intake),
        (Tube::Exhaust, &built.exhaust),
    ];
    let by_hand: Vec<(Tube, usize, Mass)> = tubes
        .into_iter()
        .flat_map(|(tube, built)| {
            let traps = built.traps.iter().enumerate();
            traps
                .filter(|(_, trap)| trap.drain == Drain::ByHand)
                .map(move |(number, trap)| (tube, number, trap.capacity))
        })
        .collect();
    let rung = |ml: &f64| -> Vec<Alteration> {
        let capacity = Mass::grams(*ml);
        let smaller = by_hand.iter().filter(|(_, _, there)| *there < capacity);
        smaller
            .map(|&(tube, trap, _)| Alteration::TrapCapacity {
                tube,
                trap,
                capacity,
            })
            .collect()
    };
    Ladder::rising(Kind::TrapSize, CAPACITIES_ML.iter().map(rung).collect())
}
