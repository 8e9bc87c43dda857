//! Water or ice on a surface: heat of deposition, with the joint at 0 °C.

use dewrun_moist_air::latent::{sublimation_j_kg, vaporisation_j_kg};
use dewrun_moist_air::mixture::MOLAR_MASS_RATIO;

use crate::march::air::{COLDEST_C, HOTTEST_C};

/// Half the stretch of temperature over which a surface held at 0 °C goes from all water to all ice, K.
///
/// At 0 °C the heat of deposition jumps by 13 %, and the balance of a wall there may have no root:
/// the wall stays at 0 and the frozen share is the unknown.
/// Spread over a thousandth of a kelvin the share is read off the temperature and one balance serves for all;
/// the wall is then known to 1e-3 K, a hundredth of what the solved cases ask.
const MELTING_HALF_BAND_K: f64 = 1e-3;

/// Heat that a kilogram of vapour gives up on a surface, J/kg, its slope, J/(kg K), and the share that freezes.
#[inline]
pub(crate) fn heat_of_deposition(surface_c: f64) -> (f64, f64, f64) {
    let surface_c = surface_c.clamp(COLDEST_C, HOTTEST_C);
    if MELTING_HALF_BAND_K <= surface_c {
        return (vaporisation_j_kg(surface_c), -2.4e3, 0.0);
    }
    if surface_c <= -MELTING_HALF_BAND_K {
        return (sublimation_j_kg(surface_c), -0.2e3, 1.0);
    }
    let share = 0.5 - 0.5 * surface_c / MELTING_HALF_BAND_K;
    let water = vaporisation_j_kg(0.0);
    let ice = sublimation_j_kg(0.0);
    (
        water + share * (ice - water),
        -0.5 * (ice - water) / MELTING_HALF_BAND_K,
        share,
    )
}

/// Share of a deposit that freezes on a surface `[-]`: 0 above 0 °C, 1 below, between within a thousandth of a kelvin.
///
/// # Range
/// `surface_c` [°C], any temperature.
///
/// # Source
/// The joint of water and ice at 0 °C, as the balance of the wall takes it.
///
/// ```
/// assert_eq!(dewrun_tube::frozen_share(-0.5), 1.0);
/// assert_eq!(dewrun_tube::frozen_share(0.5), 0.0);
/// ```
#[must_use]
pub fn frozen_share(surface_c: f64) -> f64 {
    heat_of_deposition(surface_c).2
}

/// Slope of `ln(1 + W)` with temperature, of the mole fraction `x` and its slope.
///
/// `1 + W = (1 - (1 - e) x) / (1 - x)` with the ratio of molar masses e.
#[inline]
pub(crate) fn ln_vapour_slope(x: f64, x_slope: f64) -> f64 {
    const LIGHTER: f64 = 1.0 - MOLAR_MASS_RATIO;
    x_slope * (1.0 / (1.0 - x) - LIGHTER / (1.0 - LIGHTER * x))
}
