//! Heat tracing under insulation.

use dewrun_quantity::{Length, PowerPerLength};
use dewrun_run::Tube;

use super::Ladder;
use super::insulation::{USUAL_MM, layers};
use crate::alteration::{Alteration, altered, legs};
use crate::kind::Kind;
use crate::powered::{bears, stuck_on};
use crate::subject::Subject;

/// What is laid beside what a leg has, W/m.
pub(super) const POWERS_W_M: [f64; 16] = [
    1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0,
];
/// Usual tracing, W/m.
const USUAL_W_M: f64 = 8.0;

/// Along the legs that are wet, or else along all.
pub(super) fn tracing(subject: &Subject) -> Option<Ladder> {
    let of = |places: &[(Tube, usize)]| {
        if places.is_empty() {
            return None;
        }
        let rungs = POWERS_W_M
            .iter()
            .map(|power| traced(subject, places, *power));
        let borne = rungs.filter(|rung| is_borne(subject, rung));
        Ladder::rising(Kind::Trace, borne.collect())
    };
    let wet = of(&subject.wet_legs_with(|legs| traced(subject, legs, USUAL_W_M)));
    let all = of(&subject.all_legs());
    match wet {
        Some(wet) => Some(wet.or_wider(all)),
        None => all,
    }
}

/// Whether no traced tube gets hotter than it bears where its tracing stays on and the air stands.
pub(super) fn is_borne(subject: &Subject, rung: &[Alteration]) -> bool {
    let inputs = altered(&subject.inputs, rung);
    let traced = rung.iter().filter(|one| one.has_power());
    let mut traced = traced
        .filter_map(Alteration::leg)
        .filter_map(|(tube, leg)| legs(&inputs, tube).get(leg));
    traced.all(|leg| match (bears(leg), stuck_on(subject, leg)) {
        (Some(most), Some(hot)) => hot.to_celsius() <= most.to_celsius(),
        (Some(_), None) => leg.tracing.to_watts_per_metre() <= 0.0,
        (None, _) => true,
    })
}

/// Tracing of so many watts a metre more, under insulation where a leg is bare.
pub(super) fn traced(
    subject: &Subject,
    places: &[(Tube, usize)],
    power_w_m: f64,
) -> Vec<Alteration> {
    let is_bare = |(tube, leg): &&(Tube, usize)| {
        let leg = legs(&subject.inputs, *tube).get(*leg);
        leg.is_some_and(|leg| leg.insulation.is_none())
    };
    let bare: Vec<(Tube, usize)> = places.iter().filter(is_bare).copied().collect();
    let mut done = layers(subject, &bare, Length::millimetres(USUAL_MM));
    let more = PowerPerLength::watts_per_metre(power_w_m);
    done.extend(places.iter().filter_map(|&(tube, leg)| {
        let there = legs(&subject.inputs, tube).get(leg)?.tracing;
        Some(Alteration::Trace {
            tube,
            leg,
            power: there + more,
        })
    }));
    done
}
