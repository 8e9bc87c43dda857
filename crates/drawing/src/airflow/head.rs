//! What comes through, in a sentence whose figures open.

use dewrun_quantity::measure::AIR_FLOW;
use dewrun_quantity::{Style, Time, format};
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot};
use dewrun_run::told::Direction;

use super::Shown;
use crate::html::opening;

const INTAKE: Spot = Spot::tube(Tube::Intake);

/// The sentence over the section.
#[must_use]
pub fn head(shown: &Shown<'_>) -> String {
    let outcome = &shown.whole.airflow;
    let now = &outcome.now;
    let flow = AIR_FLOW.show(now.sensor, shown.style).to_string();
    let mut html = match now.direction {
        Direction::Forward => format!(
            "{} reach the sensor, {} of it from the duct.",
            strong(Figure::SensorFlow, &flow),
            strong(Figure::SampleShare, &percent(now.share, shown.style)),
        ),
        Direction::Reversed => format!(
            "The air runs backwards: {} from the exhaust to the intake.",
            strong(Figure::SensorFlow, &flow)
        ),
        Direction::Still => "No air moves.".to_owned(),
    };
    if let Some(band) = now.transport {
        html.push_str(&format!(
            " First smoke after {}, 90\u{a0}% after {}.",
            strong(Figure::TransportFirst, &seconds(band.first, shown.style)),
            strong(
                Figure::TransportNinety,
                &seconds(band.ninety_percent, shown.style)
            ),
        ));
    }
    html
}

/// A share or reading in percent.
pub(super) fn percent(part: f64, style: Style) -> String {
    format!("{}\u{a0}%", number(part, style))
}

/// The same without its sign.
pub(super) fn number(part: f64, style: Style) -> String {
    format::fixed(100.0 * part, 0, style.mark)
}

pub(super) fn seconds(time: Time, style: Style) -> String {
    let number = format::significant(time.to_seconds(), 2, 1, style.mark);
    format!("{number}\u{a0}s")
}

fn strong(figure: Figure, text: &str) -> String {
    opening(figure, INTAKE, "dw-figure", text)
}

/// A figure of a table that opens.
pub(super) fn opens(figure: Figure, text: &str) -> String {
    opening(figure, INTAKE, "", text)
}
