//! A computed value against an expected one: numbers within a tolerance, everything else exactly.

use std::fmt;

use serde_json::Value;

/// A number passes if it is off by no more than `absolute`, or by no more than `relative` of what is expected.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Tolerance {
    /// Share of the expected value.
    pub relative: f64,
    /// In the unit of the value.
    pub absolute: f64,
}

impl Tolerance {
    /// A share of the expected value.
    #[must_use]
    pub const fn relative(relative: f64) -> Self {
        Self {
            relative,
            absolute: 0.0,
        }
    }

    /// In the unit of the value.
    #[must_use]
    pub const fn absolute(absolute: f64) -> Self {
        Self {
            relative: 0.0,
            absolute,
        }
    }

    /// Either of the two.
    #[must_use]
    pub const fn either(relative: f64, absolute: f64) -> Self {
        Self { relative, absolute }
    }

    /// The tolerance of one key in the form of `checks.json`: by key where the key is named there, else the general one.
    #[must_use]
    pub fn of_key(tolerance: &Value, key: &str) -> Self {
        let number = |name: &str| tolerance[name].as_f64();
        let by_key = |name: &str| tolerance[name][key].as_f64();
        let (relative, absolute) = (by_key("rel_by_key"), by_key("abs_by_key"));
        if relative.is_some() || absolute.is_some() {
            return Self::either(relative.unwrap_or(0.0), absolute.unwrap_or(0.0));
        }
        if let Some(means) = number("means_abs").filter(|_| key.ends_with("mean")) {
            return Self::absolute(means);
        }
        Self::either(number("rel").unwrap_or(0.0), number("abs").unwrap_or(0.0))
    }

    /// Whether a number is near enough; never where it is not a number.
    #[must_use]
    pub fn holds(self, got: f64, expected: f64) -> bool {
        let off = (got - expected).abs();
        off <= self.absolute || off <= self.relative * expected.abs()
    }
}

impl fmt::Display for Tolerance {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.relative, self.absolute) {
            (0.0, absolute) => write!(out, "abs {absolute}"),
            (relative, 0.0) => write!(out, "rel {relative}"),
            (relative, absolute) => write!(out, "rel {relative} or abs {absolute}"),
        }
    }
}

/// A computed value and what it has to be.
#[derive(Debug)]
pub struct Comparison {
    /// Its name.
    pub key: String,
    /// What the product says.
    pub got: Value,
    /// What the source says.
    pub expected: Value,
    /// How near that has to be.
    pub tolerance: Tolerance,
}

impl Comparison {
    /// A number and what it has to be.
    #[must_use]
    pub fn number(key: &str, got: f64, expected: f64, tolerance: Tolerance) -> Self {
        Self {
            key: key.to_owned(),
            got: got.into(),
            expected: expected.into(),
            tolerance,
        }
    }

    /// A fact that has to be so.
    #[must_use]
    pub fn fact(key: &str, is_so: bool) -> Self {
        Self {
            key: key.to_owned(),
            got: is_so.into(),
            expected: true.into(),
            tolerance: Tolerance::default(),
        }
    }

    /// A line for each number that is not near enough, `KEY got expected tolerance`.
    #[must_use]
    pub fn misses(&self) -> Vec<String> {
        let mut misses = Vec::new();
        self.walk(&self.key, &self.got, &self.expected, &mut misses);
        misses
    }

    fn walk(&self, key: &str, got: &Value, expected: &Value, misses: &mut Vec<String>) {
        let same = match (got, expected) {
            (Value::Array(got), Value::Array(expected)) if got.len() == expected.len() => {
                for (place, (got, expected)) in got.iter().zip(expected).enumerate() {
                    self.walk(&format!("{key}[{place}]"), got, expected, misses);
                }
                true
            }
            (Value::Object(got), Value::Object(expected)) => {
                for (name, expected) in expected {
                    let got = got.get(name).unwrap_or(&Value::Null);
                    self.walk(&format!("{key}.{name}"), got, expected, misses);
                }
                true
            }
            (Value::Number(got), Value::Number(expected)) => {
                let pair = got.as_f64().zip(expected.as_f64());
                pair.is_some_and(|(got, expected)| self.tolerance.holds(got, expected))
            }
            (got, expected) => got == expected,
        };
        if !same {
            misses.push(format!("{key} {got} {expected} {}", self.tolerance));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[track_caller]
    fn check(got: Value, expected: Value, tolerance: Tolerance, misses: usize) {
        let comparison = Comparison {
            key: "k".to_owned(),
            got,
            expected,
            tolerance,
        };
        assert_eq!(comparison.misses().len(), misses, "{comparison:?}");
    }

    #[test]
    fn numbers_within_either_tolerance_pass() {
        check(json!(1.01), json!(1.0), Tolerance::relative(0.02), 0);
        check(json!(1.01), json!(1.0), Tolerance::relative(0.005), 1);
        check(json!(0.01), json!(0.0), Tolerance::either(0.005, 0.02), 0);
        check(json!(f64::NAN), json!(1.0), Tolerance::absolute(9.0), 1);
    }

    #[test]
    fn lists_are_compared_one_by_one() {
        check(
            json!([1.0, 2.0]),
            json!([1.0, 3.0]),
            Tolerance::absolute(0.1),
            1,
        );
        check(json!([1.0]), json!([1.0, 3.0]), Tolerance::absolute(9.0), 1);
        check(
            json!([1.0, 9.0]),
            json!([3.0, 3.0]),
            Tolerance::absolute(0.1),
            2,
        );
    }

    #[test]
    fn none_must_be_none() {
        check(Value::Null, Value::Null, Tolerance::default(), 0);
        check(json!(0.0), Value::Null, Tolerance::absolute(1.0), 1);
        check(Value::Null, json!(0.0), Tolerance::absolute(1.0), 1);
    }

    #[test]
    fn tolerance_of_a_key_goes_before_the_general_one() {
        let tolerance = json!({"rel": 0.02, "abs_by_key": {"t": 0.3}});
        assert_eq!(
            Tolerance::of_key(&tolerance, "t"),
            Tolerance::absolute(0.3),
            "by key"
        );
        assert_eq!(
            Tolerance::of_key(&tolerance, "m"),
            Tolerance::relative(0.02),
            "general"
        );
        let of_means = json!({"counts": 0, "means_abs": 0.005});
        assert_eq!(
            Tolerance::of_key(&of_means, "Td_mean"),
            Tolerance::absolute(0.005),
            "of means"
        );
        assert_eq!(
            Tolerance::of_key(&of_means, "h_T_lt0"),
            Tolerance::default(),
            "counts are exact"
        );
    }
}
