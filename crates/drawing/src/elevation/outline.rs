//! The two lines of a tube beside its axis, with mitred bends.

use crate::geometry::Point;

/// A bend so sharp that its mitre would be longer than this many times the distance is cut short.
const LONGEST_MITRE: f64 = 3.0;

/// The line beside `axis` at a distance, to the right of the direction of travel as seen on the screen where it is above zero.
pub(crate) fn beside(axis: &[Point], distance: f64) -> Vec<Point> {
    let axis = without_repeats(axis);
    let normals: Vec<Point> = axis
        .windows(2)
        .filter_map(|pair| match pair {
            [a, b] => Some(normal(*a, *b)),
            _ => None,
        })
        .collect();
    let count = normals.len();
    axis.iter()
        .enumerate()
        .filter_map(|(place, point)| {
            let before = place.checked_sub(1).and_then(|before| normals.get(before));
            let after = normals.get(place.min(count.saturating_sub(1)));
            let mitre = match (before, after) {
                (Some(before), Some(after)) => mitre(*before, *after),
                (None, Some(only)) | (Some(only), None) => *only,
                (None, None) => return None,
            };
            Some(point.moved(mitre.x * distance, mitre.y * distance))
        })
        .collect()
}

/// The area between two lines beside the axis.
pub(crate) fn strip(axis: &[Point], one: f64, other: f64) -> Vec<Point> {
    let mut corners = beside(axis, one);
    let mut back = beside(axis, other);
    back.reverse();
    corners.extend(back);
    corners
}

/// Of unit length, to the right of the way from `a` to `b`.
pub(crate) fn normal(a: Point, b: Point) -> Point {
    let length = a.distance(b);
    if length == 0.0 {
        return Point::default();
    }
    Point::new(-(b.y - a.y) / length, (b.x - a.x) / length)
}

fn mitre(before: Point, after: Point) -> Point {
    let sum = before.moved(after.x, after.y);
    let length = sum.distance(Point::default());
    if length < 1e-6 {
        return before;
    }
    let unit = Point::new(sum.x / length, sum.y / length);
    let cosine = unit.x * after.x + unit.y * after.y;
    let longer = (1.0 / cosine.max(1e-6)).min(LONGEST_MITRE);
    Point::new(unit.x * longer, unit.y * longer)
}

fn without_repeats(axis: &[Point]) -> Vec<Point> {
    let mut points: Vec<Point> = Vec::with_capacity(axis.len());
    for point in axis {
        if points
            .last()
            .is_none_or(|last| 1e-6 < last.distance(*point))
        {
            points.push(*point);
        }
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn right_of_a_level_line_is_below_it() {
        let line = beside(&[Point::new(0.0, 0.0), Point::new(10.0, 0.0)], 3.0);
        assert_eq!(
            line,
            [Point::new(0.0, 3.0), Point::new(10.0, 3.0)],
            "y grows downwards"
        );
    }

    #[test]
    fn square_bend_is_mitred() {
        let axis = [
            Point::new(0.0, 0.0),
            Point::new(10.0, 0.0),
            Point::new(10.0, 10.0),
        ];
        let inner = beside(&axis, 2.0);
        let expected = [
            Point::new(0.0, 2.0),
            Point::new(8.0, 2.0),
            Point::new(8.0, 10.0),
        ];
        for (found, expected) in inner.iter().zip(expected) {
            assert!(
                found.distance(expected) < 1e-9,
                "{found:?} should be {expected:?}"
            );
        }
    }

    #[test]
    fn repeated_points_do_no_harm() {
        let once = beside(&[Point::new(0.0, 0.0), Point::new(10.0, 0.0)], 3.0);
        let twice = [
            Point::new(0.0, 0.0),
            Point::new(0.0, 0.0),
            Point::new(10.0, 0.0),
        ];
        assert_eq!(beside(&twice, 3.0), once, "a repeat has no direction");
    }
}
