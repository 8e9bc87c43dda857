//! A curve of many values through the largest, the smallest and the last of each column of a few pixels.

use crate::geometry::Point;

/// Points of a curve, from left to right, no more than three a column; a point that breaks the curve begins a column and is joined upright to the one before.
pub(crate) fn extremes(
    points: impl IntoIterator<Item = (Point, bool)>,
    left: f64,
    width: f64,
) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    let mut column = f64::NEG_INFINITY;
    let mut ends: Option<(Point, Point)> = None;
    let mut last = Point::default();
    let mut flush = |ends: &mut Option<(Point, Point)>, last: Point| {
        if let Some((low, high)) = ends.take() {
            let (first, next) = if low.x < high.x {
                (low, high)
            } else {
                (high, low)
            };
            kept.extend([first, next, last]);
        }
    };
    for (here, breaks) in points {
        let own = ((here.x - left) / width).floor();
        if own != column || breaks {
            flush(&mut ends, last);
            column = own;
            if breaks {
                ends = Some((Point::new(here.x, last.y), here));
            }
        }
        ends = Some(ends.map_or((here, here), |(low, high)| {
            let low = if low.y < here.y { here } else { low };
            let high = if here.y < high.y { here } else { high };
            (low, high)
        }));
        last = here;
    }
    flush(&mut ends, last);
    kept.dedup_by(|next, one| (next.x - one.x).abs() < 0.05 && (next.y - one.y).abs() < 0.05);
    kept
}
