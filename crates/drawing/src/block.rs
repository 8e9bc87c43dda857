//! A label of one or more lines, with a leg's number in a balloon and its slope before it where wanted.

use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::path::Path;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};

/// Radius of a balloon, px.
const BALLOON: f64 = 9.0;
/// Width of a slope's triangle, px.
const SLOPE_WIDTH: f64 = 20.0;
/// Its height, px.
const SLOPE_HEIGHT: f64 = 7.0;
/// Between balloon, triangle and words, px.
const SPACE: f64 = 5.0;

/// A line of a label.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Line {
    words: String,
    size: Size,
    tone: Tone,
    bold: bool,
}

impl Line {
    pub(crate) fn new(words: impl Into<String>) -> Self {
        Self {
            words: words.into(),
            size: Size::Label,
            tone: Tone::Ink,
            bold: false,
        }
    }

    pub(crate) fn sized(mut self, size: Size) -> Self {
        self.size = size;
        self
    }

    pub(crate) fn toned(mut self, tone: Tone) -> Self {
        self.tone = tone;
        self
    }

    pub(crate) fn bold(mut self) -> Self {
        self.bold = true;
        self
    }
}

/// Which way a leg runs on the paper, for its triangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Slope {
    /// Down to the right.
    Falling,
    /// Up to the right.
    Rising,
}

/// A label.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Block {
    pub(crate) balloon: Option<String>,
    pub(crate) slope: Option<Slope>,
    pub(crate) lines: Vec<Line>,
}

impl Block {
    pub(crate) fn of(lines: Vec<Line>) -> Self {
        Self {
            lines,
            ..Self::default()
        }
    }

    /// Width and height where the page's text is `scale` times its usual size, px.
    pub(crate) fn size(&self, scale: f64) -> (f64, f64) {
        let words = self
            .lines
            .iter()
            .map(|line| text_width(&line.words, line.size.px() * scale))
            .fold(0.0, f64::max);
        let height: f64 = self.lines.iter().map(|line| line.size.line() * scale).sum();
        let sign = self.signs_width(scale);
        let gap = if words == 0.0 || sign == 0.0 {
            0.0
        } else {
            SPACE
        };
        let least = if self.balloon.is_some() {
            2.0 * BALLOON * scale
        } else {
            0.0
        };
        (sign + gap + words, height.max(least))
    }

    /// Draws it into the place that it was given.
    pub(crate) fn draw(&self, scene: &mut Scene, place: &Rect, scale: f64) {
        let middle = place.y + place.height / 2.0;
        let mut x = place.x;
        if let Some(number) = &self.balloon {
            let centre = Point::new(x + BALLOON * scale, middle);
            scene.circle("dw-d-balloon", centre, BALLOON * scale);
            let at = centre.moved(0.0, 0.36 * Size::Label.px() * scale);
            scene.text(
                Text::new(at, number.clone())
                    .anchored(Anchor::Middle)
                    .bold(),
            );
            x += 2.0 * BALLOON * scale + SPACE;
        }
        if let Some(slope) = self.slope {
            scene.path("dw-d-slope", triangle(Point::new(x, middle), slope));
            x += SLOPE_WIDTH + SPACE;
        }
        self.draw_lines(scene, Point::new(x, place.y), place.height, scale);
    }

    fn draw_lines(&self, scene: &mut Scene, corner: Point, height: f64, scale: f64) {
        let all: f64 = self.lines.iter().map(|line| line.size.line() * scale).sum();
        let mut y = corner.y + (height - all) / 2.0;
        for line in &self.lines {
            let step = line.size.line() * scale;
            // Ascent above and descent below leave the base line at three quarters of the step.
            let at = Point::new(corner.x, y + 0.76 * step);
            let mut text = Text::new(at, line.words.clone())
                .sized(line.size)
                .toned(line.tone)
                .haloed();
            text.bold = line.bold;
            scene.text(text);
            y += step;
        }
    }

    fn signs_width(&self, scale: f64) -> f64 {
        let balloon = self.balloon.as_ref().map(|_| 2.0 * BALLOON * scale);
        let slope = self.slope.map(|_| SLOPE_WIDTH);
        match (balloon, slope) {
            (Some(balloon), Some(slope)) => balloon + SPACE + slope,
            (one, other) => one.or(other).unwrap_or(0.0),
        }
    }
}

/// The triangle whose long side runs as the leg does.
fn triangle(left: Point, slope: Slope) -> Path {
    let (top, bottom) = (-SLOPE_HEIGHT / 2.0, SLOPE_HEIGHT / 2.0);
    let corners = match slope {
        Slope::Falling => [(0.0, top), (SLOPE_WIDTH, bottom), (0.0, bottom)],
        Slope::Rising => [(SLOPE_WIDTH, top), (SLOPE_WIDTH, bottom), (0.0, bottom)],
    };
    Path::area(corners.map(|(dx, dy)| left.moved(dx, dy)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn full_label_is_wider_than_its_parts() {
        let full = Block {
            balloon: Some("2".into()),
            slope: Some(Slope::Falling),
            lines: vec![Line::new("1:50")],
        };
        let words = Block::of(vec![Line::new("1:50")]);
        let (width, height) = full.size(1.0);
        assert!(
            words.size(1.0).0 + 18.0 + 20.0 < width,
            "balloon, triangle and words"
        );
        assert_eq!(height, 18.0, "as high as the balloon");
    }

    #[test]
    fn bare_balloon_takes_no_gap() {
        let bare = Block {
            balloon: Some("2".into()),
            ..Block::default()
        };
        assert_eq!(bare.size(1.0), (18.0, 18.0), "a circle");
    }
}
