//! Exponential and logarithm of our own: short, free of branches on normal values, and the same bits everywhere.
//!
//! They serve fits whose own error is far larger; [`crate::elementary`] is exact to the last place.

use crate::elementary;
use crate::polynomial::polynomial;

/// 1.5 * 2^52: adding it leaves a number rounded to the nearest integer in the low bits.
pub(crate) const ROUNDER: f64 = 6_755_399_441_055_744.0;
/// ln 2 in two parts; the first has 21 trailing zero bits, so that a multiple of it up to 2^20 is exact.
const LN_2_HIGH: f64 = 0.693_147_180_369_123_8;
const LN_2_LOW: f64 = 1.908_214_929_270_587_7e-10;

/// Least-maximum polynomial of the exponential on +-ln(2)/2, relative error 1.1e-12.
const EXP: [f64; 9] = [
    1.0,
    0.999_999_999_979_769,
    0.499_999_999_997_977_7,
    0.166_666_668_911_805_45,
    0.041_666_666_891_091_7,
    0.008_333_266_071_022_454,
    0.001_388_882_165_071_769,
    0.000_199_158_818_713_960_35,
    2.487_617_895_908_551_3e-5,
];

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
    let rounded = x * core::f64::consts::LOG2_E + ROUNDER;
    reduced_exp(x, rounded)
}

/// The exponential of `x`, of which the power of two is known as a number near [`ROUNDER`].
#[inline(always)]
pub(crate) fn reduced_exp(x: f64, rounded: f64) -> f64 {
    let power = rounded - ROUNDER;
    let rest = (x - power * LN_2_HIGH) - power * LN_2_LOW;
    // The low bits of `rounded` are the power of two; shifted into the exponent's place they scale by it.
    let scale = f64::from_bits((rounded.to_bits() << 52).wrapping_add(1.0_f64.to_bits()));
    exp_near_zero(rest) * scale
}

/// Least-maximum polynomial in `s^2` of `2 artanh(s) / s` for `s` up to 0.1716, relative error 6e-14.
pub(crate) const LN: [f64; 6] = [
    1.999_999_999_999_947_2,
    0.666_666_666_795_858_1,
    0.399_999_948_897_499_85,
    0.285_721_663_724_946_56,
    0.221_742_400_037_659_05,
    0.196_082_453_057_040_73,
];

/// The polynomial [`EXP`], cut by Estrin into halves that run side by side.
#[inline]
fn exp_near_zero(x: f64) -> f64 {
    let [c0, c1, c2, c3, c4, c5, c6, c7, c8] = EXP;
    let square = x * x;
    let fourth = square * square;
    let low = (c0 + c1 * x) + square * (c2 + c3 * x);
    let high = (c4 + c5 * x) + square * (c6 + c7 * x);
    low + fourth * (high + fourth * c8)
}

/// Bits of 2^52: a number below 2^52 in the low bits beside them reads as 2^52 plus that number.
pub(crate) const TWO_TO_52_BITS: u64 = 0x4330_0000_0000_0000;
/// Bits of sqrt(1/2): subtracted, they leave an exponent that belongs to a fraction between sqrt(1/2) and sqrt(2).
pub(crate) const SQRT_HALF_BITS: u64 = core::f64::consts::FRAC_1_SQRT_2.to_bits();
/// The exponent's bits.
pub(crate) const EXPONENT: u64 = 0xfff0_0000_0000_0000;

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
    let above = x.to_bits().wrapping_sub(SQRT_HALF_BITS);
    let fraction = f64::from_bits((above & !EXPONENT).wrapping_add(SQRT_HALF_BITS));
    // The exponent counts from 1023 up, as an unsigned number in the low bits of 2^52.
    let biased = above.wrapping_add(1023 << 52) >> 52;
    let power = f64::from_bits(biased | TWO_TO_52_BITS) - (f64::from_bits(TWO_TO_52_BITS) + 1023.0);
    let s = (fraction - 1.0) / (fraction + 1.0);
    power * core::f64::consts::LN_2 + s * polynomial(&LN, s * s)
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
