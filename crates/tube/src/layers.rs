//! Heat through the wall of a tube and the insulation around it.

use core::f64::consts::PI;

use dewrun_numeric::elementary::ln;

/// Thermal resistance of a cylindrical layer, per length of tube [m K/W]: `ln(d_o/d_i) / (2 pi k)`.
///
/// Arguments: inner and outer diameter of the layer (m), conductivity [W/(m K)].
///
/// # Range
/// `0 < d_inner_m <= d_outer_m`, `0 < k_w_mk`.
///
/// # Accuracy
/// Exact for one-dimensional conduction at constant conductivity.
///
/// # Errors
/// None; NaN outside the range.
///
/// # Source
/// Incropera, DeWitt, Bergman & Lavine, Fundamentals of Heat and Mass Transfer, 6th ed. (2007), eq. 3.28.
///
/// ```
/// let r = dewrun_tube::layers::cylinder_resistance_mk_w(0.010, 0.022, 0.055);
/// assert!((r - 2.2816).abs() < 1e-4);
/// ```
#[must_use]
pub fn cylinder_resistance_mk_w(d_inner_m: f64, d_outer_m: f64, k_w_mk: f64) -> f64 {
    ln(d_outer_m / d_inner_m) / (2.0 * PI * k_w_mk)
}

/// Thermal resistance of an outer surface, per length of tube [m K/W]: `1 / (pi d h)`.
///
/// Arguments: outer diameter (m), coefficient of the outer film [W/(m2 K)].
///
/// # Range
/// Both above zero.
///
/// # Accuracy
/// That of the coefficient.
///
/// # Errors
/// None; infinite where either is zero.
///
/// # Source
/// Incropera et al., 6th ed. (2007), eq. 3.9 on the surface `pi d`.
///
/// ```
/// assert!((dewrun_tube::layers::surface_resistance_mk_w(0.010, 5.0) - 6.366).abs() < 1e-3);
/// ```
#[must_use]
pub fn surface_resistance_mk_w(d_m: f64, h_w_m2k: f64) -> f64 {
    1.0 / (PI * d_m * h_w_m2k)
}

/// Outer radius (m) up to which insulation around a thin tube lets more heat through, not less: `k / h`.
///
/// Arguments: conductivity of the insulation [W/(m K)], coefficient of the outer film [W/(m2 K)].
///
/// # Range
/// Both above zero.
///
/// # Accuracy
/// Exact for a coefficient that does not depend on the diameter; that of natural convection falls slowly with it, which makes the true radius somewhat larger.
///
/// # Errors
/// None; infinite where the coefficient is zero.
///
/// # Source
/// Incropera et al., 6th ed. (2007), example 3.5.
///
/// ```
/// assert!((dewrun_tube::layers::critical_radius_m(0.055, 5.0) - 0.011).abs() < 1e-15);
/// ```
#[must_use]
pub fn critical_radius_m(k_w_mk: f64, h_w_m2k: f64) -> f64 {
    k_w_mk / h_w_m2k
}
