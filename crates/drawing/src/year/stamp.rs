//! Days and hours in words.

use dewrun_weather::{Civil, MONTH_NAMES};

use super::Year;

/// Seconds of an hour and of a day.
pub(crate) const HOUR_S: i64 = 3600;
pub(crate) const DAY_S: i64 = 86_400;

/// The name of a month, 1 to 12.
pub(crate) fn month(number: u8) -> &'static str {
    let place = usize::from(number).wrapping_sub(1);
    MONTH_NAMES.get(place).copied().unwrap_or_default()
}

/// Its first letters.
pub(crate) fn short(number: u8, letters: usize) -> &'static str {
    let name = month(number);
    name.get(..letters).unwrap_or(name)
}

/// The month of a time, 1 to 12; 0 of none.
pub(super) fn month_of(seconds: i64) -> u8 {
    Civil::of(seconds).map_or(0, |civil| civil.month)
}

impl Year {
    /// "8 August", with its year where the file has one.
    pub(super) fn day(&self, seconds: i64) -> String {
        let Some(civil) = Civil::of(seconds) else {
            return String::new();
        };
        let day = format!("{}\u{a0}{}", civil.day, month(civil.month));
        if self.is_typical || self.is_one_year() {
            day
        } else {
            format!("{day} {}", civil.year)
        }
    }

    /// All steps lie in one year of the calendar.
    fn is_one_year(&self) -> bool {
        let year = |step: Option<&super::Step>| Civil::of(step?.start_s).map(|civil| civil.year);
        let first = year(self.steps.first());
        first.is_some() && first == year(self.steps.last())
    }

    /// "8 August, 17 h".
    pub(super) fn stamp(&self, seconds: i64) -> String {
        let Some(civil) = Civil::of(seconds) else {
            return String::new();
        };
        let day = self.day(seconds);
        if civil.minute == 0 {
            format!("{day}, {}\u{a0}h", civil.hour)
        } else {
            format!("{day}, {}:{:02}", civil.hour, civil.minute)
        }
    }

    /// "15 to 21 June", from one time to another.
    pub(super) fn span(&self, from_s: i64, to_s: i64) -> String {
        let (Some(from), Some(to)) = (Civil::of(from_s), Civil::of(to_s)) else {
            return String::new();
        };
        let (start, end) = (self.day(from_s), self.day(to_s));
        if start == end {
            return end;
        }
        if (from.year, from.month) == (to.year, to.month) {
            return format!("{} to {end}", from.day);
        }
        format!("{start} to {end}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_hours_in_words() {
        let typical = Year {
            is_typical: true,
            ..Year::default()
        };
        // 8 August 2021 began 18 847 days after 1 January 1970.
        let day = 18_847 * DAY_S;
        assert_eq!(
            typical.stamp(day + 17 * HOUR_S),
            "8\u{a0}August, 17\u{a0}h",
            "an hour of a typical year"
        );
        let one = Year::default();
        assert_eq!(one.day(day), "8\u{a0}August 2021", "a day of many years");
        assert_eq!(one.stamp(day + 90 * 60), "8\u{a0}August 2021, 1:30", "half");
        assert_eq!(
            typical.span(day, day + 6 * DAY_S),
            "8 to 14\u{a0}August",
            "in a month"
        );
        assert_eq!(
            typical.span(day - 10 * DAY_S, day),
            "29\u{a0}July to 8\u{a0}August",
            "over its end"
        );
    }
}
