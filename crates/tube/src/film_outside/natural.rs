//! Natural convection around a tube: level, and as a riser.

use dewrun_numeric::elementary::pow;
use dewrun_numeric::fast_cbrt as cbrt;

/// Mean Nusselt number of natural convection around a horizontal cylinder [-], on the diameter, for all Ra.
///
/// `Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2`.
///
/// Arguments: Rayleigh number on the diameter [-], Prandtl number [-].
///
/// # Range
/// Ra 1e-5 to 1e12.
///
/// # Accuracy
/// 20 % for thin tubes: Morgan (1975) lies 20 % above it at Ra below 1000.
///
/// # Errors
/// None; NaN for a negative Rayleigh number.
///
/// # Source
/// Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, eq. 9, <https://doi.org/10.1016/0017-9310(75)90222-7>.
///
/// ```
/// let nu = dewrun_tube::film_outside::churchill_chu_1975_horizontal(1000.0, 0.71);
/// assert!((nu - 2.6114).abs() < 1e-3);
/// ```
#[must_use]
pub fn churchill_chu_1975_horizontal(rayleigh: f64, prandtl: f64) -> f64 {
    let root = 0.60 + 0.387 * sixth_root(rayleigh) / prandtl_factor(0.559, prandtl);
    root * root
}

/// Mean Nusselt number of natural convection on a vertical plate [-], on its height, for all Ra.
///
/// `Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2`.
///
/// Arguments: Rayleigh number on the height [-], Prandtl number [-].
///
/// # Range
/// Ra up to 1e12.
///
/// # Accuracy
/// 20 % on tubes, with the factor of [`popiel_2008_slender`].
///
/// # Errors
/// None; NaN for a negative Rayleigh number.
///
/// # Source
/// Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, eq. 9, <https://doi.org/10.1016/0017-9310(75)90243-4>.
///
/// ```
/// let nu = dewrun_tube::film_outside::churchill_chu_1975_vertical(1e7, 0.72);
/// assert!((nu - 31.268_32).abs() < 1e-3); // ht 1.2.0, Nu_vertical_plate_Churchill
/// ```
#[must_use]
pub fn churchill_chu_1975_vertical(rayleigh: f64, prandtl: f64) -> f64 {
    let root = 0.825 + 0.387 * sixth_root(rayleigh) / prandtl_factor(0.492, prandtl);
    root * root
}

/// Factor of a slender vertical cylinder over the flat plate [-]: `1 + 0.300 (sqrt(32) Gr_L^-0.25 L/D)^0.909`.
///
/// Arguments: Grashof number on the height [-], height over diameter [-].
///
/// # Range
/// Air (Pr near 0.7); Gr above 0.
///
/// # Accuracy
/// 1 % of the same author's form with constants that depend on Pr.
///
/// # Errors
/// None; infinite where Gr is 0.
///
/// # Source
/// Popiel, Heat Transfer Engineering 29 (2008) 521, <https://doi.org/10.1080/01457630801891557>, constants for air.
///
/// ```
/// let factor = dewrun_tube::film_outside::popiel_2008_slender(1e7, 10.0);
/// assert!((factor / 1.2954 - 1.0).abs() < 8e-3); // ht 1.2.0, constants that depend on Pr, Nu_vertical_cylinder_Popiel_Churchill over the plate
/// ```
#[must_use]
pub fn popiel_2008_slender(grashof: f64, height_over_diameter: f64) -> f64 {
    1.0 + 0.300
        * pow(
            32.0_f64.sqrt() * pow(grashof, -0.25) * height_over_diameter,
            0.909,
        )
}

fn sixth_root(x: f64) -> f64 {
    cbrt(x.sqrt())
}

fn prandtl_factor(constant: f64, prandtl: f64) -> f64 {
    pow(1.0 + pow(constant / prandtl, 9.0 / 16.0), 8.0 / 27.0)
}
