//! Air pressure on site.

use dewrun_quantity::Pressure;

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// Air pressure on site.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Absolute pressure.
    pub pressure: Span<Pressure>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the sites.
pub(super) fn read(sources: &Sources) -> Read<Vec<SiteRow>> {
    let text = include_str!("sites.csv");
    csv::rows("sites.csv", text, sources, site_row)
}

fn site_row(record: &mut Record) -> SiteRow {
    SiteRow {
        id: record.text("id"),
        name: record.text("name"),
        pressure: record.span("absolute_pa").map(Pressure::pascals),
        entries: record.take_entries(),
    }
}
