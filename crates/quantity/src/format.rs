//! Numbers as people read them: two or three digits, a true minus, thin spaces between thousands.
//!
//! [`crate::parse`] reads back whatever is written here.

use crate::decimal::Digits;

/// The thin space between thousands.
pub const THIN_SPACE: char = '\u{2009}';
/// The space between a number and its unit, at which no line breaks.
pub const UNIT_SPACE: char = '\u{a0}';
/// The minus sign.
pub const MINUS: char = '\u{2212}';
/// What stands where a number does not apply.
pub const DOES_NOT_APPLY: &str = "\u{2013}";

/// Digits that a typed number keeps when it is shown again: enough for any reading, too few for the dust of unit conversion.
const ENTERED_DIGITS: usize = 10;

/// Digits that a number never has more of after rounding.
const ROUNDED_DIGITS: usize = 15;

/// The sign between whole and broken part of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DecimalMark {
    /// A point: 1.5.
    #[default]
    Point,
    /// A comma: 1,5.
    Comma,
}

/// With so many decimals, zeros included.
///
/// ```
/// use dewrun_quantity::format::{DecimalMark, fixed};
/// assert_eq!(fixed(-17.64, 1, DecimalMark::Point), "\u{2212}17.6");
/// assert_eq!(fixed(101_325.0, 0, DecimalMark::Point), "101\u{2009}325");
/// ```
#[must_use]
pub fn fixed(value: f64, decimals: usize, mark: DecimalMark) -> String {
    if !value.is_finite() {
        return DOES_NOT_APPLY.to_owned();
    }
    dressed(
        value,
        &Digits::of(value).decimals(decimals).text(decimals),
        mark,
    )
}

/// With so many decimals, zeros included, for programs: the minus of a keyboard, a point, no spaces.
///
/// ```
/// use dewrun_quantity::format::machine;
/// assert_eq!(machine(-1234.56, 1), "-1234.6");
/// ```
#[must_use]
pub fn machine(value: f64, decimals: usize) -> String {
    fixed(value, decimals, DecimalMark::Point)
        .replace(MINUS, "-")
        .replace(THIN_SPACE, "")
}

/// Rounded to so many significant digits, with no more than so many decimals.
///
/// ```
/// use dewrun_quantity::format::{DecimalMark, significant};
/// assert_eq!(significant(10.649, 3, 1, DecimalMark::Comma), "10,6");
/// assert_eq!(significant(12_345.0, 3, 1, DecimalMark::Point), "12\u{2009}300");
/// assert_eq!(significant(0.04, 3, 1, DecimalMark::Point), "0.0");
/// assert_eq!(significant(6.52, 2, 0, DecimalMark::Point), "7");
/// ```
#[must_use]
pub fn significant(value: f64, digits: usize, decimals: usize, mark: DecimalMark) -> String {
    if !value.is_finite() {
        return DOES_NOT_APPLY.to_owned();
    }
    let rounded = rounded(value, digits);
    let own = decimals_of(rounded, digits);
    // Rounded once: what was rounded to its digits may end in a five that the value does not have.
    if decimals < own {
        fixed(value, decimals, mark)
    } else {
        fixed(rounded, own, mark)
    }
}

/// An amount that is never negative: "0" where there is none, "under 0.1" where there is less than can be shown, else up to three digits.
///
/// ```
/// use dewrun_quantity::format::{DecimalMark, amount};
/// assert_eq!(amount(0.0, 1, DecimalMark::Point), "0");
/// assert_eq!(amount(0.03, 1, DecimalMark::Point), "under 0.1");
/// assert_eq!(amount(10.649, 1, DecimalMark::Point), "10.6");
/// ```
#[must_use]
pub fn amount(value: f64, decimals: usize, mark: DecimalMark) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let shown = significant(value, 3, decimals, mark);
    if value < 0.0 || shown.contains(|sign: char| ('1'..='9').contains(&sign)) {
        return shown;
    }
    let least = if decimals == 0 {
        "1".to_owned()
    } else {
        dressed(1.0, &format!("0.{}1", "0".repeat(decimals - 1)), mark)
    };
    format!("under {least}")
}

/// A number that somebody entered, with all the digits it has and no more.
///
/// ```
/// use dewrun_quantity::{Length, format::entered};
/// assert_eq!(entered(Length::inches(0.75).to_millimetres()), "19.05");
/// assert_eq!(entered(-4.0), "\u{2212}4");
/// ```
#[must_use]
pub fn entered(value: f64) -> String {
    entered_with(value, DecimalMark::Point)
}

/// As [`entered`], with the decimal mark of one's choice.
#[must_use]
pub fn entered_with(value: f64, mark: DecimalMark) -> String {
    if !value.is_finite() {
        return DOES_NOT_APPLY.to_owned();
    }
    dressed(
        value,
        &Digits::of(value).significant(ENTERED_DIGITS).text(0),
        mark,
    )
}

/// The nearest number with so many significant digits; arithmetic would not round correctly.
fn rounded(value: f64, digits: usize) -> f64 {
    Digits::of(value)
        .significant(digits)
        .value()
        .copysign(value)
}

/// How many decimals a number needs to show so many significant digits.
fn decimals_of(value: f64, digits: usize) -> usize {
    // A rounded number may lie a little below its own first digit.
    let power = Digits::of(value).significant(ROUNDED_DIGITS).power();
    let whole = i64::try_from(digits).unwrap_or(0) - 1;
    usize::try_from(whole - power).unwrap_or(0)
}

/// Plain decimal text of a size with true minus, thin spaces and the mark.
fn dressed(value: f64, digits: &str, mark: DecimalMark) -> String {
    let (whole, broken) = digits.split_once('.').unwrap_or((digits, ""));
    let is_zero = digits.chars().all(|sign| sign == '0' || sign == '.');
    let mut text = String::new();
    if value < 0.0 && !is_zero {
        text.push(MINUS);
    }
    for (at, digit) in whole.chars().enumerate() {
        if at != 0 && (whole.len() - at) % 3 == 0 {
            text.push(THIN_SPACE);
        }
        text.push(digit);
    }
    if !broken.is_empty() {
        text.push(match mark {
            DecimalMark::Point => '.',
            DecimalMark::Comma => ',',
        });
        text.push_str(broken);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::{DecimalMark, amount, entered, fixed, significant};
    use crate::parse;
    use proptest::prelude::{any, prop_assert, proptest};

    #[track_caller]
    fn check(shown: &str, expected: &str) {
        assert_eq!(shown, expected, "a number is shown as people write it");
    }

    #[test]
    fn nothing_is_zero_without_a_sign() {
        check(&fixed(-0.04, 1, DecimalMark::Point), "0.0");
        check(&fixed(-0.0, 0, DecimalMark::Point), "0");
        check(&amount(-0.0, 1, DecimalMark::Point), "0");
    }

    #[test]
    fn rounding_carries_into_the_next_digit() {
        check(&significant(9.996, 3, 2, DecimalMark::Point), "10.0");
        check(
            &significant(999.6, 3, 1, DecimalMark::Point),
            "1\u{2009}000",
        );
        check(&significant(0.0996, 2, 4, DecimalMark::Point), "0.10");
    }

    #[test]
    fn too_little_to_show_is_said_in_words() {
        check(&amount(0.049, 1, DecimalMark::Comma), "under 0,1");
        check(&amount(0.4, 0, DecimalMark::Point), "under 1");
        check(&amount(0.051, 1, DecimalMark::Point), "0.1");
        check(&amount(-0.01, 1, DecimalMark::Point), "0.0");
    }

    #[test]
    fn what_is_no_number_does_not_apply() {
        check(&fixed(f64::NAN, 1, DecimalMark::Point), "\u{2013}");
        check(&entered(f64::INFINITY), "\u{2013}");
        check(&significant(f64::NAN, 3, 1, DecimalMark::Point), "\u{2013}");
    }

    proptest! {
        #[test]
        fn what_is_shown_is_read_back(value in -1e9..1e9_f64, decimals in 0_usize..6, comma in any::<bool>()) {
            let mark = if comma { DecimalMark::Comma } else { DecimalMark::Point };
            let shown = fixed(value, decimals, mark);
            let step = format!("1e-{decimals}").parse::<f64>().unwrap_or(1.0);
            let read = parse::number(&shown);
            prop_assert!(read.as_ref().is_ok_and(|read| (read - value).abs() <= 0.5001 * step + value.abs() * f64::EPSILON), "{value} was shown as {shown} and read as {read:?}");
        }

        #[test]
        fn an_entered_number_comes_back_whole(value in -1_000_000_000_i64..1_000_000_000, scale in 0_i32..7) {
            let value: f64 = format!("{value}e-{scale}").parse().unwrap_or(0.0);
            let shown = entered(value);
            prop_assert!(parse::number(&shown) == Ok(value), "{value} was shown as {shown}");
        }

        #[test]
        fn significant_digits_are_within_half_a_step(value in -1e7..1e7_f64, digits in 1_usize..6) {
            let shown = significant(value, digits, 12, DecimalMark::Point);
            let step = format!("5e-{digits}").parse::<f64>().unwrap_or(1.0);
            let read = parse::number(&shown);
            prop_assert!(read.as_ref().is_ok_and(|read| (read - value).abs() <= 10.0 * step * value.abs() + 1e-12), "{value} to {digits} digits was shown as {shown}");
        }
    }
}
