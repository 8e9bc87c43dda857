//! What stands in traps, how much air comes through, and when the detector is blind: lanes under the calendar on its axis.

use dewrun_quantity::format;

use super::axis::Axis;
use super::calendar::in_hours;
use super::stamp::HOUR_S;
use super::stretch::stretches;
use super::totals::Totals;
use super::{Flow, Standing, Year, written};
use crate::extremes::extremes;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::pattern::Hatch;
use crate::place::{Board, Wanted};
use crate::scale::Scale;
use crate::scene::Scene;
use crate::text::{Size, Text, Tone};
use crate::ticks::{rounded_span, ticks};

/// Values closer together than this share the points of a curve, px.
const FINE: f64 = 2.0;

/// A lane.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Lane {
    what: What,
    /// The place of its curve.
    pub(super) rect: Rect,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum What {
    /// A trap or low point, by its number.
    Standing(usize),
    Flow,
    Blind,
}

/// The lanes of a year from a height on, and where they end.
pub(super) fn places(year: &Year, axis: &Axis, top: f64) -> (Vec<Lane>, f64) {
    let text = axis.text;
    let mut lanes = Vec::new();
    let mut y = top;
    let mut put = |what, height: f64, after: f64| {
        if axis.is_narrow {
            y += 17.0 * text;
        }
        let rect = axis.lane(y, height * text);
        y = rect.bottom() + after * text;
        lanes.push(Lane { what, rect });
    };
    for number in 0..year.standing.len() {
        put(What::Standing(number), 84.0, 24.0);
    }
    if year.flow.is_some() {
        put(What::Flow, 84.0, 12.0);
    }
    if year.follows_water {
        put(What::Blind, 16.0, 4.0);
    }
    (lanes, y)
}

/// What they are drawn on.
pub(super) fn grounds(scene: &mut Scene, lanes: &[Lane]) {
    for lane in lanes {
        scene.rect("dw-g-sheet", &lane.rect);
    }
}

/// All of them.
pub(super) fn draw(scene: &mut Scene, axis: &Axis, lanes: &[Lane], year: &Year) {
    for lane in lanes {
        match lane.what {
            What::Standing(number) => {
                if let Some(standing) = year.standing.get(number) {
                    level(scene, axis, &lane.rect, (year, standing));
                }
            }
            What::Flow => {
                if let Some(flow) = &year.flow {
                    airflow(scene, axis, &lane.rect, (year, flow));
                }
            }
            What::Blind => blind(scene, axis, &lane.rect, year),
        }
    }
}

/// Names at the left of a lane, or over it, and what it comes to at the right.
fn names(scene: &mut Scene, axis: &Axis, rect: &Rect, left: &[String], right: &[String]) {
    let base = 0.76 * Size::Label.line() * axis.text;
    if axis.is_narrow {
        let words = left.join(", ");
        let at = Point::new(0.0, rect.y - 5.0 * axis.text);
        scene.text(Text::new(at, words).bold());
        return;
    }
    written::column(scene, Point::new(0.0, rect.y + base), left, axis.text);
    if axis.is_roomy {
        let at = Point::new(rect.right() + 12.0 * axis.text, rect.y + base);
        written::column(scene, at, right, axis.text);
    }
}

/// The level of a trap: its worst and its last of every day, a drop where it is emptied.
fn level(scene: &mut Scene, axis: &Axis, rect: &Rect, (year, standing): (&Year, &Standing)) {
    let mark = year.style.mark;
    let largest = standing.level_l.iter().copied().fold(0.0, f64::max);
    let most = largest
        .max(standing.full.map_or(0.0, |(full, _)| full))
        .max(1e-3);
    let (_, top, ticks) = rounded_span(0.0, 1.12 * most, 4);
    let scale = Scale::new((0.0, top), (rect.bottom(), rect.y));
    if !axis.is_narrow {
        for value in ticks.values.iter().filter(|value| **value <= top) {
            let at = Point::new(axis.left, scale.px(*value));
            let words = format::fixed(*value, ticks.decimals, mark);
            written::tick(scene, at, words, axis.text);
        }
    }
    let curve = curve(axis, year, &standing.level_l, &scale, &standing.emptied);
    scene.path("dw-c-formed", curve);
    scene.line(
        "dw-d-measure",
        Point::new(rect.x, rect.bottom()),
        Point::new(rect.right(), rect.bottom()),
    );
    let mut board = Board::new(rect.grown(1.0));
    if let Some((full, word)) = standing.full {
        let y = scale.px(full);
        scene.line(
            "dw-d-planned",
            Point::new(rect.x, y),
            Point::new(rect.right(), y),
        );
        let words = format!("{word} {}\u{a0}L", format::amount(full, 3, mark));
        let at = Point::new(rect.x + 6.0, y + 12.0 * axis.text);
        let words = Text::new(at, words).sized(Size::Least).toned(Tone::Second);
        board.take(words.rect(axis.text));
        scene.text(words.haloed());
    }
    emptied(scene, axis, rect, (year, standing), &scale, &mut board);
    let name = standing.name(year.style);
    let volume = format!("Level, L, {name}");
    let left = if axis.is_narrow {
        vec![volume]
    } else {
        vec!["Level, L".to_owned(), name]
    };
    let right = fullest(year, standing, largest);
    names(scene, axis, rect, &left, &right);
}

/// The fullest that it gets, and when.
fn fullest(year: &Year, standing: &Standing, largest: f64) -> Vec<String> {
    let mark = year.style.mark;
    let at = standing.level_l.iter().position(|level| largest <= *level);
    let step = at.and_then(|at| year.steps.get(at));
    if largest <= 0.0 {
        return vec!["Stays dry".to_owned()];
    }
    let most = match standing.full {
        Some((full, _)) if 0.0 < full => {
            format!("{}\u{a0}%", format::fixed(100.0 * largest / full, 0, mark))
        }
        _ => format!("{}\u{a0}L", format::amount(largest, 2, mark)),
    };
    let day = step.map_or_else(String::new, |step| format!("on {}", year.day(step.start_s)));
    vec![format!("Fullest: {most}"), day]
}

/// Marks where it is emptied, and how much stood there.
fn emptied(
    scene: &mut Scene,
    axis: &Axis,
    rect: &Rect,
    (year, standing): (&Year, &Standing),
    scale: &Scale,
    board: &mut Board,
) {
    let mut marks = Path::new();
    for at in &standing.emptied {
        let Some(step) = year.steps.get(*at) else {
            continue;
        };
        let (x, y) = (axis.px(step.start_s), rect.bottom() + 3.0);
        let tip = Point::new(x, y + 6.0);
        marks = marks.and(&Path::area([
            Point::new(x - 3.5, y),
            Point::new(x + 3.5, y),
            tip,
        ]));
        let stood = at.checked_sub(1).and_then(|at| standing.level_l.get(at));
        let Some(stood) = stood.filter(|stood| 0.005 <= **stood) else {
            continue;
        };
        let words = format!("{}\u{a0}L", format::fixed(*stood, 2, year.style.mark));
        let at = Point::new(x, scale.px(*stood) - 8.0 * axis.text);
        let words = Text::new(at, words).sized(Size::Least);
        let size = words.rect(axis.text);
        let wanted = Wanted {
            forms: vec![(size.width, size.height)],
            at,
            room: *rect,
            reach: Point::new(18.0, 12.0),
            needed: false,
        };
        if let Some(placed) = board.place(&wanted) {
            let base = placed.rect.y + 0.8 * Size::Least.px() * axis.text;
            let mut words = words.haloed();
            words.at = Point::new(placed.rect.x, base);
            scene.text(words);
        }
    }
    scene.path("dw-d-solid", marks);
}

/// The reading of the airflow between its limits.
fn airflow(scene: &mut Scene, axis: &Axis, rect: &Rect, (year, flow): (&Year, &Flow)) {
    let mark = year.style.mark;
    let largest = flow.percent.iter().copied().fold(110.0, f64::max);
    // Over the high limit there is room for its name.
    let high = flow.limits.map_or(0.0, |[_, high]| 1.22 * high);
    let top = largest.max(high).min(200.0);
    let scale = Scale::new((0.0, top), (rect.bottom(), rect.y));
    if !axis.is_narrow {
        for value in ticks(0.0, top, 4).values {
            let at = Point::new(axis.left, scale.px(value));
            written::tick(scene, at, format::fixed(value, 0, mark), axis.text);
        }
    }
    let mut right = Vec::new();
    if let Some([low, high]) = flow.limits {
        let (low_y, high_y) = (scale.px(low), scale.px(high).max(rect.y));
        let beyond = [
            Rect::new(rect.x, low_y, rect.width, rect.bottom() - low_y),
            Rect::new(rect.x, rect.y, rect.width, high_y - rect.y),
        ];
        for area in beyond {
            scene.hatched(Hatch::Cut, Path::rect(&area));
        }
        for (name, limit, y, down) in [
            ("low limit", low, low_y, 12.0),
            ("high limit", high, high_y, -4.0),
        ] {
            scene.line(
                "dw-d-planned",
                Point::new(rect.x, y),
                Point::new(rect.right(), y),
            );
            let words = format!("{name} {}\u{a0}%", format::fixed(limit, 0, mark));
            let at = Point::new(rect.x + 6.0, y + down * axis.text);
            let words = Text::new(at, words).sized(Size::Least).toned(Tone::Second);
            scene.text(words.haloed());
        }
        let beyond = Totals::of(year.steps.iter()).beyond_h;
        right = vec!["Beyond a limit".to_owned(), in_hours(beyond, year)];
    }
    scene.path("dw-c-air", curve(axis, year, &flow.percent, &scale, &[]));
    scene.rect("dw-d-grid", rect);
    let left = if axis.is_narrow {
        vec!["Airflow, % of as-fitted".to_owned()]
    } else {
        vec!["Airflow, %".to_owned(), "of as-fitted".to_owned()]
    };
    names(scene, axis, rect, &left, &right);
}

/// When the detector does not sample the duct.
fn blind(scene: &mut Scene, axis: &Axis, rect: &Rect, year: &Year) {
    let mut path = Path::new();
    let steps = &year.steps;
    for blind in stretches(steps.len(), |at| 0.0 < steps[at].blind) {
        let ends = steps.get(blind.end).map(|next| next.start_s);
        let from = steps[blind.start].start_s;
        let to = ends.unwrap_or(steps[blind.end - 1].start_s + HOUR_S);
        path = path.and(&bar(axis, rect, from, to));
    }
    let hours = Totals::of(year.steps.iter()).blind_h;
    scene.path("dw-d-solid", path);
    scene.rect("dw-d-grid", rect);
    let left = ["Blind".to_owned()];
    let right = [in_hours(hours, year)];
    names(scene, axis, rect, &left, &right);
}

fn bar(axis: &Axis, rect: &Rect, from_s: i64, to_s: i64) -> Path {
    let (from, to) = (axis.px(from_s), axis.px(to_s));
    let (top, high) = (rect.y + 3.0, rect.height - 6.0);
    Path::rect(&Rect::new(from, top, (to - from).max(0.5), high))
}

/// A line through the largest and the last value of each column, which drops where something is emptied.
fn curve(axis: &Axis, year: &Year, values: &[f64], scale: &Scale, emptied: &[usize]) -> Path {
    let steps = year.steps.iter().zip(values).enumerate();
    let points = steps.filter(|(_, (_, value))| value.is_finite());
    let points = points.map(|(at, (step, value))| {
        let here = Point::new(axis.px(step.start_s), scale.px(*value));
        (here, emptied.contains(&at))
    });
    Path::through(extremes(points, axis.left, axis.column.min(FINE)))
}
