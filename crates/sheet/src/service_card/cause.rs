//! The cause as far as it is told: the likeliest, what speaks for it, what cures it, what to look at next.

use dewrun_drawing::escaped;

use crate::markup::{element, heading, strong};

/// So many sentences of evidence stand on the card.
const EVIDENCE: usize = 3;

/// The cause of a run's troubles in words; all of it is empty where nobody has looked for one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CauseTold {
    /// The likeliest cause with its share.
    pub sentence: String,
    /// What cures it.
    pub cure: String,
    /// What to look at next, and what that takes.
    pub check: String,
    /// What speaks for it.
    pub evidence: Vec<String>,
}

impl CauseTold {
    /// What a text tells, a line each: sentence, cure, check, then evidence; an empty one tells nothing.
    ///
    /// ```
    /// use dewrun_sheet::CauseTold;
    /// let told = CauseTold::of_text("Water explains 13 of 14.\nFit a trap.\nEmpty it.\nWater was found.");
    /// assert_eq!((told.cure.as_str(), told.evidence.len()), ("Fit a trap.", 1));
    /// assert_eq!(CauseTold::of_text(""), CauseTold::default());
    /// ```
    #[must_use]
    pub fn of_text(text: &str) -> Self {
        let mut lines = text.lines().map(str::to_owned);
        let mut next = || lines.next().unwrap_or_default();
        let (sentence, cure, check) = (next(), next(), next());
        Self {
            sentence,
            cure,
            check,
            evidence: lines.collect(),
        }
    }
}

/// What stands of it on the card, or room to write it down.
pub(super) fn block(cause: &CauseTold) -> String {
    if cause.sentence.is_empty() {
        let line = "No cause has been looked for yet: answer the six questions or give the list of troubles in the section Troubles.";
        return format!(
            "{}{}",
            heading("Cause", ""),
            element("p", "dw-card__last", line)
        );
    }
    let part = |name: &str, words: &str| {
        if words.is_empty() {
            return String::new();
        }
        let words = format!("{} {}", strong(name), escaped(words));
        element("p", "dw-card__last", &words)
    };
    let evidence: Vec<&str> = cause
        .evidence
        .iter()
        .take(EVIDENCE)
        .map(String::as_str)
        .collect();
    [
        heading("Cause", "as far as answers and log tell it"),
        element("p", "dw-card__blind", &escaped(&cause.sentence)),
        part("For it:", &evidence.join(" ")),
        part("Cure:", &cause.cure),
        part("Look next:", &cause.check),
    ]
    .concat()
}
