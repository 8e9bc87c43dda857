//! Round numbers along an axis.

/// Round numbers on an axis, equally far apart.
#[derive(Debug, Clone, PartialEq)]
pub struct Ticks {
    /// Distance between two.
    pub step: f64,
    /// How many decimals they need to be told apart.
    pub decimals: usize,
    /// The ticks, rising.
    pub values: Vec<f64>,
}

/// The round numbers from `low` to `high`, at most `most` of them, in steps of 1, 2 or 5 times a power of ten.
///
/// The span must be finite and above zero; else there are no ticks.
///
/// ```
/// let ticks = dewrun_drawing::ticks(19.4, 32.1, 7);
/// assert_eq!(ticks.values, [20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 32.0]);
/// ```
#[must_use]
pub fn ticks(low: f64, high: f64, most: usize) -> Ticks {
    let none = Ticks {
        step: 1.0,
        decimals: 0,
        values: Vec::new(),
    };
    if !(low.is_finite() && high.is_finite() && low < high) || most == 0 {
        return none;
    }
    let mut power = Power::at_most(high - low);
    // Two powers of ten down and three up hold any count that fits an axis.
    power.lower();
    power.lower();
    for _ in 0..5 {
        for digit in [1.0, 2.0, 5.0] {
            let values = multiples(low, high, &power, digit, most);
            if let Some(values) = values {
                return Ticks {
                    step: power.times(digit),
                    decimals: power.decimals(),
                    values,
                };
            }
        }
        power.raise();
    }
    none
}

/// The widened span whose ends are ticks themselves, and its ticks.
///
/// ```
/// let (low, high, ticks) = dewrun_drawing::rounded_span(19.4, 32.1, 8);
/// assert_eq!((low, high, ticks.step), (18.0, 34.0, 2.0));
/// ```
#[must_use]
pub fn rounded_span(low: f64, high: f64, most: usize) -> (f64, f64, Ticks) {
    let inner = ticks(low, high, most.saturating_sub(1));
    let step = inner.step;
    let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
    // A hair's breadth keeps the end ticks in spite of rounding.
    let slack = step * 1e-9;
    (low, high, ticks(low - slack, high + slack, most + 2))
}

/// All multiples within the span, or none where there are more than `most`.
fn multiples(low: f64, high: f64, power: &Power, digit: f64, most: usize) -> Option<Vec<f64>> {
    let step = power.times(digit);
    let first = (low / step).ceil();
    let mut values = Vec::new();
    let mut count = first;
    while count * step <= high {
        if values.len() == most {
            return None;
        }
        // From the whole number, so that 0.3 is not 0.30000000000000004; and no minus before a zero.
        values.push(power.times(count * digit) + 0.0);
        count += 1.0;
    }
    Some(values)
}

/// A power of ten, kept as a whole number above or below one.
struct Power {
    up: f64,
    down: f64,
    exponent: i32,
}

impl Power {
    fn at_most(span: f64) -> Self {
        let mut power = Self {
            up: 1.0,
            down: 1.0,
            exponent: 0,
        };
        while power.times(10.0) <= span && power.exponent < 300 {
            power.raise();
        }
        while span < power.times(1.0) && -300 < power.exponent {
            power.lower();
        }
        power
    }

    fn raise(&mut self) {
        self.exponent += 1;
        if 1.0 < self.down {
            self.down /= 10.0;
        } else {
            self.up *= 10.0;
        }
    }

    fn lower(&mut self) {
        self.exponent -= 1;
        if 1.0 < self.up {
            self.up /= 10.0;
        } else {
            self.down *= 10.0;
        }
    }

    fn times(&self, value: f64) -> f64 {
        value * self.up / self.down
    }

    fn decimals(&self) -> usize {
        usize::try_from(-self.exponent).unwrap_or(0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(low: f64, high: f64, most: usize, expected: &[f64]) {
        let found = ticks(low, high, most);
        assert_eq!(found.values, expected, "ticks from {low} to {high}");
    }

    #[test]
    fn steps_are_round() {
        check(
            0.0,
            12.1,
            13,
            &[0., 1., 2., 3., 4., 5., 6., 7., 8., 9., 10., 11., 12.],
        );
        check(0.0, 12.1, 7, &[0., 2., 4., 6., 8., 10., 12.]);
        check(0.0, 0.95, 6, &[0.0, 0.2, 0.4, 0.6, 0.8]);
        check(-7.0, 31.0, 5, &[0.0, 10.0, 20.0, 30.0]);
        check(
            0.0,
            2500.0,
            6,
            &[0.0, 500.0, 1000.0, 1500.0, 2000.0, 2500.0],
        );
    }

    #[test]
    fn decimals_tell_them_apart() {
        assert_eq!(ticks(0.0, 0.4, 5).decimals, 1, "0.1 needs one");
        assert_eq!(ticks(0.0, 12.0, 5).decimals, 0, "whole numbers need none");
        assert_eq!(ticks(0.0, 0.004, 5).decimals, 3, "0.001 needs three");
    }

    #[test]
    fn odd_spans_have_none() {
        for (low, high) in [
            (1.0, 1.0),
            (2.0, 1.0),
            (f64::NAN, 1.0),
            (0.0, f64::INFINITY),
        ] {
            assert!(ticks(low, high, 5).values.is_empty(), "{low} to {high}");
        }
    }

    #[test]
    fn rounded_span_begins_and_ends_on_a_tick() {
        let (low, high, ticks) = rounded_span(-6.3, 28.9, 9);
        assert_eq!(ticks.values.first(), Some(&low), "first tick");
        assert_eq!(ticks.values.last(), Some(&high), "last tick");
        assert!(low <= -6.3 && 28.9 <= high, "the span is held");
    }
}
