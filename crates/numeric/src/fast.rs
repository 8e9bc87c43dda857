//! Exponential and logarithm of our own: short, free of branches on normal values, and the same bits everywhere.
//!
//! On usual values they are those of [`crate::plain`], others go to the exact ones.
//! They serve fits whose own error is far larger; [`crate::elementary`] is exact to the last place.

use crate::elementary;
use crate::plain::{plain_exp, plain_ln};

/// The exponential function to a relative 2e-12.
///
/// Beyond +-700 it is [`elementary::exp`].
///
/// ```
/// use dewrun_numeric::fast::fast_exp;
/// assert!((fast_exp(1.0) / core::f64::consts::E - 1.0).abs() < 2e-12);
/// assert!(fast_exp(f64::NAN).is_nan());
/// ```
#[must_use]
#[inline]
pub fn fast_exp(x: f64) -> f64 {
    if !(-700.0..=700.0).contains(&x) {
        return unusual_exp(x);
    }
    plain_exp(x)
}

/// The natural logarithm, error below 1e-12 of its value or of 1, whichever is larger.
///
/// Zero, negative, subnormal and infinite numbers go to [`elementary::ln`].
///
/// ```
/// use dewrun_numeric::fast::fast_ln;
/// assert!((fast_ln(10.0) - core::f64::consts::LN_10).abs() < 1e-12);
/// assert!(fast_ln(-1.0).is_nan());
/// ```
#[must_use]
#[inline]
pub fn fast_ln(x: f64) -> f64 {
    if !(f64::MIN_POSITIVE..=f64::MAX).contains(&x) {
        return unusual_ln(x);
    }
    plain_ln(x)
}

/// Kept out of line, as [`unusual_ln`].
#[cold]
#[inline(never)]
fn unusual_exp(x: f64) -> f64 {
    elementary::exp(x)
}

/// Kept out of line, so that the usual way stays short enough to be inlined.
#[cold]
#[inline(never)]
fn unusual_ln(x: f64) -> f64 {
    elementary::ln(x)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A million points over the range, and the error of the worst of them.
    fn worst(low: f64, high: f64, error: impl Fn(f64) -> f64) -> f64 {
        let mut x = low;
        let step = (high - low) / 1.0e6;
        let mut worst = 0.0_f64;
        while x <= high {
            worst = worst.max(error(x));
            x += step;
        }
        worst
    }

    #[test]
    fn exponential_keeps_its_bound() {
        for (low, high) in [(-700.0, 700.0), (-1.0, 1.0), (-20.0, 20.0)] {
            let worst = worst(low, high, |x| {
                (fast_exp(x) / elementary::exp(x) - 1.0).abs()
            });
            assert!(worst < 2e-12, "relative error {worst} in {low}..{high}");
        }
        assert_eq!(fast_exp(0.0), 1.0, "one at zero");
        assert_eq!(
            fast_exp(1.0e4),
            f64::INFINITY,
            "beyond the range the exact function answers"
        );
    }

    #[test]
    fn logarithm_keeps_its_bound() {
        for (low, high) in [
            (1e-300, 1e-290),
            (1e-6, 1.0),
            (0.5, 2.0),
            (0.99, 1.01),
            (1.0, 1e6),
        ] {
            let worst = worst(low, high, |x| {
                let exact = elementary::ln(x);
                (fast_ln(x) - exact).abs() / exact.abs().max(1.0)
            });
            assert!(worst < 1e-12, "error {worst} in {low}..{high}");
        }
        assert_eq!(fast_ln(1.0), 0.0, "zero at one");
        assert_eq!(
            fast_ln(0.0),
            f64::NEG_INFINITY,
            "the exact function answers"
        );
    }
}
