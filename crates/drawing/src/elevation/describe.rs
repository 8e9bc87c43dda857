//! The elevation in words, made from its data, for those who can't see it.

use dewrun_quantity::format::entered;
use dewrun_run::Tube;

use super::labels::state;
use super::layout::Plan;
use crate::states::states;
use crate::view::View;
use crate::wording;

/// What the drawing is.
pub(crate) fn title(view: &View<'_>) -> String {
    let tube = match view.tube {
        Tube::Intake => "intake tube",
        Tube::Exhaust => "exhaust tube",
    };
    format!("Elevation of the {tube}, {}", view.names.run)
}

/// What it shows, with the states along the tube where the answer is drawn.
pub(crate) fn sentence(view: &View<'_>, with_states: bool) -> String {
    let legs = view.legs().len();
    let length = wording::metres(view.length().to_metres(), view.style);
    let (from, to) = match view.tube {
        Tube::Intake => ("the duct", "the detector"),
        Tube::Exhaust => ("the detector", "the duct"),
    };
    let plural = if legs == 1 { "leg" } else { "legs" };
    let mut sentence = format!(
        "{legs} {plural}, {length}, from {from} through {} to {to}.",
        spaces(view)
    );
    if !with_states {
        return sentence;
    }
    let found = view.answer().map(states).unwrap_or_default();
    if found.is_empty() {
        sentence.push_str(" No water, frost, mist or sweat along it.");
    }
    for stretch in found {
        let (word, _) = state(stretch.state);
        let span = wording::span(stretch.from_m, stretch.to_m, view.style);
        sentence.push_str(&format!(" {}, {span}.", wording::capital(word)));
    }
    sentence
}

/// What lengths, heights and falls are drawn to.
pub(crate) fn scale_note(plan: &Plan, has_water: bool) -> String {
    let factors = plan.course.factors;
    let times = |factor: f64| format!("{}×", entered(factor));
    let heights = if factors.heights == 1.0 {
        "lengths and heights to scale".to_owned()
    } else {
        format!("lengths to scale, heights {}", times(factors.heights))
    };
    let falls = if plan.bore_to_scale {
        let what = if has_water {
            "bore, falls and pools"
        } else {
            "bore and falls"
        };
        format!("{what} drawn {}", times(factors.falls))
    } else {
        format!("falls drawn {}, bore not to scale", times(factors.falls))
    };
    format!("{heights}; {falls}")
}

/// The names of the spaces in the order in which the tube passes them.
fn spaces(view: &View<'_>) -> String {
    let mut passed: Vec<&str> = Vec::new();
    for leg in view.legs() {
        let name = view.space_name(leg.space);
        if passed.last() != Some(&name) {
            passed.push(name);
        }
    }
    match passed.split_last() {
        None => "no space".to_owned(),
        Some((last, [])) => (*last).to_owned(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}
