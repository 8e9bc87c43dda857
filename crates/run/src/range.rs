//! The limits of every input, in one place.

use crate::error::{Place, RunError};

/// Limits of one input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The field, in the words of the project file without its unit.
    pub field: &'static str,
    /// What it is, in words.
    pub quantity: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// Least value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
}

impl Limits {
    /// The value, if it lies within the limits; NaN does not.
    pub(crate) fn check(&self, place: Place, value: f64) -> Result<f64, RunError> {
        if (self.min..=self.max).contains(&value) {
            return Ok(value);
        }
        Err(RunError::OutOfRange {
            place,
            field: self.field,
            quantity: self.quantity,
            value,
            unit: self.unit,
            min: self.min,
            max: self.max,
        })
    }
}

macro_rules! limits {
    ($($(#[$meta:meta])* $name:ident = $field:literal, $quantity:literal, $unit:literal, $min:expr, $max:expr;)+) => {
        $($(#[$meta])* pub const $name: Limits =
            Limits { field: $field, quantity: $quantity, unit: $unit, min: $min, max: $max };)+
    };
}

limits! {
    /// Absolute pressure.
    PRESSURE = "pressure", "the pressure", "Pa", 50e3, 120e3;
    /// Air temperatures: duct air and spaces.
    AIR_TEMPERATURE = "temperature", "the air temperature", "°C", -60.0, 95.0;
    /// Temperature of the surfaces that a tube radiates to; a clear sky is cold.
    RADIANT_TEMPERATURE = "radiant", "the temperature of the surroundings", "°C", -90.0, 120.0;
    /// Air speed across a tube.
    WIND = "wind", "the air speed", "m/s", 0.0, 60.0;
    /// Volume flow.
    FLOW = "flow", "the flow", "L/min", 0.0, 1000.0;
    /// Length of a leg.
    LENGTH = "length", "the length", "m", 1e-3, 1000.0;
    /// Inside diameter.
    BORE = "bore", "the bore", "mm", 2.0, 200.0;
    /// Thickness of the wall.
    WALL = "outside_diameter", "the wall between bore and outside diameter", "mm", 0.05, 50.0;
    /// Conductivity of the tube.
    TUBE_CONDUCTIVITY = "conductivity", "the conductivity of the tube", "W/(m K)", 0.01, 500.0;
    /// Thickness of insulation.
    INSULATION = "thickness", "the thickness of the insulation", "mm", 0.0, 500.0;
    /// Conductivity of insulation.
    INSULATION_CONDUCTIVITY = "conductivity", "the conductivity of the insulation", "W/(m K)", 0.005, 5.0;
    /// Emissivity.
    EMISSIVITY = "emissivity", "the emissivity", "", 0.0, 1.0;
    /// Heat tracing.
    TRACING = "tracing", "the heat tracing", "W/m", 0.0, 200.0;
    /// Heat of the detector.
    DETECTOR_HEAT = "heat", "the heat of the detector", "W", 0.0, 500.0;
    /// Temperatures that an answer may hold: past them no relation does.
    ANSWERED = "temperature", "the temperature that comes out", "°C", -80.0, 160.0;
    /// Water that an answer may hold.
    ANSWERED_WATER = "humidity", "the water that comes out", "kg/kg", 0.0, 1e3;
}
