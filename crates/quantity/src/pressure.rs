//! Pressure.

use crate::macros::quantity;

quantity! {
    /// A pressure, absolute or a difference, kept in pascal.
    ///
    /// Inch of water is the conventional one (4 °C, 249.088 91 Pa), inch of mercury at 0 °C (3386.389 Pa): NIST SP 811 (2008), app. B.8.
    ///
    /// ```
    /// use dewrun_quantity::Pressure;
    /// assert!((Pressure::inches_of_water(1.0).to_pascals() - 249.08891).abs() < 1e-5);
    /// ```
    Pressure {
        pascals / to_pascals: 1.0,
        hectopascals / to_hectopascals: 100.0,
        kilopascals / to_kilopascals: 1000.0,
        pounds_per_square_inch / to_pounds_per_square_inch: 6_894.757_293_168_361,
        inches_of_water / to_inches_of_water: 249.088_91,
        inches_of_mercury / to_inches_of_mercury: 3386.389,
    }
}
