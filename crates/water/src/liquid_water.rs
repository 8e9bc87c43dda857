//! Liquid water as the relations of this crate need it: its weight and its surface.

use dewrun_moist_air::liquid;
use dewrun_quantity::{Density, ForcePerLength, Length, Temperature};

use crate::GRAVITY_M_S2;

/// Liquid water at one temperature.
///
/// ```
/// use dewrun_quantity::Temperature;
/// use dewrun_water::Water;
/// let water = Water::at(Temperature::celsius(20.0));
/// assert!((water.capillary_length().to_millimetres() - 2.7259).abs() < 1e-3);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// Its density.
    pub density: Density,
    /// Its surface tension against air.
    pub surface_tension: ForcePerLength,
}

impl Water {
    /// Water at a temperature from 0 to 95 °C (IAPWS SR1-86 and R1-76(2014)).
    #[must_use]
    pub fn at(temperature: Temperature) -> Self {
        let t_c = temperature.to_celsius();
        Self {
            density: Density::kilograms_per_cubic_metre(liquid::density_kg_m3(t_c)),
            surface_tension: ForcePerLength::newtons_per_metre(liquid::surface_tension_n_m(t_c)),
        }
    }

    /// The length on which weight and surface tension are equal, `sqrt(sigma/(rho g))`.
    #[must_use]
    pub fn capillary_length(self) -> Length {
        let tension = self.surface_tension.to_newtons_per_metre();
        Length::metres((tension / self.weight_n_m3()).sqrt())
    }

    /// Weight of a volume [N/m3].
    pub(crate) const fn weight_n_m3(self) -> f64 {
        self.density.to_kilograms_per_cubic_metre() * GRAVITY_M_S2
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IAPWS R1-76 and IAPWS-95, g = 9.80665.
    #[test]
    fn capillary_length_falls_with_temperature() {
        for (t_c, expected_mm) in [(10.0, 2.7515), (60.0, 2.6210)] {
            let water = Water::at(Temperature::celsius(t_c));
            let got = water.capillary_length().to_millimetres();
            assert!((got / expected_mm - 1.0).abs() < 1e-3, "{got} at {t_c}");
        }
    }
}
