//! What each trouble says for the likeliest cause against the one after it.

use dewrun_numeric::elementary::ln;

use crate::rank::Ranking;

/// No trouble is told to weigh more times than this.
const MOST: f64 = 1000.0;
/// A factor below this is none.
const LEAST: f64 = 1e-6;

/// What a trouble says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weight {
    /// Its position in the log.
    pub entry: usize,
    /// How many times as likely it is under the likeliest cause as under the one after it, or the other way round; from 1 on.
    pub times: f64,
    /// The natural logarithm of that, below zero where it speaks for the second.
    pub log: f64,
}

impl Ranking {
    /// What each trouble says for the likeliest cause against the one after it; none without a log.
    #[must_use]
    pub fn weights(&self) -> Vec<Weight> {
        let mut causes = self.causes.iter();
        let (Some(first), Some(second)) = (causes.next(), causes.next()) else {
            return Vec::new();
        };
        let factors = first.factors.iter().zip(&second.factors);
        let each = self.entries.iter().zip(factors);
        each.map(|(entry, (one, other))| {
            let ratio = (one.max(LEAST) / other.max(LEAST)).clamp(1.0 / MOST, MOST);
            Weight {
                entry: *entry,
                times: ratio.max(1.0 / ratio),
                log: ln(ratio),
            }
        })
        .collect()
    }
}
