//! Why a run has no year.

use dewrun_run::RunError;
use thiserror::Error;

/// Why a run has no year.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum SeasonError {
    /// The run itself cannot be evaluated: mend it.
    #[error("{0}")]
    Run(#[from] RunError),
    /// A weather file tells nothing that can be used: open another one.
    #[error(
        "the weather file has no row in which temperature, humidity and pressure are all known"
    )]
    NoRows,
    /// The air was measured in the duct, but the file that says so is not there: open it too.
    #[error("the air was measured in the duct, but its file is not at hand; open it too")]
    NotMeasured,
    /// Two files have no hour in common: open files of the same time.
    #[error(
        "the weather file and the file that was measured in the duct have no time in common; both must tell of the same days"
    )]
    ApartInTime,
    /// Spaces of the year are not those of the run.
    #[error("the year tells of {told} spaces, but the run has {spaces}")]
    OtherSpaces {
        /// Spaces of the year.
        told: usize,
        /// Spaces of the run.
        spaces: usize,
    },
}
