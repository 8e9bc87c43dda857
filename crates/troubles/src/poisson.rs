//! Events as an inhomogeneous Poisson process: hours with events and hours without both count.

use dewrun_numeric::elementary::ln;

/// Halvings until a share is as fine as its number.
const HALVINGS: u32 = 60;

/// A hazard that was fitted to events.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// Events per hour whatever the hazard says.
    pub background: f64,
    /// Times the hazard.
    pub scale: f64,
    /// Logarithm of the likelihood.
    pub log_likelihood: f64,
}

/// Logarithm of the likelihood of counts in cells whose expected counts are given.
///
/// # Range
/// Expected counts from zero on; an event where none can be is minus infinity. Counts up to 170.
/// # Accuracy
/// That of the logarithm; counts are told by their factorials.
/// # Source
/// D. R. Cox & P. A. W. Lewis, The Statistical Analysis of Series of Events (1966), chapter 3: `sum n ln(lambda) - lambda - ln(n!)`.
///
/// ```
/// use dewrun_troubles::log_likelihood;
/// // Three events with an expected 2 in one hour: 3 ln 2 - 2 - ln 6.
/// assert!((log_likelihood(&[2.0], &[3.0]) - (3.0 * 2f64.ln() - 2.0 - 6f64.ln())).abs() < 1e-12);
/// ```
#[must_use]
pub fn log_likelihood(expected: &[f64], counts: &[f64]) -> f64 {
    let pairs = expected.iter().zip(counts);
    pairs
        .map(|(expected, count)| {
            let events = if 0.0 < *count {
                count * ln(*expected)
            } else {
                0.0
            };
            events - expected - ln_factorial(*count)
        })
        .sum()
}

/// The scale of a hazard that fits counts best, and its likelihood.
///
/// # Range
/// Hazards from zero on, not all zero; as [`log_likelihood`].
/// # Source
/// The sum of all counts over that of the hazard: the root of the likelihood's derivative.
#[must_use]
pub fn best_scale(hazard: &[f64], counts: &[f64]) -> Option<Fitted> {
    let (sum, events) = (hazard.iter().sum::<f64>(), counts.iter().sum::<f64>());
    if sum <= 0.0 {
        return None;
    }
    Some(fitted(hazard, counts, (0.0, events / sum)))
}

/// The background and the scale of a hazard, both from zero on, that fit counts best.
///
/// # Range
/// As [`best_scale`].
/// # Accuracy
/// The share of both is found to 60 bits.
/// # Source
/// At the best fit background and hazard together expect as many events as there were, which leaves one share to be found;
/// the likelihood is concave in it. As in EM for mixtures: A. P. Dempster, N. M. Laird & D. B. Rubin, J. R. Stat. Soc. B 39 (1977) 1.
#[must_use]
pub fn best_background_and_scale(hazard: &[f64], counts: &[f64]) -> Option<Fitted> {
    let (sum, events) = (hazard.iter().sum::<f64>(), counts.iter().sum::<f64>());
    let hours = count(hazard.len());
    if sum <= 0.0 {
        return None;
    }
    let ratios = hazard
        .iter()
        .zip(counts)
        .filter(|(_, events)| 0.0 < **events);
    let ratios: Vec<(f64, f64)> = ratios
        .map(|(hazard, events)| (hazard * hours / sum, *events))
        .collect();
    let share = best_share(&ratios);
    let both = ((1.0 - share) * events / hours, share * events / sum);
    Some(fitted(hazard, counts, both))
}

/// The share of events that a cause made, of events whose density under the cause is so many times that of the background, each with its count.
fn best_share(ratios: &[(f64, f64)]) -> f64 {
    let slope = |share: f64| -> f64 {
        let of =
            |(ratio, count): &(f64, f64)| count * (ratio - 1.0) / (1.0 + share * (ratio - 1.0));
        ratios.iter().map(of).sum()
    };
    if slope(0.0) <= 0.0 {
        return 0.0;
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if 0.0 <= slope(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

fn fitted(hazard: &[f64], counts: &[f64], (background, scale): (f64, f64)) -> Fitted {
    let expected: Vec<f64> = hazard.iter().map(|one| background + scale * one).collect();
    Fitted {
        background,
        scale,
        log_likelihood: log_likelihood(&expected, counts),
    }
}

pub(crate) fn ln_factorial(count: f64) -> f64 {
    let mut sum = 0.0;
    let mut factor = 2.0;
    while factor <= count {
        sum += ln(factor);
        factor += 1.0;
    }
    sum
}

/// A small number of things as a number that is reckoned with.
#[expect(clippy::cast_precision_loss, reason = "far below 2^52 of anything")]
pub(crate) const fn count(number: usize) -> f64 {
    number as f64
}
