//! Measures of air.

use super::{Measure, Shown, Unit, unit};
use crate::{
    Density, HumidityRatio, Pressure, RelativeHumidity, SpecificEnthalpy, SpecificVolume, Speed,
    Temperature, TemperatureDifference, VolumeFlow,
};

/// A temperature.
pub const TEMPERATURE: Measure<Temperature> = Measure {
    name: "temperature",
    si: unit!(
        "°C",
        ["C", "degC"],
        Temperature::celsius,
        Temperature::to_celsius,
        1
    ),
    inch_pound: unit!(
        "°F",
        ["F", "degF"],
        Temperature::fahrenheit,
        Temperature::to_fahrenheit,
        1
    ),
    others: &[unit!(
        "K",
        [],
        Temperature::kelvin,
        Temperature::to_kelvin,
        2
    )],
    shown: Shown::Fixed,
};

/// A difference of temperatures, such as a margin over the dew point.
pub const TEMPERATURE_DIFFERENCE: Measure<TemperatureDifference> = Measure {
    name: "temperature difference",
    si: unit!(
        "K",
        [],
        TemperatureDifference::kelvins,
        TemperatureDifference::to_kelvins,
        1
    ),
    inch_pound: unit!(
        "°F",
        ["F", "degF"],
        TemperatureDifference::fahrenheit_degrees,
        TemperatureDifference::to_fahrenheit_degrees,
        1
    ),
    others: &[],
    shown: Shown::Fixed,
};

/// A volume flow through a tube.
pub const AIR_FLOW: Measure<VolumeFlow> = Measure {
    name: "flow",
    si: unit!(
        "L/min",
        ["l/min", "lpm"],
        VolumeFlow::litres_per_minute,
        VolumeFlow::to_litres_per_minute,
        1
    ),
    inch_pound: unit!(
        "cfm",
        ["ft3/min"],
        VolumeFlow::cubic_feet_per_minute,
        VolumeFlow::to_cubic_feet_per_minute,
        2
    ),
    others: &[],
    shown: Shown::Significant,
};

/// A speed of air.
pub const AIR_SPEED: Measure<Speed> = Measure {
    name: "speed",
    si: unit!(
        "m/s",
        [],
        Speed::metres_per_second,
        Speed::to_metres_per_second,
        2
    ),
    inch_pound: unit!(
        "ft/min",
        ["fpm"],
        Speed::feet_per_minute,
        Speed::to_feet_per_minute,
        0
    ),
    others: &[],
    shown: Shown::Significant,
};

/// A relative humidity.
pub const RELATIVE_HUMIDITY: Measure<RelativeHumidity> = Measure {
    name: "relative humidity",
    si: unit!(
        "%",
        [],
        RelativeHumidity::percent,
        RelativeHumidity::to_percent,
        1
    ),
    inch_pound: unit!(
        "%",
        [],
        RelativeHumidity::percent,
        RelativeHumidity::to_percent,
        1
    ),
    others: &[],
    shown: Shown::Significant,
};

/// Vapour per dry air.
pub const HUMIDITY_RATIO: Measure<HumidityRatio> = Measure {
    name: "humidity ratio",
    si: unit!(
        "g/kg",
        [],
        HumidityRatio::grams_per_kilogram,
        HumidityRatio::to_grams_per_kilogram,
        3
    ),
    inch_pound: unit!(
        "gr/lb",
        [],
        HumidityRatio::grains_per_pound,
        HumidityRatio::to_grains_per_pound,
        2
    ),
    others: &[unit!(
        "kg/kg",
        ["lb/lb"],
        HumidityRatio::kilograms_per_kilogram,
        HumidityRatio::to_kilograms_per_kilogram,
        6
    )],
    shown: Shown::Significant,
};

/// Suspended water per dry air.
pub const MIST: Measure<HumidityRatio> = Measure {
    name: "mist",
    si: Unit {
        decimals: 2,
        ..HUMIDITY_RATIO.si
    },
    inch_pound: Unit {
        decimals: 1,
        ..HUMIDITY_RATIO.inch_pound
    },
    shown: Shown::Amount,
    ..HUMIDITY_RATIO
};

/// The absolute pressure of air.
pub const ABSOLUTE_PRESSURE: Measure<Pressure> = Measure {
    name: "pressure",
    si: unit!("Pa", [], Pressure::pascals, Pressure::to_pascals, 0),
    inch_pound: unit!(
        "psi",
        ["psia"],
        Pressure::pounds_per_square_inch,
        Pressure::to_pounds_per_square_inch,
        2
    ),
    others: &[
        unit!(
            "hPa",
            ["mbar"],
            Pressure::hectopascals,
            Pressure::to_hectopascals,
            1
        ),
        unit!(
            "kPa",
            [],
            Pressure::kilopascals,
            Pressure::to_kilopascals,
            2
        ),
        unit!(
            "inHg",
            [],
            Pressure::inches_of_mercury,
            Pressure::to_inches_of_mercury,
            2
        ),
    ],
    shown: Shown::Fixed,
};

/// A small difference of pressures, such as a duct's static pressure.
pub const DRAUGHT: Measure<Pressure> = Measure {
    name: "pressure difference",
    si: unit!("Pa", [], Pressure::pascals, Pressure::to_pascals, 1),
    inch_pound: unit!(
        "inH2O",
        ["inwc", "inwg"],
        Pressure::inches_of_water,
        Pressure::to_inches_of_water,
        3
    ),
    others: &[],
    shown: Shown::Significant,
};

/// The partial pressure of vapour.
pub const VAPOUR_PRESSURE: Measure<Pressure> = Measure {
    name: "vapour pressure",
    si: unit!("Pa", [], Pressure::pascals, Pressure::to_pascals, 1),
    inch_pound: unit!(
        "inHg",
        [],
        Pressure::inches_of_mercury,
        Pressure::to_inches_of_mercury,
        4
    ),
    others: &[],
    shown: Shown::Significant,
};

/// Enthalpy per dry air.
pub const ENTHALPY: Measure<SpecificEnthalpy> = Measure {
    name: "enthalpy",
    si: unit!(
        "kJ/kg",
        [],
        SpecificEnthalpy::kilojoules_per_kilogram,
        SpecificEnthalpy::to_kilojoules_per_kilogram,
        1
    ),
    inch_pound: unit!("Btu/lb", [], from_btu_per_pound, to_btu_per_pound, 1),
    others: &[],
    shown: Shown::Fixed,
};

/// Volume of moist air per dry air.
pub const SPECIFIC_VOLUME: Measure<SpecificVolume> = Measure {
    name: "specific volume",
    si: unit!(
        "m³/kg",
        ["m3/kg"],
        SpecificVolume::cubic_metres_per_kilogram,
        SpecificVolume::to_cubic_metres_per_kilogram,
        3
    ),
    inch_pound: unit!(
        "ft³/lb",
        ["ft3/lb"],
        SpecificVolume::cubic_feet_per_pound,
        SpecificVolume::to_cubic_feet_per_pound,
        2
    ),
    others: &[],
    shown: Shown::Fixed,
};

/// Density of moist air.
pub const AIR_DENSITY: Measure<Density> = Measure {
    name: "density",
    si: unit!(
        "kg/m³",
        ["kg/m3"],
        Density::kilograms_per_cubic_metre,
        Density::to_kilograms_per_cubic_metre,
        3
    ),
    inch_pound: unit!(
        "lb/ft³",
        ["lb/ft3"],
        Density::pounds_per_cubic_foot,
        Density::to_pounds_per_cubic_foot,
        4
    ),
    others: &[],
    shown: Shown::Fixed,
};

/// Enthalpy of dry air at 0 °F where it is counted from 0 °C: 1006 J/(kg K) over 32 °F.
const DRY_AIR_AT_0_F: SpecificEnthalpy =
    SpecificEnthalpy::joules_per_kilogram(-1006.0 * 32.0 / 1.8);

/// Inch-pound enthalpy counts dry air from 0 °F.
fn from_btu_per_pound(value: f64) -> SpecificEnthalpy {
    SpecificEnthalpy::btu_per_pound(value) + DRY_AIR_AT_0_F
}

fn to_btu_per_pound(enthalpy: SpecificEnthalpy) -> f64 {
    (enthalpy - DRY_AIR_AT_0_F).to_btu_per_pound()
}
