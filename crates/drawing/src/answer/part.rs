//! A piece of a sentence.

use dewrun_run::figure::{Figure, Spot};

/// How a piece of a sentence is set off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Emphasis {
    /// Not at all.
    #[default]
    None,
    /// Heavy.
    Strong,
    /// An amount of water.
    Water,
    /// An amount of frost.
    Frost,
    /// Mist.
    Mist,
    /// Water on the outside.
    Sweat,
    /// A value that nobody has measured.
    Assumed,
}

/// A piece of a sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its words.
    pub text: String,
    /// How it is set off.
    pub emphasis: Emphasis,
    /// The figure that it shows, and where it is read.
    pub figure: Option<(Figure, Spot)>,
}

impl Part {
    /// Plain words.
    pub(crate) fn words(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            emphasis: Emphasis::None,
            figure: None,
        }
    }

    /// Heavy words.
    pub(crate) fn strong(text: impl Into<String>) -> Self {
        Self {
            emphasis: Emphasis::Strong,
            ..Self::words(text)
        }
    }

    /// The same figure, read somewhere else.
    pub(crate) fn at(self, spot: Spot) -> Self {
        Self {
            figure: self.figure.map(|(figure, _)| (figure, spot)),
            ..self
        }
    }

    /// A figure.
    pub(crate) fn figure(text: String, emphasis: Emphasis, figure: Figure, spot: Spot) -> Self {
        Self {
            text,
            emphasis,
            figure: Some((figure, spot)),
        }
    }
}
