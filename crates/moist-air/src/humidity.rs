//! Vapour that saturated air holds, by the relations themselves.

use crate::enhancement;
use crate::saturation::{pressure_over_ice_pa, pressure_over_water_pa};

/// Mole fraction of vapour in air saturated over liquid water, `t_c` in °C, `p_pa` in Pa [-].
///
/// # Range
/// As [`enhancement::over_water`]; at or past boiling 1 or more.
/// # Accuracy
/// 0.07 % of the real-gas model behind CoolProp.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 21 and 22 in mole fractions: `x = f e / p`.
///
/// ```
/// use dewrun_moist_air::humidity::saturated_over_water;
/// let x = saturated_over_water(25.0, 101_325.0);
/// assert!((0.621945 * x / (1.0 - x) / 0.020173 - 1.0).abs() < 2e-3); // ASHRAE, table 2
/// ```
#[must_use]
pub fn saturated_over_water(t_c: f64, p_pa: f64) -> f64 {
    enhancement::over_water(t_c, p_pa) * pressure_over_water_pa(t_c) / p_pa
}

/// Mole fraction of vapour in air saturated over ice, `t_c` in °C, `p_pa` in Pa [-].
///
/// # Range
/// As [`enhancement::over_ice`].
/// # Accuracy
/// 0.07 % of the real-gas model behind CoolProp.
/// # Source
/// As [`saturated_over_water`].
///
/// ```
/// use dewrun_moist_air::humidity::saturated_over_ice;
/// let x = saturated_over_ice(-20.0, 101_325.0);
/// assert!((0.621945 * x / (1.0 - x) / 0.0006373 - 1.0).abs() < 2e-3); // ASHRAE, table 2
/// ```
#[must_use]
pub fn saturated_over_ice(t_c: f64, p_pa: f64) -> f64 {
    enhancement::over_ice(t_c, p_pa) * pressure_over_ice_pa(t_c) / p_pa
}
