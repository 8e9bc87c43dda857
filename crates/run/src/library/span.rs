//! A figure that nobody knows exactly: the lowest, usual and highest value that are plausible.

/// The lowest, usual and highest plausible value of one figure, and where they are from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span<T> {
    /// The lowest value that is plausible.
    pub low: T,
    /// The value to take where nothing is known.
    pub usual: T,
    /// The highest value that is plausible.
    pub high: T,
    /// A published source with its year, or `common practice, no source`, or `from memory`.
    pub source: &'static str,
}

impl<T> Span<T> {
    /// The same three values through one door, such as `Length::to_millimetres`.
    pub fn map<U>(self, door: impl Fn(T) -> U) -> Span<U> {
        Span {
            low: door(self.low),
            usual: door(self.usual),
            high: door(self.high),
            source: self.source,
        }
    }
}
