//! What is fitted to the tube: hangers that carry it, and traps under it.

use dewrun_quantity::Length;

use super::Standing;
use super::labels::{LabelKind, Labels, Spot};
use super::layout::Plan;
use crate::block::{Block, Line};
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::place::Board;
use crate::scene::Scene;
use crate::view::View;

/// Hangers nearer to each other than this are not drawn, px.
const CLOSEST: f64 = 12.0;
/// Width and height of a trap's vessel, px; a phone has less.
const VESSEL: (f64, f64) = (12.0, 15.0);
const NARROW: f64 = 0.75;
/// From the tube to the vessel, px.
const STEM: f64 = 5.0;
/// Half of the valve under it, px.
const VALVE: f64 = 4.0;

/// A trap on the paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnTrap {
    /// Where it is along the tube.
    pub along: Length,
    /// The middle of its vessel, px.
    pub at: Point,
    /// It stands left of a steep tube.
    pub is_beside: bool,
}

/// Draws the hangers of all legs but steep ones, up to the ceiling of the space.
pub(crate) fn draw_hangers(scene: &mut Scene, view: &View<'_>, plan: &Plan) {
    let spacings = &view.fitted().hangers;
    for (leg, spacing) in plan.course.legs.iter().zip(spacings) {
        let Some(spacing) = spacing.map(Length::to_metres) else {
            continue;
        };
        if leg.steep || spacing * plan.frame.px_per_m < CLOSEST {
            continue;
        }
        let mut along = leg.from.along_m + spacing;
        while along < leg.to.along_m {
            let at = plan.course.at(along).point;
            let ceiling = plan.band_at(at).y;
            scene.line(
                "dw-d-measure",
                Point::new(at.x, ceiling),
                at.moved(0.0, -plan.half),
            );
            let below = at.moved(0.0, plan.half + 1.5);
            scene.line("dw-d-seen", below.moved(-4.0, 0.0), below.moved(4.0, 0.0));
            along += spacing;
        }
    }
}

/// Draws the traps and tells the board where they hang.
pub(crate) fn draw_traps(
    scene: &mut Scene,
    board: &mut Board,
    view: &View<'_>,
    plan: &Plan,
) -> Vec<DrawnTrap> {
    let traps = view.fitted().traps.iter();
    let drawn: Vec<DrawnTrap> = traps
        .map(|along| draw_trap(scene, plan, *along, "dw-d-seen"))
        .collect();
    for trap in &drawn {
        board.keep_off(covers(plan, trap));
    }
    drawn
}

/// What a trap covers.
pub(super) fn covers(plan: &Plan, trap: &DrawnTrap) -> Rect {
    let size = if plan.frame.narrow { NARROW } else { 1.0 };
    let (wide, high) = (VESSEL.0 * size, VESSEL.1 * size);
    let rect = Rect::new(
        trap.at.x - wide / 2.0,
        trap.at.y - high / 2.0 - STEM,
        wide,
        high + STEM + 2.0 * VALVE * size,
    );
    rect.grown(3.0)
}

/// Under a flat tube; beside a steep one.
pub(super) fn draw_trap(
    scene: &mut Scene,
    plan: &Plan,
    along: Length,
    class: &'static str,
) -> DrawnTrap {
    let size = if plan.frame.narrow { NARROW } else { 1.0 };
    let (wide, high) = (VESSEL.0 * size, VESSEL.1 * size);
    let along_m = along.to_metres();
    let tube = plan.course.at(along_m).point;
    // A tube that goes down from there is in the way under it.
    let is_steep = plan.course.legs.iter().any(|leg| {
        let touches = leg.from.along_m <= along_m + 1e-6 && along_m <= leg.to.along_m + 1e-6;
        let lowest = leg.from.point.y.max(leg.to.point.y);
        leg.steep && touches && (tube.y + 1.0 < lowest || plan.end() == tube)
    });
    let inlet = if is_steep {
        let beside = tube.moved(-(plan.half + 8.0 + wide / 2.0), 0.0);
        // Where the tube goes down into a thing, left of that.
        let thing = plan.outlet.place(plan.end());
        let is_at_end = plan.end() == tube && thing.x < tube.x;
        let left = thing.x - 6.0 - wide / 2.0;
        let beside = Point::new(
            if is_at_end {
                left.min(beside.x)
            } else {
                beside.x
            },
            beside.y - if is_at_end { 4.0 } else { 0.0 },
        );
        scene.line(class, Point::new(tube.x - plan.half, beside.y), beside);
        beside
    } else {
        tube.moved(0.0, plan.half)
    };
    let top = inlet.moved(0.0, STEM);
    scene.line(class, inlet, top);
    let vessel = Rect::new(top.x - wide / 2.0, top.y, wide, high);
    scene.rect("dw-d-device", &vessel);
    scene.rect(class, &vessel);
    let (x, y, valve) = (top.x, vessel.bottom(), VALVE * size);
    let bow = [
        Point::new(x - valve, y),
        Point::new(x + valve, y + 2.0 * valve),
        Point::new(x - valve, y + 2.0 * valve),
        Point::new(x + valve, y),
    ];
    scene.path("dw-d-slope", Path::area(bow));
    DrawnTrap {
        along,
        at: vessel.centre(),
        is_beside: is_steep,
    }
}

/// Names the traps where there is room.
pub(crate) fn place_traps(
    labels: &mut Labels<'_>,
    plan: &Plan,
    traps: &[DrawnTrap],
    standing: Option<&dyn Standing>,
) {
    place_trap_names(labels, plan, traps, |place, _| {
        let name = vec![Line::new(format!("Trap {}", place + 1))];
        let told = standing.map(|standing| standing.trap(place));
        let full = [name.clone(), told.unwrap_or_default()].concat();
        if full.len() == name.len() {
            vec![Block::of(name)]
        } else {
            vec![Block::of(full), Block::of(name)]
        }
    });
}

/// The same with names of one's own, each in its forms.
pub(crate) fn place_trap_names(
    labels: &mut Labels<'_>,
    plan: &Plan,
    traps: &[DrawnTrap],
    name: impl Fn(usize, &DrawnTrap) -> Vec<Block>,
) {
    for (place, trap) in traps.iter().enumerate() {
        let forms = name(place, trap);
        let (width, _) = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let away = VESSEL.0 / 2.0 + 5.0 + width / 2.0;
        let spot = Spot {
            at: trap
                .at
                .moved(if trap.is_beside { -away } else { away }, 0.0),
            room: plan.floor_at(trap.at),
            reach: Point::new(60.0, 40.0),
            needed: false,
            thing: Some(trap.at),
        };
        labels.place(LabelKind::Trap(place), forms, spot);
    }
}
