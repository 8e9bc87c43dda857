//! The air in the duct, where the intake draws it.

use dewrun_quantity::Temperature;

use super::record::Record;
use super::{Entry, HumiditySpan, Read, Sources, Span, csv, humidity};

/// The air in a duct, in a given design situation.
#[derive(Debug, Clone, PartialEq)]
pub struct DuctAirRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// The design situation that the figures are for, in words.
    pub situation: &'static str,
    /// Its temperature.
    pub temperature: Span<Temperature>,
    /// Its humidity.
    pub humidity: HumiditySpan,
    /// Whether droplets may float in it already: from fog, a coil, a humidifier, a spray.
    pub droplets_possible: bool,
    pub(super) entries: Vec<Entry>,
}

/// Reads the airs.
pub(super) fn read(sources: &Sources) -> Read<Vec<DuctAirRow>> {
    let text = include_str!("duct-air.csv");
    csv::rows("duct-air.csv", text, sources, duct_air_row)
}

fn duct_air_row(record: &mut Record) -> DuctAirRow {
    DuctAirRow {
        id: record.text("id"),
        name: record.text("name"),
        situation: record.text("situation"),
        temperature: record.span("temperature_c").map(Temperature::celsius),
        humidity: humidity::dew_point_or_relative(record),
        droplets_possible: record.choice("droplets", ("no", false), [("possible", true)]),
        entries: record.take_entries(),
    }
}
