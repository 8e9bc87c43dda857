//! Relations turned round: what size of a remedy a wanted state asks for, where that can be said without a search.

mod insulation;
mod shedding;
mod tracing;

pub use insulation::least_insulation;
pub use shedding::shedding_length;
pub use tracing::{kept_temperature, trace_power};

use dewrun_quantity::{Conductivity, Length, Pressure, Temperature};

/// A tube in still air, with the layer that may lie around it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StillTube {
    /// Outside diameter of the tube.
    pub outside_diameter: Length,
    /// Thickness of the layer; zero for none.
    pub insulation: Length,
    /// Its conductivity.
    pub conductivity: Conductivity,
    /// Emissivity of the outermost surface.
    pub emissivity: f64,
    /// Temperature of the air and the surfaces around.
    pub around: Temperature,
    /// Pressure of the air.
    pub pressure: Pressure,
}
