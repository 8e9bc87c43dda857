//! The time of a log across, and what stands beside it.

use dewrun_weather::Civil;

use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::scene::Scene;
use crate::text::{Size, Text};
use crate::year::stamp::{DAY_S, short};

/// Narrower than this, over the size of the text, names stand over their lanes.
const NARROW: f64 = 600.0;
/// Width of the names at the left, px.
const NAMES: f64 = 132.0;
/// So many days of a log are told by months, with more by years.
const MONTHS_DAYS: i64 = 800;

/// Where each moment lies, px.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Axis {
    pub(super) width: f64,
    pub(super) text: f64,
    pub(super) is_narrow: bool,
    pub(super) left: f64,
    pub(super) right: f64,
    from_s: i64,
    until_s: i64,
}

impl Axis {
    pub(super) fn new((from_s, until_s): (i64, i64), room: Room) -> Self {
        let is_narrow = room.width / room.text < NARROW;
        Self {
            width: room.width,
            text: room.text,
            is_narrow,
            left: if is_narrow { 0.5 } else { NAMES * room.text },
            right: room.width - 0.5,
            from_s,
            until_s,
        }
    }

    /// Where a moment lies.
    pub(super) fn px(&self, at_s: i64) -> f64 {
        let share = number(at_s - self.from_s) / number((self.until_s - self.from_s).max(1));
        self.left + share.clamp(0.0, 1.0) * (self.right - self.left)
    }

    /// The whole time between two heights.
    pub(super) fn lane(&self, top: f64, height: f64) -> Rect {
        Rect::new(self.left, top, self.right - self.left, height)
    }

    /// The first moment of each month, or year of a long log, with its name as far as there is room.
    pub(super) fn periods(&self) -> Vec<(f64, String)> {
        let are_years = MONTHS_DAYS * DAY_S < self.until_s - self.from_s;
        let first = self.from_s.div_euclid(DAY_S);
        let last = (self.until_s - 1).div_euclid(DAY_S);
        let mut starts: Vec<(f64, Civil)> = Vec::new();
        for day in first..=last {
            let Some(civil) = Civil::of(day * DAY_S) else {
                continue;
            };
            let is_new = starts.last().is_none_or(|(_, before)| {
                before.year != civil.year || (!are_years && before.month != civil.month)
            });
            if is_new {
                starts.push((self.px(day * DAY_S), civil));
            }
        }
        let ends: Vec<f64> = starts.iter().skip(1).map(|(at, _)| *at).collect();
        let ends = ends.into_iter().chain([self.right]);
        let mut shown_year = None;
        (starts.iter().zip(ends))
            .map(|((at, civil), end)| {
                let month = short(civil.month, 3);
                let names = if are_years {
                    vec![civil.year.to_string()]
                } else if shown_year == Some(civil.year) {
                    vec![month.to_owned(), short(civil.month, 1).to_owned()]
                } else {
                    let with_year = format!("{month} {}", civil.year);
                    vec![
                        with_year,
                        month.to_owned(),
                        short(civil.month, 1).to_owned(),
                    ]
                };
                let fits = |name: &String| {
                    text_width(name, Size::Least.px() * self.text) + 6.0 * self.text < end - at
                };
                let name = names.into_iter().find(fits).unwrap_or_default();
                if name.contains(' ') {
                    shown_year = Some(civil.year);
                }
                (*at, name)
            })
            .collect()
    }

    /// What a lane is called: beside it, or over it where there is no room.
    pub(super) fn names(&self, scene: &mut Scene, rect: &Rect, lines: &[&str]) {
        let lines: Vec<String> = lines.iter().map(ToString::to_string).collect();
        if self.is_narrow {
            let at = Point::new(0.0, rect.y - 5.0 * self.text);
            scene.text(Text::new(at, lines.join(", ")).bold());
            return;
        }
        let lines = self.wrapped(&lines);
        let base = rect.y + 0.76 * Size::Label.line() * self.text;
        crate::year::written::column(scene, Point::new(0.0, base), &lines, self.text);
    }
}

impl Axis {
    /// Lines that fit beside the lanes; the first of them is heavy and stays whole.
    fn wrapped(&self, lines: &[String]) -> Vec<String> {
        // Numbers stand between the names and their lane.
        let room = self.left - 30.0 * self.text;
        let fits = |words: &str| text_width(words, Size::Label.px() * self.text) <= room;
        let mut wrapped: Vec<String> = Vec::new();
        for line in lines {
            let mut rest = String::new();
            for word in line.split(' ') {
                let longer = format!("{rest} {word}");
                if rest.is_empty() || fits(&longer) {
                    rest = longer.trim_start().to_owned();
                } else {
                    wrapped.push(core::mem::replace(&mut rest, word.to_owned()));
                }
            }
            wrapped.push(rest);
        }
        wrapped
    }
}

/// Seconds as a number to reckon with.
fn number(seconds: i64) -> f64 {
    // No log is longer than four years.
    i32::try_from(seconds).map_or(0.0, f64::from)
}
