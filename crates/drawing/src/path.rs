//! The data of an SVG path, built step by step with coordinates to a tenth of a pixel.

use crate::geometry::{Point, Rect};

/// The `d` attribute of an SVG path.
///
/// ```
/// use dewrun_drawing::{Path, Point};
/// let path = Path::new().from(Point::new(0.0, 1.5)).to(Point::new(10.0, 1.5));
/// assert_eq!(path.as_str(), "M0 1.5L10 1.5");
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Path(String);

impl Path {
    /// Nothing yet.
    #[must_use]
    pub const fn new() -> Self {
        Self(String::new())
    }

    /// A line through the points, open.
    pub fn through(points: impl IntoIterator<Item = Point>) -> Self {
        let mut path = Self::new();
        for (place, point) in points.into_iter().enumerate() {
            path = if place == 0 {
                path.from(point)
            } else {
                path.to(point)
            };
        }
        path
    }

    /// An area with the points as corners.
    pub fn area(points: impl IntoIterator<Item = Point>) -> Self {
        Self::through(points).closed()
    }

    /// The outline of a rectangle.
    #[must_use]
    pub fn rect(rect: &Rect) -> Self {
        let corner = Point::new(rect.x, rect.y);
        Self::area([
            corner,
            corner.moved(rect.width, 0.0),
            corner.moved(rect.width, rect.height),
            corner.moved(0.0, rect.height),
        ])
    }

    /// Goes to a point without drawing.
    #[must_use]
    pub fn from(self, point: Point) -> Self {
        self.step('M', point)
    }

    /// Draws a straight line to a point.
    #[must_use]
    pub fn to(self, point: Point) -> Self {
        self.step('L', point)
    }

    /// Draws an arc of a circle to a point, the short way round, clockwise on the screen or not.
    #[must_use]
    pub fn arc_to(mut self, radius: f64, clockwise: bool, point: Point) -> Self {
        self.0.push('A');
        push_number(&mut self.0, radius);
        self.0.push(' ');
        push_number(&mut self.0, radius);
        self.0
            .push_str(if clockwise { " 0 0 1 " } else { " 0 0 0 " });
        self.push_point(point);
        self
    }

    /// Back to where the last piece began.
    #[must_use]
    pub fn closed(mut self) -> Self {
        self.0.push('Z');
        self
    }

    /// The pieces of another path after these.
    #[must_use]
    pub fn and(mut self, other: &Self) -> Self {
        self.0.push_str(&other.0);
        self
    }

    /// Whether nothing has been drawn.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The attribute's text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    fn step(mut self, letter: char, point: Point) -> Self {
        self.0.push(letter);
        self.push_point(point);
        self
    }

    fn push_point(&mut self, point: Point) {
        push_number(&mut self.0, point.x);
        self.0.push(' ');
        push_number(&mut self.0, point.y);
    }
}

/// Writes a coordinate to a tenth of a pixel, without a decimal that is 0.
pub(crate) fn push_number(text: &mut String, value: f64) {
    let tenths = tenths(value);
    if tenths < 0 {
        text.push('-');
    }
    let size = tenths.unsigned_abs();
    text.push_str(&(size / 10).to_string());
    if !size.is_multiple_of(10) {
        text.push('.');
        text.push_str(&(size % 10).to_string());
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a coordinate of the drawing is far within the range, and the cast saturates"
)]
fn tenths(value: f64) -> i64 {
    (value * 10.0).round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(value: f64, expected: &str) {
        let mut text = String::new();
        push_number(&mut text, value);
        assert_eq!(text, expected, "{value} written to a tenth");
    }

    #[test]
    fn numbers_are_short() {
        check(0.0, "0");
        check(-0.04, "0");
        check(12.0, "12");
        check(12.349, "12.3");
        check(-0.25, "-0.3");
        check(-7.5, "-7.5");
    }

    #[test]
    fn rectangle_closes() {
        let path = Path::rect(&Rect::new(1.0, 2.0, 3.0, 4.0));
        assert_eq!(
            path.as_str(),
            "M1 2L4 2L4 6L1 6Z",
            "clockwise from the left upper corner"
        );
    }
}
