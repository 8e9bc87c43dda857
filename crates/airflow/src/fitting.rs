//! Losses that go with the velocity pressure, and what a duct's air stream adds at an end of the tube.

use dewrun_quantity::{Density, Pressure, Speed};

/// Pressure that a fitting costs: `K rho v^2 / 2`.
///
/// Arguments: loss coefficient (-), density of the air, mean speed in the bore that the coefficient counts on.
///
/// # Range
/// Speeds far below that of sound; one coefficient for all Reynolds numbers, so laminar flow through small bores costs more than it says.
///
/// # Accuracy
/// That of the coefficient, 20 to 50 % for fittings of small tubes.
///
/// # Errors
/// None.
///
/// # Source
/// Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), eq. 1.37.
///
/// ```
/// use dewrun_airflow::fitting_loss;
/// use dewrun_quantity::{Density, Speed};
/// let loss = fitting_loss(0.5, Density::kilograms_per_cubic_metre(1.2), Speed::metres_per_second(3.0));
/// assert!((loss.to_pascals() - 2.7).abs() < 1e-12);
/// ```
#[must_use]
pub fn fitting_loss(loss_coefficient: f64, density: Density, speed: Speed) -> Pressure {
    let v_m_s = speed.to_metres_per_second();
    Pressure::pascals(
        loss_coefficient * 0.5 * density.to_kilograms_per_cubic_metre() * v_m_s * v_m_s,
    )
}

/// Total pressure that an end of the tube meets in a duct: `p_static + c rho v^2 / 2`.
///
/// Arguments: static pressure in the duct against the detector's room, share of the velocity pressure that the end catches (-),
/// density and speed of the duct's air.
///
/// # Range
/// Shares from 0 (flush with the wall) to 1.3 (facing the stream); 1 is usual for a probe with holes towards the stream.
///
/// # Accuracy
/// That of the share, which is seldom known within 0.2.
///
/// # Errors
/// None.
///
/// # Source
/// Bernoulli; definition of the pressure coefficient.
///
/// ```
/// use dewrun_airflow::duct_pressure;
/// use dewrun_quantity::{Density, Pressure, Speed};
/// let air = Density::kilograms_per_cubic_metre(1.2);
/// let pressure = duct_pressure(Pressure::pascals(-120.0), 0.2, air, Speed::metres_per_second(9.0));
/// assert!((pressure.to_pascals() + 110.28).abs() < 1e-9);
/// ```
#[must_use]
pub fn duct_pressure(
    static_pressure: Pressure,
    share: f64,
    density: Density,
    speed: Speed,
) -> Pressure {
    static_pressure + fitting_loss(share, density, speed)
}
