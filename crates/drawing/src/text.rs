//! Lines of text in a drawing: size, tone and where they lie.

use crate::geometry::{Point, Rect};
use crate::measure::text_width;

/// A size of type, as the page's tokens name them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Size {
    /// Names of spaces.
    Name,
    /// Labels.
    Label,
    /// Quiet notes; nothing is smaller.
    Least,
}

impl Size {
    /// Height of the type at the usual size of the page's text, px.
    #[must_use]
    pub const fn px(self) -> f64 {
        match self {
            Self::Name => 14.0,
            Self::Label => 11.5,
            Self::Least => 11.0,
        }
    }

    /// Distance of two base lines at the usual size of the page's text, px.
    #[must_use]
    pub const fn line(self) -> f64 {
        match self {
            Self::Name => 18.0,
            Self::Label => 15.0,
            Self::Least => 14.0,
        }
    }

    const fn class(self) -> &'static str {
        match self {
            Self::Name => "dw-t-name",
            Self::Label => "dw-t-label",
            Self::Least => "dw-t-least",
        }
    }
}

/// The ink of a piece of text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// What is.
    Ink,
    /// Second text.
    Second,
    /// Units and notes.
    Quiet,
    /// Liquid water and dew point.
    Water,
    /// Frost.
    Frost,
    /// Mist.
    Mist,
    /// Water on the outside.
    Sweat,
    /// A fault that nothing sees.
    Fault,
}

impl Tone {
    const fn class(self) -> &'static str {
        match self {
            Self::Ink => "dw-i-ink",
            Self::Second => "dw-i-second",
            Self::Quiet => "dw-i-quiet",
            Self::Water => "dw-i-water",
            Self::Frost => "dw-i-frost",
            Self::Mist => "dw-i-mist",
            Self::Sweat => "dw-i-sweat",
            Self::Fault => "dw-i-fault",
        }
    }
}

/// Which point of a line of text its place is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// One line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// On the base line.
    pub at: Point,
    /// Which point of the line that is.
    pub anchor: Anchor,
    /// Size of type.
    pub size: Size,
    /// Ink.
    pub tone: Tone,
    /// Heavy.
    pub bold: bool,
    /// Turned to read upwards.
    pub upright: bool,
    /// With an edge of paper, because it may lie across a line.
    pub halo: bool,
    /// What it says.
    pub words: String,
}

impl Text {
    /// A quiet label that begins at `at`.
    #[must_use]
    pub fn new(at: Point, words: impl Into<String>) -> Self {
        Self {
            at,
            anchor: Anchor::Start,
            size: Size::Label,
            tone: Tone::Ink,
            bold: false,
            upright: false,
            halo: false,
            words: words.into(),
        }
    }

    /// Placed by another point.
    #[must_use]
    pub fn anchored(mut self, anchor: Anchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// In another size.
    #[must_use]
    pub fn sized(mut self, size: Size) -> Self {
        self.size = size;
        self
    }

    /// In another ink.
    #[must_use]
    pub fn toned(mut self, tone: Tone) -> Self {
        self.tone = tone;
        self
    }

    /// Heavy.
    #[must_use]
    pub fn bold(mut self) -> Self {
        self.bold = true;
        self
    }

    /// Turned to read upwards.
    #[must_use]
    pub fn upright(mut self) -> Self {
        self.upright = true;
        self
    }

    /// With an edge of paper.
    #[must_use]
    pub fn haloed(mut self) -> Self {
        self.halo = true;
        self
    }

    /// Moved to the side as far as it must be to stay between 0 and `width`; one that is too long begins at 0.
    #[must_use]
    pub fn within(mut self, width: f64, scale: f64) -> Self {
        let rect = self.rect(scale);
        let over = (rect.right() - width).max(0.0);
        self.at.x += (-rect.x).max(0.0) - over.min(rect.x.max(0.0));
        self
    }

    /// What it covers where the page's text is `scale` times its usual size.
    #[must_use]
    pub fn rect(&self, scale: f64) -> Rect {
        let (ascent, descent) = (0.8 * self.size.px() * scale, 0.22 * self.size.px() * scale);
        let width = text_width(&self.words, self.size.px() * scale);
        let back = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        if self.upright {
            // Reading upwards: the line's start lies below, its ascent to the left.
            let y = self.at.y - width + back;
            return Rect::new(self.at.x - ascent, y, ascent + descent, width);
        }
        Rect::new(
            self.at.x - back,
            self.at.y - ascent,
            width,
            ascent + descent,
        )
    }

    /// All classes that the style sheet needs.
    #[must_use]
    pub fn classes(&self) -> String {
        let mut classes = [self.size.class(), self.tone.class()].join(" ");
        if self.bold {
            classes.push_str(" dw-bold");
        }
        if self.halo {
            classes.push_str(" dw-halo");
        }
        classes
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn anchors_move_the_line_not_its_size() {
        let at = Point::new(100.0, 50.0);
        let start = Text::new(at, "Service corridor").rect(1.0);
        let middle = Text::new(at, "Service corridor")
            .anchored(Anchor::Middle)
            .rect(1.0);
        let end = Text::new(at, "Service corridor")
            .anchored(Anchor::End)
            .rect(1.0);
        assert!((start.x - 100.0).abs() < 1e-9, "begins at the point");
        assert!(
            (middle.centre().x - 100.0).abs() < 1e-9,
            "middle at the point"
        );
        assert!((end.right() - 100.0).abs() < 1e-9, "ends at the point");
    }

    #[test]
    fn upright_line_is_higher_than_wide() {
        let rect = Text::new(Point::new(10.0, 90.0), "1.50 m")
            .upright()
            .rect(1.0);
        assert!(rect.width < rect.height, "it reads upwards");
        assert!((rect.bottom() - 90.0).abs() < 1e-9, "and begins below");
    }
}
