//! An answer with notes beside it: the answer stands, but a range was left or a choice was made.

/// A value and what has to be said about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Noted<T, N> {
    /// The answer.
    pub value: T,
    /// What has to be said beside it, in the order it was met.
    pub notes: Vec<N>,
}

impl<T, N> Noted<T, N> {
    /// An answer with nothing to say beside it.
    pub const fn plain(value: T) -> Self {
        Self {
            value,
            notes: Vec::new(),
        }
    }

    /// The same notes beside another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Noted<U, N> {
        Noted {
            value: change(self.value),
            notes: self.notes,
        }
    }
}
