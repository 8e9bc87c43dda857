//! Turbulent flow and the stretch between laminar and turbulent.

use dewrun_numeric::elementary::log10;
use dewrun_numeric::fast_cbrt as cbrt;

/// Friction factor of turbulent flow in a smooth tube as it enters the heat transfer relation [-]: `(1.8 log10 Re - 1.5)^-2`.
///
/// Argument: Reynolds number [-].
///
/// # Range
/// Re 4000 to 1e6.
///
/// # Accuracy
/// Within 1 % of Prandtl's law for smooth tubes.
///
/// # Errors
/// None; NaN for a Reynolds number not above zero.
///
/// # Source
/// Konakov (1946) as used by Gnielinski; VDI Heat Atlas, 2nd ed. (2010), chapter G1.
///
/// ```
/// assert!((dewrun_tube::film_inside::konakov_friction(1.0e4) - 0.030_779).abs() < 1e-6); // (1.8 * 4 - 1.5)^-2
/// ```
#[must_use]
pub fn konakov_friction(reynolds: f64) -> f64 {
    let root = 1.8 * log10(reynolds) - 1.5;
    1.0 / (root * root)
}

/// Nusselt number of developed turbulent flow [-], without the factor for the entry.
///
/// `Nu = (f/8)(Re - 1000) Pr / (1 + 12.7 sqrt(f/8)(Pr^(2/3) - 1))`; with Sc in the place of Pr, Sherwood.
///
/// Arguments: Reynolds number [-], Prandtl number [-], the friction factor of [`konakov_friction`] [-].
///
/// # Range
/// Re 4000 to 1e6, Pr 0.5 to 2000.
///
/// # Accuracy
/// Within 10 % of most measurements on gases (author's claim).
///
/// # Errors
/// None.
///
/// # Source
/// Gnielinski, Int. Chem. Eng. 16 (1976) 359; as used from Re 4000 in Gnielinski, Int. J. Heat Mass Transfer 63 (2013) 134.
///
/// ```
/// use dewrun_tube::film_inside::{gnielinski_1976, konakov_friction};
/// let nu = gnielinski_1976(1.0e4, 0.71, konakov_friction(1.0e4));
/// assert!((nu - 29.295_37).abs() < 1e-4); // ht 1.2.0, turbulent_Gnielinski with the same friction factor
/// ```
#[must_use]
pub fn gnielinski_1976(reynolds: f64, prandtl: f64, friction: f64) -> f64 {
    let eighth = friction / 8.0;
    let root = cbrt(prandtl);
    eighth * (reynolds - 1000.0) * prandtl / (1.0 + 12.7 * eighth.sqrt() * (root * root - 1.0))
}

/// Factor of the entry on the local number in turbulent flow [-]: `1 + (1/3)(D/x)^(2/3)`.
///
/// Argument: `(D/x)^(1/3)` [-], with x counted from the inlet.
#[inline]
pub(crate) fn entry_factor(inlet_root: f64) -> f64 {
    1.0 + inlet_root * inlet_root / 3.0
}
