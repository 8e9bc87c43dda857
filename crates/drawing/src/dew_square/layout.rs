//! How wide the square reaches, and where square and enlarged part lie.

use dewrun_quantity::Temperature;
use dewrun_quantity::measure::TEMPERATURE;

use super::course::Course;
use super::hours::{self, SquareHours};
use super::lens::{self, Lens};
use super::window::Window;
use crate::frame::Room;
use crate::geometry::{Rect, kept};
use crate::ticks::{Ticks, ticks};
use crate::view::View;

/// The square reaches from and to a multiple of this, K, so that it does not move with every key.
const STEP_K: f64 = 5.0;
/// Around what it shows, K.
const AROUND_K: f64 = 2.0;
/// Share of the square's width left of the coldest space, for the names at the uprights: on wide and on narrow pages.
const LEFT_OF_SPACES: (f64, f64) = (0.28, 0.36);
/// It never shows less than this, K.
const LEAST_K: f64 = 15.0;
/// Largest side, px at the usual size of text.
const LARGEST: f64 = 680.0;
/// Most round temperatures at which the boundary is asked for.
const MOST_TEMPERATURES: usize = 9;

/// Everything in its place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan {
    pub(super) square: Window,
    pub(super) ticks: Ticks,
    pub(super) lens: Lens,
    /// Whether the enlarged part lies in the corner of the square rather than under it.
    pub(super) is_inset: bool,
    pub(super) height: f64,
    pub(super) text: f64,
}

/// Lays out the square in the room that there is.
pub(super) fn plan(view: &View<'_>, course: &Course, year: &[SquareHours], room: Room) -> Plan {
    let text = room.text;
    let (before, after) = (40.0 * text, 44.0 * text);
    let (above, below) = (22.0 * text, 38.0 * text);
    let side = kept(room.width - before - after, 1.0, LARGEST * text);
    let (low_c, high_c) = span_c(view, course, year, room);
    let square = Window {
        rect: Rect::new(before, above, side, side),
        left_c: low_c,
        lowest_c: low_c,
        px_per_k: side / (high_c - low_c),
        text,
    };
    let bottom = above + side + below;
    let is_inset = !room.is_narrow();
    let place = if is_inset {
        lens::inset(&square)
    } else {
        Rect::new(
            0.5,
            bottom + 8.0,
            (room.width - 1.0).max(1.0),
            lens::low_height(room),
        )
    };
    Plan {
        ticks: marks(view, low_c, high_c, side / (56.0 * text)),
        lens: lens::lens(&square, course, place),
        is_inset,
        height: if is_inset {
            bottom
        } else {
            place.bottom() + 1.0
        },
        square,
        text,
    }
}

/// Round temperatures over the width of the square, and its ends.
pub(super) fn boundary_temperatures(
    view: &View<'_>,
    year: &[SquareHours],
    room: Room,
) -> Vec<Temperature> {
    let (low_c, high_c) = span_c(view, &Course::of(view), year, room);
    let make = TEMPERATURE.unit(view.style.units).make;
    let ends = [low_c, high_c].map(Temperature::celsius);
    let [low, high] = ends.map(TEMPERATURE.unit(view.style.units).read);
    let mut found = vec![ends[0]];
    found.extend(
        ticks(low, high, MOST_TEMPERATURES)
            .values
            .into_iter()
            .map(make),
    );
    found.push(ends[1]);
    let near = |a: &mut Temperature, b: &mut Temperature| (*a - *b).to_kelvins().abs() < 0.5;
    found.dedup_by(near);
    found
}

/// Lowest and highest temperature shown, °C: the same across and up.
fn span_c(view: &View<'_>, course: &Course, year: &[SquareHours], room: Room) -> (f64, f64) {
    let left = if room.is_narrow() {
        LEFT_OF_SPACES.1
    } else {
        LEFT_OF_SPACES.0
    };
    let spaces = || {
        let passed = view
            .run
            .intake
            .iter()
            .filter_map(|leg| view.run.spaces.get(leg.space));
        passed.map(|space| space.temperature.to_celsius())
    };
    let places = || course.places.iter();
    let duct_c = view.outcome.duct_air.temperature.to_celsius();
    let coldest = spaces().fold(duct_c, f64::min);
    let lowest = places()
        .map(|place| place.wall.0.min(place.air.1))
        .fold(coldest, f64::min);
    let highest = places()
        .map(|place| place.wall.0.max(place.air.0))
        .chain(spaces())
        .fold(duct_c, f64::max);
    let highest = course.sensor.map_or(highest, |(t_c, _)| highest.max(t_c));
    let (lowest, highest) = match hours::span_c(year) {
        Some((low, high)) => (lowest.min(low), highest.max(high)),
        None => (lowest, highest),
    };
    let high = up(highest + AROUND_K);
    let under_names = coldest - (high - coldest) * left / (1.0 - left);
    let low = down((lowest - AROUND_K).min(under_names));
    (low.min(high - LEAST_K), high)
}

fn up(t_c: f64) -> f64 {
    (t_c / STEP_K).ceil() * STEP_K
}

fn down(t_c: f64) -> f64 {
    (t_c / STEP_K).floor() * STEP_K
}

fn marks(view: &View<'_>, low_c: f64, high_c: f64, most: f64) -> Ticks {
    let read = TEMPERATURE.unit(view.style.units).read;
    let count = (2..=12_u8)
        .rev()
        .find(|count| f64::from(*count) <= most)
        .map_or(2, usize::from);
    let ends = [low_c, high_c].map(|t_c| read(Temperature::celsius(t_c)));
    ticks(ends[0], ends[1], count)
}
