//! What a run would still take dry, as the rows of a table.

use super::element;
use crate::staying_dry::DryLimit;

/// The body of the table: what, how far, of what, what there is now.
#[must_use]
pub fn staying_dry(limits: &[DryLimit]) -> String {
    limits.iter().map(row).collect()
}

fn row(limit: &DryLimit) -> String {
    [
        "<tr>".to_owned(),
        element("th", " scope=\"row\"", limit.name),
        element(
            "td",
            " class=\"dw-number dw-dry-limit\"",
            &limit.limit.number,
        ),
        element("td", " class=\"dw-unit\"", limit.limit.unit),
        element("td", "", &limit.words),
        element("td", " class=\"dw-dry-now\"", &limit.now),
        "</tr>".to_owned(),
    ]
    .concat()
}
