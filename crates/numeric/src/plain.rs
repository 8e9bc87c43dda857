//! Elementary functions without a branch, so that a loop over many arguments runs several at a time.
//!
//! Each has a range, within which its error is proven by a test, and no answer that may be used outside of it.

use crate::fast::{EXPONENT, LN, ROUNDER, SQRT_HALF_BITS, TWO_TO_52_BITS, reduced_exp};
use crate::polynomial::polynomial;

/// The exponential function for arguments from -700 to 700, to a relative 2e-12.
///
/// ```
/// use dewrun_numeric::plain::plain_exp;
/// assert!((plain_exp(1.0) / core::f64::consts::E - 1.0).abs() < 2e-12);
/// ```
#[must_use]
#[inline(always)]
pub fn plain_exp(x: f64) -> f64 {
    let rounded = x * core::f64::consts::LOG2_E + ROUNDER;
    reduced_exp(x, rounded)
}

/// The natural logarithm of normal positive numbers, error below 1e-12 of its value or of 1, whichever is larger.
///
/// ```
/// use dewrun_numeric::plain::plain_ln;
/// assert!((plain_ln(10.0) - core::f64::consts::LN_10).abs() < 1e-12);
/// ```
#[must_use]
#[inline(always)]
pub fn plain_ln(x: f64) -> f64 {
    let above = x.to_bits().wrapping_sub(SQRT_HALF_BITS);
    let fraction = f64::from_bits((above & !EXPONENT).wrapping_add(SQRT_HALF_BITS));
    let biased = above.wrapping_add(1023 << 52) >> 52;
    let power = f64::from_bits(biased | TWO_TO_52_BITS) - (f64::from_bits(TWO_TO_52_BITS) + 1023.0);
    let s = (fraction - 1.0) / (fraction + 1.0);
    power * core::f64::consts::LN_2 + s * polynomial(&LN, s * s)
}

/// 2^52.
const TWO_TO_52: f64 = 4_503_599_627_370_496.0;
/// The high word of 1.0: sign, exponent and twenty bits of the fraction.
const HIGH_ONE: f64 = 1_072_693_248.0;

/// A first guess of the cube root: a third of the high word, which counts like the logarithm.
#[inline(always)]
fn third_of_high_word(x: f64) -> f64 {
    /// What makes the largest error of the guess smallest.
    const LESS: f64 = 36_000.0;
    let high = f64::from_bits((x.to_bits() >> 32) | TWO_TO_52_BITS) - TWO_TO_52;
    let root = high * (1.0 / 3.0) + (HIGH_ONE * (2.0 / 3.0) - LESS);
    f64::from_bits((root + TWO_TO_52).to_bits() << 32)
}

/// The cube root of a number from 1e-90 to 1e90, to a relative 1e-14: the guess is within 3.5 %, and each of two of Halley's steps leaves two thirds of its cube.
///
/// ```
/// use dewrun_numeric::plain::plain_cbrt;
/// assert!((plain_cbrt(27.0) - 3.0).abs() < 1e-13);
/// ```
#[must_use]
#[inline(always)]
pub fn plain_cbrt(x: f64) -> f64 {
    let once = rough_cbrt(x);
    let cube = once * once * once;
    once * ((cube + 2.0 * x) / (2.0 * cube + x))
}

/// The same to a relative 3e-5, by one step.
///
/// ```
/// use dewrun_numeric::plain::rough_cbrt;
/// assert!((rough_cbrt(27.0) / 3.0 - 1.0).abs() < 3e-5);
/// ```
#[must_use]
#[inline(always)]
pub fn rough_cbrt(x: f64) -> f64 {
    let y = third_of_high_word(x);
    let cube = y * y * y;
    y * ((cube + 2.0 * x) / (2.0 * cube + x))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::elementary;

    /// The worst relative error over magnitudes and over the fractions within some of them.
    fn worst(low: f64, high: f64, error: impl Fn(f64) -> f64) -> f64 {
        let mut worst = 0.0_f64;
        let mut x = low;
        while x < high {
            worst = worst.max(error(x));
            x *= 1.000_77;
        }
        worst
    }

    #[test]
    fn roots_keep_their_bounds() {
        let cube = |x: f64| (plain_cbrt(x) / elementary::cbrt(x) - 1.0).abs();
        assert!(
            worst(1e-90, 1e90, cube) < 1e-14,
            "{}",
            worst(1e-90, 1e90, cube)
        );
        let rough = |x: f64| (rough_cbrt(x) / elementary::cbrt(x) - 1.0).abs();
        assert!(
            worst(1e-90, 1e90, rough) < 3e-5,
            "{}",
            worst(1e-90, 1e90, rough)
        );
    }

    #[test]
    fn exponential_and_logarithm_keep_their_bounds() {
        for step in -70_000_i32..=70_000 {
            let x = f64::from(step) * 0.01;
            let error = (plain_exp(x) / elementary::exp(x) - 1.0).abs();
            assert!(error < 2e-12, "{error} at {x}");
        }
        let ln = |x: f64| {
            let exact = elementary::ln(x);
            (plain_ln(x) - exact).abs() / exact.abs().max(1.0)
        };
        assert!(worst(1e-290, 1e290, ln) < 1e-12, "the logarithm");
    }
}
