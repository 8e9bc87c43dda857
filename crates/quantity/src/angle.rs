//! An angle.

use core::f64::consts::PI;

use crate::macros::quantity;

quantity! {
    /// An angle, kept in radians.
    ///
    /// ```
    /// use dewrun_quantity::Angle;
    /// assert!((Angle::degrees(90.0).to_radians() - core::f64::consts::FRAC_PI_2).abs() < 1e-15);
    /// ```
    Angle {
        radians / to_radians: 1.0,
        degrees / to_degrees: PI / 180.0,
    }
}
