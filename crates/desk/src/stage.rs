//! As what a project is on the desk, and how the address says so.

use crate::examples::{Example, example};
use crate::{OpenProject, Way};

/// What stands after the `#` while a project of one's own is open.
const PROJECT: &str = "#project";

/// As what the project is on the desk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// What the empty page asks, by the way in that was chosen.
    First(Way),
    /// A worked example, or what has become of it.
    Example(Example),
    /// A project of one's own.
    Project,
}

impl Stage {
    /// What an address asks for; none where it says nothing of this kind.
    pub fn asked(hash: &str) -> Option<Self> {
        match hash {
            "#" => Some(Self::First(Way::Drawing)),
            PROJECT => Some(Self::Project),
            _ => {
                let way = Way::ADDRESSES.iter().position(|own| *own == hash);
                let way = way.and_then(|place| Way::ALL.get(place));
                way.map(|way| Self::First(*way))
                    .or_else(|| example(hash).map(Self::Example))
            }
        }
    }

    /// Whether it is the empty page, whichever way in was chosen.
    #[must_use]
    pub fn is_first(self) -> bool {
        matches!(self, Self::First(_))
    }

    /// What it begins with; none for a project of one's own, and where the library lacks a row.
    #[must_use]
    pub fn project(self) -> Option<OpenProject> {
        match self {
            Self::First(way) => way.project(),
            Self::Example(example) => example.project().ok().map(OpenProject::from),
            Self::Project => None,
        }
    }

    /// What stands after the `#` of the address, the sign included.
    pub fn address(self) -> String {
        match self {
            Self::First(way) => Way::ADDRESSES[way.place()].to_owned(),
            Self::Example(example) => format!("#example={}", example.name),
            Self::Project => PROJECT.to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::EXAMPLES;

    #[test]
    fn each_stage_is_found_by_its_address() {
        let ways = Way::ALL.map(Stage::First).into_iter();
        let examples = EXAMPLES.map(Stage::Example).into_iter();
        for stage in ways.chain(examples).chain([Stage::Project]) {
            let address = stage.address();
            assert_eq!(Stage::asked(&address), Some(stage), "{address}");
        }
        assert_eq!(Stage::asked("#no-such-place"), None, "others are nowhere");
    }
}
