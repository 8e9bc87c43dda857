//! All that a field shows of the project, at once.

use dewrun_document::Origin;
use dewrun_quantity::Style;

use super::Field;
use crate::OpenProject;

/// What a field shows of the project.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FieldShown {
    /// What it is called.
    pub name: &'static str,
    /// What its surroundings say to those who see, for the others: whose it is, its unit, its origin.
    pub rest: String,
    /// The number that the project holds, as it is written.
    pub number: String,
    /// Its unit; empty for none.
    pub unit: &'static str,
    /// How its origin is drawn: a class, empty for what was typed or computed.
    pub origin: &'static str,
    /// Which keys a phone shows for it.
    pub keypad: &'static str,
}

impl Field {
    /// What it shows of a project.
    #[must_use]
    pub fn shown(self, project: &OpenProject, style: Style) -> FieldShown {
        let name = self.name(project);
        let (number, unit) = self.show(project, style).unwrap_or_default();
        let (origin, spoken) = match self.origin(project) {
            Some(Origin::Assumed { .. }) => ("dw-field--assumed", ", assumed"),
            Some(Origin::Measured { .. }) => ("dw-field--measured", ", measured"),
            _ => ("", ""),
        };
        let full = self.full_name(project);
        let whose = full.strip_prefix(name).unwrap_or("");
        let comma = if unit.is_empty() { "" } else { ", " };
        let is_plain = self.is_plain_number(project);
        FieldShown {
            name,
            rest: format!("{whose}{comma}{unit}{spoken}"),
            number,
            unit,
            origin,
            keypad: if is_plain { "decimal" } else { "text" },
        }
    }
}
