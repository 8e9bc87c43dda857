//! How long smoke takes from the duct to the sensor: a band from the first trace to nine tenths.

use super::Shown;
use super::head::seconds;
use super::put::put;
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::place::Board;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::text::{Anchor, Text, Tone};
use crate::ticks::rounded_span;

/// The band, none where no duct air arrives.
pub(super) fn draw(shown: &Shown<'_>, room: Room) -> Option<Scene> {
    let band = shown.whole.airflow.now.transport?;
    let [first, plug, ninety] =
        [band.first, band.plug, band.ninety_percent].map(|time| time.to_seconds());
    if !ninety.is_finite() {
        return None;
    }
    let text = room.text;
    let mut scene = super::blank("transport", room, 58.0 * text);
    scene.title = "Transport time".to_owned();
    let style = shown.style;
    let words = |time| seconds(time, style);
    scene.description = format!(
        "First smoke after {}, nine tenths after {}.",
        words(band.first),
        words(band.ninety_percent)
    );
    let most = if room.width / text < 600.0 { 5 } else { 9 };
    let (_, end, marks) = rounded_span(0.0, ninety * 1.15, most);
    let scale = Scale::new((0.0, end), (10.0, room.width - 24.0 * text));
    let axis = 38.0 * text;
    for value in &marks.values {
        let x = scale.px(*value);
        scene.line(
            "dw-d-measure",
            Point::new(x, axis),
            Point::new(x, axis + 4.0),
        );
        let number = dewrun_quantity::format::fixed(*value, marks.decimals, style.mark);
        let last = marks.values.last() == Some(value);
        let number = if last {
            format!("{number}\u{a0}s")
        } else {
            number
        };
        let at = Point::new(x, axis + 16.0 * text);
        let label = Text::new(at, number)
            .anchored(Anchor::Middle)
            .toned(Tone::Second);
        scene.text(label.within(room.width, text));
    }
    scene.line(
        "dw-d-measure",
        Point::new(scale.px(0.0), axis),
        Point::new(scale.px(end), axis),
    );
    let bar = Rect::new(
        scale.px(first),
        20.0 * text,
        scale.px(ninety) - scale.px(first),
        14.0 * text,
    );
    scene.rect("dw-g-raise", &bar);
    scene.rect("dw-d-seen", &bar);
    let x = scale.px(plug);
    scene.line(
        "dw-d-tick",
        Point::new(x, bar.y),
        Point::new(x, bar.bottom()),
    );
    let mut board = Board::new(scene.bounds());
    for (x, words, bold) in [
        (
            scale.px(first),
            format!("first smoke {}", words(band.first)),
            true,
        ),
        (
            scale.px(ninety),
            format!("90\u{a0}% {}", words(band.ninety_percent)),
            true,
        ),
        (x, format!("at one speed {}", words(band.plug)), false),
    ] {
        let line = Line::new(words);
        let line = if bold {
            line.bold()
        } else {
            line.toned(Tone::Second)
        };
        let at = Point::new(x, 9.0 * text);
        put(
            &mut scene,
            &mut board,
            &[Block::of(vec![line])],
            (at, Point::new(140.0, 0.0)),
            text,
        );
    }
    Some(scene)
}
