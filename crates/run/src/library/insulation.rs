//! Insulation for tubes: how well it insulates and how thick it is sold.

use dewrun_quantity::{Conductivity, Length};

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// Whether vapour gets into an insulation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cells {
    /// Closed cells hold vapour off for years where the joints are glued.
    Closed,
    /// Open fibres soak up water on a cold tube unless a vapour barrier is whole.
    Open,
}

/// An insulation for tubes.
#[derive(Debug, Clone, PartialEq)]
pub struct InsulationRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Whether vapour gets into it.
    pub cells: Cells,
    /// The thicknesses in which it is commonly sold, rising.
    pub thicknesses: Vec<Length>,
    /// Conductivity between 0 and 40 °C, dry; high: aged.
    pub conductivity: Span<Conductivity>,
    /// Emissivity of its outer surface as it is sold.
    pub emissivity: Span<f64>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the insulations.
pub(super) fn read(sources: &Sources) -> Read<Vec<InsulationRow>> {
    let text = include_str!("insulation.csv");
    csv::rows("insulation.csv", text, sources, insulation_row)
}

fn insulation_row(record: &mut Record) -> InsulationRow {
    let thicknesses = record.numbers("thicknesses_mm");
    InsulationRow {
        id: record.text("id"),
        name: record.text("name"),
        cells: record.choice("cells", ("closed", Cells::Closed), [("open", Cells::Open)]),
        thicknesses: thicknesses.into_iter().map(Length::millimetres).collect(),
        conductivity: record
            .span("conductivity_w_mk")
            .map(Conductivity::watts_per_metre_kelvin),
        emissivity: record.span("emissivity"),
        entries: record.take_entries(),
    }
}
