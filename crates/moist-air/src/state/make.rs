//! From a pair to a state: what is missing, impossible, inconsistent or a little over saturation.

use super::{MoistAir, saturated};
use crate::error::{AirError, AirNote};
use crate::humidity::{saturated_over_ice, saturated_over_water};
use crate::latent::{DRY_AIR_CP, vapour_enthalpy_j_kg};
use crate::pair::{Humidity, Over, Pair};
use crate::saturation::TRIPLE_POINT_C;
use crate::{fast, mixture, wet_bulb};
use dewrun_quantity::{HumidityRatio, Noted, Pressure, RelativeHumidity, Temperature};

/// Temperatures of air that are answered, °C.
const TEMPERATURES_C: (f64, f64) = (-60.0, 95.0);
/// Pressures of air that are answered, kPa.
const PRESSURES_KPA: (f64, f64) = (50.0, 120.0);
/// Relative humidity that is clipped without doubt in the sensor, with doubt, and no more, as fractions of saturation.
const CLIPPED: f64 = 1.02;
const FAULT: f64 = 1.05;
/// How far a dew or frost point may lie above the dry bulb and be lowered to it, K: two good sensors differ by that much.
const LOWERED_K: f64 = 0.5;
/// Excess over saturation that is the dust of conversions and fits, a thousandth of a percent, not a reading.
const DUST: f64 = 1.0e-5;
/// A humidity ratio so little below nothing is the dust of a root.
const W_DUST: f64 = 1.0e-9;
/// Dew and frost points that are taken, °C.
const DEW_POINTS_C: (f64, f64) = (fast::COLDEST_C, TEMPERATURES_C.1);
const FROST_POINTS_C: (f64, f64) = (fast::COLDEST_C, TRIPLE_POINT_C);
/// Most vapour that still leaves air, mole fraction: 62 kg of vapour per kg of dry air.
const MOST_VAPOUR: f64 = 0.99;

type Notes = Vec<AirNote>;

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

/// The value, where it is a number within its limits.
fn within(
    quantity: &'static str,
    value: f64,
    unit: &'static str,
    (min, max): (f64, f64),
) -> Result<f64, AirError> {
    if value.is_nan() {
        return Err(AirError::Missing { quantity });
    }
    if value < min || max < value {
        return Err(AirError::OutOfRange {
            quantity,
            value,
            unit,
            min,
            max,
        });
    }
    Ok(value)
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

/// Relative humidity as a fraction that is a number and not negative.
fn not_negative(value: RelativeHumidity) -> Result<f64, AirError> {
    within(
        "relative humidity",
        value.to_percent(),
        "%",
        (0.0, f64::INFINITY),
    )
    .map_err(|error| match error {
        AirError::OutOfRange {
            quantity,
            value,
            unit,
            min,
            ..
        } => AirError::OutOfRange {
            quantity,
            value,
            unit,
            min,
            max: 100.0,
        },
        other => other,
    })?;
    Ok(value.to_fraction())
}

/// The vapour that stands: clipped to saturation over water with a note, or none where it is too far over it.
fn clipped(t_c: f64, x: f64, over: Over, p_pa: f64, notes: &mut Notes) -> Option<f64> {
    let most = saturated_over_water(t_c, p_pa);
    let over_water = x / most;
    notes.extend(clip_note(over_water)?);
    let x = x.min(most);
    let over_ice = x / saturated(t_c, p_pa, over);
    if over == Over::Ice && t_c < TRIPLE_POINT_C && 1.0 + DUST < over_ice {
        notes.push(AirNote::AboveIceSaturation {
            percent: 100.0 * over_ice,
        });
    }
    Some(x)
}

/// What has to be said of a relative humidity, or none where it is a fault.
fn clip_note(fraction: f64) -> Option<Option<AirNote>> {
    let percent = 100.0 * fraction;
    if fraction <= 1.0 + DUST {
        Some(None)
    } else if fraction <= CLIPPED + DUST {
        Some(Some(AirNote::Clipped { percent }))
    } else if fraction <= FAULT + DUST {
        Some(Some(AirNote::SaturatedSensor { percent }))
    } else {
        None
    }
}

/// A number as it was given, for the sentence about it.
#[derive(Clone, Copy)]
struct Given {
    quantity: &'static str,
    value: f64,
    unit: &'static str,
}

impl Given {
    fn checked(
        quantity: &'static str,
        value: f64,
        unit: &'static str,
        limits: (f64, f64),
    ) -> Result<Self, AirError> {
        let value = within(quantity, value, unit, limits)?;
        Ok(Self {
            quantity,
            value,
            unit,
        })
    }

    fn dew_point(dew_point: Temperature) -> Result<Self, AirError> {
        Self::checked("dew point", dew_point.to_celsius(), "°C", DEW_POINTS_C)
    }

    fn frost_point(frost_point: Temperature) -> Result<Self, AirError> {
        Self::checked(
            "frost point",
            frost_point.to_celsius(),
            "°C",
            FROST_POINTS_C,
        )
    }

    fn ratio(ratio: HumidityRatio) -> Result<Self, AirError> {
        let most_g_kg = 1000.0 * mixture::humidity_ratio(MOST_VAPOUR);
        Self::checked(
            "humidity ratio",
            ratio.to_grams_per_kilogram(),
            "g/kg",
            (0.0, most_g_kg),
        )
    }

    fn outside(self, min: f64, max: f64) -> AirError {
        let Self {
            quantity,
            value,
            unit,
        } = self;
        AirError::OutOfRange {
            quantity,
            value,
            unit,
            min,
            max,
        }
    }

    fn above(self, temperature_c: f64) -> AirError {
        let Self {
            quantity,
            value: point_c,
            ..
        } = self;
        AirError::PointAboveTemperature {
            quantity,
            point_c,
            temperature_c,
        }
    }

    /// The point, or the air's temperature where it lies a little above that.
    fn lowered_to(self, temperature_c: f64, notes: &mut Notes) -> Result<f64, AirError> {
        let Self {
            quantity,
            value: point_c,
            ..
        } = self;
        if point_c <= temperature_c {
            return Ok(point_c);
        }
        if temperature_c + LOWERED_K < point_c {
            return Err(self.above(temperature_c));
        }
        notes.push(AirNote::PointLowered {
            quantity,
            point_c,
            temperature_c,
        });
        Ok(temperature_c)
    }

    /// Temperature at which mole fraction `x` is at so much relative humidity.
    fn temperature_c(
        self,
        x: f64,
        (value, over): (RelativeHumidity, Over),
        p_pa: f64,
        notes: &mut Notes,
    ) -> Result<f64, AirError> {
        let fraction = not_negative(value)?;
        let percent = value.to_percent();
        let fault = AirError::SensorFault {
            percent,
            max: 100.0 * FAULT,
        };
        notes.extend(clip_note(fraction).ok_or(fault)?);
        let saturated = x / fraction.min(1.0);
        let found = match over {
            Over::Water => fast::dew_point_of_c(saturated, p_pa),
            Over::Ice => fast::dew_or_frost_point_of_c(saturated, p_pa),
        };
        let (min_c, max_c) = TEMPERATURES_C;
        let Self {
            quantity,
            value,
            unit,
        } = self;
        found
            .filter(|t_c| min_c <= *t_c && *t_c <= max_c)
            .ok_or(AirError::NoTemperature {
                quantity,
                value,
                unit,
                percent,
                min_c,
                max_c,
            })
    }
}
