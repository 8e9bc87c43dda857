//! Bytes of a cell to a number, quickly: with a decimal point or comma, with marks between thousands.

use dewrun_quantity::DecimalMark;
use dewrun_quantity::decimal::nearest;

/// The mark itself, and the one that may stand between thousands then.
const fn marks(mark: DecimalMark) -> (u8, u8) {
    match mark {
        DecimalMark::Point => (b'.', b','),
        DecimalMark::Comma => (b',', b'.'),
    }
}

/// Whole numbers up to this and these powers of ten are exact, so one division rounds once.
const EXACT: u64 = 1 << 53;
const POWERS: [f64; 16] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
];
/// Longest text that is looked at as a number.
const LONGEST: usize = 64;

/// The number in a cell, none where it holds anything else.
///
/// Signs, a decimal mark, an exponent, marks or spaces between thousands, quotes around and a unit sign `%` or `°` after are understood.
pub(crate) fn number(cell: &[u8], mark: DecimalMark) -> Option<f64> {
    let (mark, thousands) = marks(mark);
    plain(cell, mark).or_else(|| odd(cell, char::from(mark), char::from(thousands)))
}

/// Sign, digits, mark, digits: nearly all cells; exact by one division.
fn plain(cell: &[u8], mark: u8) -> Option<f64> {
    let (is_negative, digits) = match cell {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        _ => (false, cell),
    };
    let (mut whole, mut broken, mut seen, mut after_mark) = (0_u64, 0_usize, false, false);
    for sign in digits {
        if sign.is_ascii_digit() {
            whole = whole.checked_mul(10)?.checked_add(u64::from(sign & 0xf))?;
            seen = true;
            broken += usize::from(after_mark);
        } else if *sign == mark && !after_mark {
            after_mark = true;
        } else {
            return None;
        }
    }
    if !seen || EXACT < whole {
        return None;
    }
    #[allow(clippy::cast_precision_loss, reason = "at most 2^53, so exact")]
    let size = whole as f64 / POWERS.get(broken)?;
    Some(if is_negative { -size } else { size })
}

/// Everything else that people and programs write for a number.
fn odd(cell: &[u8], mark: char, thousands: char) -> Option<f64> {
    let cell = cell.trim_ascii();
    let cell = cell.strip_prefix(b"\"").unwrap_or(cell);
    let cell = cell.strip_suffix(b"\"").unwrap_or(cell).trim_ascii();
    if LONGEST < cell.len() || !cell.iter().any(u8::is_ascii_digit) {
        return None;
    }
    let mut text = String::with_capacity(cell.len());
    let letters = String::from_utf8_lossy(cell);
    let letters = letters.trim_end_matches(['%', '°', '\u{fffd}']).trim_end();
    let mut groups = Groups::default();
    for sign in letters.chars() {
        match sign {
            '0'..='9' => text.push(sign),
            '\u{2212}' | '-' => text.push('-'),
            'e' | 'E' => text.push('e'),
            '+' if text.is_empty() || text.ends_with('e') => {}
            _ if sign == mark => text.push('.'),
            ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}' | '\'' | '\u{2019}' => groups.after(&text)?,
            _ if sign == thousands => groups.after(&text)?,
            _ => return None,
        }
    }
    groups.close(&text)?;
    nearest(&text).filter(|value| value.is_finite())
}

/// Marks between thousands: three digits after each, one to three before the first, none after the decimal mark.
#[derive(Default)]
struct Groups {
    ended_at: Option<usize>,
}

impl Groups {
    fn after(&mut self, text: &str) -> Option<()> {
        let digits = text.strip_prefix('-').unwrap_or(text);
        let fits = !text.contains(['.', 'e'])
            && match self.ended_at {
                None => (1..=3).contains(&digits.len()),
                Some(before) => text.len() == before + 3,
            };
        self.ended_at = Some(text.len());
        fits.then_some(())
    }

    fn close(&self, text: &str) -> Option<()> {
        let Some(before) = self.ended_at else {
            return Some(());
        };
        let whole = text.split(['.', 'e']).next().unwrap_or("");
        (whole.len() == before + 3).then_some(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{prop_assert_eq, proptest};

    #[track_caller]
    fn check(text: &str, mark: DecimalMark, expected: Option<f64>) {
        assert_eq!(number(text.as_bytes(), mark), expected, "`{text}`");
    }

    #[test]
    fn numbers_of_many_hands() {
        use DecimalMark::{Comma, Point};
        check("21.5", Point, Some(21.5));
        check("-0.00", Point, Some(0.0));
        check("+3", Point, Some(3.0));
        check(".5", Point, Some(0.5));
        check("8,0", Comma, Some(8.0));
        check("\u{2212}3,5", Comma, Some(-3.5));
        check("1,013.25", Point, Some(1013.25));
        check("1.013,25", Comma, Some(1013.25));
        check("101 325", Point, Some(101_325.0));
        check("1\u{a0}013,2", Comma, Some(1013.2));
        check("1'013.2", Point, Some(1013.2));
        check("65 %", Point, Some(65.0));
        check("\"12.5\"", Point, Some(12.5));
        check("2.1E+01", Point, Some(21.0));
        check("1e-3", Point, Some(0.001));
    }

    #[test]
    fn what_is_no_number() {
        use DecimalMark::{Comma, Point};
        for text in [
            "",
            "-",
            ".",
            "----",
            "NaN",
            "inf",
            "12a",
            "1 23",
            "1,23.5",
            "1.5,000",
            "1e999",
            "C",
            "12:30",
            "2024-06-01",
        ] {
            check(text, Point, None);
        }
        check("8,0,0", Comma, None);
        check("1.2", Comma, None);
    }

    proptest! {
        #[test]
        fn a_short_number_is_the_nearest_one(whole in -100_000_i64..100_000, broken in 0_u32..100_000, digits in 0_usize..6) {
            let text = format!("{whole}.{:0digits$}", broken % 10_u32.pow(u32::try_from(digits).expect("small")));
            prop_assert_eq!(number(text.as_bytes(), DecimalMark::Point), text.parse().ok());
        }

        #[test]
        fn no_bytes_bring_it_down(bytes in proptest::collection::vec(0_u8..=255, 0..30)) {
            let _ = number(&bytes, DecimalMark::Comma);
        }
    }
}
