//! The ways in: what each asks, and what a tap writes into the project.
//!
//! A question that is not answered leaves what is assumed in its place, so that there is an answer from the first moment.

mod answers;
mod course;
mod families;
mod fitted;
mod noted;
mod way;
mod weather;

use crate::OpenProject;

pub use course::{humid_with, passing};
pub use way::Way;
pub use weather::weathers;

/// A question whose answers are a few words to tap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// Which air is in the duct.
    Air,
    /// In which of the named weathers.
    Weather,
    /// Which spaces the tube passes, one or several.
    Spaces,
    /// Which tube it is.
    Tube,
    /// Which way a leg of the tube that is being fitted goes.
    LegWay(usize),
    /// What it goes through.
    LegSpace(usize),
    /// Which way the tube goes on: answered, there is one leg more.
    NextLeg,
    /// Which trouble comes back.
    Trouble,
    /// When it comes.
    When,
    /// Which air is in the duct of the detector that it comes to.
    TroubleAir,
    /// Where that detector's tube runs.
    Where,
    /// Whether there is a trap, and water in it.
    Trap,
    /// When filter or fan were last touched.
    Touched,
}

impl Question {
    /// What a technician is asked, in this order.
    pub const TROUBLE: [Self; 6] = [
        Self::Trouble,
        Self::When,
        Self::TroubleAir,
        Self::Where,
        Self::Trap,
        Self::Touched,
    ];

    /// The question.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Air | Self::TroubleAir => "Which duct air?",
            Self::Weather => "In which weather?",
            Self::Spaces => "Through which spaces?",
            Self::Tube => "Which tube?",
            Self::LegWay(_) => "Which way?",
            Self::LegSpace(_) => "Through what?",
            Self::NextLeg => "Which way does it go on?",
            Self::Trouble => "Which trouble?",
            Self::When => "When, mostly?",
            Self::Where => "Where does the tube run?",
            Self::Trap => "A trap, and does water come out?",
            Self::Touched => "Filter or fan last touched?",
        }
    }

    /// Its answers.
    #[must_use]
    pub fn words(self) -> &'static [&'static str] {
        match self {
            Self::Air | Self::TroubleAir => &families::AIR_WORDS,
            Self::Weather => &weather::WORDS,
            Self::Spaces | Self::LegSpace(_) | Self::Where => &families::SPACE_WORDS,
            Self::Tube => &families::TUBE_WORDS,
            Self::LegWay(_) | Self::NextLeg => &fitted::WAY_WORDS,
            Self::Trouble | Self::When | Self::Trap | Self::Touched => {
                noted::asked(self).map_or(&[], |asked| asked.words)
            }
        }
    }

    /// The answers that hold, a bit for each.
    #[must_use]
    pub fn chosen(self, project: &OpenProject) -> usize {
        let bit = |place: Option<usize>| place.map_or(0, |place| 1 << place);
        match self {
            Self::Air => bit(families::air_of(project)),
            Self::Weather => bit(Some(weather::of(project))),
            Self::Spaces => course::spaces(project).fold(0, |bits, place| bits | 1 << place),
            Self::Tube => bit(families::tube_of(project)),
            Self::LegWay(at) => bit(fitted::way_of(project, at)),
            Self::LegSpace(at) => bit(course::space_of_leg(project, at)),
            Self::NextLeg => 0,
            _ => bit(noted::answer(project, self)),
        }
    }

    /// Writes an answer into the project's note and changes nothing else: for a route that is drawn already; none where the question is none for a note.
    pub fn note(self, project: &mut OpenProject, place: usize) -> Option<()> {
        noted::write(project, self, place)
    }

    /// Takes an answer into the project; none where the project has no such part.
    pub fn answer(self, project: &mut OpenProject, place: usize) -> Option<()> {
        answers::take(self, project, place)
    }
}
