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
