//! The sentence: what forms where in each tube, what reaches the sensor, what sweats, and for what conditions.

use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Outcome, Tube, TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H};

use super::part::{Emphasis, Part};
use crate::wording;

/// What every answer ends with as long as nothing varies the inputs.
pub(super) const CONDITIONS: &str = " in the conditions entered; doubt not computed yet.";

/// A tube and what it is called.
struct Named {
    tube: &'static str,
    spot: Spot,
}

const INTAKE: Named = Named {
    tube: "intake tube",
    spot: Spot::tube(Tube::Intake),
};

const EXHAUST: Named = Named {
    tube: "exhaust tube",
    spot: Spot::tube(Tube::Exhaust),
};

impl Named {
    fn figure(&self, text: String, emphasis: Emphasis, figure: Figure) -> Part {
        Part::figure(text, emphasis, figure, self.spot)
    }
}

/// The sentence.
pub(super) fn sentence(outcome: &Outcome, style: Style) -> Vec<Part> {
    let mut clauses = Vec::new();
    let tubes = [
        (&INTAKE, Some(&outcome.intake)),
        (&EXHAUST, outcome.exhaust.as_ref()),
    ];
    for (named, tube) in tubes {
        clauses.extend(tube.and_then(|tube| wet(named, tube, style)));
    }
    if WET_SENSOR_MIST < outcome.chamber.mist.to_kilograms_per_kilogram() {
        let mist = Part::figure(
            "mist reaches the sensor".into(),
            Emphasis::Mist,
            Figure::SensorMist,
            INTAKE.spot,
        );
        clauses.push(vec![mist]);
    }
    for (named, tube) in tubes {
        clauses.extend(tube.and_then(|tube| sweat(named, tube, style)));
    }
    if outcome.verdict == Verdict::Dry {
        clauses.push(vec![Part::strong(dry(outcome, !clauses.is_empty()))]);
    } else if let Some(last) = clauses.last_mut() {
        last.push(Part::words(","));
    }
    let mut sentence = joined(clauses);
    sentence.push(Part::words(CONDITIONS));
    capital(&mut sentence);
    sentence
}

fn dry(outcome: &Outcome, sweats: bool) -> &'static str {
    match (outcome.exhaust.is_some(), sweats) {
        (true, false) => "both tubes stay dry",
        (true, true) => "both tubes stay dry inside",
        (false, false) => "the intake tube stays dry",
        (false, true) => "the intake tube stays dry inside",
    }
}

/// How much water and frost forms in a tube, and between where; nothing to say of a dry one.
fn wet(named: &Named, tube: &TubeOutcome, style: Style) -> Option<Vec<Part>> {
    if tube.condensate.to_grams_per_hour() <= WET_TUBE_G_H {
        return None;
    }
    let frost: MassFlow = tube.legs.iter().map(|leg| leg.frost).sum();
    let all_frost = 0.999 * tube.condensate.to_grams_per_hour() <= frost.to_grams_per_hour();
    let (what, emphasis) = if all_frost {
        ("frost", Emphasis::Frost)
    } else {
        ("water", Emphasis::Water)
    };
    let amount = wording::water(tube.condensate, style);
    let mut parts = vec![
        named.figure(amount, emphasis, Figure::TubeWater),
        Part::words(format!(" of {what} forms in the {} ", named.tube)),
    ];
    parts.extend(bounds(named, tube, style));
    if !all_frost && WET_TUBE_G_H < frost.to_grams_per_hour() {
        parts.push(Part::words(", "));
        let amount = wording::water(frost, style);
        parts.push(named.figure(amount, Emphasis::Frost, Figure::TubeFrost));
        parts.push(Part::words(" of it as frost"));
        if let Some(from) = tube.frost_from() {
            let from = TUBE_LENGTH.show(from, style).to_string();
            parts.push(Part::words(" from "));
            parts.push(named.figure(from, Emphasis::Strong, Figure::FrostFrom));
            parts.push(Part::words(" on"));
        }
    }
    Some(parts)
}

/// Between where a tube is wet.
fn bounds(named: &Named, tube: &TubeOutcome, style: Style) -> Vec<Part> {
    let (Some(first), Some(last)) = (tube.wet.first(), tube.wet.last()) else {
        return Vec::new();
    };
    let place = |x, figure| {
        let text = TUBE_LENGTH.show(x, style).to_string();
        named.figure(text, Emphasis::Strong, figure)
    };
    let mut parts = vec![
        Part::words("between "),
        place(first.from, Figure::WetFrom),
        Part::words(" and "),
        place(last.to, Figure::WetTo),
    ];
    if 1 < tube.wet.len() {
        let count = tube.wet.len().to_string();
        parts.push(Part::words(" in "));
        parts.push(named.figure(count, Emphasis::None, Figure::WetStretches));
        parts.push(Part::words(" stretches"));
    }
    parts
}

/// That a tube sweats, and how much.
fn sweat(named: &Named, tube: &TubeOutcome, style: Style) -> Option<Vec<Part>> {
    if tube.sweat.to_grams_per_hour() <= WET_TUBE_G_H {
        return None;
    }
    let rime: MassFlow = tube.legs.iter().map(|leg| leg.rime).sum();
    let (verb, emphasis) = if rime.to_grams_per_hour() * 2.0 < tube.sweat.to_grams_per_hour() {
        ("sweats", Emphasis::Sweat)
    } else {
        ("rimes", Emphasis::Frost)
    };
    Some(vec![
        Part::words(format!("the {} {verb} outside, ", named.tube)),
        named.figure(
            wording::water(tube.sweat, style),
            emphasis,
            Figure::TubeSweat,
        ),
    ])
}

/// The clauses one after the other.
fn joined(clauses: Vec<Vec<Part>>) -> Vec<Part> {
    let mut parts = Vec::new();
    for clause in clauses {
        if !parts.is_empty() {
            parts.push(Part::words("; "));
        }
        parts.extend(clause);
    }
    parts
}

/// Begins the sentence with a capital letter.
fn capital(sentence: &mut [Part]) {
    if let Some(first) = sentence.first_mut() {
        first.text = wording::capital(&first.text);
    }
}
