//! The section Airflow: its sentence, charts and tables, under the limits that are set or that a hand holds.

use dewrun_desk::style_of;
use dewrun_drawing::Room;
use dewrun_drawing::airflow::{Shown, head, limits, path, tables};

use crate::asked::Asked;

/// One part of the section.
pub(super) type Part = fn(&Shown<'_>, Room) -> String;

/// The sentence over it.
pub(super) fn sentence(shown: &Shown<'_>, _: Room) -> String {
    head(shown)
}

/// Pressure, budget and transport time.
pub(super) fn charts(shown: &Shown<'_>, room: Room) -> String {
    path(shown, room)
}

/// States, faults and limits.
pub(super) fn judged(shown: &Shown<'_>, room: Room) -> String {
    limits(shown, room)
}

/// All of it as tables.
pub(super) fn as_tables(shown: &Shown<'_>, _: Room) -> String {
    tables(shown)
}

/// A part; after the style stand the width and the size of text, then the limits that a hand holds, %.
///
/// # Errors
/// What keeps the air from being answered.
pub(super) fn part(asked: &Asked<'_>, part: Part) -> Result<String, String> {
    let (style, rest) = style_of(asked.numbers);
    let open = &asked.open;
    let whole = open.whole().map_err(ToString::to_string)?;
    let mut shown = Shown::new(&open.answered.run, whole, style);
    let room = match rest {
        [width, text, ..] => Room {
            width: *width,
            text: *text,
        },
        _ => Room::PAPER,
    };
    if let [_, _, low, high] = rest {
        shown.limits = Some([0.01 * low, 0.01 * high]);
    }
    shown.over_duct = open.over_duct();
    Ok(part(&shown, room))
}
