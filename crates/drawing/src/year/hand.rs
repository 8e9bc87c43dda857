//! The hour that a person has picked: a slider over the calendar with its ring.

use dewrun_quantity::format::machine;

use super::Year;
use super::calendar::Layout;
use super::grid::Grid;
use super::map::Map;
use super::stamp::{DAY_S, HOUR_S};
use crate::frame::Room;
use crate::path::push_number;

/// The slider that lies over the charts, its ring at a step.
///
/// `data-days` and `data-hours` say how many days lie across and hours down the area of its `rect`.
#[must_use]
pub fn hand(year: &Year, room: Room, at: usize) -> String {
    let grid = Grid::of(year, Map::Water);
    let layout = Layout::new(year, &grid, room);
    let Some(step) = year.steps.get(at) else {
        return String::new();
    };
    let mut html = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-drawing dw-year__over\" role=\"group\" aria-label=\"An hour of the year\"".to_owned();
    attribute(&mut html, "width", room.width);
    attribute(&mut html, "height", layout.height);
    html.push_str(&format!(
        "><g class=\"dw-year__hand\" role=\"slider\" tabindex=\"0\" aria-label=\"Hour\" aria-orientation=\"horizontal\" aria-valuemin=\"0\" aria-valuemax=\"{}\" aria-valuenow=\"{at}\" aria-valuetext=\"{}\" data-columns=\"{}\"><rect class=\"dw-year__touch\"",
        year.steps.len() - 1,
        super::hour::told(year, at),
        grid.columns,
    ));
    let calendar = layout.calendar;
    attribute(&mut html, "x", calendar.x);
    attribute(&mut html, "y", calendar.y);
    attribute(&mut html, "width", calendar.width);
    attribute(&mut html, "height", calendar.height);
    html.push_str("/>");
    if let Some((column, hour)) = grid.place(step.start_s) {
        let at = layout.cell(column, hour, 1).centre();
        html.push_str("<path class=\"dw-year__line\" d=\"M");
        push_number(&mut html, at.x);
        html.push(' ');
        push_number(&mut html, calendar.y);
        html.push('V');
        push_number(&mut html, layout.height - 20.0 * room.text);
        html.push_str("\"/><circle class=\"dw-year__ring\" r=\"6\"");
        attribute(&mut html, "cx", at.x);
        attribute(&mut html, "cy", at.y);
        html.push_str("/>");
    }
    html.push_str("</g></svg>");
    html
}

/// The time at a place in the calendar, both as shares of its width and height.
#[must_use]
pub fn cell_time(year: &Year, across: f64, down: f64) -> i64 {
    let grid = Grid::of(year, Map::Water);
    let column = place(across, grid.columns);
    let hour = place(down, 24);
    (grid.first_day + column * grid.days) * DAY_S + hour * HOUR_S
}

/// The number of the part of a whole in so many parts that a share of it falls into.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a share of a count of days or hours, and the cast saturates"
)]
fn place(share: f64, parts: usize) -> i64 {
    let parts = i64::try_from(parts).unwrap_or(1);
    let most = super::axis::count(usize::try_from(parts).unwrap_or(1));
    ((share * most).floor() as i64).min(parts - 1).max(0)
}

fn attribute(html: &mut String, name: &str, value: f64) {
    html.push_str(&format!(" {name}=\"{}\"", machine(value, 1)));
}

impl Year {
    /// The step at a time: the one that holds it, or the nearest before; the first where there is none.
    #[must_use]
    pub fn step_at(&self, seconds: i64) -> usize {
        let after = self.steps.partition_point(|step| step.start_s <= seconds);
        after.saturating_sub(1)
    }

    /// The step in which most forms in an hour, else the first.
    #[must_use]
    pub fn worst_step(&self) -> usize {
        self.wettest().unwrap_or(0)
    }
}
