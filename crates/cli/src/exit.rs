//! How a command ends, and what it tells the shell.

use std::process::ExitCode;

use dewrun_run::Verdict;

/// How a command ended; the later the worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Ending {
    /// Every run is dry.
    Dry,
    /// A run is wet.
    Wet,
    /// Something could not be read or answered.
    Failed,
    /// The command line is wrong.
    WrongCommandLine,
}

impl From<Verdict> for Ending {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Dry => Self::Dry,
            Verdict::Wet => Self::Wet,
        }
    }
}

impl From<Ending> for ExitCode {
    fn from(ending: Ending) -> Self {
        // 20 is kept for a blind detector, which takes the airflow to tell.
        Self::from(match ending {
            Ending::Dry => 0,
            Ending::Wet => 10,
            Ending::Failed => 1,
            Ending::WrongCommandLine => 2,
        })
    }
}
