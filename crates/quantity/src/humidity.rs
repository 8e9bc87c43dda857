//! Relative humidity and humidity ratio: two types, so that one is never taken for the other.

use crate::macros::quantity;

quantity! {
    /// Relative humidity: mole fraction of vapour over that at saturation, at the same temperature and pressure.
    ///
    /// Whether saturation is over water or over ice is said beside it, never assumed here.
    RelativeHumidity {
        fraction / to_fraction: 1.0,
    } parts {
        percent / to_percent: 100.0,
    }
}

quantity! {
    /// Mass of vapour (or of suspended water) per mass of dry air.
    ///
    /// ```
    /// use dewrun_quantity::HumidityRatio;
    /// assert!((HumidityRatio::grains_per_pound(70.0).to_kilograms_per_kilogram() - 0.01).abs() < 1e-12);
    /// ```
    HumidityRatio {
        kilograms_per_kilogram / to_kilograms_per_kilogram: 1.0,
    } parts {
        grams_per_kilogram / to_grams_per_kilogram: 1000.0,
        grains_per_pound / to_grains_per_pound: 7000.0,
    }
}
