//! The answer in one sentence, made of parts so that a page can set its figures off and open them.

mod asides;
mod doubt;
mod first;
mod part;
mod rests;
mod sentence;
mod weather;
mod whole;

use dewrun_quantity::Style;
use dewrun_run::{Grade, Outcome, Run};

pub use first::first_answer;
pub use part::{Emphasis, Part};
pub use rests::{Rests, assumed_name, rests};
pub use weather::weather_answer;
pub use whole::whole_answer;

/// The answer to a run in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// The one sentence.
    pub sentence: Vec<Part>,
    /// What stands beside it, a short sentence each: grade of proof and what is not computed first, then what to do first and what else is worth knowing.
    pub asides: Vec<Vec<Part>>,
    /// What is known besides, for whoever wants it.
    pub more: Vec<Vec<Part>>,
}

impl Answer {
    /// All of it as plain text.
    #[must_use]
    pub fn plain(&self) -> String {
        let mut text = self.plain_sentence();
        for aside in self.asides.iter().chain(&self.more) {
            text.push(' ');
            text.push_str(&plain(aside));
        }
        text
    }

    /// The one sentence as plain text.
    #[must_use]
    pub fn plain_sentence(&self) -> String {
        plain(&self.sentence)
    }
}

/// The answer to a run in words.
///
/// A dry answer never stands alone: it says for what conditions, and that doubt is not computed.
#[must_use]
pub fn answer(run: &Run, outcome: &Outcome, style: Style) -> Answer {
    Answer {
        sentence: sentence::sentence(outcome, style),
        asides: asides::asides(run, outcome, style),
        more: Vec::new(),
    }
}

/// How a verdict is proved, in words.
#[must_use]
pub const fn grade(grade: Grade) -> &'static str {
    match grade {
        Grade::ByBound => "by bound",
        Grade::ByModel => "by model",
    }
}

fn plain(parts: &[Part]) -> String {
    parts.iter().map(|part| part.text.as_str()).collect()
}
