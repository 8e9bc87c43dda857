//! In which of several weathers a run is worst.

use dewrun_quantity::Style;
use dewrun_run::{Outcome, Verdict, WET_TUBE_G_H};

use crate::wording;

/// The worst weather by the water in the intake tube, then the others as they stand; empty for none.
#[must_use]
pub fn weather_answer(weathers: &[(&str, &Outcome)], style: Style) -> String {
    let count = weathers.len();
    let wet = weathers
        .iter()
        .filter(|(_, outcome)| outcome.verdict == Verdict::Wet);
    let worst = wet.max_by(|(_, a), (_, b)| {
        let mist = |outcome: &Outcome| outcome.chamber.mist.to_kilograms_per_kilogram();
        let water = |outcome: &Outcome| outcome.intake.condensate.to_grams_per_hour();
        water(a)
            .total_cmp(&water(b))
            .then_with(|| mist(a).total_cmp(&mist(b)))
    });
    let Some((worst, outcome)) = worst else {
        return match count {
            0 => String::new(),
            _ => format!(
                "Dry in each of {count} weathers in the conditions entered; doubt not computed yet."
            ),
        };
    };
    let others: Vec<String> = weathers
        .iter()
        .filter(|(name, _)| name != worst)
        .map(|(name, outcome)| format!("{name} {}", amount(outcome, style)))
        .collect();
    format!(
        "Worst of {count} weathers is the {worst}, {}; {}. In the conditions entered; doubt not computed yet.",
        amount(outcome, style),
        others.join(", ")
    )
}

fn amount(outcome: &Outcome, style: Style) -> String {
    match outcome.verdict {
        Verdict::Dry => "dry".to_owned(),
        Verdict::Wet if WET_TUBE_G_H < outcome.intake.condensate.to_grams_per_hour() => {
            wording::water(outcome.intake.condensate, style)
        }
        Verdict::Wet => "mist at the sensor".to_owned(),
    }
}
