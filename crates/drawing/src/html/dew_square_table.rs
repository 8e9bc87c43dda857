//! The dew square as tables: the path leg by leg, and the dry boundary.

use dewrun_advice::{BoundaryPoint, Limit};
use dewrun_quantity::Temperature;
use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::TEMPERATURE;

use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot};

use super::{column_head, element, opening};
use crate::view::View;

/// The tube that the square follows.
const INTAKE: Spot = Spot::tube(Tube::Intake);

/// The path of the air: where each leg ends, its space, air, dew point and lowest wall.
#[must_use]
pub fn path_table(view: &View<'_>) -> String {
    let unit = TEMPERATURE.unit(view.style.units).name;
    let head = |name, figure| column_head(&opening(figure, INTAKE, "", name), unit);
    let head = [
        element("th", " scope=\"col\"", "Place"),
        head("Space", Figure::SpaceTemperature),
        head("Air", Figure::AirAtEnd),
        head("Dew point", Figure::DewPointAtEnd),
        head("Lowest wall", Figure::LowestWall),
    ]
    .concat();
    let outcome = view.outcome;
    let duct = &outcome.duct_air;
    let mut rows = row(
        view,
        "Duct",
        [None, Some(duct.temperature), duct.dew_point, None],
    );
    for (place, leg) in outcome.intake.legs.iter().enumerate() {
        let drawn = view.run.intake.get(place);
        let space = drawn.and_then(|leg| view.run.spaces.get(leg.space));
        rows += &row(
            view,
            &format!("End of leg {}", place + 1),
            [
                space.map(|space| space.temperature),
                Some(leg.air_at_end.temperature),
                leg.air_at_end.dew_point,
                Some(leg.lowest_wall),
            ],
        );
    }
    let chamber = &outcome.chamber;
    rows += &row(
        view,
        "Sensor",
        [None, Some(chamber.temperature), chamber.dew_point, None],
    );
    format!("<thead><tr>{head}</tr></thead><tbody>{rows}</tbody>")
}

/// The dry boundary: duct temperature and highest dew point that stays dry.
#[must_use]
pub fn boundary_table(view: &View<'_>, boundary: &[BoundaryPoint]) -> String {
    let unit = TEMPERATURE.unit(view.style.units).name;
    let head = |name, figure| column_head(&opening(figure, INTAKE, "", name), unit);
    let head = [
        head("Duct air", Figure::InletTemperature),
        head("Highest dry dew point", Figure::BoundaryDewPoint),
    ]
    .concat();
    let rows: String = boundary
        .iter()
        .map(|point| {
            let highest = match point.dew_point {
                Limit::At(t) => TEMPERATURE.show(t, view.style).number,
                Limit::Any => "any".to_owned(),
                Limit::Never => "none".to_owned(),
            };
            let t = TEMPERATURE.show(point.temperature, view.style).number;
            let head = element("th", " scope=\"row\" class=\"dw-number\"", &t);
            let cell = element("td", " class=\"dw-number\"", &highest);
            format!("<tr>{head}{cell}</tr>")
        })
        .collect();
    format!("<thead><tr>{head}</tr></thead><tbody>{rows}</tbody>")
}

fn row(view: &View<'_>, name: &str, temperatures: [Option<Temperature>; 4]) -> String {
    let cells = temperatures.map(|t| {
        let text = t.map_or(DOES_NOT_APPLY.to_owned(), |t| {
            TEMPERATURE.show(t, view.style).number
        });
        element("td", " class=\"dw-number\"", &text)
    });
    let name = element("th", " scope=\"row\"", name);
    format!("<tr>{name}{}</tr>", cells.concat())
}
