//! Words beside and within the charts of a year.

use crate::geometry::Point;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};

/// Lines under each other from a first base line on, the first of them heavy.
pub(crate) fn column(scene: &mut Scene, at: Point, lines: &[String], text: f64) {
    for (place, words) in lines.iter().enumerate() {
        let down = (0..place).fold(0.0, |sum, _| sum + Size::Label.line() * text);
        let line = Text::new(at.moved(0.0, down), words.clone());
        scene.text(if place == 0 {
            line.bold()
        } else {
            line.toned(Tone::Second)
        });
    }
}

/// A quiet number at the left of a lane, beside its line.
pub(crate) fn tick(scene: &mut Scene, at: Point, words: String, text: f64) {
    let at = at.moved(-6.0 * text, 0.33 * Size::Least.px() * text);
    let number = Text::new(at, words).sized(Size::Least).toned(Tone::Quiet);
    scene.text(number.anchored(Anchor::End));
}
