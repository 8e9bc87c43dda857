//! The decimal digits of a number, all of them or as many as are wanted.

use core::ops::RangeInclusive;

use super::read::size_of;
use super::whole::Whole;

/// So many digits tell any two numbers apart.
const TELLING: usize = 17;
/// Powers of ten of the first digit at which a text has no exponent.
const PLAIN_POWERS: RangeInclusive<i64> = -5..=15;
/// Digits that are parted off a whole number at once, and what divides them off.
const GROUP: (usize, u32) = (9, 1_000_000_000);

/// The digits of a number without its sign: `0.d1d2d3.. * 10^point`; none for zero.
#[derive(Clone)]
pub(crate) struct Digits {
    digits: Vec<u8>,
    point: i64,
}

impl Digits {
    /// All digits of a finite number, up to 767 of them.
    pub(crate) fn of(value: f64) -> Self {
        let bits = value.abs().to_bits();
        let (steps, stored) = (bits >> 52, bits & ((1 << 52) - 1));
        // The leading bit is not stored, except where there is none.
        let mantissa = if steps == 0 { stored } else { stored | 1 << 52 };
        let mut number = Whole::of(mantissa);
        let doublings = i64::try_from(steps.max(1)).unwrap_or(0) - 1075;
        let mut decimals = 0;
        if 0 <= doublings {
            number.multiply_power(2, doublings.unsigned_abs());
        } else {
            // Halving is multiplying by five with the point moved.
            number.multiply_power(5, doublings.unsigned_abs());
            decimals = doublings.abs();
        }
        let digits = digits_of(number);
        let point = i64::try_from(digits.len()).unwrap_or(0) - decimals;
        Self { digits, point }.trimmed()
    }

    /// Rounded to so many significant digits, ties to even.
    pub(crate) fn significant(self, count: usize) -> Self {
        self.cut(i64::try_from(count).unwrap_or(i64::MAX))
    }

    /// Rounded to so many decimals, ties to even.
    pub(crate) fn decimals(self, count: usize) -> Self {
        let kept = i64::try_from(count).map_or(i64::MAX, |count| self.point.saturating_add(count));
        self.cut(kept)
    }

    fn cut(mut self, kept: i64) -> Self {
        let Ok(kept) = usize::try_from(kept) else {
            self.digits.clear();
            return self.trimmed();
        };
        let Some((&next, rest)) = self.digits.get(kept..).and_then(<[u8]>::split_first) else {
            return self;
        };
        let is_odd = kept != 0
            && self
                .digits
                .get(kept - 1)
                .is_some_and(|digit| digit % 2 == 1);
        let is_up = 5 < next || (next == 5 && (!rest.is_empty() || is_odd));
        self.digits.truncate(kept);
        if is_up {
            self.count_up();
        }
        self.trimmed()
    }

    /// Adds one in the last place.
    fn count_up(&mut self) {
        for digit in self.digits.iter_mut().rev() {
            if *digit != 9 {
                *digit += 1;
                return;
            }
            *digit = 0;
        }
        self.digits.insert(0, 1);
        self.point += 1;
    }

    /// The power of ten of the first digit; 0 for zero.
    pub(crate) fn power(&self) -> i64 {
        if self.digits.is_empty() {
            return 0;
        }
        self.point - 1
    }

    /// The number nearest to the digits.
    pub(crate) fn value(&self) -> f64 {
        size_of(&self.digits, self.point - self.count())
    }

    /// As plain decimal text with at least so many decimals and all that there are.
    pub(crate) fn text(&self, decimals: usize) -> String {
        let decimals = i64::try_from(decimals).unwrap_or(i64::MAX);
        let end = self.point.saturating_add(decimals).max(self.count());
        let mut text: String = (0..self.point).map(|at| self.sign(at)).collect();
        if text.is_empty() {
            text.push('0');
        }
        if self.point < end {
            text.push('.');
            text.extend((self.point..end).map(|at| self.sign(at)));
        }
        text
    }

    fn count(&self) -> i64 {
        i64::try_from(self.digits.len()).unwrap_or(0)
    }

    /// The digit at a place, zero before the first and after the last.
    fn sign(&self, at: i64) -> char {
        let digit = usize::try_from(at).ok().and_then(|at| self.digits.get(at));
        char::from(b'0' + digit.copied().unwrap_or(0))
    }

    /// Drops zeros at the end; zero itself has its point at the start.
    fn trimmed(mut self) -> Self {
        while self.digits.last() == Some(&0) {
            self.digits.pop();
        }
        if self.digits.is_empty() {
            self.point = 0;
        }
        self
    }
}

/// The shortest text that [`nearest`](super::nearest) reads as this very number; with an exponent where there would be many zeros.
///
/// Empty where it is not finite.
///
/// ```
/// use dewrun_quantity::decimal::shortest;
/// assert_eq!(shortest(-0.1), "-0.1");
/// assert_eq!(shortest(28.0), "28.0");
/// assert_eq!(shortest(1.5e-7), "1.5e-7");
/// ```
#[must_use]
pub fn shortest(value: f64) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let all = Digits::of(value);
    let enough = (1..TELLING).find_map(|count| {
        let some = all.clone().significant(count);
        (some.value() == value.abs()).then_some(some)
    });
    let mut digits = enough.unwrap_or_else(|| all.significant(TELLING));
    let power = digits.power();
    let mut text = String::new();
    if value.is_sign_negative() {
        text.push('-');
    }
    if PLAIN_POWERS.contains(&power) {
        text.push_str(&digits.text(1));
        return text;
    }
    digits.point = 1;
    text.push_str(&digits.text(0));
    text.push('e');
    text.push_str(&power.to_string());
    text
}

/// The digits of a whole number; none for zero.
fn digits_of(mut number: Whole) -> Vec<u8> {
    let mut digits = Vec::new();
    while !number.is_zero() {
        let mut group = number.divide(GROUP.1);
        for _ in 0..GROUP.0 {
            digits.push(u8::try_from(group % 10).unwrap_or(0));
            group /= 10;
        }
    }
    while digits.last() == Some(&0) {
        digits.pop();
    }
    digits.reverse();
    digits
}

#[cfg(test)]
mod tests {
    use super::{Digits, shortest};
    use crate::decimal::nearest;
    use proptest::prelude::{Strategy, any, prop_assert_eq, proptest};

    fn finite() -> impl Strategy<Value = f64> {
        any::<u64>().prop_map(|bits| {
            let value = f64::from_bits(bits);
            if value.is_finite() { value } else { 0.0 }
        })
    }

    /// The standard library rounds all digits to nearest, ties to even.
    #[track_caller]
    fn check(value: f64, decimals: usize) {
        let found = Digits::of(value).decimals(decimals).text(decimals);
        let expected = format!("{:.decimals$}", value.abs());
        assert_eq!(found, expected, "{value:e} with {decimals} decimals");
    }

    #[test]
    fn ties_go_to_the_even_digit_and_nines_carry() {
        for value in [
            0.0,
            0.5,
            1.5,
            2.5,
            0.25,
            0.75,
            0.05,
            9.5,
            9.96,
            99.95,
            0.999,
            1e22,
            1e23,
            5e-324,
            0.125,
            0.375,
            1234.5,
            f64::MAX,
        ] {
            for decimals in 0..4 {
                check(value, decimals);
            }
        }
    }

    #[test]
    fn the_shortest_text_is_that_of_files() {
        for (value, text) in [
            (0.0, "0.0"),
            (-0.0, "-0.0"),
            (1e15, "1000000000000000.0"),
            (1e16, "1e16"),
            (1e23, "1e23"),
            (1.234e-5, "0.00001234"),
            (1.234e-6, "1.234e-6"),
            (5e-324, "5e-324"),
            (f64::MAX, "1.7976931348623157e308"),
            (0.1 + 0.2, "0.30000000000000004"),
        ] {
            assert_eq!(shortest(value), text, "{value:e}");
        }
    }

    proptest! {
        #[test]
        fn decimals_are_those_of_the_library(value in finite(), decimals in 0_usize..40) {
            let found = Digits::of(value).decimals(decimals).text(decimals);
            prop_assert_eq!(found, format!("{:.decimals$}", value.abs()));
        }

        #[test]
        fn decimals_of_what_people_see_are_those_of_the_library(thousandths in 0_u32..100_000_000, decimals in 0_usize..5) {
            let value = f64::from(thousandths) / 1000.0;
            let found = Digits::of(value).decimals(decimals).text(decimals);
            prop_assert_eq!(found, format!("{:.decimals$}", value));
        }

        #[test]
        fn ties_are_those_of_the_library(eighths in 0_u32..100_000, decimals in 0_usize..4) {
            let value = f64::from(eighths) / 8.0;
            let found = Digits::of(value).decimals(decimals).text(decimals);
            prop_assert_eq!(found, format!("{:.decimals$}", value));
        }

        #[test]
        fn significant_digits_are_those_of_the_library(value in finite(), count in 1_usize..25) {
            let digits = Digits::of(value).significant(count);
            let expected: f64 = format!("{:.*e}", count - 1, value.abs()).parse().unwrap_or(f64::NAN);
            prop_assert_eq!(digits.value().to_bits(), expected.to_bits());
        }

        #[test]
        fn the_shortest_text_is_no_longer_than_that_of_the_library(value in finite()) {
            let text = shortest(value);
            prop_assert_eq!(nearest(&text).map(f64::to_bits), Some(value.to_bits()), "{}", &text);
            let count = |text: &str| text.split('e').next().map(|text| text.trim_matches(['-', '0', '.']).replace('.', "").len());
            prop_assert_eq!(count(&text), count(&format!("{value:e}")), "{}", text);
        }
    }
}
