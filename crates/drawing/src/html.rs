//! Read-only pieces of the page and of reports as HTML text: sentences, tables, lists of figures.
//!
//! Text that people gave is escaped; nothing is styled but by class.

mod dew_square_table;
mod formula;
mod leg;
mod opened;
mod opening;
mod profile_table;
#[cfg(feature = "water-and-air")]
mod remedies;
mod sensor;
mod sentence;
mod side_by_side;
mod staying_dry;

pub use dew_square_table::{boundary_table, path_table};
pub use formula::formula;
pub use leg::{
    has_frost, has_sweat, leg_card_figures, leg_card_head, leg_cells, leg_fitted_head, legs_head,
};
pub use opened::{Origins, opened, row_source};
pub use opening::opening;
pub use profile_table::profile_table;
#[cfg(feature = "year")]
pub(crate) use remedies::{bar as remedy_bar, change_words};
#[cfg(feature = "water-and-air")]
pub use remedies::{remedies, remedy_words};
pub use sensor::sensor;
pub use sentence::{asides, more, plain_sentence, rests_on, sentence};
pub use side_by_side::side_by_side;
pub use staying_dry::staying_dry;

use dewrun_run::figure::{Figure, Spot};

/// What every reader of a result must know: this is a life-safety device. The page and every sheet have it word for word.
pub const CAUTIONS: &str = include_str!("html/cautions.html");

use crate::svg::escaped;

/// An element with text in it.
pub(crate) fn element(name: &str, attributes: &str, text: &str) -> String {
    let text = escaped(text);
    format!("<{name}{attributes}>{text}</{name}>")
}

/// A figure with its name, as a row of a list of figures; it opens.
fn figure_row(term: &str, figure: Figure, spot: Spot, text: &str) -> String {
    let opens = opening(figure, spot, "", text);
    let term = element("dt", "", term);
    format!("<div class=\"dw-figures__row\">{term}<dd>{opens}</dd></div>")
}

/// A head over a column of numbers: its name and unit.
fn column_head(name: &str, unit: &str) -> String {
    let unit = element("span", " class=\"dw-unit\"", unit);
    format!("<th scope=\"col\" class=\"dw-number\">{name}<br>{unit}</th>")
}
