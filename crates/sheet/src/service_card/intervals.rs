//! How often to drain and to change the filter, and the limits that may trip.

use dewrun_quantity::format::fixed;
use dewrun_quantity::{Style, Time};
use dewrun_run::told::{AirflowLimits, Expected};
use dewrun_run::{StateKind, Tube};

use super::whole;
use crate::markup::strong;
use crate::told::Told;

/// Things to keep to.
pub(super) fn items(told: &Told<'_>, style: Style) -> Vec<String> {
    let mut items = vec![drain(told, style)];
    items.extend(filter(told, style));
    items.extend(limits(told, style));
    items.push(
        "After any change to tube, trap or filter: measure the airflow, set the limits again, test with smoke at the duct end."
            .to_owned(),
    );
    items
}

/// The shortest time in which water becomes a trouble, and what is left of it for a round.
fn drain(told: &Told<'_>, style: Style) -> String {
    let tubes = [Tube::Intake, Tube::Exhaust];
    let waters = tubes.into_iter().filter_map(|tube| told.water(tube));
    let mut soonest: Option<Time> = None;
    for water in waters {
        let traps = water.traps.iter().filter_map(|trap| trap.full);
        let low_points = water
            .low_points
            .iter()
            .filter_map(|one| one.trips.or(one.sealed));
        for time in traps.chain(low_points) {
            soonest = Some(soonest.map_or(time, |before| before.min(time)));
        }
    }
    let entered = told.installation.drain_interval;
    let shown = |time: Time| {
        if time.to_days() < 3.0 {
            format!("{}\u{a0}h", whole(time.to_hours(), style))
        } else {
            format!("{}\u{a0}days", whole(time.to_days().floor(), style))
        }
    };
    match soonest {
        Some(time) if time < entered * 2.0 => format!(
            "Drain every {}: in the conditions entered water becomes a trouble after {}.",
            strong(&shown((time * 0.5).min(entered))),
            shown(time)
        ),
        _ => format!("Drain every {}.", strong(&shown(entered))),
    }
}

/// The age at which a filter counts as expected, and the reading then.
fn filter(told: &Told<'_>, style: Style) -> Option<String> {
    let states = told.whole.airflow.states.iter();
    let aged = states.filter_map(|one| match one.state {
        StateKind::Usual(Expected::FilterAfter(months)) => Some((months, one.reading)),
        _ => None,
    });
    let (months, reading) = aged.max_by(|one, other| one.0.total_cmp(&other.0))?;
    Some(format!(
        "Change the filter every {}, or when the airflow has fallen to {}\u{a0}% of as-fitted.",
        strong(&format!("{} months", whole(months, style))),
        fixed(100.0 * reading, 0, style.mark)
    ))
}

/// Limits in use and those that are recommended.
fn limits(told: &Told<'_>, style: Style) -> Vec<String> {
    let airflow = &told.whole.airflow;
    let both = |limits: &AirflowLimits| {
        format!(
            "{} and {}\u{a0}%",
            fixed(100.0 * limits.low(), 0, style.mark),
            fixed(100.0 * limits.high(), 0, style.mark)
        )
    };
    let mut told = Vec::new();
    if let Some(given) = &airflow.given {
        let false_alarms = given.false_alarms.len();
        let warned = if false_alarms == 0 {
            String::new()
        } else {
            format!("; {false_alarms} usual states trip them")
        };
        told.push(format!(
            "Airflow limits in use: {} of as-fitted{warned}.",
            strong(&both(&given.limits))
        ));
    }
    if let Some((limits, ..)) = &airflow.recommended {
        told.push(format!(
            "Airflow limits that all usual states keep: {}, within the device\u{2019}s listed range; never wider to cure water.",
            strong(&both(limits))
        ));
    }
    told
}
