//! Two layouts of one detector side by side: what each answers, and the figures that tell them apart.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot, value};

use super::{element, opening, plain_sentence};
use crate::answer::answer;
use crate::view::View;

/// What is compared, and what it is called.
const FIGURES: [(&str, Figure); 5] = [
    ("Water on the way", Figure::TubeWater),
    ("Temperature at the sensor", Figure::SensorTemperature),
    ("Relative humidity at the sensor", Figure::SensorHumidity),
    ("Dew point at the sensor", Figure::SensorDewPoint),
    ("Mist at the sensor", Figure::SensorMist),
];

const SPOT: Spot = Spot::tube(Tube::Intake);

/// What stands in the table; the figures of the open layout open, those of the other say which they are.
#[must_use]
pub fn side_by_side(open: &View<'_>, other: &View<'_>) -> String {
    let head = |view: &View<'_>| element("th", " scope=\"col\"", &view.names.run);
    let sentence = |view: &View<'_>| {
        let told = plain_sentence(&answer(view.run, view.outcome, view.style));
        format!("<td>{told}</td>")
    };
    let row = |(name, figure): &(&str, Figure)| row(name, *figure, open, other);
    let rows: String = FIGURES.iter().map(row).collect();
    format!(
        "<thead><tr><td></td>{}{}</tr></thead><tbody><tr><th scope=\"row\">Answer</th>{}{}</tr>{rows}</tbody>",
        head(open),
        head(other),
        sentence(open),
        sentence(other)
    )
}

fn row(name: &str, figure: Figure, open: &View<'_>, other: &View<'_>) -> String {
    let name = element("th", " scope=\"row\"", name);
    let opens = opening(figure, SPOT, "", &shown(figure, open));
    let which = format!(" data-other=\"{}\"", figure.id());
    let beside = element("td", &which, &shown(figure, other));
    format!("<tr>{name}<td>{opens}</td>{beside}</tr>")
}

fn shown(figure: Figure, view: &View<'_>) -> String {
    let number = value(view.run, view.outcome, figure, SPOT);
    let shown = number.map(|number| figure.kind().show(number, view.style).to_string());
    shown.unwrap_or_else(|| DOES_NOT_APPLY.to_owned())
}
