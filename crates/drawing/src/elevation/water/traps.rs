//! Traps as they are and as they are missing, and water that runs out of an end.

use dewrun_quantity::Style;
use dewrun_run::figure::Kind;
use dewrun_run::told::Destination;
use dewrun_run::{Drain, LowPoint, Proposal, TrapOutcome, Tube, TubeWater, WET_TUBE_G_H};

use crate::block::{Block, Line};
use crate::elevation::fitted::{DrawnTrap, draw_trap};
use crate::elevation::labels::{LabelKind, Labels, Spot};
use crate::elevation::layout::Plan;
use crate::geometry::Point;
use crate::scene::Scene;
use crate::text::Tone;
use crate::view::View;
use crate::wording;

/// Draws the missing traps, dashed.
pub(super) fn draw(scene: &mut Scene, plan: &Plan, water: &TubeWater) -> Vec<DrawnTrap> {
    let places = water.proposals.iter().filter_map(|one| one.trap.at);
    places
        .map(|at| draw_trap(scene, plan, at, "dw-d-planned"))
        .collect()
}

/// Says why each missing trap belongs there.
pub(super) fn label(labels: &mut Labels<'_>, plan: &Plan, water: &TubeWater, style: Style) {
    for (number, proposal) in water.proposals.iter().enumerate() {
        let has_low_point = water
            .low_points
            .iter()
            .any(|low| belongs(proposal, low) && plan.frame.narrow);
        if has_low_point {
            continue;
        }
        let at = proposal.trap.at.unwrap_or(proposal.trap.low_point);
        let tube = plan.course.at(at.to_metres()).point;
        let forms = missing(proposal, style, plan.frame.narrow);
        let (width, _) = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let vessel = tube.moved(0.0, plan.half + 14.0);
        let spot = Spot {
            at: vessel.moved(-(16.0 + width / 2.0), 2.0),
            room: plan.floor_at(tube),
            reach: Point::new(220.0, 90.0),
            needed: false,
            thing: Some(vessel.moved(-8.0, 0.0)),
        };
        labels.place(LabelKind::Proposed(number), forms, spot);
    }
}

/// Whether a trap is missing right at a low point.
pub(super) fn is_at(water: &TubeWater, low: &LowPoint) -> bool {
    water.proposals.iter().any(|one| belongs(one, low))
}

fn belongs(proposal: &Proposal, low: &LowPoint) -> bool {
    proposal.trap.at == Some(low.at)
}

/// A missing trap and its reason.
fn missing(proposal: &Proposal, style: Style, narrow: bool) -> Vec<Block> {
    let found = &proposal.trap;
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    if found.at.is_none() {
        let words = Line::new("no trap: out of reach").bold();
        return vec![Block::of(vec![words])];
    }
    let water = wording::water(found.rate, style);
    let why = if 1.0 < found.over.to_millimetres() {
        let over = wording::measured(Kind::Diameter, found.over.to_millimetres(), style);
        format!("lowest within reach, {over} higher")
    } else {
        match found.instead_of {
            Destination::Start | Destination::End => "before it runs on".to_owned(),
            Destination::Pool(_) | Destination::Trap(_) => {
                "lowest of all that drains here".to_owned()
            }
        }
    };
    let mut forms = vec![
        Block::of(vec![
            Line::new(format!("trap here: {water} come")).bold(),
            quiet(why),
        ]),
        Block::of(vec![Line::new(format!("trap here, {water}")).bold()]),
        Block::of(vec![Line::new("trap here").bold()]),
    ];
    if narrow {
        forms.remove(0);
    }
    forms
}

/// What becomes of a trap.
pub(super) fn lines(trap: &TrapOutcome, style: Style) -> Vec<Line> {
    let quiet = |words: String| Line::new(words).toned(Tone::Second);
    let mut lines = Vec::new();
    if trap.rate.to_grams_per_hour() <= WET_TUBE_G_H {
        lines.push(quiet("no water reaches it".to_owned()));
    } else {
        let water = wording::water(trap.rate, style);
        lines.push(quiet(match trap.full {
            Some(full) => format!("{water}, full after {}", wording::time(full, style)),
            None => format!("{water} come"),
        }));
    }
    if trap.drain == Drain::OpenStub && !trap.opened.gives_water {
        lines.push(Line::new("suction holds its water").bold());
    } else if !trap.drop_is_enough {
        let drop = wording::at_least(trap.needs.outlet_drop, style);
        lines.push(Line::new(format!("outlet too high: needs {drop}")).bold());
    } else if !trap.seal_is_enough {
        let seal = wording::at_least(trap.needs.seal, style);
        lines.push(Line::new(format!("seal too low: needs {seal}")).bold());
    }
    lines
}

/// Says where water runs out of an end.
pub(super) fn note_ends(labels: &mut Labels<'_>, view: &View<'_>, plan: &Plan, water: &TubeWater) {
    let (into_start, into_end) = match view.tube {
        Tube::Intake => ("back into the duct", "into the detector"),
        Tube::Exhaust => ("back into the detector", "into the duct"),
    };
    let ends = [
        (false, plan.start(), into_start, water.out_at_start),
        (true, plan.end(), into_end, water.out_at_end),
    ];
    for (is_end, at, into, rate) in ends {
        if rate.to_grams_per_hour() <= WET_TUBE_G_H {
            continue;
        }
        let words = |words: String| Line::new(words).toned(Tone::Water);
        let rate = wording::water(rate, view.style);
        let forms = vec![
            Block::of(vec![words(format!("{rate} run {into}")).bold()]),
            Block::of(vec![
                words(format!("{rate} run")).bold(),
                words(into.to_owned()),
            ]),
        ];
        let inwards = if is_end { -1.0 } else { 1.0 };
        let spot = Spot {
            at: at.moved(
                inwards * 70.0 * labels.scale,
                plan.half + 24.0 * labels.scale,
            ),
            room: plan.floor_at(at),
            reach: Point::new(110.0, 90.0),
            needed: false,
            thing: Some(at.moved(0.0, plan.half)),
        };
        labels.place(LabelKind::RunsOut(is_end), forms, spot);
    }
}
