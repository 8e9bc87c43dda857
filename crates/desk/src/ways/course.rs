//! Where the tube runs: the spaces that its legs lie in, one after another.

use dewrun_document::{Leg, Space};
use dewrun_run::library;

use super::{families, weather};
use crate::field::{leg, leg_mut, route, route_mut};
use crate::first_visit::{UNNAMED, has_drop, tidy};
use crate::{Field, OpenProject, TubeName, rows};

/// The kinds of the spaces that the tube passes, in its order; none of one that nobody has named.
pub(super) fn spaces(project: &OpenProject) -> impl Iterator<Item = usize> {
    let legs = route(project, TubeName::Intake).map_or(&[][..], |route| &route.legs);
    let level = legs.len() - usize::from(has_drop(legs));
    let mut kinds = Vec::new();
    for leg in legs.iter().take(level) {
        if let Some(kind) = kind_of(project, leg).filter(|kind| !kinds.contains(kind)) {
            kinds.push(kind);
        }
    }
    kinds.into_iter()
}

/// What stands before the second number of the duct air in the sentence with blanks: it may be said in several quantities.
#[must_use]
pub fn humid_with(project: &OpenProject) -> String {
    let name = Field::DuctSecond.name(project).to_ascii_lowercase();
    format!(" with a {name} of ")
}

/// What stands before the temperature of a space in the sentence with blanks.
#[must_use]
pub fn passing(project: &OpenProject, at: usize) -> String {
    let Some(space) = project.spaces.get(at) else {
        return String::new();
    };
    let kind = families::of_space(space).filter(|_| space.name != UNNAMED);
    let word = kind.and_then(|kind| families::SPACE_WORDS.get(kind));
    let space = word.map_or_else(|| "a space".to_owned(), |word| format!("the {word}"));
    if at == 0 {
        format!(" bare tube through {space} at ")
    } else {
        format!(", then {space} at ")
    }
}

/// The kind of the space that a leg lies in.
pub(super) fn space_of_leg(project: &OpenProject, at: usize) -> Option<usize> {
    kind_of(project, leg(project, TubeName::Intake, at)?)
}

fn kind_of(project: &OpenProject, leg: &Leg) -> Option<usize> {
    let space = project.spaces.iter().find(|space| space.id == leg.space)?;
    families::of_space(space).filter(|_| space.name != UNNAMED)
}

/// Adds a space at the end of those that the tube passes, or takes it from among them; the last one stays.
pub(super) fn turn(project: &mut OpenProject, kind: usize) -> Option<()> {
    let mut kinds: Vec<usize> = spaces(project).collect();
    match kinds.iter().position(|other| *other == kind) {
        Some(_) if kinds.len() == 1 => return Some(()),
        Some(at) => drop(kinds.remove(at)),
        None => kinds.push(kind),
    }
    run_through(project, &kinds)
}

/// Lays the level part of the tube through spaces, as much of it in each, and the drop in the last.
pub(super) fn run_through(project: &mut OpenProject, kinds: &[usize]) -> Option<()> {
    let mut through = Vec::new();
    for kind in kinds {
        through.push(space_id(project, *kind)?);
    }
    let legs = &mut route_mut(project, TubeName::Intake)?.legs;
    let drop = if has_drop(legs) { legs.pop() } else { None };
    let model = legs.first()?.clone();
    let length: f64 = legs.iter().map(|leg| leg.length_m.value).sum();
    let each = tidy(length / f64::from(u32::try_from(through.len()).ok()?));
    *legs = through
        .iter()
        .map(|space| {
            let mut leg = model.clone();
            leg.space.clone_from(space);
            leg.length_m = rows::moved(&model.length_m, each);
            leg
        })
        .collect();
    if let (Some(mut leg), Some(space)) = (drop, through.last()) {
        leg.space.clone_from(space);
        legs.push(leg);
    }
    for (number, leg) in (1..).zip(legs) {
        leg.id = format!("leg-{number}");
    }
    leave_unused(project);
    Some(())
}

/// Lays one leg into a space of a kind.
pub(super) fn put_leg(project: &mut OpenProject, at: usize, kind: usize) -> Option<()> {
    let space = space_id(project, kind)?;
    leg_mut(project, TubeName::Intake, at)?.space = space;
    leave_unused(project);
    Some(())
}

/// The space of a kind that the project has, or a new one in the weather that was chosen.
fn space_id(project: &mut OpenProject, kind: usize) -> Option<String> {
    let is_it = |space: &&Space| space.name != UNNAMED && families::of_space(space) == Some(kind);
    if let Some(space) = project.spaces.iter().find(is_it) {
        return Some(space.id.clone());
    }
    let row = families::SPACES.get(kind)?.get(weather::of(project))?;
    let mut space = rows::space(library::find(library::spaces(), row)?)?;
    let is_free = |id: &String| project.spaces.iter().all(|space| space.id != *id);
    space.id = (1..)
        .map(|number| format!("space-{number}"))
        .find(is_free)?;
    let id = space.id.clone();
    project.spaces.push(space);
    Some(id)
}

/// Takes spaces away that no leg lies in.
fn leave_unused(project: &mut OpenProject) {
    let used: Vec<String> = project
        .runs
        .iter()
        .flat_map(|run| [Some(&run.intake), run.exhaust.as_ref()])
        .flatten()
        .flat_map(|route| route.legs.iter().map(|leg| leg.space.clone()))
        .collect();
    project.spaces.retain(|space| used.contains(&space.id));
}
