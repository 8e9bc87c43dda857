//! What a drawing consists of before it becomes SVG: shapes and lines of text, each with its class.

use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::text::Text;

/// A drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Tells its ids from those of other drawings on the same page.
    pub prefix: &'static str,
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// What it is, in a few words.
    pub title: String,
    /// What it shows, in a sentence or two made from its data.
    pub description: String,
    /// From back to front.
    pub items: Vec<Item>,
}

/// One shape or line of text.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// A line or area.
    Path {
        /// What it is, for the style sheet.
        class: &'static str,
        /// Its course.
        path: Path,
    },
    /// An area filled with a hatch.
    Hatched {
        /// The hatch.
        hatch: Hatch,
        /// The area.
        path: Path,
    },
    /// A circle.
    Circle {
        /// What it is, for the style sheet.
        class: &'static str,
        /// Its middle.
        centre: Point,
        /// Its radius, px.
        radius: f64,
    },
    /// A line of text.
    Text(Text),
}

impl Item {
    /// What an open line is, and its data; areas are none, since those of one kind may lie over each other.
    pub(crate) fn line(&self) -> Option<(&'static str, &str)> {
        match self {
            Self::Path { class, path } if !path.as_str().contains('Z') => {
                Some((class, path.as_str()))
            }
            _ => None,
        }
    }
}

impl Scene {
    /// One without anything in it, which lies over another and says nothing of its own.
    pub(crate) fn bare(prefix: &'static str, width: f64, height: f64) -> Self {
        Self {
            prefix,
            width,
            height,
            title: String::new(),
            description: String::new(),
            items: Vec::new(),
        }
    }

    /// Adds a line or area, if there is anything of it.
    pub fn path(&mut self, class: &'static str, path: Path) {
        if !path.is_empty() {
            self.items.push(Item::Path { class, path });
        }
    }

    /// Adds a straight line.
    pub fn line(&mut self, class: &'static str, from: Point, to: Point) {
        self.path(class, Path::new().from(from).to(to));
    }

    /// Adds a rectangle.
    pub fn rect(&mut self, class: &'static str, rect: &Rect) {
        self.path(class, Path::rect(rect));
    }

    /// Adds a hatched area, if there is anything of it.
    pub fn hatched(&mut self, hatch: Hatch, path: Path) {
        if !path.is_empty() {
            self.items.push(Item::Hatched { hatch, path });
        }
    }

    /// Adds a circle.
    pub fn circle(&mut self, class: &'static str, centre: Point, radius: f64) {
        self.items.push(Item::Circle {
            class,
            centre,
            radius,
        });
    }

    /// Adds a line of text.
    pub fn text(&mut self, text: Text) {
        self.items.push(Item::Text(text));
    }

    /// The whole area of the drawing.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        Rect::new(0.0, 0.0, self.width, self.height)
    }
}
