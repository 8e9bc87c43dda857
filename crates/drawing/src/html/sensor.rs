//! What the detector gets, as a list of figures.

use dewrun_quantity::Style;
use dewrun_quantity::measure::{MIST, RELATIVE_HUMIDITY, TEMPERATURE, WATER};
use dewrun_run::{Outcome, Run};

use super::figure_row;
use crate::wording;

/// The rows of the list.
#[must_use]
pub fn sensor(run: &Run, outcome: &Outcome, style: Style) -> String {
    let chamber = &outcome.chamber;
    let percent = |humidity| RELATIVE_HUMIDITY.show(humidity, style).to_string();
    let rating = run
        .detector
        .humidity_rating
        .map(|rating| figure_row("Rated for", &percent(rating)));
    [
        figure_row(
            "Temperature",
            &TEMPERATURE.show(chamber.temperature, style).to_string(),
        ),
        figure_row("Relative humidity", &percent(chamber.relative_humidity)),
        rating.unwrap_or_default(),
        figure_row("Dew point", &wording::dew_point(chamber, style)),
        figure_row("Mist", &MIST.show(chamber.mist, style).to_string()),
        figure_row(
            "Water on the way",
            &WATER.show(outcome.intake.condensate, style).to_string(),
        ),
    ]
    .concat()
}
