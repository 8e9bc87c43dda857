//! Why a boundary was not found.

use dewrun_quantity::DecimalMark;
use dewrun_quantity::format::fixed;
use dewrun_run::RunError;
use thiserror::Error;

/// Why a boundary was not found.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum BoundaryError {
    /// A run on the way has no answer: the sentence says what about it is out of range.
    #[error("with {quantity} at {} {unit}: {source}", hundredths(*.value))]
    Run {
        /// What was changed, in words.
        quantity: &'static str,
        /// What it was changed to.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// Why that run has no answer.
        source: Box<RunError>,
    },
    /// The search ended before the bracket was narrow enough: what is left of it is told.
    #[error("the limit of {quantity} was only found to lie between {} and {} {unit}", hundredths(*.low), hundredths(*.high))]
    NotConverged {
        /// What was changed, in words.
        quantity: &'static str,
        /// One end of the bracket.
        low: f64,
        /// The other end.
        high: f64,
        /// Unit of both.
        unit: &'static str,
    },
}

fn hundredths(value: f64) -> String {
    fixed(value, 2, DecimalMark::Point)
}
