//! One project with what is kept of it beside its file.

use crate::{OpenProject, Stage};

/// A project as it lies on the desk or aside.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept {
    /// What it is kept under, the same for its whole life.
    pub key: u64,
    /// The project, and which of its runs is open.
    pub project: OpenProject,
    /// As what it is on the desk.
    pub stage: Stage,
    /// When it was changed or opened last, ms since 1970.
    pub changed: u64,
}

/// Takes that of a key out of several.
pub(crate) fn take(kept: &mut Vec<Kept>, key: u64) -> Option<Kept> {
    let at = kept.iter().position(|one| one.key == key)?;
    Some(kept.remove(at))
}

/// Puts one among several, which stay in the order of their keys.
pub(crate) fn put(kept: &mut Vec<Kept>, one: Kept) {
    let at = kept.iter().position(|other| one.key < other.key);
    kept.insert(at.unwrap_or(kept.len()), one);
}
