//! Vapour between the bulk of the air and a wall.

use dewrun_numeric::elementary::ln_1p;

/// Mass flux of vapour towards a wall per length of tube [kg/(s m)], of either sign.
///
/// `k ln((1 - y_w)/(1 - y_b))` with `y = W/(1 + W)`, which is `k (ln(1 + W_b) - ln(1 + W_w))`; Stefan flow included.
///
/// Arguments: transfer coefficient `k = pi rho Dv Sh` [kg/(s m)], humidity ratio of the bulk and at the wall [kg/kg].
///
/// # Range
/// Humidity ratios from 0 on.
///
/// # Accuracy
/// Exact for a stagnant film of constant properties.
///
/// # Errors
/// None.
///
/// # Source
/// Bird, Stewart & Lightfoot, Transport Phenomena, 2nd ed. (2002), eq. 18.2-14, in mass fractions.
///
/// ```
/// use dewrun_tube::vapour_flux::stefan_flux_kg_sm;
/// let linear = 1e-5 * (0.1 / 1.1 - 0.01 / 1.01);
/// assert!(linear < stefan_flux_kg_sm(1e-5, 0.1, 0.01));
/// ```
#[must_use]
#[inline]
pub fn stefan_flux_kg_sm(k_kg_sm: f64, w_bulk: f64, w_wall: f64) -> f64 {
    k_kg_sm * (ln_1p(w_bulk) - ln_1p(w_wall))
}

/// Factor by which Stefan flow raises the flux over the linear one [-]: `ln(1 + B)/B`.
///
/// Argument: driving force `B = (y_w - y_b)/(1 - y_w)` of mass fractions [-], negative where vapour condenses.
///
/// # Range
/// B above -1.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None; NaN at or below -1.
///
/// # Source
/// Spalding, Convective Mass Transfer (1963), ch. 3; Bird, Stewart & Lightfoot, 2nd ed. (2002), section 22.8.
///
/// ```
/// assert!((dewrun_tube::vapour_flux::stefan_factor(-0.1) - 1.0536).abs() < 1e-4);
/// ```
#[must_use]
pub fn stefan_factor(b: f64) -> f64 {
    if b == 0.0 { 1.0 } else { ln_1p(b) / b }
}
