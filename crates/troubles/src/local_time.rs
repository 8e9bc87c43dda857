//! Times as people write them down, on the clock on the wall: an offset from UTC and, where it is asked for, rules by which it is put forward and back. No table of zones.

use dewrun_weather::Civil;

use crate::log::DAY_S;

/// Seconds of an hour.
const HOUR_S: i64 = 3600;

/// A day of the year by rule: the first, second, third, fourth or last such day of the week in a month.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ChangeDay {
    /// Month, 1 to 12.
    pub month: u8,
    /// Which: 1 to 4, or 5 for the last.
    pub which: u8,
    /// Day of the week, 0 for Monday to 6 for Sunday.
    pub weekday: u8,
    /// Hour on the wall at which the clock is changed, by the clock before the change.
    pub hour: u8,
}

/// When the clock is put forward by an hour and when back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DaylightSaving {
    /// Forward: an hour is missing.
    pub starts: ChangeDay,
    /// Back: an hour comes twice.
    pub ends: ChangeDay,
}

/// The clock on the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WallClock {
    /// Ahead of UTC outside of daylight saving, s.
    pub utc_offset_s: i64,
    /// Where it is put forward and back.
    pub daylight: Option<DaylightSaving>,
}

/// What came of a time on the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OnWall {
    /// It was once.
    Once,
    /// It never was, as the clock was put forward: taken as the clock would have gone on.
    Missing,
    /// It came twice, as the clock was put back: the first is taken.
    Twice,
}

impl WallClock {
    /// Seconds since 1970 in UTC of a time on the wall, itself in seconds since 1970, and what came of it.
    ///
    /// ```
    /// use dewrun_troubles::{ChangeDay, DaylightSaving, OnWall, WallClock};
    /// // The last Sundays of March and October, an hour ahead of UTC: 29 March 2026, 02:30, never was.
    /// let day = |month, hour| ChangeDay { month, which: 5, weekday: 6, hour };
    /// let clock = WallClock {
    ///     utc_offset_s: 3600,
    ///     daylight: Some(DaylightSaving { starts: day(3, 2), ends: day(10, 3) }),
    /// };
    /// let wall_s = 1_774_751_400;
    /// assert_eq!(clock.utc(wall_s), (wall_s - 3600, OnWall::Missing));
    /// ```
    #[must_use]
    pub fn utc(&self, wall_s: i64) -> (i64, OnWall) {
        let standard = wall_s - self.utc_offset_s;
        let Some(changes) = self.changes(wall_s) else {
            return (standard, OnWall::Once);
        };
        let (starts, ends) = changes;
        let since = |start: i64| wall_s - start;
        if (0..HOUR_S).contains(&since(starts)) {
            return (standard, OnWall::Missing);
        }
        // The hour before the end comes twice: once in summer time, then again.
        if (-HOUR_S..0).contains(&since(ends)) {
            return (standard - HOUR_S, OnWall::Twice);
        }
        let is_summer = if starts < ends {
            starts <= wall_s && wall_s < ends
        } else {
            wall_s < ends || starts <= wall_s
        };
        let ahead = if is_summer { HOUR_S } else { 0 };
        (standard - ahead, OnWall::Once)
    }

    /// The hour of the day that the wall showed at a moment in UTC.
    #[must_use]
    pub fn hour_at(&self, utc_s: i64) -> u8 {
        let standard = utc_s + self.utc_offset_s;
        let summer = standard + HOUR_S;
        let is_summer = self.changes(standard).is_some_and(|(starts, ends)| {
            let (after_start, before_end) = (starts <= standard, summer < ends);
            if starts < ends {
                after_start && before_end
            } else {
                after_start || before_end
            }
        });
        let wall = if is_summer { summer } else { standard };
        u8::try_from(wall.rem_euclid(DAY_S) / HOUR_S).unwrap_or(0)
    }

    /// When the clock is changed in the year of a time on the wall, each by the clock before the change.
    fn changes(&self, wall_s: i64) -> Option<(i64, i64)> {
        let daylight = self.daylight?;
        let year = Civil::of(wall_s)?.year;
        Some((daylight.starts.of_year(year)?, daylight.ends.of_year(year)?))
    }
}

impl ChangeDay {
    /// The moment on the wall in a year, s since 1970; none where there is no such day.
    fn of_year(self, year: i32) -> Option<i64> {
        let first = first_of_month(year, self.month)?;
        let weekday = (first + 3).rem_euclid(7);
        let offset = (i64::from(self.weekday) - weekday).rem_euclid(7);
        let mut day = first + offset + 7 * (i64::from(self.which.clamp(1, 5)) - 1);
        let is_in_month =
            |day: i64| Civil::of(day * DAY_S).is_some_and(|civil| civil.month == self.month);
        if !is_in_month(day) {
            day -= 7;
        }
        Some(day * DAY_S + i64::from(self.hour) * HOUR_S)
    }
}

/// Days since 1970 of the first of a month.
///
/// Years of 365 or 366 days, counted from 1970: the Gregorian calendar.
fn first_of_month(year: i32, month: u8) -> Option<i64> {
    const DAYS: [i64; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let before = i64::from(year) - 1;
    let leaps = |year: i64| year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    let days = 365 * (i64::from(year) - 1970) + leaps(before) - leaps(1969);
    let months = usize::from(month.checked_sub(1).filter(|month| *month < 12)?);
    let of_months: i64 = DAYS.get(..months)?.iter().sum();
    let is_leap = leaps(i64::from(year)) != leaps(before);
    Some(days + of_months + i64::from(2 < month && is_leap))
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn day(month: u8, which: u8, hour: u8) -> ChangeDay {
        ChangeDay {
            month,
            which,
            weekday: 6,
            hour,
        }
    }

    /// 2026 in Central Europe: from 29 March, 02:00, to 25 October, 03:00 (Directive 2000/84/EC), an hour ahead of UTC.
    const EUROPE: WallClock = WallClock {
        utc_offset_s: 3600,
        daylight: Some(DaylightSaving {
            starts: day(3, 5, 2),
            ends: day(10, 5, 3),
        }),
    };
    /// 2026 in southern Australia and the like: from the first Sunday of October, 02:00, to that of April, 03:00.
    const SOUTH: WallClock = WallClock {
        utc_offset_s: 36_000,
        daylight: Some(DaylightSaving {
            starts: day(10, 1, 2),
            ends: day(4, 1, 3),
        }),
    };

    /// Seconds since 1970 of days and minutes; 1 January 2026 is day 20 454.
    const fn at(day_of_year: i64, hour: i64, minute: i64) -> i64 {
        (20_454 + day_of_year - 1) * DAY_S + hour * HOUR_S + minute * 60
    }

    #[test]
    fn missing_and_repeated_hours_are_placed() {
        // 29 March is day 88, 25 October day 298.
        let cases = [
            (at(88, 1, 59), at(88, 0, 59), OnWall::Once),
            (at(88, 2, 30), at(88, 1, 30), OnWall::Missing),
            (at(88, 3, 0), at(88, 1, 0), OnWall::Once),
            (at(298, 1, 59), at(297, 23, 59), OnWall::Once),
            (at(298, 2, 30), at(298, 0, 30), OnWall::Twice),
            (at(298, 3, 0), at(298, 2, 0), OnWall::Once),
            (at(1, 12, 0), at(1, 11, 0), OnWall::Once),
            (at(180, 12, 0), at(180, 10, 0), OnWall::Once),
        ];
        for (wall, utc, on_wall) in cases {
            assert_eq!(EUROPE.utc(wall), (utc, on_wall), "{wall}");
        }
    }

    #[test]
    fn summer_lies_over_the_turn_of_the_year_in_the_south() {
        assert_eq!(
            SOUTH.utc(at(1, 12, 0)),
            (at(1, 1, 0), OnWall::Once),
            "January is summer"
        );
        assert_eq!(
            SOUTH.utc(at(180, 12, 0)),
            (at(180, 2, 0), OnWall::Once),
            "June is not"
        );
        // 5 April is day 95, 4 October day 277.
        assert_eq!(
            SOUTH.utc(at(95, 2, 10)),
            (at(94, 15, 10), OnWall::Twice),
            "put back"
        );
        assert_eq!(
            SOUTH.utc(at(277, 2, 10)),
            (at(276, 16, 10), OnWall::Missing),
            "put forward"
        );
    }

    /// Every hour that was once is read back from its moment.
    #[test]
    fn hours_on_the_wall_there_and_back() {
        for clock in [EUROPE, SOUTH] {
            for hour in 0..8760 {
                let wall = at(1, hour, 0);
                let (utc, on_wall) = clock.utc(wall);
                if on_wall == OnWall::Once {
                    let expected = u8::try_from(hour % 24).expect("an hour");
                    assert_eq!(clock.hour_at(utc), expected, "hour {hour} of {clock:?}");
                }
            }
        }
    }

    /// By the calendar: 29 February 2028 is day 21 243 since 1970, 1 March 1900 day -25 508.
    #[test]
    fn months_begin_where_the_calendar_says() {
        assert_eq!(first_of_month(1970, 1), Some(0), "the first");
        assert_eq!(first_of_month(2028, 3), Some(21_244), "after a leap day");
        assert_eq!(first_of_month(1900, 3), Some(-25_508), "no leap day");
        assert_eq!(first_of_month(2026, 13), None, "no month");
    }
}
