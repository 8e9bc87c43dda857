//! Temperature of saturation by the relations themselves: the measure of the fits, for callers who do not count nanoseconds.

use crate::humidity::{saturated_over_ice, saturated_over_water};
use crate::saturation::{TRIPLE_POINT_C, pressure_over_ice_pa, pressure_over_water_pa};
use dewrun_numeric::elementary::ln;
use dewrun_numeric::{RootError, itp};

/// How near the root is taken, K: far below what the fits are held to.
const TOLERANCE_K: f64 = 1.0e-9;
/// Coldest temperature sought, °C: colder, the relations over supercooled water and for the enhancement factor end.
const COLDEST_C: f64 = -100.0;
/// Above every dew point at 120 kPa, °C.
const WARMEST_C: f64 = 110.0;

/// Root of a curve of saturation, rising with temperature; in logarithms it is nearly straight.
fn root_c(
    curve: impl Fn(f64) -> f64,
    target: f64,
    low_c: f64,
    high_c: f64,
) -> Result<f64, RootError> {
    let ln_target = ln(target);
    itp(|t_c| ln(curve(t_c)) - ln_target, low_c, high_c, TOLERANCE_K)
}

/// Dew point over liquid water of air with mole fraction `x` of vapour, `p_pa` in Pa [°C].
///
/// # Range
/// Dew points of -100 to 110 °C and below boiling; 50 to 120 kPa.
/// # Accuracy
/// 1e-9 K of the relations of [`saturated_over_water`]; those within 0.01 K of CoolProp from -40 °C up.
/// # Errors
/// [`RootError`] where there is no dew point in the range: dry air, or NaN.
/// # Source
/// As [`saturated_over_water`]; the root by [`itp`].
///
/// ```
/// use dewrun_moist_air::{dew_point::over_water_c, mixture::mole_fraction};
/// let t = over_water_c(mole_fraction(0.010), 101_325.0).unwrap();
/// assert!((t - 13.98).abs() < 0.02); // CoolProp 8.0.0, HAPropsSI
/// ```
pub fn over_water_c(x: f64, p_pa: f64) -> Result<f64, RootError> {
    root_c(
        |t_c| saturated_over_water(t_c, p_pa),
        x,
        COLDEST_C,
        WARMEST_C,
    )
}

/// Frost point over ice of air with mole fraction `x` of vapour, `p_pa` in Pa [°C].
///
/// # Range
/// Frost points of -100 to 0.01 °C; 50 to 120 kPa.
/// # Accuracy
/// 1e-9 K of the relations of [`saturated_over_ice`].
/// # Errors
/// [`RootError`] where there is no frost point: dry air, more vapour than ice at the triple point allows, or NaN.
/// # Source
/// As [`saturated_over_ice`]; the root by [`itp`].
///
/// ```
/// use dewrun_moist_air::{dew_point::over_ice_c, mixture::mole_fraction};
/// let t = over_ice_c(mole_fraction(0.0008674), 101_325.0).unwrap();
/// assert!((t - -16.7497).abs() < 0.01); // CoolProp 8.0.0, HAPropsSI
/// ```
pub fn over_ice_c(x: f64, p_pa: f64) -> Result<f64, RootError> {
    root_c(
        |t_c| saturated_over_ice(t_c, p_pa),
        x,
        COLDEST_C,
        TRIPLE_POINT_C,
    )
}

/// Temperature at which pure vapour of pressure `e_pa` in Pa is saturated: over water, or over ice below the triple point [°C].
///
/// No air, so no enhancement factor: with it, at 101 kPa, the values shift by 0.05 K. The two curves meet at the triple point, so the answer rises without a seam.
///
/// # Range
/// -100 to 110 °C.
/// # Accuracy
/// 1e-9 K of the relations of [`crate::saturation`].
/// # Errors
/// [`RootError`] where there is none in the range, or NaN.
/// # Source
/// As [`pressure_over_water_pa`] and [`pressure_over_ice_pa`].
///
/// ```
/// use dewrun_moist_air::dew_point::pure_vapour_c;
/// assert!((pure_vapour_c(611.15).unwrap() - -0.0001).abs() < 0.001); // psychrolib 2.5.0
/// assert!((pure_vapour_c(612.0).unwrap() - 0.0177).abs() < 0.001);
/// ```
pub fn pure_vapour_c(e_pa: f64) -> Result<f64, RootError> {
    if e_pa < pressure_over_ice_pa(TRIPLE_POINT_C) {
        root_c(pressure_over_ice_pa, e_pa, COLDEST_C, TRIPLE_POINT_C)
    } else {
        root_c(pressure_over_water_pa, e_pa, 0.0, WARMEST_C)
    }
}
