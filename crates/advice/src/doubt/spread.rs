//! The middle and the ends of many values.

/// Between what four of five cases lie, and the middle one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// A tenth of the cases lies below.
    pub p10: f64,
    /// Half of them.
    pub p50: f64,
    /// Nine tenths.
    pub p90: f64,
}

impl Spread {
    /// Of values in any order; none of none.
    ///
    /// # Source
    /// Linear between the values in order, the first at 0 and the last at 1: R. J. Hyndman & Y. Fan, Am. Stat. 50 (1996) 361, definition 7.
    ///
    /// ```
    /// use dewrun_advice::Spread;
    /// let spread = Spread::of(&[4.0, 1.0, 3.0, 2.0, 5.0]).unwrap();
    /// assert_eq!((spread.p10, spread.p50, spread.p90), (1.4, 3.0, 4.6));
    /// ```
    #[must_use]
    pub fn of(values: &[f64]) -> Option<Self> {
        let mut sorted = values.to_vec();
        sorted.sort_unstable_by(f64::total_cmp);
        Some(Self {
            p10: below(&sorted, 1, 10)?,
            p50: below(&sorted, 5, 10)?,
            p90: below(&sorted, 9, 10)?,
        })
    }

    /// Of values that count by weights of their own; none where no weight is above zero.
    ///
    /// Equal weights give what [`Spread::of`] gives; a value without weight is as if it were not there.
    ///
    /// # Source
    /// As [`Spread::of`], with half the weight of both neighbours as the step from one value in order to the next.
    ///
    /// ```
    /// use dewrun_advice::Spread;
    /// let even = Spread::weighted(&[(4.0, 2.0), (1.0, 2.0), (3.0, 2.0), (2.0, 2.0), (5.0, 2.0), (99.0, 0.0)]).unwrap();
    /// assert!((even.p10 - 1.4).abs() < 1e-12 && even.p50 == 3.0 && (even.p90 - 4.6).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn weighted(values: &[(f64, f64)]) -> Option<Self> {
        let mut sorted: Vec<(f64, f64)> = values
            .iter()
            .copied()
            .filter(|(_, weight)| 0.0 < *weight)
            .collect();
        sorted.sort_unstable_by(|one, other| one.0.total_cmp(&other.0));
        let ends = sorted.first()?.1 + sorted.last()?.1;
        let all: f64 = sorted.iter().map(|(_, weight)| weight).sum::<f64>() - 0.5 * ends;
        Some(Self {
            p10: below_weight(&sorted, 0.1 * all)?,
            p50: below_weight(&sorted, 0.5 * all)?,
            p90: below_weight(&sorted, 0.9 * all)?,
        })
    }
}

/// The value at which so much weight has gone by, from the first in order on.
fn below_weight(sorted: &[(f64, f64)], weight: f64) -> Option<f64> {
    let mut gone = 0.0;
    for (one, next) in sorted.iter().zip(sorted.iter().skip(1)) {
        let step = 0.5 * (one.1 + next.1);
        if weight <= gone + step {
            return Some(one.0 + (next.0 - one.0) * (weight - gone) / step);
        }
        gone += step;
    }
    Some(sorted.last()?.0)
}

/// The value below which so many parts of all lie.
fn below(sorted: &[f64], parts: usize, of: usize) -> Option<f64> {
    let steps = sorted.len().checked_sub(1)? * parts;
    let (whole, rest) = (steps / of, steps % of);
    let low = *sorted.get(whole)?;
    let high = sorted.get(whole + 1).copied().unwrap_or(low);
    let (rest, of) = (u32::try_from(rest).ok()?, u32::try_from(of).ok()?);
    Some(low + (high - low) * f64::from(rest) / f64::from(of))
}
