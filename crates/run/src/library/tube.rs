//! Tubes: what they are made of, and the common trade sizes.

use dewrun_quantity::{Conductivity, Density, Length, Pressure, Temperature};

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// Pascals in a megapascal.
const MEGA: f64 = 1e6;

/// What the bore of a tube looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoreForm {
    /// Smooth along the tube.
    Plain,
    /// Ribbed across the tube: water stays between the ribs, and the flow meets more resistance.
    Corrugated,
}

/// How a tube comes to site.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supply {
    /// In straight lengths.
    Rigid,
    /// From a coil: it keeps some of the bend, and with it low points nobody drew.
    Coiled,
}

/// A tube of a common trade size.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// What it is made of, in words.
    pub material: &'static str,
    /// What its bore looks like.
    pub bore_form: BoreForm,
    /// How it comes to site.
    pub supply: Supply,
    /// Inside diameter.
    pub bore: Span<Length>,
    /// Outside diameter.
    pub outside_diameter: Span<Length>,
    /// Conductivity of the wall.
    pub conductivity: Span<Conductivity>,
    /// Modulus of elasticity under a load of minutes, at 20 °C.
    pub short_term_modulus: Span<Pressure>,
    /// Modulus of elasticity under a load of decades, at 20 °C: what sag between hangers goes by.
    pub long_term_modulus: Span<Pressure>,
    /// Density of the wall.
    pub density: Span<Density>,
    /// Equivalent sand roughness of the bore.
    pub roughness: Span<Length>,
    /// Highest temperature at which it is used without pressure.
    pub highest_temperature: Span<Temperature>,
    /// Emissivity of its outer surface.
    pub emissivity: Span<f64>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the tubes and what they are made of.
pub(super) fn read(sources: &Sources) -> Read<Vec<TubeRow>> {
    let text = include_str!("materials.csv");
    let materials = csv::records("materials.csv", text, sources)?;
    let text = include_str!("tubes.csv");
    csv::rows("tubes.csv", text, sources, |tube| {
        let id = tube.text("material");
        let found = materials.iter().find(|material| material.holds("id", id));
        let mut material = found.cloned().unwrap_or_else(|| {
            tube.refuse_word("material", id, "an id of materials.csv".to_owned());
            tube.blank()
        });
        let row = tube_row(tube, &mut material);
        tube.refuse_with(&mut material);
        row
    })
}

fn tube_row(tube: &mut Record, material: &mut Record) -> TubeRow {
    let megapascals = |value: f64| Pressure::pascals(value * MEGA);
    // The ribs of a corrugated bore count for more than the surface of its material.
    let roughness = tube.optional_span("roughness_mm");
    let roughness = roughness.unwrap_or_else(|| material.span("roughness_mm"));
    TubeRow {
        id: tube.text("id"),
        name: tube.text("name"),
        material: material.text("name"),
        bore_form: tube.choice(
            "bore_form",
            ("plain", BoreForm::Plain),
            [("corrugated", BoreForm::Corrugated)],
        ),
        supply: tube.choice(
            "supply",
            ("rigid", Supply::Rigid),
            [("coiled", Supply::Coiled)],
        ),
        bore: tube.span("bore_mm").map(Length::millimetres),
        outside_diameter: tube.span("outside_diameter_mm").map(Length::millimetres),
        conductivity: material
            .span("conductivity_w_mk")
            .map(Conductivity::watts_per_metre_kelvin),
        short_term_modulus: material.span("short_term_modulus_mpa").map(megapascals),
        long_term_modulus: material.span("long_term_modulus_mpa").map(megapascals),
        density: material
            .span("density_kg_m3")
            .map(Density::kilograms_per_cubic_metre),
        roughness: roughness.map(Length::millimetres),
        highest_temperature: material
            .span("highest_temperature_c")
            .map(Temperature::celsius),
        emissivity: material.span("emissivity"),
        entries: [tube.take_entries(), material.take_entries()].concat(),
    }
}
