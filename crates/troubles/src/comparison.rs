//! Causes compared: the more freely one bends to a log, the more it must explain.

use dewrun_numeric::elementary::{exp, ln};

/// What freedom costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Penalty {
    /// Two for each free number: H. Akaike, IEEE Trans. Autom. Control 19 (1974) 716. What ranks causes.
    Akaike,
    /// The logarithm of the events for each free number: G. Schwarz, Ann. Stat. 6 (1978) 461.
    Bayes,
}

/// Shares of causes by the logarithms of their likelihoods and how many numbers of each are free, all alike before.
///
/// # Range
/// As many of both; at least one event where the penalty counts them.
/// # Source
/// `exp(-IC / 2)` over the sum of all: K. P. Burnham & D. R. Anderson, Model Selection and Multimodel Inference (2002), section 2.9.
///
/// ```
/// use dewrun_troubles::{Penalty, shares};
/// let shares = shares(&[-42.1, -44.0], &[1.0, 1.0], 12, Penalty::Akaike);
/// assert!((shares[0] - 1.0 / (1.0 + (-1.9f64).exp())).abs() < 1e-12);
/// ```
#[must_use]
pub fn shares(log_likelihoods: &[f64], free: &[f64], events: usize, penalty: Penalty) -> Vec<f64> {
    let each = match penalty {
        Penalty::Akaike => 1.0,
        Penalty::Bayes => 0.5 * ln(crate::poisson::count(events.max(1))),
    };
    let scores = log_likelihoods.iter().zip(free);
    let scores: Vec<f64> = scores.map(|(log, free)| log - each * free).collect();
    normalised(&scores)
}

/// Shares of scores that are logarithms.
pub(crate) fn normalised(scores: &[f64]) -> Vec<f64> {
    let most = scores.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if !most.is_finite() {
        return vec![1.0 / crate::poisson::count(scores.len().max(1)); scores.len()];
    }
    let weights: Vec<f64> = scores.iter().map(|score| exp(score - most)).collect();
    let all: f64 = weights.iter().sum();
    weights.iter().map(|weight| weight / all).collect()
}

/// Puts the largest first; those that are alike keep their order. For a handful of things: the page weighs less than with a sort of each kind.
pub(crate) fn largest_first<T>(things: &mut [T], of: fn(&T) -> f64) {
    for from in 1..things.len() {
        let mut at = from;
        while let Some(before) = at.checked_sub(1) {
            let is_larger = match (things.get(before), things.get(at)) {
                (Some(one), Some(next)) => of(one) < of(next),
                _ => false,
            };
            if !is_larger {
                break;
            }
            things.swap(before, at);
            at = before;
        }
    }
}

/// The logarithm of the sum of likelihoods, of their logarithms.
pub(crate) fn log_sum(logs: &[f64]) -> f64 {
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if !most.is_finite() {
        return f64::NEG_INFINITY;
    }
    most + ln(logs.iter().map(|log| exp(log - most)).sum())
}

/// The logarithm of the mean of weighted likelihoods, of their logarithms; minus infinity of none.
pub(crate) fn log_mean(weighted: &[(f64, f64)]) -> f64 {
    let most = weighted
        .iter()
        .map(|(log, _)| *log)
        .fold(f64::NEG_INFINITY, f64::max);
    if !most.is_finite() {
        return f64::NEG_INFINITY;
    }
    let (sum, all) = weighted
        .iter()
        .fold((0.0, 0.0), |(sum, all), (log, weight)| {
            (sum + weight * exp(log - most), all + weight)
        });
    most + ln(sum / all)
}
