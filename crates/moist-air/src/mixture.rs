//! Air and vapour together: mole fraction, humidity ratio, density, enthalpy.

use crate::ZERO_CELSIUS_K;
use crate::latent::{DRY_AIR_CP, VAPOUR_CP, vapour_enthalpy_j_kg};

/// Molar gas constant, J/(mol K) (CODATA 2018, exact).
pub const GAS_CONSTANT: f64 = 8.314_462_618;
/// Molar mass of water, kg/mol (IAPWS R6-95).
pub const WATER_MOLAR_MASS: f64 = 18.015_268e-3;
/// Molar mass of water over that of dry air (ASHRAE Handbook Fundamentals 2017, ch. 1).
pub const MOLAR_MASS_RATIO: f64 = 0.621_945;
/// Molar mass of dry air, kg/mol: 28.966 g/mol.
pub const DRY_AIR_MOLAR_MASS: f64 = WATER_MOLAR_MASS / MOLAR_MASS_RATIO;

/// Mole fraction of vapour in the gas from the humidity ratio `w` in kg per kg of dry air [-].
///
/// # Range
/// From 0 up; 1 is never reached.
/// # Accuracy
/// Exact.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20, solved for the mole fraction.
///
/// ```
/// use dewrun_moist_air::mixture::mole_fraction;
/// assert!((mole_fraction(0.010) - 0.015824).abs() < 1e-6);
/// ```
#[must_use]
#[inline]
pub fn mole_fraction(w: f64) -> f64 {
    w / (MOLAR_MASS_RATIO + w)
}

/// Humidity ratio from the mole fraction `x` of vapour [kg per kg of dry air].
///
/// # Range
/// 0 to below 1; infinite at 1, where no dry air is left.
/// # Accuracy
/// Exact.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20.
///
/// ```
/// use dewrun_moist_air::mixture::humidity_ratio;
/// assert!((humidity_ratio(0.015824) - 0.010).abs() < 1e-6);
/// ```
#[must_use]
#[inline]
pub fn humidity_ratio(x: f64) -> f64 {
    MOLAR_MASS_RATIO * x / (1.0 - x)
}

/// Density of moist air as a mixture of ideal gases, `t_c` in °C, humidity ratio `w`, `p_pa` in Pa [kg/m3].
///
/// # Range
/// -60 to 95 °C, 50 to 120 kPa.
/// # Accuracy
/// 0.05 % up to 40 °C, 0.9 % at 90 °C saturated, against the real gas.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 26 and 28.
///
/// ```
/// use dewrun_moist_air::mixture::density_kg_m3;
/// assert!((density_kg_m3(30.0, 0.02, 95_461.0) / (1.02 / 0.9408554) - 1.0).abs() < 5e-4);
/// ```
#[must_use]
#[inline]
pub fn density_kg_m3(t_c: f64, w: f64, p_pa: f64) -> f64 {
    let dry_air_constant = GAS_CONSTANT / DRY_AIR_MOLAR_MASS;
    let volume = dry_air_constant * (t_c + ZERO_CELSIUS_K) * (1.0 + w / MOLAR_MASS_RATIO) / p_pa;
    (1.0 + w) / volume
}

/// Enthalpy of moist air per kg of dry air, `t_c` in °C, humidity ratio `w` [J/kg].
///
/// Counted from dry air at 0 °C and liquid water at the triple point.
///
/// # Range
/// -60 to 95 °C.
/// # Accuracy
/// 0.4 % at 90 °C saturated, better below, against the real gas.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30, with the constants of [`crate::latent`].
///
/// ```
/// use dewrun_moist_air::mixture::enthalpy_j_kg;
/// assert!((enthalpy_j_kg(30.0, 0.02) / 81_316.0 - 1.0).abs() < 5e-4);
/// ```
#[must_use]
#[inline]
pub fn enthalpy_j_kg(t_c: f64, w: f64) -> f64 {
    DRY_AIR_CP * t_c + w * vapour_enthalpy_j_kg(t_c)
}

/// Heat capacity of moist air per kg of air and vapour, humidity ratio `w` [J/(kg K)].
///
/// # Range
/// -60 to 95 °C.
/// # Accuracy
/// 0.2 % at 27 °C, 1 % at 90 °C.
/// # Source
/// Mass-weighted mean of the constants of [`crate::latent`].
///
/// ```
/// use dewrun_moist_air::mixture::heat_capacity_j_kgk;
/// let w = 1.0 / 0.977605798 - 1.0;
/// assert!((heat_capacity_j_kgk(w) / 1026.813 - 1.0).abs() < 2e-3); // IAPWS G8-10, table 13, 300 K
/// ```
#[must_use]
#[inline]
pub fn heat_capacity_j_kgk(w: f64) -> f64 {
    (DRY_AIR_CP + VAPOUR_CP * w) / (1.0 + w)
}
