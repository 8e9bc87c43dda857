//! The profile in words, made from its data, for those who can't see it.

use dewrun_run::{Tube, TubeOutcome};

use crate::view::View;
use crate::wording;

/// What the plot is.
pub(crate) fn title(view: &View<'_>) -> String {
    let tube = match view.tube {
        Tube::Intake => "intake tube",
        Tube::Exhaust => "exhaust tube",
    };
    format!("Air, inner wall and dew point along the {tube}, and the water that forms")
}

/// What it shows.
pub(crate) fn sentence(view: &View<'_>, answer: &TubeOutcome) -> String {
    let celsius = |t| wording::celsius(t, view.style);
    let mut sentence = String::new();
    if let (Some(first), Some(last)) = (answer.profile.first(), answer.profile.last()) {
        sentence = format!(
            "The air goes from {} to {}.",
            celsius(first.air),
            celsius(last.air)
        );
        if let (Some(from), Some(to)) = (first.dew_point, last.dew_point) {
            let dew = format!(
                " Its dew point goes from {} to {}.",
                celsius(from),
                celsius(to)
            );
            sentence.push_str(&dew);
        }
    }
    if let Some(wall) = &answer.coldest_wall {
        let place = wording::metres(wall.x.to_metres(), view.style);
        let wall = format!(
            " The inner wall is coldest at {place}: {}.",
            celsius(wall.temperature)
        );
        sentence.push_str(&wall);
    }
    let formed = match answer.first_wet() {
        None => " No water forms.".to_owned(),
        Some(first) => format!(
            " Water forms from {} on, {} in all.",
            wording::metres(first.to_metres(), view.style),
            wording::water(answer.condensate, view.style)
        ),
    };
    sentence.push_str(&formed);
    sentence
}
