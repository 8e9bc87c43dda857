//! Frost in a tube: how fast it narrows the bore, what comes down at thaw, and what a length of tube lets through.

use core::f64::consts::PI;

use dewrun_quantity::{
    Conductivity, Length, Mass, MassFlowPerLength, MassPerLength, Temperature, Time,
};
use dewrun_water::ice::{FROST_DENSITY, frosted, time_to_narrow};

use super::outcome::IceOutcome;
use crate::input::{Leg, Run};
use crate::outcome::{LegOutcome, ProfilePoint, TubeOutcome};

/// Less frost than this in a leg is none, g/h: as for water in a tube.
const FROST_G_H: f64 = crate::outcome::WET_TUBE_G_H;
/// Heat that a bare surface gives to still air and to its surroundings where the answer does not tell, W/(m2 K).
const USUAL_OUTSIDE_W_M2K: f64 = 9.0;
/// Smaller differences between surface and space tell nothing of what passes between them, K.
const TELLING_K: f64 = 0.5;

/// Frost, leg by leg, where any grows.
pub(super) fn ice(legs: &[Leg], outcome: &TubeOutcome, interval: Time) -> Vec<IceOutcome> {
    let pairs = legs.iter().zip(&outcome.legs).enumerate();
    pairs
        .filter(|(_, (_, found))| FROST_G_H < found.frost.to_grams_per_hour())
        .map(|(leg, (built, found))| of_leg(leg, built, found, outcome, interval))
        .collect()
}

fn of_leg(
    leg: usize,
    built: &Leg,
    found: &LegOutcome,
    outcome: &TubeOutcome,
    interval: Time,
) -> IceOutcome {
    // The inlet's first bore is where the film is singular: frost grows there no faster than behind it.
    let behind = if leg == 0 {
        built.tube.bore
    } else {
        Length::ZERO
    };
    let in_leg = outcome
        .profile
        .iter()
        .filter(|point| point.leg == leg && behind <= point.x);
    let (mut at, mut most) = (found.from, MassFlowPerLength::ZERO);
    for point in in_leg {
        let grows = MassFlowPerLength::kilograms_per_second_metre(
            point.deposit.to_kilograms_per_second_metre() * point.frozen_share,
        );
        if most < grows {
            (at, most) = (point.x, grows);
        }
    }
    let bore = built.tube.bore;
    let closed = time_to_narrow(bore, Length::ZERO, most, FROST_DENSITY);
    let until = closed.map_or(interval, |closed| closed.min(interval));
    let grown = MassPerLength::kilograms_per_metre(
        most.to_kilograms_per_second_metre() * interval.to_seconds(),
    );
    IceOutcome {
        leg,
        rate: found.frost,
        at,
        closed,
        free_share: frosted(bore, grown, FROST_DENSITY).free_share,
        thaw: Mass::kilograms(found.frost.to_kilograms_per_second() * until.to_seconds()),
    }
}

/// What a leg lets through from water inside to its space.
pub(super) struct LegLoss {
    /// Where it ends.
    pub(super) to: Length,
    /// Heat for each metre and kelvin between its inner wall and the space.
    pub(super) passes: Conductivity,
    /// Temperature of the space.
    pub(super) outside: Temperature,
}

/// What each leg lets through, by its steady answer.
pub(super) fn losses(run: &Run, legs: &[Leg], outcome: &TubeOutcome) -> Vec<LegLoss> {
    let pairs = legs.iter().zip(&outcome.legs).enumerate();
    pairs
        .map(|(at, (leg, found))| {
            let space = run.spaces.get(leg.space);
            let outside = space.map_or(Temperature::celsius(20.0), |space| space.temperature);
            LegLoss {
                to: found.to,
                passes: passes(leg, at, found, outcome, outside),
                outside,
            }
        })
        .collect()
}

fn passes(
    leg: &Leg,
    at: usize,
    found: &LegOutcome,
    outcome: &TubeOutcome,
    outside: Temperature,
) -> Conductivity {
    let outer_m = outer_diameter_m(leg);
    let points = || outcome.profile.iter().filter(|point| point.leg == at);
    let warmer_k = |point: &ProfilePoint| (point.outer_surface - outside).to_kelvins();
    let length_m = (found.to - found.from).to_metres();
    // Points lie close together at an inlet: the mean is that along the leg.
    let along: f64 = (points().zip(points().skip(1)))
        .map(|(from, to)| 0.5 * (warmer_k(from) + warmer_k(to)) * (to.x - from.x).to_metres())
        .sum();
    let mean_k = along / length_m;
    let told = found.heat_to_space.to_watts() / (length_m * mean_k);
    let usual = USUAL_OUTSIDE_W_M2K * PI * outer_m;
    let is_told = TELLING_K < mean_k.abs() && 0.0 < told && told.is_finite();
    let outside_w_mk = if is_told { told } else { usual };
    let resistance = 1.0 / outside_w_mk + wall_mk_w(leg);
    Conductivity::watts_per_metre_kelvin(1.0 / resistance)
}

fn outer_diameter_m(leg: &Leg) -> f64 {
    let layer = leg.insulation.map_or(Length::ZERO, |layer| layer.thickness);
    (leg.tube.outside_diameter + layer * 2.0).to_metres()
}

/// Resistance of wall and insulation of a metre.
fn wall_mk_w(leg: &Leg) -> f64 {
    let tube = &leg.tube;
    let (bore_m, tube_m) = (tube.bore.to_metres(), tube.outside_diameter.to_metres());
    let wall = dewrun_tube::layers::cylinder_resistance_mk_w(
        bore_m,
        tube_m,
        tube.conductivity.to_watts_per_metre_kelvin(),
    );
    let layer = leg.insulation.map_or(0.0, |layer| {
        dewrun_tube::layers::cylinder_resistance_mk_w(
            tube_m,
            outer_diameter_m(leg),
            layer.conductivity.to_watts_per_metre_kelvin(),
        )
    });
    wall + layer
}
