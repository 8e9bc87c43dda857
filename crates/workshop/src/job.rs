//! Long work, done turn by turn so that whoever waits for it can be told how far it is, or give it up.

use crate::answer::{Answer, Turn};

/// Work in turns that are short against a frame, as far as that can be.
pub(crate) trait Job {
    /// Goes on with it; not called again once it is done.
    fn turn(&mut self) -> Turn;
}

impl dyn Job {
    /// Does the rest of it.
    pub(crate) fn rest(&mut self) -> Answer {
        loop {
            if let Turn::Done(answer) = self.turn() {
                return answer;
            }
        }
    }
}
