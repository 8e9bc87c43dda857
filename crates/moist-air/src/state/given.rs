//! A number as it was given: whether it lies within its limits, and the sentence about it.

use super::clip::{FAULT, Notes, clip_note};
use crate::error::{AirError, AirNote};
use crate::pair::Over;
use crate::saturation::TRIPLE_POINT_C;
use crate::{fast, mixture};
use dewrun_quantity::{HumidityRatio, RelativeHumidity, Temperature};

/// Temperatures of air that are answered, °C.
pub(super) const TEMPERATURES_C: (f64, f64) = (-60.0, 95.0);
/// Dew points that are taken, °C.
const DEW_POINTS_C: (f64, f64) = (fast::COLDEST_C, TEMPERATURES_C.1);
/// Frost points that are taken, °C.
const FROST_POINTS_C: (f64, f64) = (fast::COLDEST_C, TRIPLE_POINT_C);
/// Most vapour that still leaves air, mole fraction: 62 kg of vapour per kg of dry air.
pub(super) const MOST_VAPOUR: f64 = 0.99;
/// How far a dew point may lie above the dry bulb and be lowered to it, K: two good sensors differ by that much.
const LOWERED_K: f64 = 0.5;

/// A number as it was given, for the sentence about it.
#[derive(Clone, Copy)]
pub(super) struct Given {
    pub(super) quantity: &'static str,
    pub(super) value: f64,
    pub(super) unit: &'static str,
}

impl Given {
    pub(super) fn checked(
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

    pub(super) fn dew_point(dew_point: Temperature) -> Result<Self, AirError> {
        Self::checked("dew point", dew_point.to_celsius(), "°C", DEW_POINTS_C)
    }

    pub(super) fn frost_point(frost_point: Temperature) -> Result<Self, AirError> {
        Self::checked(
            "frost point",
            frost_point.to_celsius(),
            "°C",
            FROST_POINTS_C,
        )
    }

    pub(super) fn ratio(ratio: HumidityRatio) -> Result<Self, AirError> {
        let most_g_kg = 1000.0 * mixture::humidity_ratio(MOST_VAPOUR);
        Self::checked(
            "humidity ratio",
            ratio.to_grams_per_kilogram(),
            "g/kg",
            (0.0, most_g_kg),
        )
    }

    pub(super) fn outside(self, min: f64, max: f64) -> AirError {
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

    pub(super) fn above(self, temperature_c: f64) -> AirError {
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
    pub(super) fn lowered_to(self, temperature_c: f64, notes: &mut Notes) -> Result<f64, AirError> {
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
    pub(super) fn temperature_c(
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
        let found = fast::saturation_c(saturated, p_pa, over);
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

/// The value, where it is a number within its limits.
pub(super) fn within(
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

/// Relative humidity as a fraction that is a number and not negative.
pub(super) fn not_negative(value: RelativeHumidity) -> Result<f64, AirError> {
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
