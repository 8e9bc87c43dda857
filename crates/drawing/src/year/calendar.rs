//! The wet calendar with everything under it, as one drawing.

use dewrun_quantity::{Temperature, format};

use super::axis::{Axis, count};
use super::grid::{Grid, HOURS};
use super::key::{self, CLASSES, cross};
use super::lanes::{self, Lane};
use super::map::{Classes, Map};
use super::stamp::HOUR_S;
use super::stretch::stretches;
use super::{Year, hours_of_day, written};
use crate::block::{Block, Line};
use crate::frame::Room;
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::path::Path;
use crate::place::{Board, Wanted};
use crate::scene::Scene;
use crate::svg::svg;
use crate::text::{Anchor, Size, Text, Tone};
use crate::wording;

/// Height of the calendar, beside its words and under them, px.
const HEIGHT: (f64, f64) = (216.0, 150.0);
/// Radius of the ring around an hour, px.
const RING: f64 = 5.0;
/// Days that labels keep off together.
const SIDE_BY_SIDE: usize = 4;

/// Where everything lies.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layout {
    pub(super) axis: Axis,
    pub(super) calendar: Rect,
    pub(super) lanes: Vec<Lane>,
    /// Base line of the names of the months.
    months: f64,
    pub(super) height: f64,
}

impl Layout {
    pub(super) fn new(year: &Year, grid: &Grid, room: Room) -> Self {
        let axis = Axis::new(year, grid, room);
        let text = axis.text;
        let (top, height) = if axis.is_narrow {
            (key::height(&key::marks(year), text), HEIGHT.1)
        } else {
            (18.0 * text, HEIGHT.0)
        };
        let calendar = axis.lane(top, height * text);
        let critical = match (&year.first_critical, axis.is_narrow) {
            (None, _) => 8.0,
            (Some(_), false) => 22.0,
            (Some(_), true) => 30.0,
        };
        let (lanes, bottom) = lanes::places(year, &axis, calendar.bottom() + critical * text);
        let months = bottom + 15.0 * text;
        Self {
            axis,
            calendar,
            lanes,
            months,
            height: months + 5.0 * text,
        }
    }

    /// The place of a cell.
    pub(super) fn cell(&self, column: usize, from: usize, hours: usize) -> Rect {
        let row = self.calendar.height / count(HOURS);
        Rect::new(
            self.calendar.x + self.axis.column * count(column),
            self.calendar.y + row * count(from),
            self.axis.column,
            row * count(hours),
        )
    }
}

/// Calendar, traps, airflow and blind hours of a year.
#[must_use]
pub fn charts(year: &Year, room: Room, map: Map) -> String {
    svg(&scene(year, room, map))
}

/// The same as a drawing that is not text yet.
#[must_use]
pub fn scene(year: &Year, room: Room, map: Map) -> Scene {
    let grid = Grid::of(year, map);
    let layout = Layout::new(year, &grid, room);
    let classes = map.classes(year);
    let mut scene = Scene {
        prefix: "year",
        width: room.width,
        height: layout.height,
        title: format!("The year hour by hour: {}", map.word()),
        description: super::sentence::plain(year),
        items: Vec::new(),
    };
    let marks = key::marks(year);
    let key_top = if layout.axis.is_narrow {
        0.0
    } else {
        layout.calendar.y
    };
    key::draw(&mut scene, &layout.axis, (map, &classes), &marks, key_top);
    scene.rect("dw-g-sheet", &layout.calendar);
    lanes::grounds(&mut scene, &layout.lanes);
    months(&mut scene, &layout);
    cells(&mut scene, &layout, &grid, &classes);
    if map == Map::Water {
        signs(&mut scene, &layout, &grid);
    }
    scene.rect("dw-y-frame", &layout.calendar);
    hours(&mut scene, &layout);
    critical(&mut scene, &layout, year);
    if map == Map::Water {
        wettest(&mut scene, &layout, &grid, year);
    }
    if layout.axis.is_roomy {
        hours_of_day::draw(&mut scene, &layout, year);
    }
    lanes::draw(&mut scene, &layout.axis, &layout.lanes, year);
    scene
}

/// Lines between the months through all that is drawn, and their names.
fn months(scene: &mut Scene, layout: &Layout) {
    let Layout { axis, calendar, .. } = layout;
    let bottom = layout
        .lanes
        .last()
        .map_or(calendar.bottom(), |lane| lane.rect.bottom());
    let mut lines = Path::new();
    for period in &axis.periods {
        if axis.left < period.from {
            lines = lines
                .from(Point::new(period.from, calendar.y))
                .to(Point::new(period.from, bottom));
        }
        if !period.name.is_empty() {
            let at = Point::new(0.5 * (period.from + period.to), layout.months);
            let name = Text::new(at, period.name.clone()).sized(Size::Least);
            scene.text(name.toned(Tone::Second).anchored(Anchor::Middle));
        }
    }
    scene.path("dw-d-grid", lines);
}

/// The classes, each as one shape.
fn cells(scene: &mut Scene, layout: &Layout, grid: &Grid, classes: &Classes) {
    let class_of = |column, hour| {
        let value = grid.cell(column, hour).value;
        value.and_then(|value| classes.class(value))
    };
    for (class, name) in CLASSES.into_iter().enumerate() {
        let holds = |column, hour| class_of(column, hour) == Some(class);
        let mut path = Path::new();
        for (column, from, hours) in runs(grid, holds) {
            path = path.and(&Path::rect(&layout.cell(column, from, hours)));
        }
        scene.path(name, path);
    }
}

/// Hours on end within a day: column, first hour, how many.
fn runs(grid: &Grid, holds: impl Fn(usize, usize) -> bool) -> Vec<(usize, usize, usize)> {
    let mut runs = Vec::new();
    for column in 0..grid.columns {
        let stretches = stretches(HOURS, |hour| holds(column, hour));
        runs.extend(
            stretches
                .into_iter()
                .map(|hours| (column, hours.start, hours.len())),
        );
    }
    runs
}

/// Mist, frost and a chamber that is too humid, by marks of their own.
fn signs(scene: &mut Scene, layout: &Layout, grid: &Grid) {
    let mist = spread(layout, grid, 4.0, |cell| cell.is_misty);
    let mut path = Path::new();
    for at in mist {
        path = path.from(at).to(at);
    }
    scene.path("dw-y-mist", path);
    let mut path = Path::new();
    for at in spread(layout, grid, 7.0, |cell| cell.is_frosty) {
        path = path.and(&cross(at, 1.9));
    }
    scene.path("dw-y-frost", path);
    scene.path("dw-y-over", outline(layout, grid, |cell| cell.is_over));
}

/// The edge between cells that hold something and those that do not.
fn outline(layout: &Layout, grid: &Grid, holds: impl Fn(&super::grid::Cell) -> bool) -> Path {
    let mut path = Path::new();
    let is_in = |column: Option<usize>, hour: Option<usize>| match (column, hour) {
        (Some(column), Some(hour)) => holds(&grid.cell(column, hour)),
        _ => false,
    };
    for column in 0..=grid.columns {
        let (own, before) = (Some(column), column.checked_sub(1));
        for hours in stretches(HOURS, |hour| {
            is_in(own, Some(hour)) != is_in(before, Some(hour))
        }) {
            let edge = layout.cell(column, hours.start, hours.len());
            path = path
                .from(Point::new(edge.x, edge.y))
                .to(Point::new(edge.x, edge.bottom()));
        }
        for hour in 0..=HOURS {
            let now = Some(hour).filter(|hour| *hour < HOURS);
            if is_in(own, now) != is_in(own, hour.checked_sub(1)) {
                let edge = layout.cell(column, hour, 1);
                path = path
                    .from(Point::new(edge.x, edge.y))
                    .to(Point::new(edge.right(), edge.y));
            }
        }
    }
    path
}

/// Middles of cells that hold something, no two closer than so many px both ways.
fn spread(
    layout: &Layout,
    grid: &Grid,
    apart: f64,
    holds: impl Fn(&super::grid::Cell) -> bool,
) -> Vec<Point> {
    let mut found: Vec<Point> = Vec::new();
    let row = layout.calendar.height / count(HOURS);
    for column in 0..grid.columns {
        for hour in 0..HOURS {
            if !holds(&grid.cell(column, hour)) {
                continue;
            }
            let at = layout.cell(column, hour, 1).centre();
            // Those before lie column by column: what is too far left ends the search.
            let near = found
                .iter()
                .rev()
                .take_while(|other| at.x - other.x < apart)
                .any(|other| (at.y - other.y).abs() < apart.min(1.5 * row));
            if !near {
                found.push(at);
            }
        }
    }
    found
}

/// The hours of the day.
fn hours(scene: &mut Scene, layout: &Layout) {
    let Layout { axis, calendar, .. } = layout;
    for hour in [0, 6, 12, 18, 24] {
        let y = calendar.y + calendar.height * f64::from(hour) / 24.0;
        let words = format!("{hour}\u{a0}h");
        if !axis.is_narrow {
            written::tick(scene, Point::new(axis.left, y), words, axis.text);
        } else if hour % 24 != 0 {
            let at = Point::new(4.0, y + 0.33 * Size::Least.px() * axis.text);
            let words = Text::new(at, words).sized(Size::Least).toned(Tone::Quiet);
            scene.text(words.haloed());
        }
    }
}

/// The first critical time, under the calendar.
fn critical(scene: &mut Scene, layout: &Layout, year: &Year) {
    let Some((range, trouble)) = &year.first_critical else {
        return;
    };
    let end = range.end.max(range.start + 1) - 1;
    let (Some(first), Some(last)) = (year.steps.get(range.start), year.steps.get(end)) else {
        return;
    };
    let axis = &layout.axis;
    let to_s = last.start_s + HOUR_S;
    let (from, to) = (
        axis.px(first.start_s),
        axis.px(to_s).max(axis.px(first.start_s) + 2.0),
    );
    let y = layout.calendar.bottom() + 3.0;
    let bracket = [(from, 0.0), (from, 5.0), (to, 5.0), (to, 0.0)];
    let bracket = bracket.map(|(x, down)| Point::new(x, y + down * axis.text));
    scene.path("dw-d-tick", Path::through(bracket));
    let days = year.span(first.start_s, last.start_s);
    let px = Size::Label.px() * axis.text;
    let whole = format!("first critical week, {days}");
    let words = [
        format!("{whole}: {trouble}"),
        whole,
        "first critical week".to_owned(),
    ];
    let fits = |words: &String| text_width(words, px) < axis.width;
    let words = words.into_iter().find(fits).unwrap_or_default();
    let words = Text::new(Point::new(from - 6.0, y + 11.0 * axis.text), words);
    let mut words = words.bold().anchored(Anchor::End);
    if axis.is_narrow {
        // Under the bracket: there is no room at its side.
        words.at = Point::new(0.5 * (from + to), y + 18.0 * axis.text);
        let words = words.anchored(Anchor::Middle);
        scene.text(words.within(axis.width, axis.text));
        return;
    }
    let is_left = axis.left <= words.rect(axis.text).x;
    let words = if is_left {
        words
    } else {
        let mut words = words.anchored(Anchor::Start);
        words.at.x = to + 6.0;
        words
    };
    scene.text(words.within(axis.width, axis.text));
}

/// The wettest hour, where there is room for its words; or that there is none.
fn wettest(scene: &mut Scene, layout: &Layout, grid: &Grid, year: &Year) {
    let Layout { axis, calendar, .. } = layout;
    let text = axis.text;
    let mut board = Board::new(scene.bounds());
    let is_marked = |column, hour| {
        let cell = grid.cell(column, hour);
        cell.value.is_some() || cell.is_misty || cell.is_frosty || cell.is_over
    };
    for rect in marked(layout, grid, is_marked) {
        board.keep_off(rect);
    }
    if axis.is_narrow {
        board.keep_off(Rect::new(0.0, 0.0, 40.0 * text, layout.height));
    }
    let found = year.wettest().and_then(|at| year.steps.get(at));
    let (forms, at) = match found {
        None => {
            let none = Line::new("No water forms in these hours.").toned(Tone::Second);
            (vec![Block::of(vec![none])], calendar.centre())
        }
        Some(step) => {
            let Some((column, hour)) = grid.place(step.start_s) else {
                return;
            };
            let name = format!("wettest hour: {}", year.stamp(step.start_s));
            let rate = rate(year, step);
            let dew = wording::celsius(Temperature::celsius(step.dew_point_c), year.style);
            let lines = vec![
                Line::new(name).bold(),
                Line::new(format!("{rate} at dew point {dew}")),
            ];
            (
                vec![Block::of(lines)],
                layout.cell(column, hour, 1).centre(),
            )
        }
    };
    let wanted = Wanted {
        forms: forms.iter().map(|form| form.size(text)).collect(),
        at,
        room: calendar.grown(-3.0),
        reach: Point::new(264.0, 176.0),
        needed: found.is_none(),
    };
    let Some(placed) = board.place(&wanted) else {
        return;
    };
    if found.is_some() {
        let near = if placed.rect.x < at.x {
            placed.rect.right()
        } else {
            placed.rect.x
        };
        let to = Point::new(near, placed.rect.centre().y);
        scene.line("dw-d-leader", at, to);
        scene.circle("dw-y-ring", at, RING);
    }
    if let Some(form) = forms.get(placed.form) {
        form.draw(scene, &placed.rect, text);
    }
}

/// Where something is drawn in some days side by side.
fn marked(
    layout: &Layout,
    grid: &Grid,
    holds: impl Fn(usize, usize) -> bool,
) -> impl Iterator<Item = Rect> {
    let mut spans: Vec<(usize, usize, usize)> = Vec::new();
    for (column, from, hours) in runs(grid, holds) {
        match spans.last_mut() {
            Some((first, low, high)) if column / SIDE_BY_SIDE == *first / SIDE_BY_SIDE => {
                *low = (*low).min(from);
                *high = (*high).max(from + hours);
            }
            _ => spans.push((column, from, from + hours)),
        }
    }
    spans.into_iter().map(|(column, low, high)| {
        let mut rect = layout.cell(column, low, high - low);
        rect.width *= count(SIDE_BY_SIDE);
        rect
    })
}

/// What forms in an hour of a step, with its unit.
pub(super) fn rate(year: &Year, step: &super::Step) -> String {
    let flow = dewrun_quantity::MassFlow::grams_per_hour(3600.0 * step.formed_g / step.seconds);
    wording::water(flow, year.style)
}

/// A number of hours.
pub(super) fn in_hours(hours: f64, year: &Year) -> String {
    format!("{}\u{a0}h", format::fixed(hours, 0, year.style.mark))
}
