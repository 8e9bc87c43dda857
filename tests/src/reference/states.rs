//! States of moist air from bare numbers, as the published values give them.

use dewrun_moist_air::{AirNote, Humidity, MoistAir, Over, Pair};
use dewrun_quantity::{HumidityRatio, Noted, Pressure, RelativeHumidity, Temperature};

/// Air of a temperature in °C and a humidity at a pressure in Pa, with its notes.
///
/// # Errors
/// The product's own sentence.
pub fn noted(t_c: f64, humidity: Humidity, p_pa: f64) -> Result<Noted<MoistAir, AirNote>, String> {
    of_pair(Pair::Temperature(Temperature::celsius(t_c), humidity), p_pa)
}

/// Air of a pair at a pressure in Pa, with its notes.
///
/// # Errors
/// The product's own sentence.
pub fn of_pair(pair: Pair, p_pa: f64) -> Result<Noted<MoistAir, AirNote>, String> {
    MoistAir::new(pair, Pressure::pascals(p_pa)).map_err(|error| error.to_string())
}

/// Air of a temperature in °C and a humidity at a pressure in Pa.
///
/// # Errors
/// The product's own sentence.
pub fn state(t_c: f64, humidity: Humidity, p_pa: f64) -> Result<MoistAir, String> {
    Ok(noted(t_c, humidity, p_pa)?.value)
}

/// Relative humidity in percent over water.
#[must_use]
pub const fn over_water(percent: f64) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::percent(percent),
        over: Over::Water,
    }
}

/// Relative humidity in percent, over ice below 0.01 °C.
#[must_use]
pub const fn over_ice(percent: f64) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::percent(percent),
        over: Over::Ice,
    }
}

/// Humidity ratio in kg/kg.
#[must_use]
pub const fn ratio(w: f64) -> Humidity {
    Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(w))
}

/// Wet bulb in °C.
#[must_use]
pub const fn wet_bulb(t_c: f64) -> Humidity {
    Humidity::WetBulb(Temperature::celsius(t_c))
}

/// Humidity ratio in kg/kg.
#[must_use]
pub const fn w(air: &MoistAir) -> f64 {
    air.humidity_ratio().to_kilograms_per_kilogram()
}

/// Dew point over water in °C.
///
/// # Errors
/// A sentence where there is none.
pub fn dew_point_c(air: &MoistAir) -> Result<f64, String> {
    Ok(air.dew_point().ok_or("there is no dew point")?.to_celsius())
}

/// Frost point in °C where there is one, else the dew point: the handbooks' custom.
///
/// # Errors
/// A sentence where there is neither.
pub fn frost_or_dew_point_c(air: &MoistAir) -> Result<f64, String> {
    air.frost_point()
        .map_or_else(|| dew_point_c(air), |point| Ok(point.to_celsius()))
}
