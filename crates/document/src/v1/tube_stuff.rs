//! What a tube is like beside bore and wall: form of the bore, how it comes to site, stiffness.

use crate::json::{record, words};
use schemars::JsonSchema;

use super::Input;

/// What a tube is like beside bore and wall; numbers that are left out are assumed, by the row of its bore where it has one.
#[derive(Debug, Clone, PartialEq, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct TubeStuff {
    /// What its bore looks like.
    pub bore_form: BoreForm,
    /// How it comes to site.
    pub supply: TubeSupply,
    /// Roughness of the bore, mm.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub roughness_mm: Option<Input<f64>>,
    /// Modulus of elasticity under a load of decades, MPa.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub long_term_modulus_mpa: Option<Input<f64>>,
    /// Density of the wall, kg/m³.
    #[schemars(default, skip_serializing_if = "Option::is_none")]
    pub density_kg_m3: Option<Input<f64>>,
}

/// What a bore looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum BoreForm {
    /// Smooth along the tube.
    Plain,
    /// Ribbed across the tube: water stays between the ribs.
    Corrugated,
}

/// How a tube comes to site.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "snake_case")]
pub enum TubeSupply {
    /// In straight lengths.
    Rigid,
    /// From a coil: it is no beam and wants support all along.
    Coiled,
}

record!(
    TubeStuff,
    "form of the bore and supply of a tube",
    bore_form,
    supply,
    roughness_mm,
    long_term_modulus_mpa,
    density_kg_m3,
);
words!(BoreForm; Plain = "plain", Corrugated = "corrugated");
words!(TubeSupply; Rigid = "rigid", Coiled = "coiled");
