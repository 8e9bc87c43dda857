//! The named weathers: design states of outdoor air and of the spaces that follow it.

use dewrun_document::{AirPair, Input, Origin};
use dewrun_run::library;

use super::{Question, families, noted};
use crate::{Answered, OpenProject, Pick, rows};

/// What they are called.
pub(super) const WORDS: [&str; 4] = [
    "muggy summer day",
    "muggy night",
    "foggy morning",
    "frosty night",
];

/// The weather that was chosen; as long as none was, the first.
pub(super) fn of(project: &OpenProject) -> usize {
    let chosen = |question| noted::answer(project, question);
    chosen(Question::Weather)
        .or_else(|| chosen(Question::When))
        .filter(|place| *place < WORDS.len())
        .unwrap_or(0)
}

/// Puts the duct air and the spaces that are assumed into a weather; what was typed stays.
pub(super) fn apply(project: &mut OpenProject, weather: usize) -> Option<()> {
    if let Some(kind) = families::air_of(project).filter(|_| is_air_assumed(project)) {
        put_air(project, kind, weather)?;
    }
    for space in &mut project.spaces {
        let Some(kind) = families::of_space(space).filter(|_| is_assumed(&space.temperature_c))
        else {
            continue;
        };
        let row = families::SPACES.get(kind)?.get(weather)?;
        let row = library::find(library::spaces(), row)?;
        let name = core::mem::take(&mut space.name);
        let id = core::mem::take(&mut space.id);
        *space = rows::space(row)?;
        space.id = id;
        // A space that nobody has named yet keeps saying so.
        if name == crate::first_visit::UNNAMED {
            space.name = name;
        }
    }
    Some(())
}

/// Puts the air of a kind into the duct.
pub(super) fn put_air(project: &mut OpenProject, kind: usize, weather: usize) -> Option<()> {
    let row = families::AIRS.get(kind)?.get(weather)?;
    Pick::DuctAir.take(project, row)
}

fn is_air_assumed(project: &OpenProject) -> bool {
    let air = project.open_run().map(|run| &run.duct.air);
    let Some(AirPair::Temperature {
        temperature_c,
        humidity,
    }) = air
    else {
        return false;
    };
    is_assumed(temperature_c) && is_assumed(families::said(humidity))
}

fn is_assumed(input: &Input<f64>) -> bool {
    matches!(input.origin, Origin::Assumed { .. })
}

/// The answers in each of the named weathers, by what these are called; the one that was chosen is the project as it stands.
#[must_use]
pub fn weathers(project: &OpenProject) -> Vec<(&'static str, Answered)> {
    let chosen = of(project);
    let answered = |(place, word): (usize, &&'static str)| {
        let mut project = project.clone();
        if place != chosen {
            apply(&mut project, place)?;
        }
        Answered::unranked(&project).ok().map(|it| (*word, it))
    };
    WORDS.iter().enumerate().filter_map(answered).collect()
}
