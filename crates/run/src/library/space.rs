//! Spaces: the air that surrounds a leg in a design situation, and how far it follows the weather.

use dewrun_quantity::{Speed, Temperature, TemperatureDifference};

use super::record::Record;
use super::{Entry, HumiditySpan, Read, Sources, Span, csv, humidity};

/// What surrounds a leg, in a given design situation.
#[derive(Debug, Clone, PartialEq)]
pub struct SpaceRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// The design situation that the figures are for, in words.
    pub situation: &'static str,
    /// Temperature of its air.
    pub temperature: Span<Temperature>,
    /// Humidity of its air.
    pub humidity: HumiditySpan,
    /// Air speed across a tube.
    pub wind: Span<Speed>,
    /// How far its temperature follows the outdoors instead of the heated building:
    /// `(t_in - t) / (t_in - t_out)`, 0 indoors, 1 outdoors.
    pub coupling: Span<f64>,
    /// Temperature of the surfaces that the tube radiates to, less that of the air; none: as the air.
    pub radiant_minus_air: Option<Span<TemperatureDifference>>,
    /// What the tube radiates to, in words.
    pub radiant: &'static str,
    pub(super) entries: Vec<Entry>,
}

/// Reads the spaces.
pub(super) fn read(sources: &Sources) -> Read<Vec<SpaceRow>> {
    let text = include_str!("spaces.csv");
    csv::rows("spaces.csv", text, sources, space_row)
}

fn space_row(record: &mut Record) -> SpaceRow {
    let radiant = record.optional_span("radiant_minus_air_k");
    SpaceRow {
        id: record.text("id"),
        name: record.text("name"),
        situation: record.text("situation"),
        temperature: record.span("temperature_c").map(Temperature::celsius),
        humidity: humidity::relative(record),
        wind: record.span("wind_m_s").map(Speed::metres_per_second),
        coupling: record.span("coupling"),
        radiant_minus_air: radiant.map(|span| span.map(TemperatureDifference::kelvins)),
        radiant: record.text("radiant"),
        entries: record.take_entries(),
    }
}
