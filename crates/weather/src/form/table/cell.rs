//! One cell of a reading to a number.

use dewrun_quantity::DecimalMark;

use crate::number::number;

/// Longest unit that may stand behind a number in its cell, bytes.
const LONGEST_UNIT: usize = 8;

/// The number of a cell, with a unit behind it or none.
pub(super) fn value(cell: &[u8], mark: DecimalMark) -> Option<f64> {
    number(cell, mark).or_else(|| with_unit(cell, mark))
}

/// `21.5 °C`, `65%RH`, `1013hPa`: the number before a short word.
pub(super) fn with_unit(cell: &[u8], mark: DecimalMark) -> Option<f64> {
    if !cell
        .first()
        .is_some_and(|sign| sign.is_ascii_digit() || matches!(sign, b'-' | b'+' | b'.'))
    {
        return None;
    }
    let end = cell.iter().rposition(u8::is_ascii_digit)? + 1;
    let (digits, unit) = (cell.get(..end)?, cell.get(end..)?.trim_ascii());
    let is_unit = !unit.is_empty()
        && !matches!(unit, b"e" | b"E")
        && unit.len() <= LONGEST_UNIT
        && unit.iter().all(|sign| {
            sign.is_ascii_alphabetic() || matches!(sign, b'%' | b'/' | b'*') || 0x80 <= *sign
        });
    let plain = digits
        .iter()
        .all(|sign| sign.is_ascii_digit() || matches!(sign, b'-' | b'+' | b'.' | b','));
    number(digits, mark).filter(|_| is_unit && plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_behind_a_number_is_passed_over() {
        let read = |text: &str| value(text.as_bytes(), DecimalMark::Point);
        assert_eq!(read("21.5 °C"), Some(21.5), "with a space");
        assert_eq!(read("65%RH"), Some(65.0), "without");
        assert_eq!(read("-3.2F"), Some(-3.2), "negative");
        assert_eq!(read("1013 hPa"), Some(1013.0), "pressure");
        for text in [
            "C",
            "12:30",
            "2024-06-01",
            "3 of 5",
            "station1",
            "1e",
            "12 degrees of frost",
        ] {
            assert_eq!(read(text), None, "`{text}`");
        }
    }
}
