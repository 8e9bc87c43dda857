//! What was kept and can't be used is set aside under another name, so that it costs nothing and nothing is lost.

use dewrun_desk::{Record, Unkept, read_record};

use super::{PROJECT, name_of};
use crate::hooks::kept::{Put, Wanted, all_at_once, put_at_once};

/// What the name of something set aside begins with.
const ASIDE: &str = "dewrun-aside:";

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
        let own = |name: &str| name.starts_with(PROJECT) || name.starts_with(ASIDE);
        let mut kept = all_at_once();
        kept.retain(|(name, _)| own(name));
        let found = Self::of(kept);
        for (old, new, text) in &found.moves {
            let put = |name, text| {
                put_at_once(&Wanted {
                    name,
                    text,
                    window: "",
                    seen: u64::MAX,
                })
            };
            // There may be no room for it twice.
            put(old, None);
            if !matches!(put(new, Some(text)), Put::Kept) {
                put(old, Some(text));
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
