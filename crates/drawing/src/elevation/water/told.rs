//! What is said of water that stands, and all of it in sentences.

use dewrun_quantity::Style;
use dewrun_run::figure::Kind;
use dewrun_run::told::Destination;
use dewrun_run::{LowPoint, TubeWater};

use crate::block::{Block, Line};
use crate::text::Tone;
use crate::wording;

/// What is said at a low point, the fullest first.
pub(super) fn low_point(
    low: &LowPoint,
    (style, has_trap): (Style, bool),
    narrow: bool,
) -> Vec<Block> {
    let place = wording::metres(low.at.to_metres(), style);
    let trap = if has_trap { ": trap here" } else { "" };
    let name = Line::new(format!("low point, {place}{trap}")).bold();
    let water = Line::new(standing(low, style)).toned(Tone::Water).bold();
    let outcome = Line::new(outcome(low, style)).bold();
    let [name, water, outcome] = [vec![name], vec![water], vec![outcome]];
    let first: Vec<Line> = first_trouble(low, style)
        .map(|words| Line::new(words).toned(Tone::Second))
        .into_iter()
        .collect();
    let mut forms = Vec::new();
    if !narrow {
        forms.push([name.clone(), water.clone(), outcome.clone(), first].concat());
    }
    forms.push([name.clone(), water, outcome.clone()].concat());
    forms.push([name, outcome.clone()].concat());
    forms.push(outcome);
    forms.into_iter().map(Block::of).collect()
}

/// What stands there when traps are next emptied.
pub(super) fn standing(low: &LowPoint, style: Style) -> String {
    let volume = wording::volume(low.amount.to_grams(), style);
    if low.stand.sealed {
        return format!("{volume} stand there");
    }
    let depth = wording::measured(Kind::Diameter, low.stand.depth.to_millimetres(), style);
    format!("{volume}, {depth} deep")
}

/// What becomes of it.
pub(super) fn outcome(low: &LowPoint, style: Style) -> String {
    if let Some(after) = low.sealed {
        let volume = wording::volume(low.seal_volume.to_millilitres(), style);
        return format!("seals at {volume}, after {}", wording::time(after, style));
    }
    if low.capacity < low.seal_volume {
        let volume = wording::volume(low.capacity.to_millilitres(), style);
        let to = match low.runs_over_to {
            Some(Destination::Start) => " out of the tube's start",
            Some(Destination::End) => " out of the tube's end",
            Some(Destination::Trap(_)) => " into a trap",
            Some(Destination::Pool(_)) => " into the next low point",
            None => "",
        };
        return format!("runs over at {volume}{to}");
    }
    let volume = wording::volume(low.seal_volume.to_millilitres(), style);
    format!("would seal at {volume}")
}

/// The first trouble that it makes.
pub(super) fn first_trouble(low: &LowPoint, style: Style) -> Option<String> {
    let slugs = low.first_slugs.map(|after| ("first slugs", after));
    let trips = low.trips.map(|after| ("low airflow limit trips", after));
    let first = match (slugs, trips) {
        (Some(one), Some(next)) if next.1 < one.1 => Some(next),
        (one, next) => one.or(next),
    };
    let (what, after) = first?;
    let is_new = low.sealed.is_none_or(|sealed| after < sealed);
    is_new.then(|| format!("{what} after {}", wording::time(after, style)))
}

/// All of it in sentences, for those who can't see the drawing.
pub(super) fn sentences(water: &TubeWater, style: Style) -> String {
    let mut told = String::new();
    for low in &water.low_points {
        let place = wording::metres(low.at.to_metres(), style);
        let standing = standing(low, style);
        let outcome = outcome(low, style);
        told.push_str(&format!(" Low point at {place}: {standing}; {outcome}."));
    }
    for proposal in &water.proposals {
        let Some(at) = proposal.trap.at else { continue };
        let place = wording::metres(at.to_metres(), style);
        told.push_str(&format!(" A trap is missing at {place}."));
    }
    told
}
