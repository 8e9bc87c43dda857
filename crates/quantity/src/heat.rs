//! Power, heat per length, conductivity, enthalpy.

use crate::macros::quantity;

/// The international-table British thermal unit, J.
const BTU_J: f64 = 1_055.055_852_62;
/// The avoirdupois pound, kg.
const POUND_KG: f64 = 0.453_592_37;

quantity! {
    /// A power, kept in watt.
    Power {
        watts / to_watts: 1.0,
        btu_per_hour / to_btu_per_hour: BTU_J / 3600.0,
    }
}

quantity! {
    /// A power per length of tube, kept in watt per metre.
    PowerPerLength {
        watts_per_metre / to_watts_per_metre: 1.0,
        watts_per_foot / to_watts_per_foot: 1.0 / 0.3048,
    }
}

quantity! {
    /// A thermal conductivity, kept in watt per metre and kelvin.
    Conductivity {
        watts_per_metre_kelvin / to_watts_per_metre_kelvin: 1.0,
        btu_inch_per_hour_square_foot_fahrenheit / to_btu_inch_per_hour_square_foot_fahrenheit: 0.144_227_889_198_6,
    }
}

quantity! {
    /// Enthalpy per mass of dry air, counted from dry air at 0 °C and liquid water at the triple point, kept in joule per kilogram.
    ///
    /// The inch-pound custom counts dry air from 0 °F, which is an offset and belongs to the edge that prints it.
    SpecificEnthalpy {
        joules_per_kilogram / to_joules_per_kilogram: 1.0,
        kilojoules_per_kilogram / to_kilojoules_per_kilogram: 1000.0,
        btu_per_pound / to_btu_per_pound: BTU_J / POUND_KG,
    }
}
