//! As what a project is on the desk, and how the address says so.

use crate::examples::{Example, example};

/// What stands after the `#` while a project of one's own is open.
const PROJECT: &str = "#project";

/// As what the project is on the desk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// The sentence with blanks of the empty page.
    First,
    /// A worked example, or what has become of it.
    Example(Example),
    /// A project of one's own.
    Project,
}

impl Stage {
    /// What an address asks for; none where it says nothing of this kind.
    pub fn asked(hash: &str) -> Option<Self> {
        match hash {
            "" | "#" => Some(Self::First),
            PROJECT => Some(Self::Project),
            _ => example(hash).map(Self::Example),
        }
    }

    /// What stands after the `#` of the address, the sign included.
    pub fn address(self) -> String {
        match self {
            Self::First => String::new(),
            Self::Example(example) => format!("#example={}", example.name),
            Self::Project => PROJECT.to_owned(),
        }
    }
}
