//! Limits of a quantity, and the sentence for a value outside them.

use thiserror::Error;

use crate::format;

/// The limits between which a quantity makes sense.
///
/// ```
/// use dewrun_quantity::Limits;
/// const LENGTH: Limits = Limits::new("length", "m", 0.01, 500.0);
/// assert_eq!(LENGTH.check(4.2), Ok(4.2));
/// assert_eq!(LENGTH.check(0.0).unwrap_err().to_string(), "length is 0 m, must be from 0.01 to 500 m");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// What is limited, in words.
    pub quantity: &'static str,
    /// Unit of the limits; empty for a bare number.
    pub unit: &'static str,
    /// Least value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
}

/// A value lies outside its limits: bring it within.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("{} is {}, must be from {} to {}", .limits.quantity, with_unit(*.value, .limits.unit), format::entered(.limits.min), with_unit(.limits.max, .limits.unit))]
pub struct OutOfRange {
    /// The value given.
    pub value: f64,
    /// What would be right.
    pub limits: Limits,
}

impl Limits {
    /// Limits of a quantity in a unit.
    #[must_use]
    pub const fn new(quantity: &'static str, unit: &'static str, min: f64, max: f64) -> Self {
        Self {
            quantity,
            unit,
            min,
            max,
        }
    }

    /// The value, where it lies within the limits.
    ///
    /// # Errors
    /// [`OutOfRange`] where it does not, or is not a number.
    pub fn check(&self, value: f64) -> Result<f64, OutOfRange> {
        if self.min <= value && value <= self.max {
            return Ok(value);
        }
        Err(OutOfRange {
            value,
            limits: *self,
        })
    }
}

fn with_unit(value: f64, unit: &str) -> String {
    let number = format::entered(value);
    if unit.is_empty() {
        return number;
    }
    format!("{number} {unit}")
}

#[cfg(test)]
mod tests {
    use super::Limits;

    const SHARE: Limits = Limits::new("emissivity", "", 0.0, 1.0);

    #[test]
    fn both_ends_belong_to_the_range() {
        assert!(SHARE.check(0.0).is_ok(), "the least value is allowed");
        assert!(SHARE.check(1.0).is_ok(), "the largest value is allowed");
        assert!(
            SHARE.check(1.0 + f64::EPSILON).is_err(),
            "just above is not"
        );
    }

    #[test]
    fn what_is_no_number_is_refused() {
        assert!(SHARE.check(f64::NAN).is_err(), "NaN lies in no range");
        assert!(
            SHARE.check(f64::INFINITY).is_err(),
            "infinity lies in no range"
        );
    }

    #[test]
    fn a_bare_number_is_named_without_a_unit() {
        let sentence = SHARE.check(-2.0).map_err(|error| error.to_string());
        assert_eq!(
            sentence,
            Err("emissivity is \u{2212}2, must be from 0 to 1".to_owned()),
            "the sentence says what, how much and what would be right"
        );
    }
}
