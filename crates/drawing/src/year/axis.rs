//! The days across: one axis for the calendar, the lanes under it and the months.

use super::Year;
use super::grid::Grid;
use super::stamp::{DAY_S, short};
use crate::frame::Room;
use crate::geometry::Rect;
use crate::measure::text_width;
use crate::text::Size;
use dewrun_weather::Civil;

/// Narrower than this, over the size of the text, names stand over their lanes.
const NARROW: f64 = 600.0;
/// From this width on, over the size of the text, there is room for words at the right.
const ROOMY: f64 = 1000.0;
/// Width of the names at the left, and of the words at the right, px.
const NAMES: f64 = 192.0;
const WORDS: f64 = 124.0;

/// A month, or a year where there are many.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Period {
    pub(super) from: f64,
    pub(super) to: f64,
    /// Its name as far as there is room for it.
    pub(super) name: String,
}

/// Where each day lies, and what stands beside the days, px.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Axis {
    pub(super) width: f64,
    pub(super) text: f64,
    pub(super) is_narrow: bool,
    /// There are words at the right of the days.
    pub(super) is_roomy: bool,
    pub(super) left: f64,
    pub(super) right: f64,
    /// Width of a column of the calendar.
    pub(super) column: f64,
    first_day: i64,
    day: f64,
    pub(super) periods: Vec<Period>,
}

impl Axis {
    pub(super) fn new(year: &Year, grid: &Grid, room: Room) -> Self {
        let text = room.text;
        let is_narrow = room.width / text < NARROW;
        let is_roomy = ROOMY <= room.width / text;
        let left = if is_narrow { 0.5 } else { NAMES * text };
        let after = if is_roomy { WORDS * text } else { 0.5 };
        let most = room.width - after - left;
        let column = most / count(grid.columns);
        let days = u32::try_from(grid.days).map_or(1.0, f64::from);
        let mut axis = Self {
            width: room.width,
            text,
            is_narrow,
            is_roomy,
            left,
            right: left + column * count(grid.columns),
            column,
            first_day: grid.first_day,
            day: column / days,
            periods: Vec::new(),
        };
        axis.periods = axis.found_periods(year, grid);
        axis
    }

    /// Where a time lies.
    pub(super) fn px(&self, seconds: i64) -> f64 {
        let since = seconds - self.first_day * DAY_S;
        let minutes = u32::try_from(since.max(0) / 60).map_or(0.0, f64::from);
        (self.left + self.day * minutes / 1440.0).min(self.right)
    }

    /// The days between two heights.
    pub(super) fn lane(&self, top: f64, height: f64) -> Rect {
        Rect::new(self.left, top, self.right - self.left, height)
    }

    /// Months while they can be told apart, else years.
    fn found_periods(&self, year: &Year, grid: &Grid) -> Vec<Period> {
        let are_years = 1 < grid.days;
        let mut starts: Vec<(f64, Civil)> = Vec::new();
        for column in 0..grid.columns {
            let day = grid.first_day + i64::try_from(column).unwrap_or(0) * grid.days;
            let Some(civil) = Civil::of(day * DAY_S) else {
                continue;
            };
            let is_new = starts.last().is_none_or(|(_, last)| {
                last.year != civil.year || (!are_years && last.month != civil.month)
            });
            if is_new {
                starts.push((self.left + self.column * count(column), civil));
            }
        }
        let ends: Vec<f64> = starts.iter().skip(1).map(|(from, _)| *from).collect();
        let ends = ends.into_iter().chain([self.right]);
        let named = starts.iter().zip(ends).map(|((from, civil), to)| {
            let names = if are_years {
                vec![civil.year.to_string()]
            } else {
                let whole = short(civil.month, 3);
                let mut names = vec![whole.to_owned(), short(civil.month, 1).to_owned()];
                if !year.is_typical && starts.len() < 4 {
                    names.insert(0, format!("{whole} {}", civil.year));
                }
                names
            };
            let fits = |name: &String| {
                text_width(name, Size::Least.px() * self.text) + 4.0 * self.text < to - from
            };
            Period {
                from: *from,
                to,
                name: names.into_iter().find(fits).unwrap_or_default(),
            }
        });
        named.collect()
    }
}

/// A count as a number to reckon with.
pub(super) fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::INFINITY, f64::from)
}
