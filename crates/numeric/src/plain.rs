//! Elementary functions without a branch, so that a loop over many arguments runs several at a time.
//!
//! Each has a range, within which its error is proven by a test, and no answer that may be used outside of it.

use crate::polynomial::polynomial;

/// 1.5 * 2^52: adding it leaves a number rounded to the nearest integer in the low bits.
const ROUNDER: f64 = 6_755_399_441_055_744.0;
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

/// Least-maximum polynomial in `s^2` of `2 artanh(s) / s` for `s` up to 0.1716, relative error 6e-14.
const LN: [f64; 6] = [
    1.999_999_999_999_947_2,
    0.666_666_666_795_858_1,
    0.399_999_948_897_499_85,
    0.285_721_663_724_946_56,
    0.221_742_400_037_659_05,
    0.196_082_453_057_040_73,
];

/// Bits of 2^52: a number below 2^52 in the low bits beside them reads as 2^52 plus that number.
const TWO_TO_52_BITS: u64 = 0x4330_0000_0000_0000;
/// Bits of sqrt(1/2): subtracted, they leave an exponent that belongs to a fraction between sqrt(1/2) and sqrt(2).
const SQRT_HALF_BITS: u64 = core::f64::consts::FRAC_1_SQRT_2.to_bits();
/// The exponent's bits.
const EXPONENT: u64 = 0xfff0_0000_0000_0000;

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
    let power = rounded - ROUNDER;
    let rest = (x - power * LN_2_HIGH) - power * LN_2_LOW;
    // The low bits of `rounded` are the power of two; shifted into the exponent's place they scale by it.
    let scale = f64::from_bits((rounded.to_bits() << 52).wrapping_add(1.0_f64.to_bits()));
    exp_near_zero(rest) * scale
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
    // The exponent counts from 1023 up, as an unsigned number in the low bits of 2^52.
    let biased = above.wrapping_add(1023 << 52) >> 52;
    let power = f64::from_bits(biased | TWO_TO_52_BITS) - (f64::from_bits(TWO_TO_52_BITS) + 1023.0);
    power * core::f64::consts::LN_2 + ln_of_quotient((fraction - 1.0) / (fraction + 1.0))
}

/// Up to here [`ln_of_quotient`] holds: quotients from `sqrt(1/2)` to `sqrt(2)`.
pub const LN_OF_QUOTIENT_UP_TO: f64 = 0.1715;

/// The natural logarithm of a quotient `a / b`, of `(a - b) / (a + b)`, error below 1e-13 of its value.
///
/// ```
/// use dewrun_numeric::plain::ln_of_quotient;
/// assert!((ln_of_quotient(0.1 / 2.1) - 0.095_310_179_804_324_86).abs() < 1e-14); // ln 1.1
/// ```
#[must_use]
#[inline(always)]
pub fn ln_of_quotient(s: f64) -> f64 {
    s * polynomial(&LN, s * s)
}

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
