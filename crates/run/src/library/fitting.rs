//! Bends, elbows, tees and valves.

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// What a fitting is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FittingKind {
    /// A bend of a few bores' radius.
    Bend,
    /// A sharp elbow.
    Elbow,
    /// A tee.
    Tee,
    /// A valve.
    Valve,
}

/// A fitting in a tube.
#[derive(Debug, Clone, PartialEq)]
pub struct FittingRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// What it is.
    pub kind: FittingKind,
    /// Pressure lost in it over the velocity pressure in the bore.
    pub loss_coefficient: Span<f64>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the fittings.
pub(super) fn read(sources: &Sources) -> Read<Vec<FittingRow>> {
    let text = include_str!("fittings.csv");
    csv::rows("fittings.csv", text, sources, fitting_row)
}

fn fitting_row(record: &mut Record) -> FittingRow {
    let kind = record.choice(
        "kind",
        ("bend", FittingKind::Bend),
        [
            ("elbow", FittingKind::Elbow),
            ("tee", FittingKind::Tee),
            ("valve", FittingKind::Valve),
        ],
    );
    FittingRow {
        id: record.text("id"),
        name: record.text("name"),
        kind,
        loss_coefficient: record.span("loss_coefficient"),
        entries: record.take_entries(),
    }
}
