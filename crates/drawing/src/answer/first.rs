//! The answer on the empty page: wet or dry, how much and from where, in a line.

use dewrun_quantity::Style;
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Outcome, Tube, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H};

use super::part::{Emphasis, Part};
use super::{Answer, grade};
use crate::wording;

/// All its figures are read at the intake tube.
const INTAKE: Spot = Spot::tube(Tube::Intake);
/// A tube that is wet from nearer than this to an end is wet from that end, m.
const END_M: f64 = 0.05;

/// The answer to a run of one intake tube that a few words describe: what it begins with, and what is said beside it.
///
/// It is shorter than [`super::answer`]: who reads it has entered the whole run a moment ago.
#[must_use]
pub fn first_answer(outcome: &Outcome, begins: &str, beside: &str, style: Style) -> Answer {
    let proof = wording::capital(grade(outcome.grade));
    let (mut sentence, doubt) = match outcome.verdict {
        Verdict::Wet => (wet(outcome, style), "; doubt not computed yet."),
        // Dry says so itself: it never stands alone.
        Verdict::Dry => (dry(outcome, style), "."),
    };
    sentence.insert(0, Part::words(format!("{begins} it is ")));
    Answer {
        sentence,
        asides: vec![
            vec![Part::words(beside)],
            vec![Part::words(format!("{proof}{doubt}"))],
        ],
        more: Vec::new(),
    }
}

fn wet(outcome: &Outcome, style: Style) -> Vec<Part> {
    let tube = &outcome.intake;
    let mut parts = vec![Part::strong("wet"), Part::words(": ")];
    let deposits = WET_TUBE_G_H < tube.condensate.to_grams_per_hour();
    if deposits {
        let frost_g_h: f64 = tube
            .legs
            .iter()
            .map(|leg| leg.frost.to_grams_per_hour())
            .sum();
        let is_frost = 0.999 * tube.condensate.to_grams_per_hour() <= frost_g_h;
        let amount = wording::water(tube.condensate, style);
        let (emphasis, what) = if is_frost {
            (Emphasis::Frost, " of frost")
        } else if WET_TUBE_G_H < frost_g_h {
            (Emphasis::Water, ", part of it frost")
        } else {
            (Emphasis::Water, "")
        };
        parts.push(Part::figure(amount, emphasis, Figure::TubeWater, INTAKE));
        parts.push(Part::words(format!("{what}, ")));
        parts.extend(place(outcome, style));
    }
    if WET_SENSOR_MIST < outcome.chamber.mist.to_kilograms_per_kilogram() {
        parts.push(Part::words(if deposits { "; " } else { "" }));
        parts.push(Part::figure(
            "mist reaches the sensor".into(),
            Emphasis::Mist,
            Figure::SensorMist,
            INTAKE,
        ));
    }
    parts.push(Part::words("."));
    parts
}

/// From where on it is wet, and up to where if not to the end.
fn place(outcome: &Outcome, style: Style) -> Vec<Part> {
    let tube = &outcome.intake;
    let (Some(first), Some(last)) = (tube.wet.first(), tube.wet.last()) else {
        return Vec::new();
    };
    let place = |metres: f64, figure: Figure| {
        Part::figure(
            wording::metres(metres, style),
            Emphasis::Strong,
            figure,
            INTAKE,
        )
    };
    let (from, to) = (first.from.to_metres(), last.to.to_metres());
    let end = tube.legs.last().map_or(to, |leg| leg.to.to_metres());
    let mut parts = if from < END_M {
        vec![Part::words("from the duct on")]
    } else {
        vec![
            Part::words("from the first "),
            place(from, Figure::WetFrom),
            Part::words(" on"),
        ]
    };
    if to < end - END_M {
        parts.push(Part::words(", up to "));
        parts.push(place(to, Figure::WetTo));
    }
    parts
}

fn dry(outcome: &Outcome, style: Style) -> Vec<Part> {
    let sweat = outcome.intake.sweat;
    let mut parts = vec![
        Part::strong("dry"),
        Part::words(" in the conditions entered; doubt not computed yet"),
    ];
    if WET_TUBE_G_H < sweat.to_grams_per_hour() {
        parts.push(Part::words("; the tube sweats outside, "));
        parts.push(Part::figure(
            wording::water(sweat, style),
            Emphasis::Sweat,
            Figure::TubeSweat,
            INTAKE,
        ));
    }
    parts.push(Part::words("."));
    parts
}
