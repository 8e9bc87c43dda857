//! The middle and the ends of many values.

use dewrun_numeric::elementary::{exp, ln};
use dewrun_numeric::integrate::gauss_legendre_8;

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

    /// Of values that count by weights of their own, as the members of an ensemble do; none where no weight is above zero.
    ///
    /// Each end is a mean of all values by how likely each is to be it: of a few hundred values that is nearer to the ends of ever more of them than the one value that stands there.
    /// A value without weight is as if it were not there.
    ///
    /// # Accuracy
    /// 1e-8 of what the values span.
    /// # Range
    /// Weights that are worth fewer than 20 of equal weight tell no more than the values in order, as in [`Spread::of`].
    /// # Source
    /// F. E. Harrell & C. E. Davis, Biometrika 69 (1982) 635, doi:10.1093/biomet/69.3.635; with weights by A. Akinshin, Weighted quantile estimators (2023), arXiv:2304.07265.
    ///
    /// ```
    /// use dewrun_advice::Spread;
    /// let values: Vec<(f64, f64)> = (1..=64).map(|i| (f64::from(i * i % 101), 1.0)).collect();
    /// let spread = Spread::weighted(&values).unwrap();
    /// assert!((spread.p90 - 90.375_365).abs() < 1e-6); // scipy.stats.mstats.hdquantiles
    /// ```
    #[must_use]
    pub fn weighted(values: &[(f64, f64)]) -> Option<Self> {
        let mut sorted: Vec<(f64, f64)> = values
            .iter()
            .copied()
            .filter(|(_, weight)| 0.0 < *weight)
            .collect();
        sorted.sort_unstable_by(|one, other| one.0.total_cmp(&other.0));
        let worth = worth(sorted.iter().map(|(_, weight)| *weight));
        let (least, greatest) = (sorted.first()?.0, sorted.last()?.0);
        let end = |part: f64| {
            let in_order = in_order(&sorted, part)?;
            // Where many have none of it, an end is none of it, and no mean with others.
            let is_shared = in_order == least || in_order == greatest;
            Some(if worth < FEW || is_shared {
                in_order
            } else {
                harrell_davis(&sorted, worth, part)
            })
        };
        Some(Self {
            p10: end(0.1)?,
            p50: end(0.5)?,
            p90: end(0.9)?,
        })
    }
}

/// Below so many values of equal weight the likelihood of being an end has no top within them.
const FEW: f64 = 20.0;
/// Spreads of that likelihood beyond which nothing of it is left.
const FAR: f64 = 9.0;

/// How many values of equal weight would know as much; 0 where none has any.
///
/// # Range
/// Weights of zero and above.
/// # Source
/// `(sum w)^2 / sum w^2`: L. Kish, Survey Sampling (1965), section 11.7.
///
/// ```
/// assert_eq!(dewrun_advice::worth([1.0, 1.0, 2.0]), 16.0 / 6.0);
/// ```
#[must_use]
pub fn worth(weights: impl IntoIterator<Item = f64>) -> f64 {
    let (mut sum, mut squares) = (0.0, 0.0);
    for weight in weights {
        sum += weight;
        squares += weight * weight;
    }
    if 0.0 < squares {
        sum * sum / squares
    } else {
        0.0
    }
}

/// The value that has a part of all below it, as a mean of all by how likely each is to be it: a beta distribution over the share that lies below.
fn harrell_davis(sorted: &[(f64, f64)], worth: f64, part: f64) -> f64 {
    let (below, above) = (
        part * (worth + 1.0) - 1.0,
        (1.0 - part) * (worth + 1.0) - 1.0,
    );
    let top = below / (below + above);
    let log = |share: f64| below * ln(share) + above * ln(1.0 - share);
    let most = log(top);
    let far = FAR * (part * (1.0 - part) / (worth + 2.0)).sqrt();
    let all: f64 = sorted.iter().map(|(_, weight)| weight).sum();
    let (mut gone, mut sum, mut likely) = (0.0, 0.0, 0.0);
    for (value, weight) in sorted {
        let (from, to) = (gone / all, (gone + weight) / all);
        gone += weight;
        let (from, to) = (from.max(top - far), to.min(top + far).min(1.0));
        if to <= from {
            continue;
        }
        let parts = gauss_legendre_8(from, to);
        let here: f64 = parts
            .iter()
            .map(|(share, weight)| weight * exp(log(*share) - most))
            .sum();
        sum += here * value;
        likely += here;
    }
    sum / likely
}

/// The value at which a part of all weight has gone by, linear between the values in order, half the weight of both neighbours as the step from one to the next.
fn in_order(sorted: &[(f64, f64)], part: f64) -> Option<f64> {
    let ends = sorted.first()?.1 + sorted.last()?.1;
    let all: f64 = sorted.iter().map(|(_, weight)| weight).sum::<f64>() - 0.5 * ends;
    let mut gone = 0.0;
    for (one, next) in sorted.iter().zip(sorted.iter().skip(1)) {
        let step = 0.5 * (one.1 + next.1);
        if part * all <= gone + step {
            return Some(one.0 + (next.0 - one.0) * (part * all - gone) / step);
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

#[cfg(test)]
mod tests {
    use super::*;

    fn near(spread: Spread, expected: [f64; 3]) {
        for (found, expected) in [spread.p10, spread.p50, spread.p90]
            .into_iter()
            .zip(expected)
        {
            assert!((found - expected).abs() < 1e-6, "{found} for {expected}");
        }
    }

    /// SciPy 1.17.1, `scipy.stats.mstats.hdquantiles`; with weights of 1 to 3 by `scipy.stats.beta.cdf` at the shares of weight that lie below.
    #[test]
    fn ends_are_those_of_a_reference() {
        let value = |i: u32| f64::from(i * i % 101);
        let even: Vec<(f64, f64)> = (1..=64).map(|i| (value(i), 2.5)).collect();
        let even = Spread::weighted(&even).expect("values");
        near(
            even,
            [
                9.501_186_439_847_375,
                52.638_396_535_213_815,
                90.375_365_444_331_03,
            ],
        );
        let uneven: Vec<(f64, f64)> = (1..=64).map(|i| (value(i), f64::from(1 + i % 3))).collect();
        let uneven = Spread::weighted(&uneven).expect("values");
        near(
            uneven,
            [
                8.962_623_362_261_258,
                52.253_599_979_731_67,
                91.528_176_859_896_84,
            ],
        );
    }

    #[test]
    fn few_values_and_those_without_weight_are_taken_in_order() {
        let with = [
            (4.0, 2.0),
            (1.0, 2.0),
            (3.0, 2.0),
            (2.0, 2.0),
            (5.0, 2.0),
            (99.0, 0.0),
        ];
        near(Spread::weighted(&with).expect("values"), [1.4, 3.0, 4.6]);
        assert_eq!(Spread::weighted(&[(99.0, 0.0)]), None, "nothing counts");
        let mut mostly = [(0.0, 1.0); 300];
        for (place, (value, _)) in mostly.iter_mut().enumerate().skip(200) {
            *value = f64::from(u32::try_from(place).expect("a few"));
        }
        let mostly = Spread::weighted(&mostly).expect("values");
        assert_eq!((mostly.p10, mostly.p50), (0.0, 0.0), "most have none of it");
        assert!((265.0..275.0).contains(&mostly.p90), "{mostly:?}");
    }
}
