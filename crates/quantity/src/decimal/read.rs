//! Decimal text to the nearest number.

use super::whole::{Whole, low_word};

/// No power of ten up to this one is rounded.
const EXACT_POWERS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];
/// Every whole number up to this is a number of its own.
const EXACT_TO: u64 = 1 << 53;
/// Powers of ten past these ends give nothing or infinity, however many digits stand before them.
const LAST_POWER: i64 = 400;
/// More significant digits than this can't change which number is nearest, as long as it is known whether any follow.
const DIGITS: usize = 800;

/// The number nearest to plain decimal text, ties to even: an optional `-`, digits with an optional `.`, an optional exponent.
///
/// None where the text is no such thing; infinity where it is more than the largest number.
///
/// ```
/// use dewrun_quantity::decimal::nearest;
/// assert_eq!(nearest("-12.50e-1"), Some(-1.25));
/// assert_eq!(nearest("1.5 m"), None);
/// ```
///
/// # Source
/// W. D. Clinger, How to read floating point numbers accurately, PLDI 1990: the fast way for short texts.
#[must_use]
pub fn nearest(text: &str) -> Option<f64> {
    let (is_negative, text) = match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text),
    };
    let (mantissa, exponent) = match text.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, power_of(exponent)?),
        None => (text, 0),
    };
    let (whole, broken) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    if whole.is_empty() && broken.is_empty() {
        return None;
    }
    let digits: Vec<u8> = whole
        .bytes()
        .chain(broken.bytes())
        .map(|sign| sign.is_ascii_digit().then_some(sign & 0xf))
        .collect::<Option<_>>()?;
    let power = exponent.saturating_sub(i64::try_from(broken.len()).ok()?);
    let size = size_of(&digits, power);
    Some(if is_negative { -size } else { size })
}

/// An exponent as written; one past all bounds is still one past all bounds when it is cut short.
fn power_of(text: &str) -> Option<i64> {
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => (-1, digits),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    if digits.is_empty() {
        return None;
    }
    let mut power = 0_i64;
    for digit in digits.chars() {
        let digit = i64::from(digit.to_digit(10)?);
        power = power.saturating_mul(10).saturating_add(digit);
    }
    Some(sign * power)
}

/// The number nearest to whole digits times a power of ten.
pub(super) fn size_of(digits: &[u8], power: i64) -> f64 {
    let leading = digits.iter().take_while(|digit| **digit == 0).count();
    let digits = digits.get(leading..).unwrap_or_default();
    if digits.is_empty() {
        return 0.0;
    }
    short(digits, power).unwrap_or_else(|| long(digits, power))
}

/// Few digits and a small power: one rounding, in the last operation.
fn short(digits: &[u8], power: i64) -> Option<f64> {
    let mut number: u64 = 0;
    for digit in digits {
        number = number.checked_mul(10)?.checked_add(u64::from(*digit))?;
    }
    if EXACT_TO < number {
        return None;
    }
    let number = f64::from(low_word(number >> 32)) * 4_294_967_296.0 + f64::from(low_word(number));
    let scale = EXACT_POWERS.get(usize::try_from(power.unsigned_abs()).ok()?)?;
    Some(if power < 0 {
        number / scale
    } else {
        number * scale
    })
}

/// Any digits and any power, by whole numbers.
fn long(digits: &[u8], power: i64) -> f64 {
    let kept = digits.len().min(DIGITS);
    let mut number = Whole::default();
    for digit in digits.iter().take(kept) {
        number.multiply_add(10, u32::from(*digit));
    }
    let mut is_more = digits.iter().skip(kept).any(|digit| *digit != 0);
    let dropped = i64::try_from(digits.len() - kept).unwrap_or(i64::MAX);
    let power = power.saturating_add(dropped);
    let magnitude = power.saturating_add(i64::try_from(kept).unwrap_or(i64::MAX));
    if magnitude < -LAST_POWER {
        return 0.0;
    }
    if LAST_POWER < magnitude {
        return f64::INFINITY;
    }
    // The number is worth `number * 2^exponent` from here on.
    let mut exponent = 0;
    if 0 <= power {
        number.multiply_power(10, power.unsigned_abs());
    } else {
        // Each division by ten loses less than four bits; two words more than a mantissa stay.
        let words = usize::try_from(power.unsigned_abs() / 8 + 4).unwrap_or(0);
        number.shift_words(words);
        exponent -= i64::try_from(words * 32).unwrap_or(0);
        for _ in 0..power.unsigned_abs() {
            is_more |= number.divide(10) != 0;
        }
    }
    rounded(&number, exponent, is_more)
}

/// `number * 2^exponent`, and a little more where `is_more`, to the nearest number.
fn rounded(number: &Whole, exponent: i64, is_more: bool) -> f64 {
    // The smallest numbers have fewer bits than the others.
    let last = (exponent + number.bits() - 53).max(-1074);
    let cut = last - exponent;
    let mut kept = number.bits_from(cut);
    let half = 0 < cut && number.bit(cut - 1);
    if half && (is_more || number.any_below(cut - 1) || kept % 2 == 1) {
        kept += 1;
    }
    // The leading bit is not stored: it counts the exponent up by one, and by one more where rounding carried.
    let steps = u64::try_from(last + 1074).unwrap_or(0);
    let bits = (steps << 52) + kept;
    if steps < 2046 && bits < f64::INFINITY.to_bits() {
        return f64::from_bits(bits);
    }
    f64::INFINITY
}

#[cfg(test)]
mod tests {
    use super::nearest;
    use proptest::prelude::{any, prop_assert_eq, proptest};

    /// The standard library rounds to nearest, ties to even.
    #[track_caller]
    fn check(text: &str) {
        let expected: f64 = text.parse().expect("the standard library reads it");
        let found = nearest(text).map(f64::to_bits);
        assert_eq!(found, Some(expected.to_bits()), "`{text}` is {expected:e}");
    }

    #[test]
    fn borders_are_met() {
        for text in [
            "0",
            "-0",
            "-0.0e5",
            "1",
            "0.1",
            "1E+2",
            "9007199254740993",
            "9007199254740992.5",
            "9007199254740993.0000001",
            "1e22",
            "1e23",
            "8.5e-5",
            "123456789012345678901234567890",
            "1.7976931348623157e308",
            "1.7976931348623158e308",
            "1.7976931348623159e308",
            "2.2250738585072014e-308",
            "2.2250738585072011e-308",
            "5e-324",
            "2.4703282292062327e-324",
            "2.4703282292062328e-324",
            "1e-400",
            "1e400",
            "1e99999999999999999999",
            "1e-99999999999999999999",
            "0e99999999999999999999",
            "0.000000000000000000000000000000000000001e39",
        ] {
            check(text);
        }
    }

    #[test]
    fn half_way_by_many_digits() {
        // 2^53 + 1 lies half-way; a digit nine hundred places on decides.
        let zeros = "0".repeat(900);
        check(&format!("9007199254740993.{zeros}1"));
        check(&format!("9007199254740993.{zeros}0"));
        check(&format!("0.{zeros}1e901"));
        check(&format!("{zeros}1{zeros}e-900"));
    }

    #[test]
    fn what_is_no_number_is_none() {
        for text in [
            "", ".", "-", "+1", "1x", "1e", "1e+x", "1e-", "1.2.3", "\u{661}", "1\u{661}",
        ] {
            assert_eq!(nearest(text), None, "`{text}`");
        }
    }

    proptest! {
        #[test]
        fn any_number_comes_back(bits in any::<u64>()) {
            let value = f64::from_bits(bits);
            if value.is_finite() {
                let text = format!("{value:e}");
                prop_assert_eq!(nearest(&text).map(f64::to_bits), Some(bits), "{}", text);
            }
        }

        #[test]
        fn any_digits_are_read_as_the_library_reads_them(digits in "[0-9]{1,40}", broken in "[0-9]{0,40}", power in -370_i32..330) {
            let text = format!("{digits}.{broken}e{power}");
            let expected: f64 = text.parse().unwrap_or(f64::NAN);
            prop_assert_eq!(nearest(&text).map(f64::to_bits), Some(expected.to_bits()), "{}", text);
        }

        #[test]
        fn what_people_type_is_read_as_the_library_reads_it(text in "-?[0-9]{1,9}(\\.[0-9]{0,9})?(e-?[0-9]{1,2})?") {
            let expected: f64 = text.parse().unwrap_or(f64::NAN);
            prop_assert_eq!(nearest(&text).map(f64::to_bits), Some(expected.to_bits()), "{}", text);
        }

        #[test]
        fn half_way_between_two_numbers_goes_to_the_even_one(bits in 0_u64..0x7fe0_0000_0000_0000, more in any::<bool>()) {
            // The sum of two neighbours over two, written out whole.
            let (low, high) = (f64::from_bits(bits), f64::from_bits(bits + 1));
            let text = format!("{:.1100}", low);
            let next = format!("{:.1100}", high);
            let mut half = halved(&text, &next);
            if more {
                half.push('1');
            }
            let expected: f64 = half.parse().unwrap_or(f64::NAN);
            prop_assert_eq!(nearest(&half).map(f64::to_bits), Some(expected.to_bits()), "{}", half);
        }
    }

    /// The mean of two plain decimal texts with as many decimals.
    fn halved(one: &str, other: &str) -> String {
        let width = one.len().max(other.len());
        let padded = |text: &str| format!("0{}{text}0", "0".repeat(width - text.len()));
        let mut carry = 0;
        let mut sum: Vec<u8> = Vec::new();
        for (a, b) in padded(one).bytes().zip(padded(other).bytes()).rev() {
            if a == b'.' {
                sum.push(a);
                continue;
            }
            let digit = a - b'0' + b - b'0' + carry;
            carry = digit / 10;
            sum.push(digit % 10);
        }
        let mut rest = 0;
        let signs = sum.into_iter().rev().map(|digit| {
            if digit == b'.' {
                return '.';
            }
            let whole = rest * 10 + digit;
            rest = whole % 2;
            char::from(b'0' + whole / 2)
        });
        signs.collect()
    }
}
