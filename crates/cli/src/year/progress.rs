//! How far the runs are, on the standard error where somebody looks at it.

use std::io::{IsTerminal, stderr};
use std::sync::atomic::{AtomicUsize, Ordering};

/// How many runs of how many are done.
pub(super) struct Progress {
    done: AtomicUsize,
    of: usize,
    is_shown: bool,
}

impl Progress {
    /// Nothing done yet; of one run alone nothing is shown.
    pub(super) fn new(of: usize) -> Self {
        Self {
            done: AtomicUsize::new(0),
            of,
            is_shown: 1 < of && stderr().is_terminal(),
        }
    }

    /// One more run is done.
    pub(super) fn one_more(&self) {
        let done = 1 + self.done.fetch_add(1, Ordering::Relaxed);
        if self.is_shown {
            eprint!("\r{done} of {} runs", self.of);
        }
    }

    /// All are done; the line is free again.
    pub(super) fn end(&self) {
        if self.is_shown {
            eprintln!();
        }
    }
}
