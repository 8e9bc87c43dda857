//! The diamonds at the ends of legs, by which a hand draws them to another place, each on a stalk above its end.

use super::layout::Plan;
use crate::geometry::{Point, Rect};
use crate::place::{Board, Wanted};
use crate::scene::Scene;

/// Width and height of a diamond where the page's text has its usual size, px; the style sheet has the same.
const DIAMOND: f64 = 14.0;
/// From the tube to the middle of its diamond, px.
const STALK: f64 = 22.0;
/// A diamond moves away from where it would best stand by so much at most, px.
const REACH: Point = Point::new(200.0, 140.0);

/// The diamond at the end of a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Handle {
    /// The end of the leg, in the middle of the tube, px.
    pub foot: Point,
    /// The middle of the diamond, px.
    pub at: Point,
    /// Its width and height, px.
    pub size: f64,
}

impl Handle {
    /// What it covers, px.
    #[must_use]
    pub fn rect(&self) -> Rect {
        Rect::new(self.at.x, self.at.y, 0.0, 0.0).grown(self.size / 2.0)
    }
}

/// Finds a place for every leg's diamond and draws the stalks, before any label is placed.
pub(crate) fn draw(scene: &mut Scene, board: &mut Board, plan: &Plan) -> Vec<Handle> {
    let place = |foot: Point| stand(board, plan, foot);
    let ends = plan.course.legs.iter().map(|leg| leg.to.point);
    let handles: Vec<Handle> = ends.map(place).collect();
    for handle in &handles {
        let long = handle.foot.distance(handle.at);
        let (from, to) = (plan.half, long - handle.size / 2.0);
        if from < to {
            let on = |far: f64| handle.foot.towards(handle.at, far / long);
            scene.line("dw-d-measure dw-d-stalk", on(from), on(to));
            // Labels cross a slanting stalk at its ends only.
            board.keep_off(Rect::between(on(from), on(to)).grown(1.0));
        }
    }
    handles
}

/// Above the end if it is free there, else beside it, and never below, where the water is.
fn stand(board: &mut Board, plan: &Plan, foot: Point) -> Handle {
    let size = DIAMOND * plan.frame.text;
    let outer = plan.outer;
    let above = foot.y + plan.half - outer.y;
    let wanted = Wanted {
        forms: vec![(size, size)],
        at: foot.moved(0.0, -(plan.half + STALK)),
        room: Rect::new(outer.x, outer.y, outer.width, above),
        reach: REACH,
        needed: true,
    };
    let placed = board.place(&wanted);
    let at = placed.map_or(wanted.at, |placed| placed.rect.centre());
    Handle { foot, at, size }
}
