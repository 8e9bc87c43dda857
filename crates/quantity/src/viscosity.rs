//! Dynamic viscosity.

use crate::macros::quantity;

quantity! {
    /// A dynamic viscosity, kept in pascal seconds.
    ///
    /// ```
    /// use dewrun_quantity::Viscosity;
    /// assert!((Viscosity::micropascal_seconds(18.156).to_pascal_seconds() - 1.8156e-5).abs() < 1e-18);
    /// ```
    Viscosity {
        pascal_seconds / to_pascal_seconds: 1.0,
    } parts {
        micropascal_seconds / to_micropascal_seconds: 1e6,
    }
}
