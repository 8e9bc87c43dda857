//! Liquid water and ice: surface tension and density.

use crate::ZERO_CELSIUS_K;
use dewrun_numeric::elementary::{cbrt, pow};

/// Critical temperature of water, K.
const CRITICAL_K: f64 = 647.096;

/// Density of solid ice at 0 °C, kg/m3 (IAPWS R10-06(2009)); frost is porous and far lighter.
pub const ICE_DENSITY_KG_M3: f64 = 916.72;

/// Surface tension of water against its vapour, `t_c` in °C [N/m].
///
/// # Range
/// -25 to 374 °C; 0 from the critical point up.
/// # Accuracy
/// 0.5 % below 100 °C.
/// # Source
/// IAPWS R1-76(2014), eq. 1; Vargaftik, Volkov & Voljak, J. Phys. Chem. Ref. Data 12 (1983) 817, <https://doi.org/10.1063/1.555688>.
///
/// ```
/// use dewrun_moist_air::liquid::surface_tension_n_m;
/// assert!((surface_tension_n_m(20.0) - 72.74e-3).abs() < 6e-6); // R1-76(2014), table 1
/// ```
#[must_use]
pub fn surface_tension_n_m(t_c: f64) -> f64 {
    let tau = (1.0 - (t_c + ZERO_CELSIUS_K) / CRITICAL_K).max(0.0);
    0.2358 * pow(tau, 1.256) * (1.0 - 0.625 * tau)
}

/// Density of saturated liquid water, `t_c` in °C [kg/m3].
///
/// # Range
/// 0 to 373 °C.
/// # Accuracy
/// 5e-5 below the density at 101 kPa.
/// # Source
/// Wagner & Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, eq. 2 (IAPWS SR1-86), <https://doi.org/10.1063/1.555926>.
///
/// ```
/// use dewrun_moist_air::liquid::density_kg_m3;
/// assert!((density_kg_m3(20.0) / 998.21 - 1.0).abs() < 1e-4);
/// ```
#[must_use]
pub fn density_kg_m3(t_c: f64) -> f64 {
    let tau = (1.0 - (t_c + ZERO_CELSIUS_K) / CRITICAL_K).max(0.0);
    let third = cbrt(tau);
    let two_thirds = third * third;
    322.0
        * (1.0 + 1.992_740_64 * third + 1.099_653_42 * two_thirds
            - 0.510_839_303 * tau * two_thirds
            - 1.754_934_79 * pow(third, 16.0)
            - 45.517_035_2 * pow(third, 43.0)
            - 6.746_944_50e5 * pow(third, 110.0))
}
