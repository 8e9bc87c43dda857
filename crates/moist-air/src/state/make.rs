//! From a pair to a state.

use super::clip::{FAULT, Notes, clipped};
use super::given::{Given, MOST_VAPOUR, TEMPERATURES_C, not_negative, within};
use super::{MoistAir, saturated};
use crate::error::{AirError, AirNote};
use crate::humidity::{saturated_over_ice, saturated_over_water};
use crate::latent::{DRY_AIR_CP, vapour_enthalpy_j_kg};
use crate::pair::{Humidity, Over, Pair};
use crate::{mixture, wet_bulb};
use dewrun_quantity::{HumidityRatio, Noted, Pressure, Temperature};

/// Pressures of air that are answered, kPa.
const PRESSURES_KPA: (f64, f64) = (50.0, 120.0);
/// A humidity ratio so little below nothing is the dust of a root.
const W_DUST: f64 = 1.0e-9;

/// The state that a pair makes.
pub(super) fn state(pair: Pair, pressure: Pressure) -> Result<Noted<MoistAir, AirNote>, AirError> {
    let kpa = within("pressure", pressure.to_kilopascals(), "kPa", PRESSURES_KPA)?;
    let p_pa = pressure.to_pascals();
    let mut notes = Notes::new();
    let (t_c, x) = match pair {
        Pair::Temperature(temperature, humidity) => {
            let t_c = within(
                "temperature",
                temperature.to_celsius(),
                "°C",
                TEMPERATURES_C,
            )?;
            (t_c, vapour(t_c, humidity, p_pa, &mut notes)?)
        }
        Pair::DewPointAndRelative {
            dew_point,
            value,
            over,
        } => {
            let given = Given::dew_point(dew_point)?;
            let x = saturated_over_water(given.value, p_pa);
            (given.temperature_c(x, (value, over), p_pa, &mut notes)?, x)
        }
        Pair::FrostPointAndRelative {
            frost_point,
            value,
            over,
        } => {
            let given = Given::frost_point(frost_point)?;
            let x = saturated_over_ice(given.value, p_pa);
            (given.temperature_c(x, (value, over), p_pa, &mut notes)?, x)
        }
        Pair::RatioAndRelative { ratio, value, over } => {
            let given = Given::ratio(ratio)?;
            let x = mixture::mole_fraction(0.001 * given.value);
            (given.temperature_c(x, (value, over), p_pa, &mut notes)?, x)
        }
    };
    // Where the temperature followed from a relative humidity, dust may lie over saturation.
    let x = x.min(saturated_over_water(t_c, p_pa));
    if MOST_VAPOUR < x {
        return Err(AirError::Boils {
            temperature_c: t_c,
            pressure_kpa: kpa,
        });
    }
    let value = MoistAir {
        temperature: Temperature::celsius(t_c),
        pressure,
        ratio: HumidityRatio::kilograms_per_kilogram(mixture::humidity_ratio(x)),
    };
    Ok(Noted { value, notes })
}

/// Mole fraction of vapour that a humidity says at a temperature.
fn vapour(t_c: f64, humidity: Humidity, p_pa: f64, notes: &mut Notes) -> Result<f64, AirError> {
    match humidity {
        Humidity::Relative { value, over } => {
            let fraction = not_negative(value)?;
            let x = fraction * saturated(t_c, p_pa, over);
            let fault = AirError::SensorFault {
                percent: value.to_percent(),
                max: 100.0 * FAULT,
            };
            clipped(t_c, x, over, p_pa, notes).ok_or(fault)
        }
        Humidity::DewPoint(dew_point) => {
            let given = Given::dew_point(dew_point)?;
            Ok(saturated_over_water(given.lowered_to(t_c, notes)?, p_pa))
        }
        Humidity::FrostPoint(frost_point) => {
            let given = Given::frost_point(frost_point)?;
            let x = saturated_over_ice(given.value, p_pa);
            clipped(t_c, x, Over::Ice, p_pa, notes).ok_or(given.above(t_c))
        }
        Humidity::Ratio(ratio) => {
            let given = Given::ratio(ratio)?;
            let x = mixture::mole_fraction(0.001 * given.value);
            let saturated_g_kg = 1000.0 * saturated_ratio(t_c, p_pa);
            clipped(t_c, x, Over::Water, p_pa, notes).ok_or(given.outside(0.0, saturated_g_kg))
        }
        Humidity::WetBulb(wet_bulb) => from_wet_bulb(t_c, wet_bulb.to_celsius(), p_pa, notes),
        Humidity::Enthalpy(enthalpy) => {
            from_enthalpy(t_c, enthalpy.to_joules_per_kilogram(), p_pa, notes)
        }
    }
}

/// Vapour of air whose wet bulb reads so much.
fn from_wet_bulb(t_c: f64, wet_bulb_c: f64, p_pa: f64, notes: &mut Notes) -> Result<f64, AirError> {
    let given = Given {
        quantity: "wet bulb",
        value: wet_bulb_c,
        unit: "°C",
    };
    if wet_bulb_c.is_nan() {
        return Err(AirError::Missing {
            quantity: given.quantity,
        });
    }
    let wick = if wet_bulb_c <= 0.0 {
        wet_bulb::humidity_ratio_over_ice
    } else {
        wet_bulb::humidity_ratio_over_water
    };
    // Far off the scale the relation means nothing, and the answer is the same.
    let w = wick(
        t_c,
        wet_bulb_c.clamp(TEMPERATURES_C.0 - 20.0, TEMPERATURES_C.1),
        p_pa,
    );
    let driest_c = wet_bulb::over_ice_c(t_c, 0.0, p_pa)
        .ok()
        .filter(|ice_c| *ice_c <= 0.0)
        .or_else(|| wet_bulb::over_water_c(t_c, 0.0, p_pa).ok());
    let outside = given.outside(driest_c.unwrap_or(TEMPERATURES_C.0), t_c);
    if w < -W_DUST || !w.is_finite() {
        return Err(outside);
    }
    let x = mixture::mole_fraction(w.max(0.0));
    clipped(t_c, x, Over::Water, p_pa, notes).ok_or(outside)
}

/// Vapour of air with so much enthalpy.
fn from_enthalpy(t_c: f64, h_j_kg: f64, p_pa: f64, notes: &mut Notes) -> Result<f64, AirError> {
    let given = Given {
        quantity: "enthalpy",
        value: 0.001 * h_j_kg,
        unit: "kJ/kg",
    };
    if h_j_kg.is_nan() {
        return Err(AirError::Missing {
            quantity: given.quantity,
        });
    }
    let saturated_j_kg = mixture::enthalpy_j_kg(t_c, saturated_ratio(t_c, p_pa));
    let outside = given.outside(0.001 * DRY_AIR_CP * t_c, 0.001 * saturated_j_kg);
    let w = (h_j_kg - DRY_AIR_CP * t_c) / vapour_enthalpy_j_kg(t_c);
    if w < -W_DUST || !w.is_finite() {
        return Err(outside);
    }
    let x = mixture::mole_fraction(w.max(0.0));
    clipped(t_c, x, Over::Water, p_pa, notes).ok_or(outside)
}

/// Humidity ratio at saturation over water; where water boils, that of the most vapour that is answered.
fn saturated_ratio(t_c: f64, p_pa: f64) -> f64 {
    mixture::humidity_ratio(saturated_over_water(t_c, p_pa).min(MOST_VAPOUR))
}
