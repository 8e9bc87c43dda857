//! Mass, mass per length and per area, density and specific volume.

use crate::macros::quantity;

/// The avoirdupois pound, kg.
const POUND_KG: f64 = 0.453_592_37;
/// The cubic foot, m3.
const CUBIC_FOOT_M3: f64 = 0.028_316_846_592;

quantity! {
    /// A mass, kept in kilograms.
    Mass {
        kilograms / to_kilograms: 1.0,
        pounds / to_pounds: POUND_KG,
    } parts {
        grams / to_grams: 1000.0,
    }
}

quantity! {
    /// A mass per length of tube, kept in kilograms per metre.
    MassPerLength {
        kilograms_per_metre / to_kilograms_per_metre: 1.0,
        pounds_per_foot / to_pounds_per_foot: POUND_KG / 0.3048,
    } parts {
        grams_per_metre / to_grams_per_metre: 1000.0,
    }
}

quantity! {
    /// A mass per area of wall, kept in kilograms per square metre.
    MassPerArea {
        kilograms_per_square_metre / to_kilograms_per_square_metre: 1.0,
        pounds_per_square_foot / to_pounds_per_square_foot: POUND_KG / (0.3048 * 0.3048),
    } parts {
        grams_per_square_metre / to_grams_per_square_metre: 1000.0,
    }
}

quantity! {
    /// A density, kept in kilograms per cubic metre.
    Density {
        kilograms_per_cubic_metre / to_kilograms_per_cubic_metre: 1.0,
        pounds_per_cubic_foot / to_pounds_per_cubic_foot: POUND_KG / CUBIC_FOOT_M3,
    }
}

quantity! {
    /// Volume of moist air per mass of its dry air, kept in cubic metres per kilogram.
    SpecificVolume {
        cubic_metres_per_kilogram / to_cubic_metres_per_kilogram: 1.0,
        cubic_feet_per_pound / to_cubic_feet_per_pound: CUBIC_FOOT_M3 / POUND_KG,
    }
}
