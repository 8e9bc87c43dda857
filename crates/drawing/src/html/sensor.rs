//! What the detector gets, as a list of figures.

use dewrun_quantity::Style;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::RELATIVE_HUMIDITY;
use dewrun_run::figure::{Figure, Spot, value};
use dewrun_run::{Outcome, Run, Tube};

use super::figure_row;

/// The rows of the list.
#[must_use]
pub fn sensor(run: &Run, outcome: &Outcome, style: Style) -> String {
    let spot = Spot::tube(Tube::Intake);
    let row = |name: &str, figure: Figure| {
        let number = value(run, outcome, figure, spot);
        let shown = number.map(|number| figure.kind().show(number, style).to_string());
        let text = shown.unwrap_or_else(|| DOES_NOT_APPLY.to_owned());
        figure_row(name, figure, spot, &text)
    };
    let rating = run.detector.humidity_rating.map(|rating| {
        let text = RELATIVE_HUMIDITY.show(rating, style).to_string();
        figure_row("Rated for", Figure::HumidityRating, spot, &text)
    });
    [
        row("Temperature", Figure::SensorTemperature),
        row("Relative humidity", Figure::SensorHumidity),
        rating.unwrap_or_default(),
        row("Dew point", Figure::SensorDewPoint),
        row("Mist", Figure::SensorMist),
        row("Water on the way", Figure::TubeWater),
    ]
    .concat()
}
