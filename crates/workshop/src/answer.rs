//! What a question is answered with.

/// The answer to a question.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// Numbers, in the order that the kind of question has.
    Numbers(Vec<f64>),
    /// HTML or SVG.
    Text(String),
    /// Why there is no answer.
    Sentence(String),
}

/// What a turn at long work brought.
#[derive(Debug, Clone, PartialEq)]
pub enum Turn {
    /// So much of it is done, 0 to 1.
    Going(f64),
    /// All of it.
    Done(Answer),
}
