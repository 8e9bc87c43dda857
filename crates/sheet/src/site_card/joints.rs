//! What the ends of legs are called on site: duct, wall, passage, elbow, low point, trap, detector.

use dewrun_quantity::Length;
use dewrun_run::{Leg, Tube};

use crate::told::Told;

/// Places nearer than this are one.
const SAME: Length = Length::millimetres(1.0);

/// The names of both ends of each leg of a tube.
pub(crate) fn joints(told: &Told<'_>, tube: Tube) -> Vec<[&'static str; 2]> {
    let legs = match tube {
        Tube::Intake => &told.run.intake,
        Tube::Exhaust => &told.run.exhaust,
    };
    let [first, last] = match tube {
        Tube::Intake => ["duct", "detector"],
        Tube::Exhaust => ["detector", "duct"],
    };
    let mut names = vec![first];
    let mut at = Length::ZERO;
    for (leg, next) in legs.iter().zip(legs.iter().skip(1)) {
        at += leg.length;
        names.push(between(told, tube, at, (leg, next)));
    }
    names.push(last);
    let pairs = names.iter().zip(names.iter().skip(1));
    pairs.map(|(from, to)| [*from, *to]).collect()
}

fn between(told: &Told<'_>, tube: Tube, at: Length, (leg, next): (&Leg, &Leg)) -> &'static str {
    let is_here = |place: &Length| (*place - at).max(at - *place) < SAME;
    let lows = told
        .water(tube)
        .into_iter()
        .flat_map(|water| &water.low_points);
    if told.trap_places(tube).iter().any(is_here) {
        "trap"
    } else if leg.space != next.space && (leg.is_steep() || next.is_steep()) {
        "passage"
    } else if leg.space != next.space {
        "wall"
    } else if leg.is_steep() != next.is_steep() {
        "elbow"
    } else if lows.map(|low| low.at).any(|place| is_here(&place)) {
        "low point"
    } else {
        "joint"
    }
}
