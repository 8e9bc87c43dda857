//! What is assumed of water and airflow where nobody has said anything: one figure a row.

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// One assumed figure.
#[derive(Debug, Clone, PartialEq)]
pub struct AssumptionRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// The figure, in the unit in which the name of its field ends.
    pub value: Span<f64>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the assumptions.
pub(super) fn read(sources: &Sources) -> Read<Vec<AssumptionRow>> {
    let text = include_str!("assumptions.csv");
    csv::rows("assumptions.csv", text, sources, assumption_row)
}

fn assumption_row(record: &mut Record) -> AssumptionRow {
    let field = record.text("field");
    AssumptionRow {
        id: record.text("id"),
        name: record.text("name"),
        value: record.span_as("value", field),
        entries: record.take_entries(),
    }
}
