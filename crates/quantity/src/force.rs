//! Force, force per length, and the stiffness of a material.

use crate::macros::quantity;

/// The pound-force, N.
const POUND_FORCE_N: f64 = 4.448_221_615_260_5;

quantity! {
    /// A force, kept in newtons.
    Force {
        newtons / to_newtons: 1.0,
        pounds_force / to_pounds_force: POUND_FORCE_N,
    }
}

quantity! {
    /// A force per length, a load along a tube or a surface tension, kept in newtons per metre.
    ForcePerLength {
        newtons_per_metre / to_newtons_per_metre: 1.0,
        pounds_force_per_foot / to_pounds_force_per_foot: POUND_FORCE_N / 0.3048,
    } parts {
        millinewtons_per_metre / to_millinewtons_per_metre: 1e3,
    }
}

quantity! {
    /// A modulus of elasticity, kept in pascals.
    ///
    /// ```
    /// use dewrun_quantity::Modulus;
    /// assert!((Modulus::kilopounds_per_square_inch(400.0).to_megapascals() - 2757.9).abs() < 0.1);
    /// ```
    Modulus {
        pascals / to_pascals: 1.0,
        megapascals / to_megapascals: 1e6,
        kilopounds_per_square_inch / to_kilopounds_per_square_inch: 6_894_757.293_168_361,
    }
}
