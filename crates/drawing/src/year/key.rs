//! What the classes and marks of the calendar mean.

use dewrun_quantity::format;

use super::axis::{Axis, count};
use super::map::{Classes, Map};
use super::totals::Totals;
use super::{Year, written};
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};

/// The classes of the style sheet, from least to most.
pub(super) const CLASSES: [&str; 5] = ["dw-y-m1", "dw-y-m2", "dw-y-m3", "dw-y-m4", "dw-y-m5"];
/// A swatch of a class, px.
const SWATCH: Point = Point::new(28.0, 11.0);

/// A mark and what it says.
pub(super) struct Mark {
    pub(super) kind: Kind,
    words: String,
}

/// A mark in the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Mist,
    Frost,
    Over,
}

/// The marks that occur in a year.
pub(super) fn marks(year: &Year) -> Vec<Mark> {
    let totals = Totals::of(year.steps.iter());
    let mut marks = Vec::new();
    let mut add = |kind, words: &str, hours: f64| {
        if 0.0 < hours {
            let hours = format::fixed(hours, 0, year.style.mark);
            let words = format!("{words}, {hours}\u{a0}h");
            marks.push(Mark { kind, words });
        }
    };
    add(Kind::Mist, "mist at the sensor", totals.mist_h);
    add(Kind::Frost, "ice on a wall", totals.frost_h);
    if let Some(rating) = year.rating_percent {
        let rating = format::significant(rating, 3, 0, year.style.mark);
        let words = format!("chamber over {rating}\u{a0}%");
        add(Kind::Over, &words, totals.over_h);
    }
    marks
}

/// Height of the key over a calendar that has no room beside it, px.
pub(super) fn height(marks: &[Mark], text: f64) -> f64 {
    (50.0 + count(marks.len()) * Size::Label.line()) * text
}

/// Draws the key from a corner on.
pub(super) fn draw(
    scene: &mut Scene,
    axis: &Axis,
    (map, classes): (Map, &Classes),
    marks: &[Mark],
    top: f64,
) {
    let text = axis.text;
    let line = Size::Label.line() * text;
    let base = top + 0.76 * line;
    let (x, mut y) = if axis.is_narrow {
        let name = format!("{}, {}", map.name(), map.unit());
        scene.text(Text::new(Point::new(1.0, base), name).bold());
        (1.0, base + 0.4 * line)
    } else {
        let lines = [map.name().to_owned(), map.unit().to_owned()];
        written::column(scene, Point::new(0.0, base), &lines, text);
        (1.0, base + 1.5 * line)
    };
    if classes.is_empty {
        let at = Point::new(x, y + 0.8 * Size::Least.px() * text);
        let none = Text::new(at, "none in all these hours".to_owned());
        scene.text(none.sized(Size::Least).toned(Tone::Quiet));
    }
    let shown = if classes.is_empty { 0 } else { CLASSES.len() };
    for (place, (class, end)) in CLASSES
        .into_iter()
        .zip(&classes.ends)
        .enumerate()
        .take(shown)
    {
        let left = x + count(place) * SWATCH.x * text;
        let swatch = Rect::new(left, y, SWATCH.x * text, SWATCH.y * text);
        scene.rect(class, &swatch);
        let at = Point::new(left, swatch.bottom() + 0.95 * Size::Least.px() * text);
        let number = Text::new(at, end.clone()).sized(Size::Least);
        scene.text(number.toned(Tone::Quiet).anchored(Anchor::Start));
    }
    y += (SWATCH.y + 20.0) * text;
    for mark in marks {
        let at = Point::new(x + 5.0 * text, y + 0.4 * line);
        self::mark(scene, mark.kind, at, text);
        let words = Point::new(x + 14.0 * text, y + 0.66 * line);
        scene.text(
            Text::new(words, mark.words.clone())
                .sized(Size::Least)
                .toned(Tone::Second),
        );
        y += line;
    }
}

fn mark(scene: &mut Scene, kind: Kind, at: Point, text: f64) {
    match kind {
        Kind::Mist => scene.path("dw-y-mist", Path::new().from(at).to(at)),
        Kind::Frost => scene.path("dw-y-frost", cross(at, 2.4)),
        Kind::Over => {
            let (half, high) = (2.5 * text, 4.0 * text);
            let outline = Rect::new(at.x - half, at.y - high, 2.0 * half, 2.0 * high);
            scene.rect("dw-y-over", &outline);
        }
    }
}

/// Two lines across a point.
pub(super) fn cross(at: Point, half: f64) -> Path {
    Path::new()
        .from(at.moved(-half, -half))
        .to(at.moved(half, half))
        .from(at.moved(-half, half))
        .to(at.moved(half, -half))
}
