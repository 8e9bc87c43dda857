//! One cell to a date and a time, sign by sign.

use super::civil::day_of;
use super::stamp::{DateForm, NO_OFFSET, NO_TIME, Stamp};
use super::words;

/// A time of its own column: as in [`parse`], or `HHMM`, `HHMMSS` and whole hours without marks.
pub(crate) fn time_alone(cell: &[u8]) -> Option<Stamp> {
    if let Some(stamp) = parse(cell).filter(|stamp| stamp.has_time() && !stamp.has_date()) {
        return Some(stamp);
    }
    let cell = cell.trim_ascii();
    if cell.is_empty() || 6 < cell.len() || !cell.iter().all(u8::is_ascii_digit) {
        return None;
    }
    let value = cell
        .iter()
        .fold(0_i32, |sum, digit| sum * 10 + i32::from(digit & 0xf));
    let seconds = match cell.len() {
        1 | 2 => value * 3600,
        3 | 4 => clock(value / 100, value % 100, 0)?,
        _ => clock(value / 10_000, value / 100 % 100, value % 100)?,
    };
    (seconds <= 86_400).then(|| Stamp {
        form: DateForm::None,
        ..Stamp::fixed([0; 3], seconds)
    })
}

/// What is met on the way through a cell.
struct Parts {
    numbers: [(u32, usize); 3],
    count: usize,
    month: Option<(u16, usize)>,
    seconds: i32,
    half: Option<bool>,
    offset_min: i16,
    has_points: bool,
}

struct Cursor<'a> {
    rest: &'a [u8],
}

impl<'a> Cursor<'a> {
    fn peek(&self) -> Option<u8> {
        self.rest.first().copied()
    }

    fn skip(&mut self) {
        self.rest = self.rest.get(1..).unwrap_or_default();
    }

    fn take(&mut self, is_part: impl Fn(u8) -> bool) -> &'a [u8] {
        let end = self
            .rest
            .iter()
            .position(|sign| !is_part(*sign))
            .unwrap_or(self.rest.len());
        let (part, rest) = self.rest.split_at(end);
        self.rest = rest;
        part
    }

    /// Digits and how many; none where there are more than fit a date.
    fn number(&mut self) -> Option<(u64, usize)> {
        let digits = self.take(|sign| sign.is_ascii_digit());
        if digits.is_empty() || 14 < digits.len() {
            return None;
        }
        let value = digits
            .iter()
            .fold(0_u64, |sum, digit| sum * 10 + u64::from(digit & 0xf));
        Some((value, digits.len()))
    }
}

/// Longest cell that is looked at as a stamp.
const LONGEST: usize = 48;

/// The date, the time or both that a cell holds; none where it holds anything else.
pub(crate) fn parse(cell: &[u8]) -> Option<Stamp> {
    if LONGEST < cell.len() || !cell.iter().any(u8::is_ascii_digit) {
        return None;
    }
    let mut cursor = Cursor { rest: cell };
    let mut parts = Parts {
        numbers: [(0, 0); 3],
        count: 0,
        month: None,
        seconds: NO_TIME,
        half: None,
        offset_min: NO_OFFSET,
        has_points: false,
    };
    while let Some(sign) = cursor.peek() {
        match sign {
            b'0'..=b'9' => parts.number(&mut cursor)?,
            b'+' | b'-' if parts.seconds != NO_TIME && parts.is_whole() => {
                parts.offset(&mut cursor)?
            }
            b'-' | b'/' | b',' | b' ' | b'_' | b'"' | b'(' | b')' | b'\'' => cursor.skip(),
            b'T' if matches!(cursor.rest, [_, b'0'..=b'9', ..]) => cursor.skip(),
            b'.' => {
                parts.has_points |= parts.seconds == NO_TIME;
                cursor.skip();
            }
            _ => parts.word(&mut cursor)?,
        }
    }
    parts.finish()
}

impl Parts {
    fn has_date(&self) -> bool {
        self.count + usize::from(self.month.is_some()) == 3
    }

    fn is_whole(&self) -> bool {
        self.has_date() || self.count == 0
    }

    fn number(&mut self, cursor: &mut Cursor<'_>) -> Option<()> {
        let (value, digits) = cursor.number()?;
        if digits <= 2 && self.seconds == NO_TIME {
            let between = match cursor.rest {
                [b':', ..] => Some(b':'),
                // `13.06.2024 13.00` and `13h30`: after a whole date alone.
                [mark @ (b'.' | b'h' | b'H'), b'0'..=b'9', b'0'..=b'9', ..] if self.has_date() => {
                    Some(*mark)
                }
                _ => None,
            };
            if let Some(between) = between {
                return self.clock(i32::try_from(value).ok()?, between, cursor);
            }
        }
        match digits {
            8 | 10 | 12 | 14 if self.count == 0 && self.month.is_none() => {
                self.run(value, digits, cursor)
            }
            _ if self.count < 3 && digits <= 4 && !(self.count == 2 && self.month.is_some()) => {
                let place = self.numbers.get_mut(self.count)?;
                *place = (u32::try_from(value).ok()?, digits);
                self.count += 1;
                Some(())
            }
            // An hour or hour and minute without a colon, after a whole date.
            2 | 4 | 6 if self.has_date() && self.seconds == NO_TIME => {
                self.seconds = unmarked(value, digits)?;
                Some(())
            }
            _ => None,
        }
    }

    /// `YYYYMMDD`, with hour, minute and second behind it or after a colon, a `T` or a space.
    fn run(&mut self, value: u64, digits: usize, cursor: &mut Cursor<'_>) -> Option<()> {
        let power = 10_u64.pow(u32::try_from(digits - 8).ok()?);
        let date = u32::try_from(value / power).ok()?;
        let parts = [date / 10_000, date / 100 % 100, date % 100];
        let [year, month, day] = parts.map(|part| u16::try_from(part).unwrap_or(u16::MAX));
        day_of(year, month, day).filter(|_| (1800..2300).contains(&year))?;
        self.numbers = [(parts[0], 4), (parts[1], 2), (parts[2], 2)];
        self.count = 3;
        if 8 < digits {
            self.seconds = unmarked(value % power, digits - 8)?;
            return Some(());
        }
        if cursor.peek() == Some(b':') {
            cursor.skip();
            let (value, digits) = cursor.number()?;
            self.seconds = unmarked(value, digits)?;
        }
        Some(())
    }

    fn clock(&mut self, hour: i32, between: u8, cursor: &mut Cursor<'_>) -> Option<()> {
        let mut rest = [0_i32; 2];
        for place in &mut rest {
            if cursor.peek() != Some(between) {
                break;
            }
            cursor.skip();
            let (value, digits) = cursor.number()?;
            *place = i32::try_from(value).ok().filter(|_| digits <= 2)?;
        }
        // Broken seconds, or thousandths after another colon, are too fine for what follows.
        if matches!(cursor.peek(), Some(b'.' | b',' | b':')) {
            cursor.skip();
            cursor.take(|sign| sign.is_ascii_digit());
        }
        self.seconds = clock(hour, rest[0], rest[1])?;
        Some(())
    }

    fn word(&mut self, cursor: &mut Cursor<'_>) -> Option<()> {
        let letters = cursor.take(|sign| sign.is_ascii_alphabetic() || 0x80 <= sign);
        if letters.is_empty() {
            return None;
        }
        let word = crate::column::names::folded(letters);
        match word.as_str() {
            "t" => {}
            "z" => self.offset_min = 0,
            "am" | "vorm" => self.half = Some(false),
            "pm" | "nachm" => self.half = Some(true),
            "a" | "p" if self.seconds != NO_TIME => {
                cursor.take(|sign| matches!(sign, b'.' | b' ' | b'm' | b'M'));
                self.half = Some(word == "p");
            }
            "h" | "uhr" | "m" | "s" => {}
            _ => {
                let zone = words::zone(&word).filter(|_| self.seconds != NO_TIME);
                if let Some(hours) = zone {
                    self.offset_min = 60 * hours;
                } else if let Some(month) = words::month(&word).filter(|_| self.month.is_none()) {
                    self.month = Some((month, self.count));
                } else if !words::is_passed_over(&word) {
                    return None;
                }
            }
        }
        Some(())
    }

    /// Hours, or hours and minutes, east or west of UTC.
    fn offset(&mut self, cursor: &mut Cursor<'_>) -> Option<()> {
        let is_west = cursor.peek() == Some(b'-');
        cursor.skip();
        let (value, digits) = cursor.number()?;
        let (hours, mut minutes) = if digits <= 2 {
            (value, 0)
        } else {
            (value / 100, value % 100)
        };
        if cursor.peek() == Some(b':') {
            cursor.skip();
            minutes = cursor.number()?.0;
        }
        let all = i16::try_from(hours * 60 + minutes)
            .ok()
            .filter(|all| *all <= 24 * 60)?;
        self.offset_min = if is_west { -all } else { all };
        Some(())
    }

    fn finish(self) -> Option<Stamp> {
        let seconds = match (self.half, self.seconds) {
            (Some(_), NO_TIME) => return None,
            (Some(is_late), seconds) => twelve_hours(seconds, is_late),
            (None, seconds) => seconds,
        };
        let (date, form) = self.date()?;
        if form == DateForm::None && seconds == NO_TIME {
            return None;
        }
        Some(Stamp {
            date,
            form,
            seconds,
            offset_min: self.offset_min,
            has_half: self.half.is_some(),
            has_points: self.has_points,
        })
    }

    fn date(&self) -> Option<([u16; 3], DateForm)> {
        let [first, second, third] = self.numbers;
        let small = |value: u32| u16::try_from(value).ok();
        match (self.month, self.count) {
            (None, 0) => Some(([0; 3], DateForm::None)),
            (Some((month, _)), 2) => {
                let is_year_first = first.1 == 4;
                let (year, day) = if is_year_first {
                    (first, second)
                } else {
                    (second, first)
                };
                let date = [century(small(year.0)?, year.1)?, month, small(day.0)?];
                day_of(date[0], date[1], date[2])?;
                Some((date, DateForm::Fixed))
            }
            (None, 3) => {
                let date = [small(first.0)?, small(second.0)?, small(third.0)?];
                let form = match (first.1, second.1, third.1) {
                    (4, 1 | 2, 1 | 2) => {
                        day_of(date[0], date[1], date[2])?;
                        DateForm::Fixed
                    }
                    (1 | 2, 1 | 2, 4) => DateForm::YearLast,
                    (1 | 2, 1 | 2, 2) => DateForm::Short,
                    _ => return None,
                };
                Some((date, form))
            }
            _ => None,
        }
    }
}

pub(super) fn clock(hour: i32, minute: i32, second: i32) -> Option<i32> {
    let fits = minute <= 60 && second <= 60;
    let seconds = hour * 3600 + minute * 60 + second;
    (fits && seconds <= 86_400).then_some(seconds)
}

/// The year that two digits mean; four stand for themselves.
pub(super) fn century(year: u16, digits: usize) -> Option<u16> {
    match digits {
        4 => Some(year),
        1 | 2 => Some(if year < 70 { 2000 + year } else { 1900 + year }),
        _ => None,
    }
}

/// Twelve is the first hour of either half of the day.
const fn twelve_hours(seconds: i32, is_late: bool) -> i32 {
    let hour = seconds / 3600;
    match (is_late, hour) {
        (false, 12) => seconds - 12 * 3600,
        (true, 0..=11) => seconds + 12 * 3600,
        _ => seconds,
    }
}

/// `HH`, `HHMM` or `HHMMSS` in seconds.
fn unmarked(value: u64, digits: usize) -> Option<i32> {
    let value = i32::try_from(value).ok()?;
    match digits {
        1 | 2 => clock(value, 0, 0),
        3 | 4 => clock(value / 100, value % 100, 0),
        6 => clock(value / 10_000, value / 100 % 100, value % 100),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{any, proptest};

    #[track_caller]
    fn check(text: &str, date: [u16; 3], form: DateForm, time: &str) {
        let stamp = parse(text.as_bytes()).unwrap_or_else(|| panic!("`{text}` is a stamp"));
        let (hour, minute, second) = (
            stamp.seconds / 3600,
            stamp.seconds / 60 % 60,
            stamp.seconds % 60,
        );
        let found = if stamp.has_time() {
            format!("{hour:02}:{minute:02}:{second:02}")
        } else {
            String::new()
        };
        assert_eq!(
            (stamp.date, stamp.form, found.as_str()),
            (date, form, time),
            "`{text}`"
        );
    }

    #[test]
    fn stamps_of_many_hands() {
        use DateForm::{Fixed, None, Short, YearLast};
        check("2026-07-01 00:10", [2026, 7, 1], Fixed, "00:10:00");
        check("2026-07-01T13:10:59.123Z", [2026, 7, 1], Fixed, "13:10:59");
        check("2021/7/6 4:05:06", [2021, 7, 6], Fixed, "04:05:06");
        check("20180101:0000", [2018, 1, 1], Fixed, "00:00:00");
        check("20180101T0530", [2018, 1, 1], Fixed, "05:30:00");
        check("201801012359", [2018, 1, 1], Fixed, "23:59:00");
        check("20180101", [2018, 1, 1], Fixed, "");
        check("13.03.2025", [13, 3, 2025], YearLast, "");
        check("07/14/21 12:15:20 PM", [7, 14, 21], Short, "12:15:20");
        check("07/15/21 12:30:00 am", [7, 15, 21], Short, "00:30:00");
        check("7/15/2021 1:00 p.m.", [7, 15, 2021], YearLast, "13:00:00");
        check("15/07/2021 1:00 p. m.", [15, 7, 2021], YearLast, "13:00:00");
        check("01-Sep-21 12:30:00 am", [2021, 9, 1], Fixed, "00:30:00");
        check("00:00:00 21/Nov/2025", [2025, 11, 21], Fixed, "00:00:00");
        check("Wed, 14 Jul 2021 11:35", [2021, 7, 14], Fixed, "11:35:00");
        check("Jul 14, 2021 11:35 PM", [2021, 7, 14], Fixed, "23:35:00");
        check("3. März 2024 06:00", [2024, 3, 3], Fixed, "06:00:00");
        check("14-août-2021", [2021, 8, 14], Fixed, "");
        check("24:00", [0; 3], None, "24:00:00");
        check("01/01/1988 24:00", [1, 1, 1988], YearLast, "24:00:00");
        check("2024-06-01 10:15:00:500", [2024, 6, 1], Fixed, "10:15:00");
        check("2024-06-01 1015", [2024, 6, 1], Fixed, "10:15:00");
        check("13.06.2024 13.05", [13, 6, 2024], YearLast, "13:05:00");
        check("13/06/2024 13h05", [13, 6, 2024], YearLast, "13:05:00");
        check("2024-06-13 13:05:00 CEST", [2024, 6, 13], Fixed, "13:05:00");
    }

    #[test]
    fn offsets_are_kept() {
        let offset = |text: &str| parse(text.as_bytes()).map(|stamp| stamp.offset_min);
        assert_eq!(offset("2026-07-01T00:00Z"), Some(0), "Z");
        assert_eq!(offset("2026-07-01T00:00:00+02:00"), Some(120), "east");
        assert_eq!(offset("2026-07-01 00:00 -0330"), Some(-210), "west");
        assert_eq!(offset("2026-07-01 00:00 UTC+1"), Some(60), "by name");
        assert_eq!(offset("2026-07-01 00:00 MESZ"), Some(120), "by its clock");
        assert_eq!(offset("2026-07-01 00:00"), Some(NO_OFFSET), "none");
    }

    #[test]
    fn what_is_no_stamp() {
        for text in [
            "",
            "20.873",
            "-3.21",
            "53.4",
            "2022",
            "1,234.5",
            "station01",
            "Data Starts:",
            "25:10",
            "12:75",
            "31.4 °F",
            "2021-02-30 00:00",
            "000000",
            "1/2",
            "A7",
            "10 C",
        ] {
            assert_eq!(parse(text.as_bytes()), None, "`{text}`");
        }
    }

    #[test]
    fn times_of_their_own_column() {
        let seconds = |text: &str| time_alone(text.as_bytes()).map(|stamp| stamp.seconds);
        assert_eq!(seconds("00:05:00"), Some(300), "with marks");
        assert_eq!(seconds("1305"), Some(47_100), "without");
        assert_eq!(seconds("0900"), Some(32_400), "with a zero");
        assert_eq!(seconds("24"), Some(86_400), "an hour");
        assert_eq!(seconds("2460"), None, "past the day");
        assert_eq!(seconds("12:15 PM"), Some(44_100), "with a half");
    }

    proptest! {
        #[test]
        fn no_bytes_bring_it_down(bytes in proptest::collection::vec(any::<u8>(), 0..40)) {
            let _ = (parse(&bytes), time_alone(&bytes));
        }

        #[test]
        fn nothing_like_a_stamp_brings_it_down(text in "[0-9/:. T+-]{0,24}( am|pm|Z|Jan)?") {
            let _ = (parse(text.as_bytes()), time_alone(text.as_bytes()));
        }
    }
}
