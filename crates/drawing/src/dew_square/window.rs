//! A part of the temperature and dew point plane, and where it lies on the paper: one scale both ways.

use dewrun_quantity::Temperature;

use crate::geometry::{Point, Rect};
use crate::path::Path;

/// A state on the plane: temperature and dew point, °C.
pub(super) type State = (f64, f64);

/// A part of the plane.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Window {
    /// Where it lies, px.
    pub(super) rect: Rect,
    /// Temperature at its left edge, °C.
    pub(super) left_c: f64,
    /// Dew point at its lower edge, °C.
    pub(super) lowest_c: f64,
    /// Scale, px per K.
    pub(super) px_per_k: f64,
    /// The page's text over its usual size.
    pub(super) text: f64,
}

impl Window {
    /// Temperature at its right edge, °C.
    pub(super) fn right_c(&self) -> f64 {
        self.left_c + self.rect.width / self.px_per_k
    }

    /// Dew point at its upper edge, °C.
    pub(super) fn highest_c(&self) -> f64 {
        self.lowest_c + self.rect.height / self.px_per_k
    }

    /// Where a temperature lies, px from the left.
    pub(super) fn x(&self, t_c: f64) -> f64 {
        self.rect.x + (t_c - self.left_c) * self.px_per_k
    }

    /// Where a dew point lies, px from the top.
    pub(super) fn y(&self, dew_point_c: f64) -> f64 {
        self.rect.bottom() - (dew_point_c - self.lowest_c) * self.px_per_k
    }

    /// Where a state lies.
    pub(super) fn at(&self, (t_c, dew_point_c): State) -> Point {
        Point::new(self.x(t_c), self.y(dew_point_c))
    }

    /// Where saturated air of a temperature lies.
    pub(super) fn saturated(&self, t: Temperature) -> Point {
        let t_c = t.to_celsius();
        self.at((t_c, t_c))
    }

    /// The stretch of the diagonal within, as temperatures; none where it passes by.
    pub(super) fn diagonal(&self) -> Option<(f64, f64)> {
        let from = self.left_c.max(self.lowest_c);
        let to = self.right_c().min(self.highest_c());
        (from < to).then_some((from, to))
    }

    /// The pieces of a line of states that lie within.
    pub(super) fn pieces(&self, states: &[State]) -> Vec<(Point, Point)> {
        let ends = states.windows(2).filter_map(|pair| {
            let [a, b] = pair else { return None };
            clipped(&self.rect, self.at(*a), self.at(*b))
        });
        ends.collect()
    }

    /// A line of states, as far as it lies within.
    pub(super) fn line(&self, states: &[State]) -> Path {
        let mut path = Path::new();
        let mut last = None;
        for (from, to) in self.pieces(states) {
            if last != Some(from) {
                path = path.from(from);
            }
            path = path.to(to);
            last = Some(to);
        }
        path
    }
}

/// The part of a straight line within a rectangle.
///
/// # Source
/// Liang & Barsky, A new concept and method for line clipping, ACM Trans. Graph. 3 (1984) 1, <https://doi.org/10.1145/357332.357333>.
fn clipped(rect: &Rect, a: Point, b: Point) -> Option<(Point, Point)> {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    let edges = [
        (-dx, a.x - rect.x),
        (dx, rect.right() - a.x),
        (-dy, a.y - rect.y),
        (dy, rect.bottom() - a.y),
    ];
    for (towards, room) in edges {
        if towards == 0.0 {
            if room < 0.0 {
                return None;
            }
            continue;
        }
        let share = room / towards;
        if towards < 0.0 {
            enters = enters.max(share);
        } else {
            leaves = leaves.min(share);
        }
    }
    // The ends themselves are kept as they are, so that pieces meet.
    let from = if enters <= 0.0 {
        a
    } else {
        a.towards(b, enters)
    };
    let to = if 1.0 <= leaves {
        b
    } else {
        a.towards(b, leaves)
    };
    (enters < leaves).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn window() -> Window {
        Window {
            rect: Rect::new(100.0, 50.0, 200.0, 200.0),
            left_c: 10.0,
            lowest_c: 10.0,
            px_per_k: 10.0,
            text: 1.0,
        }
    }

    #[test]
    fn saturated_air_lies_on_the_diagonal_from_corner_to_corner() {
        let window = window();
        let low = window.saturated(Temperature::celsius(10.0));
        let high = window.saturated(Temperature::celsius(30.0));
        assert_eq!(low, Point::new(100.0, 250.0), "left and low");
        assert_eq!(high, Point::new(300.0, 50.0), "right and high");
        assert_eq!(window.diagonal(), Some((10.0, 30.0)), "all of it");
    }

    #[test]
    fn lines_are_cut_at_the_edges() {
        let pieces = window().pieces(&[(0.0, 20.0), (40.0, 20.0), (40.0, 0.0)]);
        let across = (Point::new(100.0, 150.0), Point::new(300.0, 150.0));
        assert_eq!(
            pieces,
            [across],
            "level through the middle, the rest is outside"
        );
    }
}
