//! What every row of the library has, whichever list it is in.

use super::Span;

/// A row of the library.
pub trait Row {
    /// The name by which project files refer to it.
    fn id(&self) -> &'static str;

    /// What people call it.
    fn name(&self) -> &'static str;

    /// Its figures exactly as they are written, under the names of the project file where that has them.
    fn entries(&self) -> &[Entry];

    /// The figure of that name.
    fn entry(&self, field: &str) -> Option<Entry> {
        let mut entries = self.entries().iter();
        entries.find(|entry| entry.field == field).copied()
    }
}

/// One figure of a row as bare numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// The field of the project file, such as `bore_mm`; its ending is the unit of the span.
    pub field: &'static str,
    /// The figure, in that unit.
    pub span: Span<f64>,
}

/// The row of a list with that id.
#[must_use]
pub fn find<'a, T: Row>(rows: &'a [T], id: &str) -> Option<&'a T> {
    rows.iter().find(|row| row.id() == id)
}

/// Makes rows of types that have `id`, `name` and `entries`.
macro_rules! rows {
    ($($name:ident),+ $(,)?) => {
        $(impl Row for super::$name {
            fn id(&self) -> &'static str {
                self.id
            }

            fn name(&self) -> &'static str {
                self.name
            }

            fn entries(&self) -> &[Entry] {
                &self.entries
            }
        })+
    };
}

rows!(
    TubeRow,
    InsulationRow,
    SpaceRow,
    DuctAirRow,
    DetectorRow,
    FittingRow,
    DuctRow,
    SiteRow,
    RouteRow,
    AssumptionRow,
);
