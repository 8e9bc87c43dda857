//! What a remedy does, with its size.

use dewrun_advice::{Change, RemedyKind};
use dewrun_quantity::{Length, Style};
use dewrun_remedies::Alteration;
use dewrun_run::figure::Kind as Shown;
use dewrun_run::library::{self, Row};
use dewrun_run::{Run, Tube};

use crate::html::change_words;
use crate::wording;

/// What is done to a run, as a sentence without a full stop; `spaces` are the names of its spaces.
#[must_use]
pub fn what(run: &Run, spaces: &[String], alterations: &[Alteration], style: Style) -> String {
    let mut told: Vec<String> = Vec::new();
    let mut rest = alterations;
    while let Some((first, _)) = rest.split_first() {
        // What is done to many legs alike is told once.
        let alike = rest.iter().take_while(|one| is_alike(first, one)).count();
        let (group, later) = rest.split_at(alike.max(1));
        told.push(group_words(run, spaces, group, style));
        rest = later;
    }
    told.retain(|words| !words.is_empty());
    wording::capital(&told.join("; "))
}

fn is_alike(one: &Alteration, next: &Alteration) -> bool {
    use Alteration::{Bare, Geometry, Insulate, Space, Trace, Tube};
    match (one, next) {
        (Geometry(Change::Leg { .. }), Geometry(Change::Leg { .. }))
        | (Bare { .. }, Bare { .. }) => true,
        (Insulate { thickness: a, .. }, Insulate { thickness: b, .. }) => a == b,
        (Trace { power: a, .. }, Trace { power: b, .. }) => a == b,
        (Space { space: a, .. }, Space { space: b, .. }) => a == b,
        (Tube { row: a, .. }, Tube { row: b, .. }) => a == b,
        _ => false,
    }
}

fn group_words(run: &Run, spaces: &[String], group: &[Alteration], style: Style) -> String {
    let Some(first) = group.first() else {
        return String::new();
    };
    let legs = legs_words(run, group);
    let millimetres =
        |length: Length| wording::measured(Shown::Diameter, length.to_millimetres(), style);
    match *first {
        Alteration::Geometry(_) => geometry(run, group, style),
        Alteration::TrapCapacity { capacity, .. } => format!(
            "a trap that takes {}",
            wording::volume(capacity.to_grams(), style)
        ),
        Alteration::DrainEvery(time) => format!(
            "emptied every {} days",
            dewrun_quantity::format::entered(time.to_days().round())
        ),
        Alteration::Insulate { thickness, .. } => {
            format!("insulate {legs} by {}", millimetres(thickness))
        }
        Alteration::Bare { .. } => format!("take the insulation off {legs}"),
        Alteration::Trace { power, .. } => format!(
            "heat tracing of {} along {legs}",
            wording::measured(Shown::HeatPerLength, power.to_watts_per_metre(), style)
        ),
        Alteration::Space { space, .. } => {
            let name = spaces.get(space).map_or("another space", String::as_str);
            format!("lead {legs} through \u{201c}{name}\u{201d}")
        }
        Alteration::Tube { row, .. } => {
            let name = library::find(library::tubes(), row).map_or(row, Row::name);
            format!("another tube: {name}")
        }
        Alteration::Flow(volume) => format!(
            "draw {}",
            wording::measured(Shown::Flow, volume.to_litres_per_minute(), style)
        ),
        Alteration::Warm(heat) => format!(
            "warm the air at the detector: {} in all",
            wording::measured(Shown::Heat, heat.to_watts(), style)
        ),
        Alteration::DetectorAt { intake_legs, .. } => {
            let kept = run.intake.get(..intake_legs).unwrap_or_default();
            let length: Length = kept.iter().map(|leg| leg.length).sum();
            let space = kept.last().and_then(|leg| spaces.get(leg.space));
            let space = space.map_or("an earlier space", String::as_str);
            format!(
                "put the detector into \u{201c}{space}\u{201d}, {} from the duct",
                wording::metres(length.to_metres(), style)
            )
        }
    }
}

fn geometry(run: &Run, group: &[Alteration], style: Style) -> String {
    let changes: Vec<Change> = group
        .iter()
        .filter_map(|one| match one {
            Alteration::Geometry(change) => Some(*change),
            _ => None,
        })
        .collect();
    let kind = match changes.first() {
        Some(Change::Leg { .. }) => RemedyKind::Regrade,
        Some(Change::Hangers { .. }) => RemedyKind::Hangers,
        _ => RemedyKind::Traps,
    };
    let words = change_words(run, kind, &changes, style);
    let mut letters = words.chars();
    let small = letters.next().map(|first| first.to_ascii_lowercase());
    small.into_iter().chain(letters).collect()
}

/// Legs by their numbers, those of the exhaust counted on from those of the intake: `leg 2`, `legs 2 to 4 and 7`.
fn legs_words(run: &Run, group: &[Alteration]) -> String {
    let number = |(tube, leg): (Tube, usize)| match tube {
        Tube::Intake => leg + 1,
        Tube::Exhaust => run.intake.len() + leg + 1,
    };
    let mut numbers: Vec<usize> = group
        .iter()
        .filter_map(Alteration::leg)
        .map(number)
        .collect();
    numbers.sort_unstable();
    let mut parts: Vec<String> = Vec::new();
    let mut rest = numbers.as_slice();
    while let Some((&first, _)) = rest.split_first() {
        let row = rest
            .iter()
            .zip(first..)
            .take_while(|(one, next)| *one == next);
        let count = row.count().max(1);
        let last = first + count - 1;
        parts.push(match count {
            1 => first.to_string(),
            2 => format!("{first} and {last}"),
            _ => format!("{first} to {last}"),
        });
        rest = rest.get(count..).unwrap_or_default();
    }
    let plural = if numbers.len() == 1 { "leg" } else { "legs" };
    format!("{plural} {}", parts.join(", "))
}
