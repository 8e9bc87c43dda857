//! What a run would still take dry, as the rows of a table.

use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot};

use super::{element, opening};
use crate::staying_dry::DryLimit;
use crate::svg::escaped;

/// The body of the table: what, how far, of what, what there is now.
#[must_use]
pub fn staying_dry(limits: &[DryLimit]) -> String {
    limits.iter().map(row).collect()
}

fn row(limit: &DryLimit) -> String {
    [
        "<tr>".to_owned(),
        element("th", " scope=\"row\"", limit.name),
        format!(
            "<td class=\"dw-number dw-dry-limit\">{}</td>",
            opening(
                limit.figure,
                Spot::tube(Tube::Intake),
                "",
                &limit.limit.number
            )
        ),
        element("td", " class=\"dw-unit\"", limit.limit.unit),
        format!("<td>{}</td>", words(limit)),
        format!("<td class=\"dw-dry-now\">{}</td>", now(limit)),
        "</tr>".to_owned(),
    ]
    .concat()
}

/// Of what; where a temperature is named, it opens.
fn words(limit: &DryLimit) -> String {
    match limit.figure {
        Figure::BoundaryDewPoint => {
            opening(Figure::InletTemperature, limit.beside.1, "", &limit.words)
        }
        _ => escaped(&limit.words),
    }
}

/// What there is now; nothing where that is not known.
fn now(limit: &DryLimit) -> String {
    let (figure, spot) = limit.beside;
    if limit.now.is_empty() {
        return String::new();
    }
    opening(figure, spot, "", &limit.now)
}
