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
    /// A detector may not be sampling its duct.
    Blind,
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
        Self::from(match ending {
            Ending::Dry => 0,
            Ending::Wet => 10,
            Ending::Blind => 20,
            Ending::Failed => 1,
            Ending::WrongCommandLine => 2,
        })
    }
}
