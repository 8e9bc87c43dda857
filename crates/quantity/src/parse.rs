//! Numbers as people type them: point or comma, any minus, thin or plain spaces between thousands.

use thiserror::Error;

use crate::decimal::nearest;
use crate::format::{MINUS, THIN_SPACE, UNIT_SPACE};

/// The narrow space without a break that some programs put between thousands.
const NARROW_SPACE: char = '\u{202f}';

/// Why a text is not a number, or not one with a unit of the quantity.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum ParseError {
    /// Nothing is there: type a number.
    #[error("nothing is typed, must be a number")]
    Empty,
    /// The number has begun and has no digit yet: go on typing.
    #[error("`{text}` is not a number yet")]
    Incomplete {
        /// What is there.
        text: String,
    },
    /// A sign that numbers do not have: take it away.
    #[error("`{found}` does not belong in a number such as 12.5")]
    Unexpected {
        /// The sign.
        found: char,
    },
    /// Two marks: leave one, and write spaces between thousands.
    #[error("`{text}` has two decimal marks; write spaces between thousands")]
    TwoMarks {
        /// What is there.
        text: String,
    },
    /// Spaces that do not stand between thousands: take them away.
    #[error("the spaces in `{text}` do not part it in threes")]
    Grouping {
        /// What is there.
        text: String,
    },
    /// More than a computer can count with.
    #[error("`{text}` is too large a number")]
    TooLarge {
        /// What is there.
        text: String,
    },
    /// A unit that is not one of the quantity's: write one that is.
    #[error("{quantity} has no unit `{unit}`, must be one of {known}")]
    UnknownUnit {
        /// What was to be read.
        quantity: &'static str,
        /// The unit typed.
        unit: String,
        /// The units that are understood.
        known: String,
    },
}

/// The number that a text holds.
///
/// Both marks are decimal marks, so `1,234` is a little more than one.
///
/// ```
/// use dewrun_quantity::parse::number;
/// assert_eq!(number("1,5"), Ok(1.5));
/// assert_eq!(number("\u{2212}12\u{2009}500.25"), Ok(-12_500.25));
/// assert!(number("-").is_err());
/// ```
///
/// # Errors
/// [`ParseError`] says what keeps it from being a number.
pub fn number(text: &str) -> Result<f64, ParseError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ParseError::Empty);
    }
    let unsigned = text.strip_prefix(['-', '+', MINUS]).unwrap_or(text);
    let (mantissa, exponent) = unsigned
        .split_once(['e', 'E'])
        .map_or((unsigned, None), |(mantissa, rest)| (mantissa, Some(rest)));
    let mut plain = String::new();
    if text.starts_with(['-', MINUS]) {
        plain.push('-');
    }
    push_mantissa(&mut plain, mantissa, text)?;
    if let Some(exponent) = exponent {
        push_exponent(&mut plain, exponent, text)?;
    }
    let value: f64 = nearest(&plain).ok_or_else(|| incomplete(text))?;
    if !value.is_finite() {
        return Err(ParseError::TooLarge {
            text: text.to_owned(),
        });
    }
    Ok(value)
}

/// Parts a text into its number and the unit after it, which may be empty.
///
/// ```
/// use dewrun_quantity::parse::split_unit;
/// assert_eq!(split_unit("1 200 Pa"), ("1 200", "Pa"));
/// assert_eq!(split_unit("32C"), ("32", "C"));
/// ```
#[must_use]
pub fn split_unit(text: &str) -> (&str, &str) {
    let text = text.trim();
    let end = text
        .char_indices()
        .find(|&(at, sign)| !is_of_number(text, at, sign))
        .map_or(text.len(), |(at, _)| at);
    let (number, unit) = text.split_at(end);
    (number.trim_end(), unit)
}

fn is_of_number(text: &str, at: usize, sign: char) -> bool {
    if sign.is_ascii_digit() || is_space(sign) || ['.', ','].contains(&sign) {
        return true;
    }
    let before = text.get(..at).and_then(|before| before.chars().next_back());
    if ['-', '+', MINUS].contains(&sign) {
        return matches!(before, None | Some('e' | 'E'));
    }
    let mut after = text.get(at + sign.len_utf8()..).unwrap_or("").chars();
    let follows = match after.next() {
        Some('-' | '+' | MINUS) => after.next(),
        next => next,
    };
    ['e', 'E'].contains(&sign)
        && before.is_some_and(|before| before.is_ascii_digit())
        && follows.is_some_and(|next| next.is_ascii_digit())
}

fn is_space(sign: char) -> bool {
    [' ', THIN_SPACE, UNIT_SPACE, NARROW_SPACE].contains(&sign)
}

fn push_mantissa(plain: &mut String, mantissa: &str, text: &str) -> Result<(), ParseError> {
    let mut parts = mantissa.split(['.', ',']);
    let whole = parts.next().unwrap_or("");
    let broken = parts.next().unwrap_or("");
    if parts.next().is_some() {
        return Err(ParseError::TwoMarks {
            text: text.to_owned(),
        });
    }
    if whole.is_empty() && broken.is_empty() {
        return Err(incomplete(text));
    }
    push_whole(plain, whole, text)?;
    plain.push('.');
    push_digits(plain, broken)
}

/// The part before the mark, with spaces between thousands or with none.
fn push_whole(plain: &mut String, whole: &str, text: &str) -> Result<(), ParseError> {
    for (at, group) in whole.split(is_space).enumerate() {
        push_digits(plain, group)?;
        let is_first_of_many = at == 0 && group.len() < whole.len();
        let fits = match (at, is_first_of_many) {
            (0, false) => true,
            (0, true) => (1..=3).contains(&group.len()),
            _ => group.len() == 3,
        };
        if !fits {
            return Err(ParseError::Grouping {
                text: text.to_owned(),
            });
        }
    }
    Ok(())
}

fn push_exponent(plain: &mut String, exponent: &str, text: &str) -> Result<(), ParseError> {
    let digits = exponent.strip_prefix(['-', '+', MINUS]).unwrap_or(exponent);
    if digits.is_empty() {
        return Err(incomplete(text));
    }
    plain.push('e');
    if exponent.starts_with(['-', MINUS]) {
        plain.push('-');
    }
    push_digits(plain, digits)
}

fn push_digits(plain: &mut String, digits: &str) -> Result<(), ParseError> {
    for found in digits.chars() {
        if !found.is_ascii_digit() {
            return Err(ParseError::Unexpected { found });
        }
        plain.push(found);
    }
    Ok(())
}

fn incomplete(text: &str) -> ParseError {
    ParseError::Incomplete {
        text: text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{ParseError, number, split_unit};
    use proptest::prelude::{Strategy, any, prop_assert_eq, proptest};

    #[track_caller]
    fn check(text: &str, expected: f64) {
        assert_eq!(number(text), Ok(expected), "`{text}` is a number");
    }

    /// The keys of case F01: minus, one, point, five, then two deletions.
    #[test]
    fn a_number_is_understood_at_every_key() {
        let read: Vec<Option<f64>> = ["-", "-1", "-1.", "-1.5", "-1.", "-1"]
            .iter()
            .map(|text| number(text).ok())
            .collect();
        let expected = [
            None,
            Some(-1.0),
            Some(-1.0),
            Some(-1.5),
            Some(-1.0),
            Some(-1.0),
        ];
        assert_eq!(read, expected, "only the lone minus is no number");
    }

    #[test]
    fn marks_signs_and_spaces_of_many_hands() {
        check("1,5", 1.5);
        check(".5", 0.5);
        check(" 12 ", 12.0);
        check("+3", 3.0);
        check("\u{2212}0,25", -0.25);
        check("1\u{2009}234\u{2009}567.5", 1_234_567.5);
        check("1\u{202f}234", 1234.0);
        check("12\u{a0}000", 12_000.0);
        check("1.2e-5", 1.2e-5);
        check("1,2E\u{2212}5", 1.2e-5);
    }

    #[test]
    fn what_is_no_number_says_why() {
        let text = |text: &str| text.to_owned();
        assert_eq!(number(" "), Err(ParseError::Empty), "nothing is there");
        assert_eq!(
            number("."),
            Err(ParseError::Incomplete { text: text(".") }),
            "no digit yet"
        );
        assert_eq!(
            number("1e"),
            Err(ParseError::Incomplete { text: text("1e") }),
            "no exponent yet"
        );
        assert_eq!(
            number("1,234.5"),
            Err(ParseError::TwoMarks {
                text: text("1,234.5")
            }),
            "two marks"
        );
        assert_eq!(
            number("12 34"),
            Err(ParseError::Grouping {
                text: text("12 34")
            }),
            "not in threes"
        );
        assert_eq!(
            number("1234 567"),
            Err(ParseError::Grouping {
                text: text("1234 567")
            }),
            "first group too long"
        );
        assert_eq!(
            number("12a"),
            Err(ParseError::Unexpected { found: 'a' }),
            "a letter"
        );
        assert_eq!(
            number("1e999"),
            Err(ParseError::TooLarge {
                text: text("1e999")
            }),
            "beyond counting"
        );
        assert!(
            number("NaN").is_err() && number("inf").is_err(),
            "no names of odd numbers"
        );
    }

    #[test]
    fn a_unit_is_parted_from_its_number() {
        assert_eq!(split_unit("26 \u{b0}C"), ("26", "\u{b0}C"), "after a space");
        assert_eq!(split_unit("1e5Pa"), ("1e5", "Pa"), "after an exponent");
        assert_eq!(split_unit("-1.5"), ("-1.5", ""), "none");
        assert_eq!(split_unit("30 L/min"), ("30", "L/min"), "with a slash");
        assert_eq!(split_unit("5 e"), ("5", "e"), "an e that is no exponent");
    }

    proptest! {
        #[test]
        fn any_finite_number_is_read_as_rust_writes_it(value in any::<f64>().prop_filter("finite", |value| value.is_finite())) {
            prop_assert_eq!(number(&value.to_string()), Ok(value));
        }

        #[test]
        fn no_text_brings_it_down(text in "\\PC{0,24}") {
            let (first, unit) = split_unit(&text);
            prop_assert_eq!(first.len() + unit.len() <= text.len(), true);
            let _ = number(&text);
        }
    }
}
