//! Seconds of a calendar clock, and the date and time they are.

use core::fmt;

use time::{Date, Month};

/// Seconds in a day.
pub(crate) const DAY_S: i64 = 86_400;
/// Julian day number of 1 January 1970.
const EPOCH: i64 = 2_440_588;

/// The months in full, January first; the first three letters of each are its short name.
pub const MONTH_NAMES: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A date and a time on the file's own clock, without zone and without summer time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Civil {
    /// Year.
    pub year: i32,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the month, from 1.
    pub day: u8,
    /// Hour, 0 to 23.
    pub hour: u8,
    /// Minute.
    pub minute: u8,
    /// Second.
    pub second: u8,
}

impl Civil {
    /// From seconds since 1 January 1970, 00:00, on the same clock; none beyond year 9999.
    ///
    /// ```
    /// use dewrun_weather::Civil;
    /// assert_eq!(Civil::of(86_400 + 3661).unwrap().to_string(), "1970-01-02T01:01:01");
    /// ```
    #[must_use]
    pub fn of(seconds: i64) -> Option<Self> {
        let julian = i32::try_from(seconds.div_euclid(DAY_S) + EPOCH).ok()?;
        let date = Date::from_julian_day(julian).ok()?;
        let rest = seconds.rem_euclid(DAY_S);
        let part = |value: i64| u8::try_from(value).ok();
        Some(Self {
            year: date.year(),
            month: u8::from(date.month()),
            day: date.day(),
            hour: part(rest / 3600)?,
            minute: part(rest / 60 % 60)?,
            second: part(rest % 60)?,
        })
    }

    /// Hour of a year without a leap day, from 0 at 1 January 00:00; 29 February counts as 28.
    #[must_use]
    pub fn hour_of_year(&self) -> u32 {
        let day = if (self.month, self.day) == (2, 29) {
            28
        } else {
            self.day
        };
        let ordinal = Month::try_from(self.month)
            .ok()
            .and_then(|month| Date::from_calendar_date(2001, month, day).ok())
            .map_or(1, Date::ordinal);
        (u32::from(ordinal) - 1) * 24 + u32::from(self.hour)
    }
}

impl fmt::Display for Civil {
    /// `2026-07-01T00:00`, with seconds where there are any.
    fn fmt(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            year,
            month,
            day,
            hour,
            minute,
            second,
        } = self;
        write!(form, "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}")?;
        if 0 < *second {
            write!(form, ":{second:02}")?;
        }
        Ok(())
    }
}

/// Days since 1 January 1970; none where there is no such date.
pub(crate) fn day_of(year: u16, month: u16, day: u16) -> Option<i64> {
    let month = Month::try_from(u8::try_from(month).ok()?).ok()?;
    let date = Date::from_calendar_date(i32::from(year), month, u8::try_from(day).ok()?).ok()?;
    Some(i64::from(date.to_julian_day()) - EPOCH)
}

/// The date that many days after 1 January 1970, as year, month, day.
pub(crate) fn date_of(days: i64) -> Option<[u16; 3]> {
    let civil = Civil::of(days.checked_mul(DAY_S)?)?;
    Some([
        u16::try_from(civil.year).ok()?,
        u16::from(civil.month),
        u16::from(civil.day),
    ])
}

/// A text for an instant; empty beyond the calendar.
#[must_use]
pub(crate) fn text(seconds: i64) -> String {
    Civil::of(seconds).map_or_else(String::new, |civil| civil.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_there_and_back() {
        assert_eq!(day_of(1970, 1, 1), Some(0), "the first");
        assert_eq!(day_of(2000, 2, 29), Some(11_016), "a leap day");
        assert_eq!(day_of(1900, 2, 29), None, "no leap day");
        assert_eq!(date_of(11_016), Some([2000, 2, 29]), "and back");
    }

    #[test]
    fn hours_of_the_year() {
        let hour = |text: (u8, u8, u8)| {
            let (month, day, hour) = text;
            Civil {
                year: 1988,
                month,
                day,
                hour,
                minute: 0,
                second: 0,
            }
            .hour_of_year()
        };
        assert_eq!(hour((1, 1, 0)), 0, "the first");
        assert_eq!(hour((2, 28, 23)), 1415, "(31 + 28) 24 - 1");
        assert_eq!(hour((3, 1, 0)), 1416, "the next");
        assert_eq!(hour((12, 31, 23)), 8759, "the last");
    }
}
