//! The building as it is drawn: bands, walls and slabs that are cut, and the joints carried to the axis.

use super::building::{Slab, Wall};
use super::crossing::Crossing;
use super::layout::{EDGE, Plan};
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::place::Board;
use crate::scene::Scene;

/// Paper around a tube where it passes a wall, px.
const PASSAGE: f64 = 5.0;

/// Draws bands, ceiling, floor, walls and slabs.
pub(crate) fn draw(scene: &mut Scene, board: &mut Board, plan: &Plan) {
    for band in &plan.building.bands {
        let ground = if band.floor == 0 {
            "dw-g-sheet"
        } else {
            "dw-g-raise"
        };
        scene.rect(ground, &band.rect);
    }
    let outer = &plan.outer;
    for (edge, y) in [(outer.y - EDGE, outer.y), (outer.bottom(), outer.bottom())] {
        let strip = Rect::new(outer.x, edge, outer.width, EDGE);
        scene.hatched(Hatch::Cut, Path::rect(&strip));
        board.keep_off(strip.grown(2.0));
        scene.line(
            "dw-d-cut",
            Point::new(outer.x, y),
            Point::new(outer.right(), y),
        );
    }
    for slab in &plan.building.slabs {
        for piece in slab_pieces(plan, slab) {
            cut(scene, board, &piece);
        }
    }
    for wall in &plan.building.walls {
        for piece in wall_pieces(plan, wall) {
            cut(scene, board, &piece);
        }
    }
}

/// Carries every joint down to the floor and on to its place on the axis.
pub(crate) fn carry_joints(scene: &mut Scene, plan: &Plan) {
    let floor = plan.outer.bottom() + EDGE;
    let bottom = plan.height;
    let mut carry = |from: Point, along_m: f64| {
        let x = plan.frame.px(along_m);
        let path = Path::new()
            .from(from)
            .to(Point::new(from.x, floor))
            .to(Point::new(x, bottom));
        scene.path("dw-d-carry", path);
    };
    carry(plan.start().moved(0.0, plan.half), 0.0);
    for (place, pass) in plan.course.passes.iter().enumerate() {
        let Some(leg) = plan.course.legs.get(place) else {
            continue;
        };
        // Under a cut wall the chain line begins at the floor.
        let from = match plan.crossings.get(place) {
            Some(Crossing::Wall) => Point::new(pass.x, floor),
            _ => pass.moved(0.0, plan.half),
        };
        carry(from, leg.to.along_m);
    }
    let end = plan.end();
    carry(
        Point::new(end.x, plan.outlet.place(end).bottom()),
        plan.frame.length_m,
    );
}

/// Tells the board where the lines from both ends of the tube run: the words at the things there keep off them.
pub(crate) fn keep_off_ends(board: &mut Board, plan: &Plan) {
    for x in [plan.start().x, plan.end().x] {
        board.keep_off(Rect::new(x - 2.0, plan.outer.y, 4.0, plan.outer.height));
    }
}

/// Tells the board where the tube runs.
pub(crate) fn keep_off_tube(board: &mut Board, plan: &Plan) {
    for pair in plan.course.vertices.windows(2) {
        let [a, b] = pair else { continue };
        along(*a, *b, 10.0, |point| {
            let side = plan.half + 3.0;
            board.keep_off(Rect::new(point.x, point.y, 0.0, 0.0).grown(side.max(7.0)));
        });
    }
}

/// Tells the board where the arrows lie, of which tail and tip are given in turn.
pub(crate) fn keep_off_arrows(board: &mut Board, ends: &[Point]) {
    for pair in ends.chunks(2) {
        if let [tail, tip] = pair {
            board.keep_off(Rect::between(*tail, *tip).grown(4.0));
        }
    }
}

fn along(
    a: super::course::Vertex,
    b: super::course::Vertex,
    step: f64,
    mut each: impl FnMut(Point),
) {
    let long = a.point.distance(b.point);
    let mut at = 0.0;
    while at < long {
        each(a.point.towards(b.point, at / long));
        at += step;
    }
    each(b.point);
}

/// A piece of wall or slab: hatched between two cut lines, closed where the tube passes.
fn cut(scene: &mut Scene, board: &mut Board, piece: &Rect) {
    board.keep_off(piece.grown(2.0));
    if piece.width.min(piece.height) < 8.0 {
        scene.rect("dw-d-solid", piece);
        return;
    }
    scene.rect("dw-g-paper", piece);
    scene.hatched(Hatch::Cut, Path::rect(piece));
    scene.rect("dw-d-cut", piece);
}

fn wall_pieces(plan: &Plan, wall: &Wall) -> Vec<Rect> {
    let thick = plan.wall_thickness;
    let left = wall.x - thick / 2.0;
    let whole = Rect::new(left, wall.top, thick, wall.bottom - wall.top);
    let Some(gap) = wall.gap else {
        return vec![whole];
    };
    let (above, below) = (gap - plan.half - PASSAGE, gap + plan.half + PASSAGE);
    vec![
        Rect::new(left, wall.top, thick, above - wall.top),
        Rect::new(left, below, thick, wall.bottom - below),
    ]
}

fn slab_pieces(plan: &Plan, slab: &Slab) -> Vec<Rect> {
    let thick = plan.wall_thickness;
    let top = slab.y - thick / 2.0;
    let mut left = plan.outer.x;
    let mut pieces = Vec::new();
    for gap in &slab.gaps {
        let right = gap - plan.half - PASSAGE;
        pieces.push(Rect::new(left, top, right - left, thick));
        left = gap + plan.half + PASSAGE;
    }
    pieces.push(Rect::new(left, top, plan.outer.right() - left, thick));
    pieces
}
