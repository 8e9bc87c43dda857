//! What a series amounts to: ranges, hours, ranks, the warmest month, the water an endless tube would take.

use dewrun_moist_air::{Over, mixture};
use dewrun_quantity::{Mass, Temperature};

use crate::instant::Civil;
use crate::series::{Series, vapour_at_point};

/// Least, most and mean of the readings that are there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// The least.
    pub min: f64,
    /// The most.
    pub max: f64,
    /// The mean.
    pub mean: f64,
    /// How many there are.
    pub count: u64,
}

impl Range {
    /// Of the finite ones among some values; none where there are none.
    #[must_use]
    pub fn of(values: &[f64]) -> Option<Self> {
        let (mut min, mut max, mut sum, mut count) = (f64::INFINITY, f64::NEG_INFINITY, 0.0, 0_u64);
        for value in values.iter().filter(|value| value.is_finite()) {
            min = min.min(*value);
            max = max.max(*value);
            sum += value;
            count += 1;
        }
        #[allow(clippy::cast_precision_loss, reason = "rows are far fewer than 2^52")]
        let mean = sum / count as f64;
        (0 < count).then_some(Self {
            min,
            max,
            mean,
            count,
        })
    }
}

/// A year without leap day, h.
const YEAR_H: f64 = 8760.0;

impl Series {
    /// Hours with a usable reading.
    #[must_use]
    pub fn covered_hours(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "rows are far fewer than 2^52")]
        let rows = self.usable() as f64;
        rows * self.row_hours()
    }

    /// Hours with a usable reading as a share of a year, %.
    ///
    /// Nothing is extrapolated to a year where less than one is covered.
    #[must_use]
    pub fn covered_share_percent(&self) -> f64 {
        100.0 * self.covered_hours() / YEAR_H
    }

    /// Hours in which a column's value is as asked; missing ones count nowhere.
    #[must_use]
    pub fn hours_where(&self, column: &[f64], is_counted: impl Fn(f64) -> bool) -> f64 {
        let rows = column
            .iter()
            .filter(|value| value.is_finite() && is_counted(**value))
            .count();
        #[allow(clippy::cast_precision_loss, reason = "rows are far fewer than 2^52")]
        let rows = rows as f64;
        rows * self.row_hours()
    }

    /// The warmest and the coldest month by mean temperature; none where no temperature is known.
    #[must_use]
    pub fn warmest_and_coldest_month(&self) -> Option<(u8, u8)> {
        let mut sums = [(0.0, 0_u32); 12];
        for (start, t_c) in self.start_s.iter().zip(&self.temperature_c) {
            let month = Civil::of(*start).map_or(0, |civil| usize::from(civil.month));
            if let Some((sum, count)) = sums
                .get_mut(month.wrapping_sub(1))
                .filter(|_| t_c.is_finite())
            {
                *sum += t_c;
                *count += 1;
            }
        }
        let means = (1_u8..).zip(sums).filter(|(_, (_, count))| 0 < *count);
        let means: Vec<(u8, f64)> = means
            .map(|(month, (sum, count))| (month, sum / f64::from(count)))
            .collect();
        let warmest = means
            .iter()
            .max_by(|(_, one), (_, other)| one.total_cmp(other))?;
        let coldest = means
            .iter()
            .min_by(|(_, one), (_, other)| one.total_cmp(other))?;
        Some((warmest.0, coldest.0))
    }

    /// Water that an endless tube at one wall temperature takes out of 1 kg of dry air an hour, over all usable rows.
    ///
    /// `sum of max(0, W - Wsat(wall, p)) hours`, the wall at or above 0 °C.
    ///
    /// # Range
    /// Walls of 0 to 95 °C.
    /// # Source
    /// ASHRAE Handbook Fundamentals 2017, ch. 1: humidity ratio at saturation.
    #[must_use]
    pub fn endless_tube(&self, wall: Temperature) -> Mass {
        let wall_c = wall.to_celsius();
        let mut kilograms = 0.0;
        for (row, p_pa) in self.pressure_pa.iter().enumerate() {
            if let Some(w) = self.humidity_ratio(row).filter(|_| self.is_usable(row)) {
                let kept = mixture::humidity_ratio(vapour_at_point(wall_c, Over::Water, *p_pa));
                kilograms += (w - kept).max(0.0);
            }
        }
        Mass::kilograms(kilograms * self.row_hours())
    }
}

/// The value that a share of the readings exceeds: of n readings from the largest down, number `ceil(share n)`.
///
/// # Range
/// Shares from 0 to 1; none where no reading is known.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 14: annual percentiles of hours.
///
/// ```
/// use dewrun_weather::exceeded_by;
/// let values: Vec<f64> = (1..=1000).map(f64::from).collect();
/// assert_eq!(exceeded_by(&values, 0.004), Some(997.0));
/// ```
#[must_use]
pub fn exceeded_by(values: &[f64], share: f64) -> Option<f64> {
    let mut finite: Vec<f64> = values
        .iter()
        .copied()
        .filter(|value| value.is_finite())
        .collect();
    #[allow(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a rank among rows, far fewer than 2^52"
    )]
    let rank = (share * finite.len() as f64).ceil() as usize;
    let at = finite.len().checked_sub(rank.max(1))?;
    let (_, value, _) = finite.select_nth_unstable_by(at, f64::total_cmp);
    Some(*value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Reader, Understanding};

    /// Two half hours: one with a dew point of 20 °C, one of 5 °C, at 101 325 Pa.
    fn two() -> Series {
        let text = "time,temperature (C),dew point (C),pressure (Pa)\n2024-06-01 00:00,25,20,101325\n2024-07-01 00:30,30,5,101325\n2024-07-01 01:00,26,5,101325\n";
        let given = Understanding::default();
        let mut reader = Reader::new(given);
        reader.push(text.as_bytes()).expect("a table");
        reader.finish().expect("a table").series
    }

    /// ASHRAE Fundamentals 2017, ch. 1, table 2: 14.758 g/kg saturates at 20 °C and 7.661 g/kg at 10 °C, so half an hour
    /// of the first leaves 3.5485 g of each kilogram an hour on a wall of 10 °C, and the others nothing.
    #[test]
    fn an_endless_tube_takes_what_the_wall_does_not_hold() {
        let grams = two().endless_tube(Temperature::celsius(10.0)).to_grams();
        assert!((grams / 3.5485 - 1.0).abs() < 2.0e-3, "{grams}");
    }

    #[test]
    fn ranges_hours_and_months() {
        let series = two();
        let range = Range::of(&series.temperature_c).expect("readings");
        assert_eq!(
            (range.min, range.max, range.mean, range.count),
            (25.0, 30.0, 27.0, 3),
            "by hand"
        );
        assert_eq!(Range::of(&[f64::NAN]), None, "nothing");
        assert_eq!(series.covered_hours(), 1.5, "three half hours");
        assert_eq!(
            series.hours_where(&series.dew_point_c, |point_c| point_c < 10.0),
            1.0,
            "two of them"
        );
        assert_eq!(
            series.warmest_and_coldest_month(),
            Some((7, 6)),
            "means of 28 and 25 °C"
        );
    }
}
