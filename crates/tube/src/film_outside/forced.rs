//! Wind across a tube.

use dewrun_numeric::elementary::pow;
use dewrun_numeric::fast_cbrt as cbrt;

/// Mean Nusselt number of a cylinder in cross flow [-], on the diameter.
///
/// Arguments: Reynolds number on the diameter [-], Prandtl number [-], both at the film temperature.
///
/// # Range
/// `Re Pr` above 0.2; below, the limit 0.3 of the relation stands.
///
/// # Accuracy
/// 20 % (authors' claim).
///
/// # Errors
/// None; NaN for a negative Reynolds number.
///
/// # Source
/// Churchill & Bernstein, J. Heat Transfer 99 (1977) 300, eq. 9, <https://doi.org/10.1115/1.3450685>.
///
/// ```
/// let nu = dewrun_tube::film_outside::churchill_bernstein_1977(1000.0, 0.71);
/// assert!((nu - 16.019).abs() < 1e-2);
/// ```
#[must_use]
pub fn churchill_bernstein_1977(reynolds: f64, prandtl: f64) -> f64 {
    let prandtl_root = cbrt(prandtl);
    let low = 0.62 * reynolds.sqrt() * prandtl_root;
    let shape = pow(1.0 + pow(0.4 / prandtl, 2.0 / 3.0), 0.25);
    let high = pow(1.0 + pow(reynolds / 282_000.0, 5.0 / 8.0), 4.0 / 5.0);
    0.3 + low / shape * high
}

/// Natural and forced convection together [-]: `Nu^3 = Nu_n^3 + Nu_f^3`, both on the same length.
///
/// # Range
/// Both from 0 on.
///
/// # Accuracy
/// A custom of the field for crossed flows; its own spread is that of the parts.
///
/// # Errors
/// None.
///
/// # Source
/// The form of Churchill, AIChE J. 23 (1977) 10, <https://doi.org/10.1002/aic.690230103>, who gives it for assisting flow; for crossed flow it is common practice, no source.
///
/// ```
/// assert!((dewrun_tube::film_outside::blended(4.0549, 15.966) - 16.053).abs() < 1e-3);
/// ```
#[must_use]
pub fn blended(natural: f64, forced: f64) -> f64 {
    cbrt(natural * natural * natural + forced * forced * forced)
}
