//! What one cell says of date and time.

use super::civil::date_of;

/// No offset from UTC stands beside the time.
pub(crate) const NO_OFFSET: i16 = i16::MIN;
/// No time stands beside the date.
pub(super) const NO_TIME: i32 = -1;

/// In which form three numbers of a date came.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum DateForm {
    /// There is no date.
    None,
    /// Year, month, day.
    Fixed,
    /// Two numbers, then a year of four digits.
    YearLast,
    /// Three numbers of at most two digits.
    Short,
}

/// A date and a time as written, the order of the date's numbers still open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Stamp {
    pub(crate) date: [u16; 3],
    pub(crate) form: DateForm,
    pub(super) seconds: i32,
    /// Minutes east of UTC, or [`NO_OFFSET`].
    pub(crate) offset_min: i16,
    /// The time was told by two times twelve hours.
    pub(crate) has_half: bool,
    /// A point stands between the numbers of the date.
    pub(crate) has_points: bool,
}

impl Stamp {
    /// A date and the seconds since its midnight.
    pub(crate) const fn fixed(date: [u16; 3], seconds: i32) -> Self {
        Self {
            date,
            form: DateForm::Fixed,
            seconds,
            offset_min: NO_OFFSET,
            has_half: false,
            has_points: false,
        }
    }

    pub(crate) const fn has_date(&self) -> bool {
        !matches!(self.form, DateForm::None)
    }

    pub(crate) const fn has_time(&self) -> bool {
        self.seconds != NO_TIME
    }

    /// Seconds since midnight; 0 where no time stands, 86 400 for 24:00.
    pub(crate) fn seconds(&self) -> i64 {
        i64::from(self.seconds.max(0))
    }

    /// The same date with the time of another cell.
    pub(crate) const fn with_time_of(mut self, other: &Self) -> Self {
        self.seconds = other.seconds;
        self.has_half = other.has_half;
        if self.offset_min == NO_OFFSET {
            self.offset_min = other.offset_min;
        }
        self
    }

    /// From seconds since 1 January 1970.
    fn of_seconds(seconds: i64) -> Option<Self> {
        let within = i32::try_from(seconds.rem_euclid(86_400)).ok()?;
        Some(Self::fixed(date_of(seconds.div_euclid(86_400))?, within))
    }
}

/// Days from 30 December 1899, where spreadsheets count from, to 1 January 1970.
const SPREADSHEET_EPOCH: f64 = 25_569.0;

/// A count of days as spreadsheets keep them (from 1954 to 2119), or of seconds or milliseconds since 1970 (from 2001 to 2128).
pub(crate) fn counted(value: f64) -> Option<Stamp> {
    let seconds = if (20_000.0..80_000.0).contains(&value) {
        (value - SPREADSHEET_EPOCH) * 86_400.0
    } else if (1.0e9..5.0e9).contains(&value) {
        value
    } else if (1.0e12..5.0e12).contains(&value) {
        value / 1000.0
    } else {
        return None;
    };
    #[allow(clippy::cast_possible_truncation, reason = "at most 5e9")]
    let seconds = seconds.round() as i64;
    let mut stamp = Stamp::of_seconds(seconds)?;
    if 1.0e9 <= value {
        stamp.offset_min = 0;
    }
    Some(stamp)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_of_days_and_seconds() {
        let seconds = |value: f64| counted(value).map(|stamp| (stamp.date, stamp.seconds));
        assert_eq!(
            seconds(45_292.25),
            Some(([2024, 1, 1], 21_600)),
            "a spreadsheet's day"
        );
        assert_eq!(
            seconds(1_704_067_200.0),
            Some(([2024, 1, 1], 0)),
            "Unix seconds"
        );
        assert_eq!(
            seconds(1_704_067_260_000.0),
            Some(([2024, 1, 1], 60)),
            "Unix milliseconds"
        );
        assert_eq!(seconds(21.5), None, "a temperature");
    }
}
