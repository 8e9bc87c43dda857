//! How many members are done, on the standard error where somebody looks at it.

use std::io::{IsTerminal, stderr};
use std::sync::atomic::{AtomicU32, Ordering};

/// How many members of how many are done.
pub(super) struct Progress {
    done: AtomicU32,
    of: u32,
    is_shown: bool,
}

impl Progress {
    /// Nothing done yet.
    pub(super) fn new(of: u32) -> Self {
        Self {
            done: AtomicU32::new(0),
            of,
            is_shown: stderr().is_terminal(),
        }
    }

    /// One more member is done.
    pub(super) fn one_more(&self) {
        let done = 1 + self.done.fetch_add(1, Ordering::Relaxed);
        if self.is_shown {
            eprint!("\r{done} of {} members", self.of);
        }
    }

    /// All are done; the line is free again.
    pub(super) fn end(&self) {
        if self.is_shown {
            eprintln!();
        }
    }
}
