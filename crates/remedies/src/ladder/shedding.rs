//! A bare length on purpose before a trap, and warming behind it: water leaves where it can be taken out, and the air that goes on is off saturation.

use dewrun_advice::{Change, missing_traps};
use dewrun_moist_air::mixture::heat_capacity_j_kgk;
use dewrun_moist_air::transport::{dry_air_conductivity_w_mk, dry_air_viscosity_pa_s};
use dewrun_quantity::Length;
use dewrun_run::{Leg, Tube};

use super::Ladder;
use super::tracing::{POWERS_W_M, is_borne, traced};
use crate::alteration::Alteration;
use crate::inverse::shedding_length;
use crate::kind::Kind;
use crate::subject::Subject;

/// The share of the difference to the wall that may be left.
const LEFT: f64 = 0.1;
/// Lengths are cut in such steps, m.
const STEP_M: f64 = 0.25;
/// Nearer than this a joint is at the trap, m.
const AT_JOINT_M: f64 = 1e-6;

/// Before the first trap of the intake, or the first that is missing; the size is the warming behind it.
pub(super) fn shedding(subject: &Subject) -> Option<Ladder> {
    let geometry = subject.of_geometry()?;
    let there = subject.inputs.installation.intake.traps.first();
    let missing = missing_traps(&geometry);
    let new = missing.iter().find(|change| change.tube() == Tube::Intake);
    let at = match (there, new) {
        (Some(trap), _) => trap.at,
        (None, Some(Change::Trap { at, .. })) => *at,
        _ => return None,
    };
    let legs = &subject.inputs.run.intake;
    let before = legs_before(legs, at);
    let last = before.checked_sub(1)?;
    let mut done: Vec<Alteration> = Vec::new();
    if there.is_none() {
        done.extend(new.map(|change| Alteration::Geometry(*change)));
    }
    done.extend(
        (0..before)
            .filter(|leg| has_insulation(legs, *leg))
            .map(|leg| Alteration::Bare {
                tube: Tube::Intake,
                leg,
            }),
    );
    done.extend(longer(subject, last, at).map(Alteration::Geometry));
    let behind: Vec<(Tube, usize)> = subject
        .all_legs()
        .into_iter()
        .filter(|(tube, leg)| *tube == Tube::Exhaust || before <= *leg)
        .collect();
    if behind.is_empty() {
        return None;
    }
    let rungs = POWERS_W_M.iter().map(|power| {
        let warmed = traced(subject, &behind, *power);
        [done.clone(), warmed].concat()
    });
    let borne = rungs.filter(|rung| is_borne(subject, rung));
    Ladder::rising(Kind::Shed, borne.collect())
}

fn has_insulation(legs: &[Leg], leg: usize) -> bool {
    legs.get(leg).is_some_and(|leg| leg.insulation.is_some())
}

/// So many legs end at or before a place.
fn legs_before(legs: &[Leg], at: Length) -> usize {
    let mut end_m = 0.0;
    let ends = legs.iter().map(|leg| {
        end_m += leg.length.to_metres();
        end_m
    });
    ends.filter(|end_m| *end_m <= at.to_metres() + AT_JOINT_M)
        .count()
}

/// The leg before the trap with so much more length that nine tenths of the difference to the wall are gone; none where it is long enough.
fn longer(subject: &Subject, leg: usize, at: Length) -> Option<Change> {
    let there = subject.inputs.run.intake.get(leg)?;
    let bore_m = there.tube.bore.to_metres();
    let duct_c = subject.outcome.duct_air.temperature.to_celsius();
    let viscosity = dry_air_viscosity_pa_s(duct_c);
    let flow_kg_s = subject.outcome.dry_air.to_kilograms_per_second();
    let reynolds = 4.0 * flow_kg_s / (core::f64::consts::PI * bore_m * viscosity);
    let capacity_j_kgk = heat_capacity_j_kgk(0.0);
    let prandtl = viscosity * capacity_j_kgk / dry_air_conductivity_w_mk(duct_c);
    let wanted = shedding_length(there.tube.bore, reynolds, prandtl, LEFT)?;
    let missing_m = ((wanted - at).to_metres() / STEP_M).ceil() * STEP_M;
    if missing_m <= 0.0 {
        return None;
    }
    let length = there.length + Length::metres(missing_m);
    let times = length.to_metres() / there.length.to_metres();
    Some(Change::Leg {
        tube: Tube::Intake,
        leg,
        rise: there.rise * times,
        length,
    })
}
