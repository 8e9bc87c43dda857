//! The profile as a table: every place at which a leg begins or ends, and some between.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, WATER_PER_LENGTH};
use dewrun_quantity::{Style, Temperature};
use dewrun_run::ProfilePoint;
use dewrun_run::figure::{Figure, Spot};

use super::{column_head, element, opening};
use crate::view::View;
use crate::wording::capital;

/// The columns.
const FIGURES: [Figure; 5] = [
    Figure::PlaceAlong,
    Figure::AirAlong,
    Figure::WallAlong,
    Figure::DewPointAlong,
    Figure::Deposit,
];
/// Rows of a table that still reads as one.
const ROWS: usize = 24;

/// The head and the body of the table; empty where the tube is not drawn.
#[must_use]
pub fn profile_table(view: &View<'_>) -> String {
    let Some(answer) = view.answer() else {
        return String::new();
    };
    let style = view.style;
    let head = FIGURES.map(|figure| head(view, figure)).concat();
    let rows: String = few(&answer.profile)
        .map(|point| row(point, style))
        .collect();
    format!("<thead><tr>{head}</tr></thead><tbody>{rows}</tbody>")
}

/// A head over a column, which opens its figure where most water forms.
fn head(view: &View<'_>, figure: Figure) -> String {
    let name = opening(figure, Spot::tube(view.tube), "", &capital(figure.name()));
    column_head(&name, figure.kind().unit(view.style))
}

fn row(point: &ProfilePoint, style: Style) -> String {
    let celsius = |t: Temperature| TEMPERATURE.show(t, style).number;
    let number = |text: &str| element("td", " class=\"dw-number\"", text);
    let dew_point = point.dew_point.map_or(DOES_NOT_APPLY.to_owned(), celsius);
    let place = TUBE_LENGTH.show(point.x, style).number;
    [
        "<tr>".to_owned(),
        element("th", " scope=\"row\" class=\"dw-number\"", &place),
        number(&celsius(point.air)),
        number(&celsius(point.inner_wall)),
        number(&dew_point),
        number(&WATER_PER_LENGTH.show(point.deposit, style).number),
        "</tr>".to_owned(),
    ]
    .concat()
}

/// Ends of legs, and every so manieth point between.
fn few(profile: &[ProfilePoint]) -> impl Iterator<Item = &ProfilePoint> {
    let every = profile.len().div_ceil(ROWS).max(1);
    profile
        .iter()
        .enumerate()
        .filter_map(move |(place, point)| {
            let leg_at =
                |place: Option<usize>| place.and_then(|place| profile.get(place)).map(|p| p.leg);
            let is_end = leg_at(Some(place + 1)) != Some(point.leg)
                || leg_at(place.checked_sub(1)) != Some(point.leg);
            (is_end || place % every == 0).then_some(point)
        })
}
