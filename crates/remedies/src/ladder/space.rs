//! Wet legs led through another space that the run passes anyway.

use dewrun_quantity::MassFlow;
use dewrun_run::{Tube, evaluate};

use super::Ladder;
use crate::alteration::{Alteration, altered, legs};
use crate::kind::Kind;
use crate::subject::Subject;

/// So many spaces are tried, those first in which least forms as entered.
const MOST: usize = 2;

/// One leg after another, the wettest first; a ladder for each space.
pub(super) fn spaces(subject: &Subject) -> Vec<Ladder> {
    let wet = wettest_first(subject);
    let here =
        |(tube, leg): &(Tube, usize)| legs(&subject.inputs, *tube).get(*leg).map(|leg| leg.space);
    let mut passed: Vec<usize> = subject.all_legs().iter().filter_map(here).collect();
    passed.sort_unstable();
    passed.dedup();
    let mut found: Vec<(f64, Vec<Alteration>)> = Vec::new();
    for space in passed {
        let moved = wet.iter().filter(|place| here(place) != Some(space));
        let moves: Vec<Alteration> = moved
            .map(|&(tube, leg)| Alteration::Space { tube, leg, space })
            .collect();
        if moves.is_empty() {
            continue;
        }
        let run = altered(&subject.inputs, &moves).run;
        if let Ok(outcome) = evaluate(&run) {
            let outcome = outcome.value;
            let exhaust = outcome.exhaust.as_ref();
            let forms =
                outcome.intake.condensate + exhaust.map_or(MassFlow::ZERO, |tube| tube.condensate);
            found.push((forms.to_grams_per_hour(), moves));
        }
    }
    found.sort_by(|one, next| one.0.total_cmp(&next.0));
    found.truncate(MOST);
    let ladder = |(_, moves): (f64, Vec<Alteration>)| {
        let rungs = (1..=moves.len()).map(|count| moves.iter().take(count).copied().collect());
        Ladder::in_order(Kind::Space, rungs.collect())
    };
    found.into_iter().filter_map(ladder).collect()
}

/// Wet legs, those first in which most forms in the year, or as entered where there is none.
fn wettest_first(subject: &Subject) -> Vec<(Tube, usize)> {
    let year = subject.year.as_ref().map(|year| year.legs.as_slice());
    let exhaust = subject.outcome.exhaust.as_ref();
    let of_exhaust = exhaust.map(|tube| tube.legs.as_slice()).unwrap_or_default();
    let steady = subject.outcome.intake.legs.iter().chain(of_exhaust);
    let amounts: Vec<f64> = match year {
        Some(year) => year.iter().map(|leg| leg.condensed_kg).collect(),
        None => steady
            .map(|leg| leg.condensate.to_grams_per_hour())
            .collect(),
    };
    let all = subject.all_legs();
    let wet = subject.wet_legs();
    let mut ranked: Vec<(f64, (Tube, usize))> = amounts
        .into_iter()
        .zip(all)
        .filter(|(_, place)| wet.contains(place))
        .collect();
    ranked.sort_by(|one, next| next.0.total_cmp(&one.0));
    ranked.into_iter().map(|(_, place)| place).collect()
}
