//! From the engine's state of moist air to its answer, by hand.

use dewrun_quantity::Noted;
use dewrun_run::air::{AirNote, MoistAir, Over};

use crate::DocumentError;
use crate::answer_file::pretty;
use crate::output::{AIR_FORMAT, AirStateOutput, Figure};

/// Every quantity of a state of moist air, with all notes beside it.
#[must_use]
pub fn air_answer(air: &Noted<MoistAir, AirNote>) -> AirStateOutput {
    let Noted { value: air, notes } = air;
    let wet_bulb = air.wet_bulb();
    let notes = notes.iter().chain(&wet_bulb.notes);
    let percent = |over| Figure(air.relative_humidity(over).to_percent());
    AirStateOutput {
        format: AIR_FORMAT.to_owned(),
        version: 1,
        revision: 1,
        temperature_c: Figure(air.temperature().to_celsius()),
        pressure_pa: Figure(air.pressure().to_pascals()),
        humidity_ratio_kg_kg: Figure(air.humidity_ratio().to_kilograms_per_kilogram()),
        vapour_pressure_pa: Figure(air.vapour_pressure().to_pascals()),
        relative_humidity_percent: percent(Over::Water),
        relative_humidity_over_ice_percent: percent(Over::Ice),
        degree_of_saturation_percent: Figure(air.degree_of_saturation(Over::Water) * 100.0),
        dew_point_c: air.dew_point().map(|point| Figure(point.to_celsius())),
        frost_point_c: air.frost_point().map(|point| Figure(point.to_celsius())),
        wet_bulb_c: Figure(wet_bulb.value.to_celsius()),
        enthalpy_kj_kg: Figure(air.enthalpy().to_kilojoules_per_kilogram()),
        specific_volume_m3_kg: Figure(air.specific_volume().to_cubic_metres_per_kilogram()),
        density_kg_m3: Figure(air.density().to_kilograms_per_cubic_metre()),
        notes: notes.map(ToString::to_string).collect(),
    }
}

impl AirStateOutput {
    /// As JSON.
    ///
    /// # Errors
    /// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
    pub fn to_json(&self) -> Result<String, DocumentError> {
        pretty(self)
    }
}
