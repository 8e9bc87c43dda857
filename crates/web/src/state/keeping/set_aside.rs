//! What was kept and can't be used is set aside under another name, so that it costs nothing and nothing is lost.

use dewrun_desk::{Record, Unkept, read_record};

use super::{PROJECT, name_of};
use crate::hooks::quick_store;

/// What the name of something set aside begins with.
const ASIDE: &str = "dewrun-aside:";
/// What the names of both begin with.
const BOTH: &str = "dewrun";

/// Something that was kept and can't be used.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct SetAside {
    /// What it is kept under.
    pub(crate) name: String,
    /// All of it.
    pub(crate) text: String,
    /// Why it can't be used.
    pub(crate) why: String,
}

/// What was kept, told apart.
#[derive(Default)]
pub(crate) struct Found {
    /// What can be used.
    pub(crate) records: Vec<Record>,
    /// What can't.
    pub(crate) set_aside: Vec<SetAside>,
    /// What is to be kept under another name from now on: the old one, the new one, the text.
    pub(super) moves: Vec<(String, String, String)>,
}

impl Found {
    pub(super) fn of(kept: Vec<(String, String)>) -> Self {
        let mut found = Self::default();
        for (name, text) in kept {
            let read = read_record(&text);
            let right = match &read {
                Ok(record) => name_of(record.kept.key),
                Err(_) => name.replacen(PROJECT, ASIDE, 1),
            };
            if name != right {
                found.moves.push((name, right.clone(), text.clone()));
            }
            match read {
                Ok(record) => found.records.push(record),
                Err(Unkept(why)) => found.set_aside.push(SetAside {
                    name: right,
                    text,
                    why,
                }),
            }
        }
        found
    }

    /// What was kept at once.
    pub(crate) fn quick() -> Self {
        let kept = quick_store::all(BOTH);
        let is_own =
            |(name, _): &(String, String)| name.starts_with(PROJECT) || name.starts_with(ASIDE);
        let found = Self::of(kept.into_iter().filter(is_own).collect());
        for (old, new, text) in &found.moves {
            // There may be no room for it twice.
            quick_store::remove(old);
            if !quick_store::put(new, text) {
                quick_store::put(old, text);
            }
        }
        found
    }

    /// By their keys, when what can be used was changed.
    pub(crate) fn seen(&self) -> Vec<(u64, u64)> {
        let kept = self.records.iter().map(|record| &record.kept);
        kept.map(|kept| (kept.key, kept.changed)).collect()
    }
}
