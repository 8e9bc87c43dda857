//! Points and upright rectangles in CSS pixels, x to the right and y downwards.

/// The number itself, or the end that it lies beyond.
///
/// The library's own tells the numbers where the ends are swapped, and all that writes numbers comes with it.
pub(crate) fn kept(value: f64, low: f64, high: f64) -> f64 {
    if value < low {
        return low;
    }
    if high < value { high } else { value }
}

/// A point of the drawing, px.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl Point {
    /// A point at `x`, `y`.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Moved by `dx`, `dy`.
    #[must_use]
    pub fn moved(self, dx: f64, dy: f64) -> Self {
        Self::new(self.x + dx, self.y + dy)
    }

    /// On the way to `other`, 0 here and 1 there.
    #[must_use]
    pub fn towards(self, other: Self, share: f64) -> Self {
        self.moved((other.x - self.x) * share, (other.y - self.y) * share)
    }

    /// Straight distance to `other`.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        let (dx, dy) = (other.x - self.x, other.y - self.y);
        (dx * dx + dy * dy).sqrt()
    }
}

/// An upright rectangle, px.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Rect {
    /// From the left upper corner and the size.
    #[must_use]
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self {
            x,
            y,
            width,
            height,
        }
    }

    /// The smallest one that holds both corners.
    #[must_use]
    pub fn between(a: Point, b: Point) -> Self {
        Self::new(
            a.x.min(b.x),
            a.y.min(b.y),
            (a.x - b.x).abs(),
            (a.y - b.y).abs(),
        )
    }

    /// Right edge.
    #[must_use]
    pub fn right(&self) -> f64 {
        self.x + self.width
    }

    /// Lower edge.
    #[must_use]
    pub fn bottom(&self) -> f64 {
        self.y + self.height
    }

    /// The middle.
    #[must_use]
    pub fn centre(&self) -> Point {
        Point::new(self.x + self.width / 2.0, self.y + self.height / 2.0)
    }

    /// Grown by `by` on every side.
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self::new(
            self.x - by,
            self.y - by,
            self.width + 2.0 * by,
            self.height + 2.0 * by,
        )
    }

    /// Whether both share more than an edge.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.x < other.right()
            && other.x < self.right()
            && self.y < other.bottom()
            && other.y < self.bottom()
    }

    /// Whether `other` lies wholly within.
    #[must_use]
    pub fn holds(&self, other: &Self) -> bool {
        self.x <= other.x
            && other.right() <= self.right()
            && self.y <= other.y
            && other.bottom() <= self.bottom()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rectangles_that_share_an_edge_do_not_overlap() {
        let left = Rect::new(0.0, 0.0, 10.0, 10.0);
        let right = Rect::new(10.0, 0.0, 10.0, 10.0);
        assert!(!left.overlaps(&right), "an edge is no area");
        assert!(left.overlaps(&right.grown(0.1)), "grown ones meet");
    }

    #[test]
    fn corners_in_any_order_give_one_rectangle() {
        let rect = Rect::between(Point::new(5.0, 1.0), Point::new(2.0, 7.0));
        assert_eq!(
            rect,
            Rect::new(2.0, 1.0, 3.0, 6.0),
            "left upper corner first"
        );
    }
}
