//! Resistance to a flow of air where the pressure rises with the flow itself, as in a filter.

use crate::macros::quantity;

quantity! {
    /// Pressure per volume flow, kept in pascals per cubic metre per second.
    ///
    /// ```
    /// use dewrun_quantity::FlowResistance;
    /// let filter = FlowResistance::pascals_per_litre_per_minute(3.0);
    /// assert_eq!(filter.to_pascals_per_cubic_metre_per_second(), 180_000.0);
    /// ```
    FlowResistance {
        pascals_per_cubic_metre_per_second / to_pascals_per_cubic_metre_per_second: 1.0,
        pascals_per_litre_per_minute / to_pascals_per_litre_per_minute: 60_000.0,
        inches_of_water_per_cubic_foot_per_minute / to_inches_of_water_per_cubic_foot_per_minute: 249.088_91 * 60.0 / 0.028_316_846_592,
    }
}
