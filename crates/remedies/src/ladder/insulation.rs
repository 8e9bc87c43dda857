//! Insulation in the thicknesses that are sold.

use dewrun_quantity::Length;
use dewrun_run::Tube;
use dewrun_run::library;

use super::Ladder;
use crate::alteration::{Alteration, INSULATION_ROW, legs};
use crate::kind::Kind;
use crate::subject::Subject;

/// The usual thickness, mm.
pub(super) const USUAL_MM: f64 = 13.0;

/// Around the legs that are wet, or else around all.
pub(super) fn insulation(subject: &Subject) -> Option<Ladder> {
    let usual = Length::millimetres(USUAL_MM);
    let wet = subject.wet_legs_with(|legs| layers(subject, legs, usual));
    let wet = of(subject, &wet);
    let all = of(subject, &subject.all_legs());
    match wet {
        Some(wet) => Some(wet.or_wider(all)),
        None => all,
    }
}

fn of(subject: &Subject, places: &[(Tube, usize)]) -> Option<Ladder> {
    let rung = |thickness: &Length| layers(subject, places, *thickness);
    Ladder::rising(Kind::Insulate, thicknesses().iter().map(rung).collect())
}

pub(super) fn thicknesses() -> &'static [Length] {
    let row = library::find(library::insulation(), INSULATION_ROW);
    row.map(|row| row.thicknesses.as_slice())
        .unwrap_or_default()
}

/// The layer around each leg that has a thinner one or none.
pub(super) fn layers(
    subject: &Subject,
    places: &[(Tube, usize)],
    thickness: Length,
) -> Vec<Alteration> {
    let thinner = places.iter().filter(|(tube, leg)| {
        let leg = legs(&subject.inputs, *tube).get(*leg);
        let there = leg.and_then(|leg| leg.insulation);
        there.is_none_or(|there| there.thickness < thickness)
    });
    thinner
        .map(|&(tube, leg)| Alteration::Insulate {
            tube,
            leg,
            thickness,
        })
        .collect()
}
