//! Length, area and speed.

use crate::macros::quantity;

quantity! {
    /// A length, kept in metres.
    ///
    /// ```
    /// use dewrun_quantity::Length;
    /// assert!((Length::feet(82.0).to_metres() - 24.9936).abs() < 1e-9);
    /// ```
    Length {
        metres / to_metres: 1.0,
        inches / to_inches: 0.0254,
        feet / to_feet: 0.3048,
    } parts {
        millimetres / to_millimetres: 1000.0,
    }
}

quantity! {
    /// A speed, kept in metres per second.
    ///
    /// ```
    /// use dewrun_quantity::Speed;
    /// assert!((Speed::feet_per_minute(4000.0).to_metres_per_second() - 20.32).abs() < 1e-9);
    /// ```
    Speed {
        metres_per_second / to_metres_per_second: 1.0,
        feet_per_minute / to_feet_per_minute: 0.3048 / 60.0,
    }
}
