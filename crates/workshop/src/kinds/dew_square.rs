//! The dew square and its dry boundary, drawn and as tables.

use dewrun_advice::dry_boundary;
use dewrun_desk::{SquareAsked, boundary_as_numbers};
use dewrun_drawing::{boundary_temperatures, dew_square, html, svg};
use dewrun_run::Tube;

use crate::answer::Answer;
use crate::asked::Asked;

/// The boundary over the width of the square.
pub(super) fn boundary(asked: &Asked<'_>) -> Result<Answer, String> {
    let square = of(asked)?;
    let answered = &asked.open.answered;
    let view = answered.view(Tube::Intake, square.style);
    let at = boundary_temperatures(&view, &square.year, square.room);
    let found = dry_boundary(&answered.run, &answered.outcome, &at);
    found
        .map(|found| Answer::Numbers(boundary_as_numbers(&found)))
        .map_err(|error| error.to_string())
}

/// The square.
pub(super) fn drawn(asked: &Asked<'_>) -> Result<String, String> {
    let square = of(asked)?;
    let view = asked.open.answered.view(Tube::Intake, square.style);
    let drawn = dew_square(&view, &square.boundary, &square.year, square.room);
    Ok(svg(&drawn.scene))
}

/// The same as tables.
pub(super) fn tables(asked: &Asked<'_>) -> Result<String, String> {
    let square = of(asked)?;
    let view = asked.open.answered.view(Tube::Intake, square.style);
    let table = |name: &str, rows: &str| {
        format!("<table class=\"dw-table\" aria-label=\"{name}\">{rows}</table>")
    };
    let path = table(
        "The air from the duct to the sensor",
        &html::path_table(&view),
    );
    let limit = html::boundary_table(&view, &square.boundary);
    Ok(path + &table("Dry boundary", &limit))
}

fn of(asked: &Asked<'_>) -> Result<SquareAsked, String> {
    SquareAsked::of(asked.numbers).ok_or_else(|| "this is no dew square".to_owned())
}
