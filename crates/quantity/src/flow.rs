//! Volume flow and mass flow.

use crate::macros::quantity;

quantity! {
    /// A volume flow at the state of the place it is named for, kept in cubic metres per second.
    ///
    /// ```
    /// use dewrun_quantity::VolumeFlow;
    /// assert!((VolumeFlow::cubic_feet_per_minute(1.0).to_litres_per_minute() - 28.316_846_592).abs() < 1e-9);
    /// ```
    VolumeFlow {
        cubic_metres_per_second / to_cubic_metres_per_second: 1.0,
        cubic_feet_per_minute / to_cubic_feet_per_minute: 0.028_316_846_592 / 60.0,
    } parts {
        litres_per_minute / to_litres_per_minute: 60_000.0,
    }
}

quantity! {
    /// A mass flow, kept in kilograms per second.
    ///
    /// ```
    /// use dewrun_quantity::MassFlow;
    /// assert!((MassFlow::grams_per_hour(3.6e6).to_kilograms_per_second() - 1.0).abs() < 1e-12);
    /// ```
    MassFlow {
        kilograms_per_second / to_kilograms_per_second: 1.0,
        ounces_per_hour / to_ounces_per_hour: 0.028_349_523_125 / 3600.0,
    } parts {
        grams_per_hour / to_grams_per_hour: 3.6e6,
    }
}

quantity! {
    /// A mass flow per length of tube, kept in kilograms per second and metre.
    MassFlowPerLength {
        kilograms_per_second_metre / to_kilograms_per_second_metre: 1.0,
        ounces_per_hour_foot / to_ounces_per_hour_foot: 0.028_349_523_125 / 3600.0 / 0.3048,
    } parts {
        grams_per_hour_metre / to_grams_per_hour_metre: 3.6e6,
    }
}
