//! The months of a year.

use super::is_wet;
use crate::sums::HourSum;

/// A month.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Month {
    /// Its hours that were marched, h.
    pub hours: f64,
    /// Wet ones, h.
    pub wet_hours: f64,
    /// What deposited, kg.
    pub condensed_kg: f64,
    /// What ran off, kg.
    pub drained_kg: f64,
    /// What dried, kg.
    pub evaporated_kg: f64,
}

/// Sums by month; `month_of` tells the month of an hour by its position, 1 to 12, and hours of no known month are left out.
#[must_use]
pub fn months(sums: &[HourSum], month_of: impl Fn(usize) -> Option<u8>) -> [Month; 12] {
    let mut months = [Month::default(); 12];
    for (at, hour) in sums.iter().enumerate() {
        let number = month_of(at).map_or(usize::MAX, |month| usize::from(month).wrapping_sub(1));
        let Some(month) = months.get_mut(number) else {
            continue;
        };
        let length = hour.seconds / 3600.0;
        month.hours += length;
        month.wet_hours += if is_wet(hour) { length } else { 0.0 };
        month.condensed_kg += hour.condensed_kg;
        month.drained_kg += hour.drained_kg;
        month.evaporated_kg += hour.evaporated_kg;
    }
    months
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_go_to_their_month() {
        let hour = HourSum {
            seconds: 3600.0,
            condensed_kg: 0.5,
            ..HourSum::NONE
        };
        let months = months(&[hour; 3], |at| {
            [Some(1), Some(12), None].get(at).copied()?
        });
        assert_eq!(months[0].condensed_kg, 0.5, "January");
        assert_eq!(months[11].wet_hours, 1.0, "December");
        let all: f64 = months.iter().map(|month| month.hours).sum();
        assert_eq!(all, 2.0, "one hour has no month");
    }
}
