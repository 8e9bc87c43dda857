//! Where the tube runs on the paper: its bends in pixels, and the factors by which heights and falls are drawn.

use dewrun_run::Leg;

use super::crossing::Crossing;
use crate::frame::Frame;
use crate::geometry::{Point, kept};

/// Legs flatter than this have their fall drawn larger.
pub(crate) const FLAT_BELOW: f64 = 0.2;
/// The tube may climb and fall by this, px: on a wide drawing, on a phone, on a sheet of paper.
const TALLEST: [f64; 3] = [420.0, 260.0, 140.0];
/// Factors for heights, best first.
const HEIGHTS: [f64; 9] = [1.0, 0.75, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01];
/// Factors for falls, best first.
const FALLS: [f64; 6] = [6.0, 4.0, 3.0, 2.0, 1.0, 0.5];

/// A bend, or a point where the tube turns around a wall.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Vertex {
    /// On the paper, the inlet being at 0, 0.
    pub(crate) point: Point,
    /// Along the tube, m.
    pub(crate) along_m: f64,
}

/// A leg on the paper.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Stretch {
    pub(crate) from: Vertex,
    pub(crate) to: Vertex,
    /// Drawn at true slope rather than with the factor for falls.
    pub(crate) true_slope: bool,
    pub(crate) steep: bool,
}

/// By how much heights and falls are drawn larger than lengths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Factors {
    pub(crate) heights: f64,
    pub(crate) falls: f64,
}

/// The tube on the paper.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Course {
    pub(crate) legs: Vec<Stretch>,
    pub(crate) vertices: Vec<Vertex>,
    /// For each leg but the first, where the tube passes what lies before it.
    pub(crate) passes: Vec<Point>,
    pub(crate) factors: Factors,
}

/// How far the tube goes to the side before and after a wall that a steep leg stands at, px.
pub(crate) fn jog(narrow: bool) -> f64 {
    if narrow { 12.0 } else { 26.0 }
}

/// The widening of the drawing by all jogs, px.
pub(crate) fn jogs(legs: &[Leg], crossings: &[Crossing], narrow: bool) -> f64 {
    let mut sum = 0.0;
    for (pair, crossing) in legs.windows(2).zip(crossings) {
        if let [before, after] = pair {
            sum += jogs_between(before, after, *crossing, narrow)
                .iter()
                .sum::<f64>();
        }
    }
    sum
}

/// The tube on the paper as tall as there is room for, in all ways of drawing heights and falls, best first.
pub(crate) fn courses(
    legs: &[Leg],
    crossings: &[Crossing],
    frame: &Frame,
) -> impl Iterator<Item = Course> {
    let tallest = match (frame.narrow, frame.on_paper) {
        (true, _) => TALLEST[1],
        (false, true) => TALLEST[2],
        (false, false) => TALLEST[0],
    };
    // A phone shows little height at its scale, so that it starts from more.
    let more = if frame.narrow { 2.0 } else { 1.0 };
    let mut tries = Vec::new();
    // The less of both, the later: a step less of height weighs as two of fall.
    for cost in 0..2 * HEIGHTS.len() + FALLS.len() {
        for (h, heights) in HEIGHTS.iter().enumerate() {
            let falls = cost.checked_sub(2 * h).and_then(|f| FALLS.get(f));
            if let Some(falls) = falls {
                tries.push(Factors {
                    heights: heights * more,
                    falls: falls * more,
                });
            }
        }
    }
    tries
        .into_iter()
        .map(move |factors| drawn(legs, crossings, frame, factors))
        .filter(move |course| course.height() <= tallest)
}

/// The tube on the paper without any height, for one that is taller than any factor makes it fit.
pub(crate) fn flat_course(legs: &[Leg], crossings: &[Crossing], frame: &Frame) -> Course {
    let none = Factors {
        heights: 0.0,
        falls: 0.0,
    };
    drawn(legs, crossings, frame, none)
}

/// The tube on the paper with heights and falls drawn by such factors.
pub(crate) fn drawn(
    legs: &[Leg],
    crossings: &[Crossing],
    frame: &Frame,
    factors: Factors,
) -> Course {
    let mut at = Vertex {
        point: Point::default(),
        along_m: 0.0,
    };
    let mut course = Course {
        legs: Vec::new(),
        vertices: vec![at],
        passes: Vec::new(),
        factors,
    };
    for (place, leg) in legs.iter().enumerate() {
        let before = place.checked_sub(1).and_then(|before| legs.get(before));
        if let Some(before) = before {
            let crossing = crossings.get(place - 1).copied().unwrap_or(Crossing::None);
            let [first, second] = jogs_between(before, leg, crossing, frame.narrow);
            course.go(&mut at, first, 0.0, 0.0);
            course.passes.push(at.point);
            course.go(&mut at, second, 0.0, 0.0);
        }
        let from = at;
        let (across, up, true_slope) = extent(leg, frame, factors);
        course.go(&mut at, across, -up, leg.length.to_metres());
        course.legs.push(Stretch {
            from,
            to: at,
            true_slope,
            steep: leg.is_steep(),
        });
    }
    course
}

impl Course {
    /// From its highest to its lowest point, px.
    pub(crate) fn height(&self) -> f64 {
        self.lowest() - self.highest()
    }

    /// Its highest point, px from the inlet, negative above it.
    pub(crate) fn highest(&self) -> f64 {
        self.vertices.iter().map(|v| v.point.y).fold(0.0, f64::min)
    }

    /// Its lowest point, px from the inlet.
    pub(crate) fn lowest(&self) -> f64 {
        self.vertices.iter().map(|v| v.point.y).fold(0.0, f64::max)
    }

    /// Where it ends.
    pub(crate) fn end(&self) -> Point {
        self.vertices.last().map_or(Point::default(), |v| v.point)
    }

    /// All of it moved.
    pub(crate) fn moved(mut self, dx: f64, dy: f64) -> Self {
        for vertex in &mut self.vertices {
            vertex.point = vertex.point.moved(dx, dy);
        }
        for leg in &mut self.legs {
            leg.from.point = leg.from.point.moved(dx, dy);
            leg.to.point = leg.to.point.moved(dx, dy);
        }
        for pass in &mut self.passes {
            *pass = pass.moved(dx, dy);
        }
        self
    }

    /// The bends between two places along the tube, both places included, with how far along each lies.
    pub(crate) fn part(&self, from_m: f64, to_m: f64) -> Vec<Vertex> {
        let inside = self
            .vertices
            .iter()
            .filter(|v| from_m < v.along_m && v.along_m < to_m)
            .copied();
        let mut part = vec![self.at(from_m)];
        part.extend(inside);
        part.push(self.at(to_m));
        part
    }

    /// The place so far along the tube.
    pub(crate) fn at(&self, along_m: f64) -> Vertex {
        let leg = self
            .legs
            .iter()
            .find(|leg| along_m <= leg.to.along_m)
            .or(self.legs.last());
        let Some(leg) = leg else {
            return Vertex {
                point: Point::default(),
                along_m,
            };
        };
        let span = leg.to.along_m - leg.from.along_m;
        let share = if span == 0.0 {
            0.0
        } else {
            kept((along_m - leg.from.along_m) / span, 0.0, 1.0)
        };
        Vertex {
            point: leg.from.point.towards(leg.to.point, share),
            along_m,
        }
    }

    fn go(&mut self, at: &mut Vertex, dx: f64, dy: f64, metres: f64) {
        if dx == 0.0 && dy == 0.0 && metres == 0.0 {
            return;
        }
        at.point = at.point.moved(dx, dy);
        at.along_m += metres;
        self.vertices.push(*at);
    }
}

/// To the side before and after what lies between two legs, px.
fn jogs_between(before: &Leg, after: &Leg, crossing: Crossing, narrow: bool) -> [f64; 2] {
    let jog = jog(narrow);
    let side = |leg: &Leg| if leg.is_steep() { jog } else { 0.0 };
    let turns_back = before.is_steep()
        && after.is_steep()
        && before.rise.to_metres() * after.rise.to_metres() < 0.0;
    match crossing {
        Crossing::Wall => [side(before), side(after)],
        _ if turns_back => [jog, 0.0],
        _ => [0.0, 0.0],
    }
}

/// Width and height of a leg on the paper, px, and whether its slope is true.
fn extent(leg: &Leg, frame: &Frame, factors: Factors) -> (f64, f64, bool) {
    let rise = leg.rise.to_metres();
    let across = across_m(leg);
    let true_slope = FLAT_BELOW * across <= rise.abs();
    let factor = if true_slope {
        factors.heights
    } else {
        factors.falls
    };
    (
        across * frame.px_per_m,
        rise * factor * frame.px_per_m,
        true_slope,
    )
}

/// Horizontal length of a leg, m.
pub(crate) fn across_m(leg: &Leg) -> f64 {
    let (length, rise) = (leg.length.to_metres(), leg.rise.to_metres());
    ((length - rise) * (length + rise)).max(0.0).sqrt()
}
