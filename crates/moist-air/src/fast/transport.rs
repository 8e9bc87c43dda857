//! Viscosity, conductivity and diffusivity of moist air from fits of their parts.

use super::coefficients::{
    AIR_BESIDE_VAPOUR, AIR_CONDUCTIVITY, AIR_VISCOSITY, DIFFUSIVITY, STEAM_CONDUCTIVITY,
    STEAM_VISCOSITY, VAPOUR_BESIDE_AIR,
};
use crate::transport::{MASON_SAXENA, mix};
use dewrun_numeric::polynomial::polynomial;

/// Viscosity and conductivity of moist air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Transport {
    /// Viscosity [Pa s].
    pub viscosity_pa_s: f64,
    /// Thermal conductivity [W/(m K)].
    pub conductivity_w_mk: f64,
}

/// Wilke's weights: of vapour beside air, and of air beside vapour.
#[inline]
fn weights(t_c: f64) -> (f64, f64) {
    (
        polynomial(&VAPOUR_BESIDE_AIR, t_c),
        polynomial(&AIR_BESIDE_VAPOUR, t_c),
    )
}

/// Viscosity and conductivity of moist air together, `t_c` in °C, `x_vapour` mole fraction.
///
/// # Range
/// -60 to 95 °C, mole fraction 0 to 1.
/// # Accuracy
/// 1e-4 of the relations of [`crate::transport`].
/// # Source
/// Fits of their parts by `tests/generate/moist_air_fits.py`, mixed by the same rules.
///
/// ```
/// use dewrun_moist_air::fast::transport;
/// let both = transport(60.0, 0.198);
/// assert!((both.viscosity_pa_s / 1.818811e-5 - 1.0).abs() < 5e-3);
/// ```
#[must_use]
#[inline]
pub fn transport(t_c: f64, x_vapour: f64) -> Transport {
    let (vapour, air) = weights(t_c);
    let wider = (MASON_SAXENA * vapour, MASON_SAXENA * air);
    Transport {
        viscosity_pa_s: mix(
            polynomial(&AIR_VISCOSITY, t_c),
            polynomial(&STEAM_VISCOSITY, t_c),
            (vapour, air),
            x_vapour,
        ),
        conductivity_w_mk: mix(
            polynomial(&AIR_CONDUCTIVITY, t_c),
            polynomial(&STEAM_CONDUCTIVITY, t_c),
            wider,
            x_vapour,
        ),
    }
}

/// Viscosity of moist air, `t_c` in °C, `x_vapour` mole fraction [Pa s].
///
/// # Range
/// -60 to 95 °C, mole fraction 0 to 1.
/// # Accuracy
/// 1e-4 of [`crate::transport::viscosity_pa_s`].
/// # Source
/// As [`transport`].
///
/// ```
/// use dewrun_moist_air::fast::viscosity_pa_s;
/// assert!((viscosity_pa_s(20.0, 0.0) / 1.819113e-5 - 1.0).abs() < 5e-3);
/// ```
#[must_use]
#[inline]
pub fn viscosity_pa_s(t_c: f64, x_vapour: f64) -> f64 {
    let (air, vapour) = (
        polynomial(&AIR_VISCOSITY, t_c),
        polynomial(&STEAM_VISCOSITY, t_c),
    );
    mix(air, vapour, weights(t_c), x_vapour)
}

/// Thermal conductivity of moist air, `t_c` in °C, `x_vapour` mole fraction [W/(m K)].
///
/// # Range
/// -60 to 95 °C, mole fraction 0 to 1.
/// # Accuracy
/// 1e-4 of [`crate::transport::conductivity_w_mk`].
/// # Source
/// As [`transport`].
///
/// ```
/// use dewrun_moist_air::fast::conductivity_w_mk;
/// assert!((conductivity_w_mk(20.0, 0.0) / 0.02587383 - 1.0).abs() < 0.01);
/// ```
#[must_use]
#[inline]
pub fn conductivity_w_mk(t_c: f64, x_vapour: f64) -> f64 {
    transport(t_c, x_vapour).conductivity_w_mk
}

/// Diffusivity of water vapour in air, `t_c` in °C, `p_pa` in Pa [m2/s].
///
/// # Range
/// -60 to 100 °C.
/// # Accuracy
/// 1e-6 of [`crate::transport::diffusivity_m2_s`].
/// # Source
/// As [`transport`].
///
/// ```
/// use dewrun_moist_air::fast::diffusivity_m2_s;
/// assert!((diffusivity_m2_s(20.0, 101_325.0) / 2.475166e-5 - 1.0).abs() < 1e-5);
/// ```
#[must_use]
#[inline]
pub fn diffusivity_m2_s(t_c: f64, p_pa: f64) -> f64 {
    polynomial(&DIFFUSIVITY, t_c) / p_pa
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::transport as exact;

    #[test]
    fn fits_stay_within_their_bounds_of_the_relations() {
        for step in 0..=3100 {
            let t_c = -60.0 + 0.05 * f64::from(step);
            let ratio = diffusivity_m2_s(t_c, 9e4) / exact::diffusivity_m2_s(t_c, 9e4);
            assert!(
                (ratio - 1.0).abs() < 1e-6,
                "diffusivity off by {} at {t_c} °C",
                ratio - 1.0
            );
            for tenths in 0..=10 {
                let x = 0.1 * f64::from(tenths);
                let both = transport(t_c, x);
                let viscosity = both.viscosity_pa_s / exact::viscosity_pa_s(t_c, x);
                assert!(
                    (viscosity - 1.0).abs() < 1e-4,
                    "viscosity off by {viscosity} at {t_c} °C, {x}"
                );
                let conductivity = both.conductivity_w_mk / exact::conductivity_w_mk(t_c, x);
                assert!(
                    (conductivity - 1.0).abs() < 1e-4,
                    "conductivity off by {conductivity} at {t_c} °C, {x}"
                );
                assert_eq!(
                    both.viscosity_pa_s,
                    viscosity_pa_s(t_c, x),
                    "the same viscosity alone"
                );
                assert_eq!(
                    both.conductivity_w_mk,
                    conductivity_w_mk(t_c, x),
                    "the same conductivity alone"
                );
            }
        }
    }
}
