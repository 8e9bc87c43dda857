//! The water that runs past a place: what has formed uphill of it, up to where the tube last turns.

use dewrun_quantity::{Length, MassFlow};

use crate::error::Tube;
use crate::figure::Spot;
use crate::input::{Leg, Run};
use crate::outcome::Outcome;
use crate::reading::reading;

/// The water that runs past a place, as long as nothing holds it; none where there is no such place.
#[must_use]
pub fn runs_past(run: &Run, outcome: &Outcome, spot: Spot) -> Option<MassFlow> {
    let tube = spot.answer(outcome)?;
    let read = reading(tube, run.pressure, Length::metres(spot.at_m?))?;
    let legs = match spot.tube {
        Tube::Intake => &run.intake,
        Tube::Exhaust => &run.exhaust,
    };
    let here = read.point.leg;
    let way = way_of(legs.get(here)?);
    let alike = |leg: &&Leg| way_of(leg) == way;
    let liquid_at = |x| {
        let there = reading(tube, run.pressure, x);
        there.map_or(MassFlow::ZERO, |there| there.deposited - there.frozen)
    };
    let liquid = read.deposited - read.frozen;
    Some(match way {
        Way::Nowhere => MassFlow::ZERO,
        Way::Onwards => {
            let before = legs.get(..here).unwrap_or_default();
            let uphill = before.iter().rev().take_while(alike).count();
            let top = tube.legs.get(here - uphill).map(|leg| leg.from);
            liquid - top.map_or(liquid, liquid_at)
        }
        Way::Back => {
            let after = legs.get(here + 1..).unwrap_or_default();
            let uphill = after.iter().take_while(alike).count();
            let top = tube.legs.get(here + uphill).map(|leg| leg.to);
            top.map_or(liquid, liquid_at) - liquid
        }
    })
}

/// Which way water runs in a leg.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// With the air.
    Onwards,
    /// Against the air.
    Back,
    /// The leg is level.
    Nowhere,
}

fn way_of(leg: &Leg) -> Way {
    let rise = leg.rise.to_metres();
    if rise < 0.0 {
        Way::Onwards
    } else if 0.0 < rise {
        Way::Back
    } else {
        Way::Nowhere
    }
}
