//! Temperature and difference of temperatures.

use crate::macros::quantity;

/// 0 °C on the thermodynamic scale, K.
const ZERO_CELSIUS_K: f64 = 273.15;

/// A temperature, kept in degrees Celsius.
///
/// ```
/// use dewrun_quantity::Temperature;
/// let t = Temperature::fahrenheit(68.0);
/// assert!((t.to_celsius() - 20.0).abs() < 1e-12);
/// assert!((t.to_kelvin() - 293.15).abs() < 1e-12);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// From degrees Celsius.
    #[must_use]
    #[inline]
    pub const fn celsius(value: f64) -> Self {
        Self(value)
    }

    /// From kelvin.
    #[must_use]
    #[inline]
    pub const fn kelvin(value: f64) -> Self {
        Self(value - ZERO_CELSIUS_K)
    }

    /// From degrees Fahrenheit.
    #[must_use]
    #[inline]
    pub const fn fahrenheit(value: f64) -> Self {
        Self((value - 32.0) / 1.8)
    }

    /// As degrees Celsius.
    #[must_use]
    #[inline]
    pub const fn to_celsius(self) -> f64 {
        self.0
    }

    /// As kelvin.
    #[must_use]
    #[inline]
    pub const fn to_kelvin(self) -> f64 {
        self.0 + ZERO_CELSIUS_K
    }

    /// As degrees Fahrenheit.
    #[must_use]
    #[inline]
    pub const fn to_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }

    /// Neither NaN nor infinite.
    #[must_use]
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }

    /// The lower of two.
    #[must_use]
    pub const fn min(self, other: Self) -> Self {
        Self(self.0.min(other.0))
    }

    /// The higher of two.
    #[must_use]
    pub const fn max(self, other: Self) -> Self {
        Self(self.0.max(other.0))
    }
}

impl core::ops::Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}

impl core::ops::Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, other: TemperatureDifference) -> Self {
        Self(self.0 + other.0)
    }
}

impl core::ops::Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, other: TemperatureDifference) -> Self {
        Self(self.0 - other.0)
    }
}

quantity! {
    /// A difference of two temperatures, kept in kelvin.
    TemperatureDifference {
        kelvins / to_kelvins: 1.0,
        fahrenheit_degrees / to_fahrenheit_degrees: 1.0 / 1.8,
    }
}
