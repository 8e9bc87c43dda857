//! Pressure of the standard atmosphere at an altitude.

use crate::error::AirError;
use dewrun_numeric::elementary::pow;
use dewrun_quantity::{Length, Pressure};

/// Lowest and highest altitude that are answered, m: the troposphere, and below the lowest shore.
const ALTITUDES_M: (f64, f64) = (-1000.0, 11_000.0);

/// Pressure of the standard atmosphere at a geopotential altitude.
///
/// `p = 101325 Pa (1 - 0.0065 h / 288.15)^5.25588`, h in geopotential metres.
///
/// # Range
/// -1000 to 11 000 m.
/// # Accuracy
/// Exact by definition; weather moves the pressure by 3 % either way. A geometric altitude taken as geopotential gives 20 Pa too little at 4000 m.
/// # Errors
/// [`AirError`] where the altitude is missing or out of range.
/// # Source
/// ISO 2533:1975, clause 2.
///
/// ```
/// use dewrun_moist_air::standard_pressure;
/// use dewrun_quantity::Length;
/// let p = standard_pressure(Length::metres(1000.0)).unwrap();
/// assert!((p.to_pascals() - 89_875.0).abs() < 1.0); // ASHRAE Fundamentals 2017, ch. 1, table 1
/// ```
pub fn standard_pressure(altitude: Length) -> Result<Pressure, AirError> {
    let altitude_m = altitude.to_metres();
    let (min, max) = ALTITUDES_M;
    if altitude_m.is_nan() {
        return Err(AirError::Missing {
            quantity: "altitude",
        });
    }
    if altitude_m < min || max < altitude_m {
        return Err(AirError::OutOfRange {
            quantity: "altitude",
            value: altitude_m,
            unit: "m",
            min,
            max,
        });
    }
    let ratio = 1.0 - 0.0065 * altitude_m / 288.15;
    Ok(Pressure::pascals(
        101_325.0 * pow(ratio, 9.806_65 / (287.052_87 * 0.0065)),
    ))
}
