//! A part of the drawing enlarged in a circle.

use super::pool::kept_side;
use crate::geometry::Point;

/// Corners of the polygon that stands for the circle.
const CORNERS: u32 = 24;
/// Cosine and sine of the angle between two of them, 15 degrees.
const TURN: (f64, f64) = (0.965_925_826_289_068_3, 0.258_819_045_102_520_76);

/// A circle in which what lies around a place is drawn larger.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lens {
    /// The place.
    pub(super) over: Point,
    /// The middle of the circle.
    pub(super) centre: Point,
    /// Its radius, px.
    pub(super) radius: f64,
    /// How much larger things are drawn.
    pub(super) times: f64,
}

impl Lens {
    /// Where a point comes to lie.
    pub(super) fn at(&self, point: Point) -> Point {
        let (dx, dy) = (point.x - self.over.x, point.y - self.over.y);
        self.centre.moved(dx * self.times, dy * self.times)
    }

    /// An area, as far as it lies in the circle.
    pub(super) fn area(&self, area: &[Point]) -> Vec<Point> {
        let mut kept: Vec<Point> = area.iter().map(|point| self.at(*point)).collect();
        let mut side = Point::new(1.0, 0.0);
        // The polygon touches the circle from inside with its sides.
        for _ in 0..CORNERS {
            let centre = self.centre;
            let radius = self.radius;
            kept = kept_side(&kept, |point| {
                radius - (point.x - centre.x) * side.x - (point.y - centre.y) * side.y
            });
            let (cos, sin) = TURN;
            side = Point::new(side.x * cos - side.y * sin, side.x * sin + side.y * cos);
        }
        kept
    }

    /// The pieces of a line that lie in the circle.
    pub(super) fn line(&self, line: &[Point]) -> Vec<[Point; 2]> {
        let pairs = line.windows(2).filter_map(|pair| match pair {
            [a, b] => self.inside(self.at(*a), self.at(*b)),
            _ => None,
        });
        pairs.collect()
    }

    /// The part of a straight line that lies in the circle.
    fn inside(&self, a: Point, b: Point) -> Option<[Point; 2]> {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let (fx, fy) = (a.x - self.centre.x, a.y - self.centre.y);
        let square = dx * dx + dy * dy;
        let half = fx * dx + fy * dy;
        let rest = fx * fx + fy * fy - self.radius * self.radius;
        let root = half * half - square * rest;
        if square == 0.0 || root <= 0.0 {
            return None;
        }
        let from = ((-half - root.sqrt()) / square).max(0.0);
        let to = ((-half + root.sqrt()) / square).min(1.0);
        (from < to).then(|| [a.towards(b, from), a.towards(b, to)])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LENS: Lens = Lens {
        over: Point::new(10.0, 10.0),
        centre: Point::new(100.0, 50.0),
        radius: 20.0,
        times: 4.0,
    };

    #[test]
    fn lines_end_at_the_circle() {
        let line = LENS.line(&[Point::new(0.0, 10.0), Point::new(40.0, 10.0)]);
        assert_eq!(
            line,
            [[Point::new(80.0, 50.0), Point::new(120.0, 50.0)]],
            "from edge to edge"
        );
        let off = [Point::new(0.0, 20.0), Point::new(40.0, 20.0)];
        assert!(LENS.line(&off).is_empty(), "40 px away, the radius is 20");
    }

    #[test]
    fn areas_keep_within_it() {
        let all = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)];
        let inside = LENS.area(&all.map(|(x, y)| Point::new(x, y)));
        assert!(20 < inside.len(), "a polygon of many corners: {inside:?}");
        for point in inside {
            let far = point.distance(LENS.centre);
            // A regular polygon of 24 sides reaches 1/cos(7.5 degrees) = 1.0086 radii out.
            assert!(far <= 20.0 * 1.0087, "{point:?} lies {far} px out");
        }
    }
}
