//! Radiation between a tube and the surfaces around it.

/// Stefan-Boltzmann constant, W/(m2 K4): CODATA 2018.
pub const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// Radiation coefficient [W/(m2 K)]: `eps sigma (Ts^2 + Tr^2)(Ts + Tr)`.
///
/// Arguments: emissivity of the tube (-), temperature of its surface and of the surroundings (K).
///
/// # Range
/// Emissivity 0 to 1, a small grey tube in large surroundings.
///
/// # Accuracy
/// Exact for that.
///
/// # Errors
/// None.
///
/// # Source
/// Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed. (2007), eq. 1.9.
///
/// ```
/// let h = dewrun_tube::film_outside::radiation_coefficient(0.9, 313.15, 293.15);
/// assert!((h - 5.693).abs() < 1e-3);
/// ```
#[must_use]
pub fn radiation_coefficient(emissivity: f64, surface_k: f64, surroundings_k: f64) -> f64 {
    emissivity
        * STEFAN_BOLTZMANN
        * (surface_k * surface_k + surroundings_k * surroundings_k)
        * (surface_k + surroundings_k)
}
