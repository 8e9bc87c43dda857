//! The tube as a double line, its insulation and tracing, and the water on the invert, frost, mist and sweat.

use super::course::{Course, Stretch, Vertex};
use super::outline::{beside, normal, strip};
use super::running::{Runs, runs, runs_past};
use crate::geometry::{Point, kept};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;
use crate::states::{State, StateStretch};
use crate::view::View;

/// Depth of the thickest running water over the bore.
const DEEPEST: f64 = 0.45;
/// Thickness of the film on each wall of a steep leg over the depth of as much water on an invert.
const FILM: f64 = 0.3;
/// Depth of the thinnest film that is drawn, px.
const THINNEST: f64 = 1.2;
/// Between two teeth of frost, px.
const TOOTH: f64 = 5.0;

/// The tube on the paper.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tube<'a> {
    pub(crate) course: &'a Course,
    /// Half of the bore, px.
    pub(crate) half: f64,
}

impl Tube<'_> {
    /// The empty tube, with its ends prolonged to the things it is joined to.
    pub(crate) fn draw(&self, scene: &mut Scene, view: &View<'_>) {
        let axis = points(&self.course.vertices);
        self.wrap(scene, view);
        scene.path("dw-d-bore", Path::area(strip(&axis, self.half, -self.half)));
        scene.path("dw-d-seen", Path::through(beside(&axis, self.half)));
        scene.path("dw-d-seen", Path::through(beside(&axis, -self.half)));
    }

    /// Insulation as hatched layers, heat tracing as a zigzag under the tube.
    fn wrap(&self, scene: &mut Scene, view: &View<'_>) {
        for (leg, drawn) in view.legs().iter().zip(&self.course.legs) {
            let axis = [drawn.from.point, drawn.to.point];
            let thick = self.half * 0.8 + 2.0;
            if leg.insulation.is_some() {
                for (inner, outer) in [
                    (self.half, self.half + thick),
                    (-self.half, -self.half - thick),
                ] {
                    scene.hatched(Hatch::Cut, Path::area(strip(&axis, inner, outer)));
                    scene.path("dw-d-measure", Path::through(beside(&axis, outer)));
                }
            }
            if 0.0 < leg.tracing.to_watts_per_metre() {
                let side = down_side(drawn);
                let (near, far) = (side * (self.half + 2.0), side * (self.half + 6.0));
                scene.path("dw-d-trace", zigzag(&axis, near, far, 4.0));
            }
        }
    }

    /// The forms of water, each where it is.
    pub(crate) fn draw_states(&self, scene: &mut Scene, view: &View<'_>, states: &[StateStretch]) {
        let depth = self.depths(view);
        for stretch in states {
            let part = self.course.part(stretch.from_m, stretch.to_m);
            let axis = points(&part);
            match stretch.state {
                State::Water => {
                    scene.path("dw-d-film", Path::through(beside(&axis, -self.half + 1.6)));
                    self.draw_invert(scene, stretch, &depth);
                }
                State::Frost => {
                    scene.path("dw-s-frost", teeth(&axis, self.half - 0.8));
                    scene.path("dw-s-frost", teeth(&axis, -self.half + 0.8));
                }
                State::Mist => droplets(scene, &axis, self.half * 0.6),
                State::Sweat => scene.path("dw-s-sweat", self.drops(stretch)),
            }
        }
    }

    /// Water on the invert, thicker as it collects; on the walls of a steep leg as a film.
    fn draw_invert(&self, scene: &mut Scene, stretch: &StateStretch, depth: &[(f64, f64)]) {
        for leg in &self.course.legs {
            let from = stretch.from_m.max(leg.from.along_m);
            let to = stretch.to_m.min(leg.to.along_m);
            if to <= from {
                continue;
            }
            let side = down_side(leg) * (self.half - 0.6);
            let unit = normal(leg.from.point, leg.to.point);
            let inside = depth.iter().filter(|(x, _)| from < *x && *x < to).copied();
            let mut places = vec![(from, depth_at(depth, from, true))];
            places.extend(inside);
            places.push((to, depth_at(depth, to, false)));
            let at = |along: f64, distance: f64| {
                let share = (along - leg.from.along_m) / (leg.to.along_m - leg.from.along_m);
                let point = leg.from.point.towards(leg.to.point, share);
                point.moved(unit.x * distance, unit.y * distance)
            };
            // Down a steep leg it runs as a film on all of the wall.
            let deepest = if leg.steep { DEEPEST * FILM } else { DEEPEST };
            let thick = |share: f64| THINNEST + share * deepest * 2.0 * self.half;
            let sides: &[f64] = if leg.steep { &[side, -side] } else { &[side] };
            for side in sides {
                let mut corners: Vec<Point> = places.iter().map(|(x, _)| at(*x, *side)).collect();
                let surface = places
                    .iter()
                    .rev()
                    .map(|(x, share)| at(*x, side - side.signum() * thick(*share)));
                corners.extend(surface);
                scene.path("dw-s-water", Path::area(corners));
            }
        }
    }

    /// Along the tube, how deep the running water is over the deepest.
    fn depths(&self, view: &View<'_>) -> Vec<(f64, f64)> {
        let Some(answer) = view.answer() else {
            return Vec::new();
        };
        let past = runs_past(&answer.profile, view.legs());
        let most = past.iter().copied().fold(0.0, f64::max);
        let share = |flow: f64| if most == 0.0 { 0.0 } else { flow / most };
        let places = answer.profile.iter().map(|point| point.x.to_metres());
        places.zip(past.into_iter().map(share)).collect()
    }

    /// Drops under the tube; on both sides of a steep leg.
    fn drops(&self, stretch: &StateStretch) -> Path {
        let mut path = Path::new();
        for leg in &self.course.legs {
            let from = stretch.from_m.max(leg.from.along_m);
            let to = stretch.to_m.min(leg.to.along_m);
            if to <= from {
                continue;
            }
            let ends = [self.course.at(from).point, self.course.at(to).point];
            let below = down_side(leg) * (self.half + 3.5);
            let sides: &[f64] = if leg.steep {
                &[below, -below]
            } else {
                &[below]
            };
            for side in sides {
                for (place, (point, unit)) in every(&ends, 8.0).into_iter().enumerate() {
                    let lower = if place % 2 == 0 { 0.0 } else { 3.0 };
                    let top = point.moved(unit.x * side, unit.y * side + lower);
                    path = path.and(&drop(top));
                }
            }
        }
        path
    }

    /// An arrow under each wet leg, the way its water runs.
    pub(crate) fn arrows(&self, scene: &mut Scene, view: &View<'_>) -> Vec<Point> {
        let mut tips = Vec::new();
        let Some(answer) = view.answer() else {
            return tips;
        };
        for ((leg, drawn), found) in view.legs().iter().zip(&self.course.legs).zip(&answer.legs) {
            let liquid = found.condensate - found.frost;
            let long = drawn.from.point.distance(drawn.to.point);
            let way = runs(leg);
            let too_little = liquid.to_grams_per_hour() < dewrun_run::WET_TUBE_G_H;
            if too_little || way == Runs::Nowhere || long < 70.0 {
                continue;
            }
            let share = 23.0 / long;
            let (tail, tip) = match way {
                Runs::Back => (0.5 + share, 0.5 - share),
                _ => (0.5 - share, 0.5 + share),
            };
            let unit = normal(drawn.from.point, drawn.to.point);
            let away = down_side(drawn) * (self.half + 9.0);
            let at = |share: f64| {
                let point = drawn.from.point.towards(drawn.to.point, share);
                point.moved(unit.x * away, unit.y * away)
            };
            arrow(scene, at(tail), at(tip));
            tips.extend([at(tail), at(tip)]);
        }
        tips
    }
}

/// A drop that hangs from its tip.
fn drop(tip: Point) -> Path {
    let (right, left) = (tip.moved(1.6, 3.6), tip.moved(-1.6, 3.6));
    Path::new()
        .from(tip)
        .to(right)
        .arc_to(1.7, true, left)
        .closed()
}

/// An arrow with a filled head.
pub(crate) fn arrow(scene: &mut Scene, tail: Point, tip: Point) {
    let unit = normal(tail, tip);
    let long = tail.distance(tip).max(1e-6);
    let neck = tip.towards(tail, (9.0 / long).min(1.0));
    scene.line("dw-d-flow", tail, neck);
    let (left, right) = (
        neck.moved(unit.x * 3.0, unit.y * 3.0),
        neck.moved(-unit.x * 3.0, -unit.y * 3.0),
    );
    scene.path("dw-s-water", Path::area([left, tip, right]));
}

/// On which side of a leg its lower edge lies: 1 to the right of the air's way, -1 to the left.
fn down_side(leg: &Stretch) -> f64 {
    let unit = normal(leg.from.point, leg.to.point);
    if unit.y < 0.0 { -1.0 } else { 1.0 }
}

pub(crate) fn points(vertices: &[Vertex]) -> Vec<Point> {
    vertices.iter().map(|vertex| vertex.point).collect()
}

/// The depth at a place: at a joint that of the leg behind it where `after`, else of the leg before it.
fn depth_at(depths: &[(f64, f64)], along_m: f64, after: bool) -> f64 {
    let next = depths
        .iter()
        .position(|(x, _)| if after { along_m < *x } else { along_m <= *x });
    let Some(next) = next else {
        return depths.last().map_or(0.0, |(_, depth)| *depth);
    };
    let before = next.checked_sub(1).and_then(|before| depths.get(before));
    match (before, depths.get(next)) {
        (Some((x0, d0)), Some((x1, d1))) if x0 < x1 => d0 + (d1 - d0) * (along_m - x0) / (x1 - x0),
        (_, Some((_, depth))) => *depth,
        _ => 0.0,
    }
}

/// Points along a line, `step` px apart, each with the direction to its right.
fn every(axis: &[Point], step: f64) -> Vec<(Point, Point)> {
    let mut found = Vec::new();
    let mut left = step / 2.0;
    for pair in axis.windows(2) {
        let [a, b] = pair else { continue };
        let long = a.distance(*b);
        while left < long {
            found.push((a.towards(*b, left / long), normal(*a, *b)));
            left += step;
        }
        left -= long;
    }
    found
}

/// Teeth that stand on the line beside the axis and point inwards.
fn teeth(axis: &[Point], side: f64) -> Path {
    let mut path = Path::new();
    let high = -side.signum() * (side.abs() * 0.45 + 1.0);
    for pair in axis.windows(2) {
        let [a, b] = pair else { continue };
        let unit = normal(*a, *b);
        let long = a.distance(*b);
        let mut at = TOOTH / 2.0;
        while at < long {
            let spot = |place: f64, away: f64| {
                let point = a.towards(*b, kept(place / long, 0.0, 1.0));
                point.moved(unit.x * away, unit.y * away)
            };
            let corners = [
                spot(at - TOOTH / 2.0, side),
                spot(at, side + high),
                spot(at + TOOTH / 2.0, side),
            ];
            path = path.and(&Path::area(corners));
            at += TOOTH;
        }
    }
    path
}

/// A zigzag between two distances beside the axis.
fn zigzag(axis: &[Point; 2], near: f64, far: f64, step: f64) -> Path {
    let places = every(axis, step).into_iter().enumerate();
    let corners = places.map(|(place, (point, unit))| {
        let away = if place % 2 == 0 { near } else { far };
        point.moved(unit.x * away, unit.y * away)
    });
    Path::through(corners)
}

/// Dots strewn about the middle of the bore, the same each time.
fn droplets(scene: &mut Scene, axis: &[Point], spread: f64) {
    // Three offsets that do not repeat for the eye.
    const STREWN: [f64; 7] = [0.1, -0.8, 0.7, -0.3, 0.9, -0.6, 0.4];
    for (place, (point, unit)) in every(axis, 5.0).into_iter().enumerate() {
        let offset = STREWN.get(place % STREWN.len()).copied().unwrap_or(0.0) * spread;
        scene.circle(
            "dw-s-mist",
            point.moved(unit.x * offset, unit.y * offset),
            1.0,
        );
    }
}
