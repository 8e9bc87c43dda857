//! Why water and air of a run have no answer.

use dewrun_airflow::AirflowError;
use dewrun_water::drainage::DrainageError;
use dewrun_water::hanger::HangerError;
use dewrun_water::trap::TrapError;
use thiserror::Error;

use crate::error::{Place, Tube};
use crate::input::Run;
use crate::installation::Installation;

/// Why water and air of a run have no answer.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum WholeError {
    /// Legs or spaces of run and installation are not as many: give one for each.
    #[error("{given} are given for {wanted} {what}")]
    Count {
        /// What is counted.
        what: &'static str,
        /// How many are given.
        given: usize,
        /// How many there are.
        wanted: usize,
    },
    /// Water has no way in that tube: mend the leg or trap named.
    #[error("{source}")]
    Drainage {
        /// Which tube.
        tube: Tube,
        /// What is wrong.
        source: DrainageError,
    },
    /// A leg's tube cannot hang: mend its wall.
    #[error("{source}")]
    Hanger {
        /// The leg.
        place: Place,
        /// What is wrong.
        source: HangerError,
    },
    /// A trap cannot be judged: mend its numbers.
    #[error("{source}")]
    Trap {
        /// Which tube.
        tube: Tube,
        /// Which trap, counted from 0.
        trap: usize,
        /// What is wrong.
        source: TrapError,
    },
    /// The air has no flow: mend what is named.
    #[error("{source}")]
    Airflow {
        /// What is wrong.
        source: AirflowError,
    },
}

impl From<AirflowError> for WholeError {
    fn from(source: AirflowError) -> Self {
        Self::Airflow { source }
    }
}

impl Installation {
    pub(super) fn check_counts(&self, run: &Run) -> Result<(), WholeError> {
        for (what, given, wanted) in [
            (
                "legs of the intake",
                self.intake.legs.len(),
                run.intake.len(),
            ),
            (
                "legs of the exhaust",
                self.exhaust.legs.len(),
                run.exhaust.len(),
            ),
            ("spaces", self.spaces.len(), run.spaces.len()),
        ] {
            if given != wanted {
                return Err(WholeError::Count {
                    what,
                    given,
                    wanted,
                });
            }
        }
        Ok(())
    }
}
