//! Stretches of tube that nobody has measured yet: something to begin with.

use dewrun_quantity::Length;

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// A stretch of tube that nobody has measured yet.
#[derive(Debug, Clone, PartialEq)]
pub struct RouteRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Length along the tube.
    pub length: Span<Length>,
    /// Rise from its start to its end; negative where it falls.
    pub rise: Span<Length>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the stretches.
pub(super) fn read(sources: &Sources) -> Read<Vec<RouteRow>> {
    let text = include_str!("routes.csv");
    csv::rows("routes.csv", text, sources, route_row)
}

fn route_row(record: &mut Record) -> RouteRow {
    RouteRow {
        id: record.text("id"),
        name: record.text("name"),
        length: record.span("length_m").map(Length::metres),
        rise: record.span("rise_m").map(Length::metres),
        entries: record.take_entries(),
    }
}
