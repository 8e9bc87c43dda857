//! Pressures in the duct, for the many sites where nobody has measured them.

use dewrun_quantity::Pressure;

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// Which pressure of a duct.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DuctPressure {
    /// Static pressure against the detector's room.
    Static,
    /// Velocity pressure.
    Velocity,
}

/// A pressure in a duct.
#[derive(Debug, Clone, PartialEq)]
pub struct DuctRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Which pressure it is.
    pub kind: DuctPressure,
    /// The pressure.
    pub pressure: Span<Pressure>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the pressures.
pub(super) fn read(sources: &Sources) -> Read<Vec<DuctRow>> {
    let text = include_str!("ducts.csv");
    csv::rows("ducts.csv", text, sources, duct_row)
}

fn duct_row(record: &mut Record) -> DuctRow {
    let kind = record.choice(
        "kind",
        ("static", DuctPressure::Static),
        [("velocity", DuctPressure::Velocity)],
    );
    let field = match kind {
        DuctPressure::Static => "static_pa",
        DuctPressure::Velocity => "velocity_pa",
    };
    DuctRow {
        id: record.text("id"),
        name: record.text("name"),
        kind,
        pressure: record.span_as("pressure_pa", field).map(Pressure::pascals),
        entries: record.take_entries(),
    }
}
