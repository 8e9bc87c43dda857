//! What an answer writes into the project.

use super::{Question, course, families, fitted, noted, weather};
use crate::{OpenProject, Pick, TubeName, same_tube_everywhere};

/// Takes an answer into the project; none where the project has no such part.
pub(super) fn take(question: Question, project: &mut OpenProject, place: usize) -> Option<()> {
    // What holds already is not written again: numbers that were typed since stay.
    if question != Question::Spaces && question.chosen(project) == 1 << place {
        return Some(());
    }
    match question {
        Question::Air => weather::put_air(project, place, weather::of(project)),
        Question::Weather => {
            noted::write(project, question, place)?;
            weather::apply(project, place)
        }
        Question::Spaces => course::turn(project, place),
        Question::Tube => {
            let row = families::TUBES.get(place)?;
            Pick::Tube(TubeName::Intake, 0).take(project, row)?;
            same_tube_everywhere(project, TubeName::Intake, 0)
        }
        Question::LegWay(at) => fitted::lay(project, at, place),
        Question::LegSpace(at) => course::put_leg(project, at, place),
        Question::NextLeg => fitted::go_on(project, place),
        Question::When => {
            noted::write(project, question, place)?;
            let weather = weather::of(project);
            weather::apply(project, weather)
        }
        Question::TroubleAir => {
            noted::write(project, question, place)?;
            weather::put_air(project, place, weather::of(project))
        }
        Question::Where => {
            noted::write(project, question, place)?;
            course::run_through(project, &[place])
        }
        Question::Trouble | Question::Trap | Question::Touched => {
            noted::write(project, question, place)
        }
    }
}
