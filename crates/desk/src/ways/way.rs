//! The three ways in: what somebody has who comes to the empty page, and what each begins with.

use dewrun_run::Verdict;

use super::{fitted, weather};
use crate::field::{route, route_mut};
use crate::{OpenProject, TubeName, first_project};

/// A way in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// A duct on a drawing.
    Drawing,
    /// A tube that is being fitted.
    Fitting,
    /// A trouble that comes back.
    Trouble,
}

impl Way {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Drawing, Self::Fitting, Self::Trouble];

    /// What somebody has who takes each, after "I have".
    pub const WORDS: [&'static str; 3] = [
        "a duct on a drawing",
        "a tube I am fitting",
        "a trouble that comes back",
    ];

    /// What stands after the `#` of the address for each; the empty page begins with the first.
    pub(crate) const ADDRESSES: [&'static str; 3] = ["", "#fitting", "#trouble"];

    /// Its position among them.
    #[must_use]
    pub const fn place(self) -> usize {
        self as usize
    }

    /// The project that it begins with; none if the library lacks a row.
    #[must_use]
    pub fn project(self) -> Option<OpenProject> {
        let mut project = OpenProject::from(first_project()?);
        if self != Self::Drawing {
            // Nobody has named the air: it is the usual one.
            weather::put_air(&mut project, 0, 0)?;
        }
        if self == Self::Fitting {
            route_mut(&mut project, TubeName::Intake)?.legs.truncate(1);
            fitted::lay(&mut project, 0, 0)?;
        }
        Some(project)
    }

    /// What it asks for, in a sentence.
    #[must_use]
    pub const fn lead(self) -> &'static str {
        match self {
            Self::Drawing => {
                "Tap or overwrite what the drawing says; the answer follows. Then draw the route and refine it leg by leg."
            }
            Self::Fitting => {
                "Lay the tube leg by leg, from the duct on. Where a trap goes and how far hangers stand apart is not shown here yet."
            }
            Self::Trouble => {
                "Six taps; what you don\u{2019}t answer stays assumed. The likely causes follow each tap, and what to look at next; once the route is drawn, a list of what happened when sharpens them."
            }
        }
    }

    /// What its answer begins with.
    #[must_use]
    pub fn begins(self, project: &OpenProject) -> String {
        match self {
            Self::Drawing => "With these values".to_owned(),
            Self::Fitting => {
                let legs = route(project, TubeName::Intake).map_or(0, |route| route.legs.len());
                format!("To the end of leg {legs}")
            }
            Self::Trouble => "On such a route, in such an hour,".to_owned(),
        }
    }

    /// What its answer rests on, and what it does not say.
    #[must_use]
    pub const fn beside(self, verdict: Verdict) -> &'static str {
        match (self, verdict) {
            (Self::Drawing, _) => "Dotted values are assumed; overwrite what you know.",
            (Self::Fitting, _) => "What you did not answer is assumed.",
            (Self::Trouble, Verdict::Wet) => "Water may be the cause.",
            (Self::Trouble, Verdict::Dry) => "Look for another cause first.",
        }
    }
}
