//! Read-only pieces of the page and of reports as HTML text: sentences, tables, lists of figures.
//!
//! Text that people gave is escaped; nothing is styled but by class.

mod leg;
mod profile_table;
mod sensor;
mod sentence;

pub use leg::{
    LegFigures, has_frost, has_sweat, leg_card_figures, leg_card_head, leg_figures, legs_head,
};
pub use profile_table::profile_table;
pub use sensor::sensor;
pub use sentence::{asides, sentence};

use crate::svg::escaped;

/// An element with text in it.
fn element(name: &str, attributes: &str, text: &str) -> String {
    let text = escaped(text);
    format!("<{name}{attributes}>{text}</{name}>")
}

/// A term and its figure, as a row of a list of figures.
fn figure_row(term: &str, figure: &str) -> String {
    format!(
        "<div class=\"dw-figures__row\">{}{}</div>",
        element("dt", "", term),
        element("dd", "", figure)
    )
}

/// A head over a column of numbers: its name and unit.
fn column_head(name: &str, unit: &str) -> String {
    let unit = element("span", " class=\"dw-unit\"", unit);
    format!("<th scope=\"col\" class=\"dw-number\">{name}<br>{unit}</th>")
}
