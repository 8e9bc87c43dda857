//! The sentence: what forms where in each tube, what reaches the sensor, what sweats, and for what conditions.

use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::{Outcome, TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H};

use super::part::{Emphasis, Part};
use crate::states::{State, states};
use crate::wording;

/// What every answer ends with as long as nothing varies the inputs.
const CONDITIONS: &str = " in the conditions entered; doubt not computed yet.";

/// Which fields of the answer file a tube's figures come from, and what the tube is called.
struct Named {
    tube: &'static str,
    water: &'static str,
    frost: &'static str,
    wet: &'static str,
    sweat: &'static str,
}

const INTAKE: Named = Named {
    tube: "intake tube",
    water: "intake.condensate_g_h",
    frost: "intake.legs.frost_g_h",
    wet: "intake.wet",
    sweat: "intake.sweat_g_h",
};

const EXHAUST: Named = Named {
    tube: "exhaust tube",
    water: "exhaust.condensate_g_h",
    frost: "exhaust.legs.frost_g_h",
    wet: "exhaust.wet",
    sweat: "exhaust.sweat_g_h",
};

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
            "chamber.mist_kg_kg",
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
        Part::figure(amount, emphasis, named.water),
        Part::words(format!(" of {what} forms in the {} ", named.tube)),
    ];
    parts.extend(bounds(named, tube, style));
    if !all_frost && WET_TUBE_G_H < frost.to_grams_per_hour() {
        parts.push(Part::words(", "));
        let amount = wording::water(frost, style);
        parts.push(Part::figure(amount, Emphasis::Frost, named.frost));
        parts.push(Part::words(" of it as frost"));
        if let Some(first) = states(tube).iter().find(|s| s.state == State::Frost) {
            let from = wording::metres(first.from_m, style);
            parts.push(Part::words(" from "));
            parts.push(Part::figure(from, Emphasis::Strong, named.wet));
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
    let figure = |text: String| Part::figure(text, Emphasis::Strong, named.wet);
    let mut parts = vec![
        Part::words("between "),
        figure(TUBE_LENGTH.show(first.from, style).to_string()),
        Part::words(" and "),
        figure(TUBE_LENGTH.show(last.to, style).to_string()),
    ];
    if 1 < tube.wet.len() {
        parts.push(Part::words(format!(" in {} stretches", tube.wet.len())));
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
        Part::figure(wording::water(tube.sweat, style), emphasis, named.sweat),
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
