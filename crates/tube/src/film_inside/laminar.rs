//! Laminar flow at uniform wall temperature.

use dewrun_numeric::fast_cbrt as cbrt;

/// Nusselt number far from the entry, of the relation below.
pub const FAR_FROM_ENTRY: f64 = 3.66;
/// The Nusselt numbers of the relation are joined with this shift.
const SHIFT: f64 = 0.7;
/// Lévêque's constant, local form.
const LEVEQUE: f64 = 1.077;

/// Local Nusselt number of laminar tube flow at uniform wall temperature, developed velocity profile [-].
///
/// `Nu = (3.66^3 + 0.7^3 + (1.077 Gz^(1/3) - 0.7)^3)^(1/3)`; for mass transfer with Sc in the place of Pr, Sherwood.
///
/// Argument: Graetz number `Gz = Re Pr D / x` [-].
///
/// # Range
/// Re up to 2300; Gz from 0 (far from the entry) on. Unbounded at the entry itself.
///
/// # Accuracy
/// Within 6.1 % of the exact Graetz series (largest at x/(D Re Pr) = 0.03).
///
/// # Errors
/// None; NaN for a negative or missing argument only by way of NaN in.
///
/// # Source
/// VDI Heat Atlas, 2nd ed. (2010), chapter G1, local form for uniform wall temperature and developed velocity.
///
/// ```
/// let nu = dewrun_tube::film_inside::vdi_g1_laminar(1.0 / 0.01);
/// assert!((nu - 4.916).abs() < 0.3);
/// ```
#[must_use]
pub fn vdi_g1_laminar(graetz: f64) -> f64 {
    vdi_g1_laminar_by_root(cbrt(graetz))
}

/// The same of the cube root of the Graetz number, which callers share between heat and mass.
#[inline]
pub(crate) fn vdi_g1_laminar_by_root(root: f64) -> f64 {
    const BASE: f64 = FAR_FROM_ENTRY * FAR_FROM_ENTRY * FAR_FROM_ENTRY + SHIFT * SHIFT * SHIFT;
    let entry = LEVEQUE * root - SHIFT;
    cbrt(BASE + entry * entry * entry)
}
