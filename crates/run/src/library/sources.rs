//! Where the figures of the library are from: each source written once, named by a short id.

use super::{Read, csv};

/// The sources by their ids.
#[derive(Debug, Default)]
pub(super) struct Sources(Vec<(&'static str, &'static str)>);

impl Sources {
    /// Those that are compiled in.
    pub(super) fn read() -> Read<Self> {
        Self::of(include_str!("sources.csv"))
    }

    /// Those of a list.
    pub(super) fn of(text: &'static str) -> Read<Self> {
        let sources = csv::rows("sources.csv", text, &Self::default(), |record| {
            (record.text("id"), record.text("source"))
        })?;
        Ok(Self(sources))
    }

    /// The source with that id.
    pub(super) fn text(&self, id: &str) -> Option<&'static str> {
        let found = self.0.iter().find(|(known, _)| *known == id);
        found.map(|(_, text)| *text)
    }
}
