//! The entries of a log as marks, each kind with a form of its own, and what each says for the first cause against the second.

use dewrun_quantity::Style;
use dewrun_quantity::format::{fixed, significant};
use dewrun_troubles::{Entry, EventKind, Log, Weight};

use super::Found;
use super::axis::Axis;
use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::place::{Board, Wanted};
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};
use crate::wording::volume;

/// Half the width of a mark, px.
const HALF: f64 = 5.0;
/// With more entries than this none is labelled.
const LABELLED: usize = 80;

/// Kinds that are in a log, each with how many.
pub(super) fn counted(log: &Log) -> Vec<(EventKind, usize)> {
    let count = |kind: EventKind| log.entries().iter().filter(|one| one.kind == kind).count();
    let kinds = EventKind::ALL.into_iter().map(|kind| (kind, count(kind)));
    kinds.filter(|(_, count)| 0 < *count).collect()
}

/// Kinds in two rows: what the detector said, and what people did or found.
const fn row(kind: EventKind) -> f64 {
    match kind {
        EventKind::AirflowLow | EventKind::AirflowHigh | EventKind::Alarm => 0.0,
        _ => 1.0,
    }
}

/// The form of a kind's mark and its class.
fn mark(kind: EventKind, at: Point, text: f64) -> (&'static str, Path) {
    let half = HALF * text;
    let corner = |x: f64, y: f64| at.moved(x * half, y * half);
    let (class, corners): (_, &[(f64, f64)]) = match kind {
        EventKind::AirflowLow => ("dw-d-solid", &[(-1.0, -0.9), (1.0, -0.9), (0.0, 0.9)]),
        EventKind::AirflowHigh => ("dw-d-solid", &[(-1.0, 0.9), (1.0, 0.9), (0.0, -0.9)]),
        EventKind::Alarm => ("dw-tr-alarm", &[(-1.0, 0.9), (1.0, 0.9), (0.0, -0.9)]),
        EventKind::WaterFound | EventKind::Emptied => (
            "dw-s-water",
            &[(-0.8, -0.8), (0.8, -0.8), (0.8, 0.8), (-0.8, 0.8)],
        ),
        EventKind::FilterChanged | EventKind::DetectorReplaced => (
            "dw-tr-open",
            &[(-1.0, 0.0), (0.0, -1.0), (1.0, 0.0), (0.0, 1.0)],
        ),
        EventKind::Other => (
            "dw-tr-open",
            &[(-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)],
        ),
    };
    let corners = corners.iter().map(|(x, y)| corner(*x, *y));
    (class, Path::area(corners))
}

/// A line down from each entry, dotted where somebody did something.
pub(super) fn lines(scene: &mut Scene, axis: &Axis, log: &Log, (top, bottom): (f64, f64)) {
    let mut paths: [Path; 3] = Default::default();
    for entry in log.entries() {
        let place = match entry.kind {
            EventKind::AirflowLow | EventKind::AirflowHigh | EventKind::Alarm => 0,
            EventKind::WaterFound | EventKind::Emptied => 1,
            _ => 2,
        };
        let x = axis.px(entry.at_s);
        if let Some(path) = paths.get_mut(place) {
            let from = core::mem::take(path).from(Point::new(x, top + 20.0 * axis.text));
            *path = from.to(Point::new(x, bottom));
        }
    }
    let classes = [
        "dw-tr-line",
        "dw-tr-line dw-tr-line--water",
        "dw-tr-line dw-tr-line--deed",
    ];
    for (class, path) in classes.into_iter().zip(paths) {
        scene.path(class, path);
    }
}

/// The marks of all entries with what fits beside them: amounts, and the first of each other kind by name.
pub(super) fn marks(scene: &mut Scene, axis: &Axis, rect: &Rect, (log, style): (&Log, Style)) {
    let text = axis.text;
    let place = |entry: &Entry| {
        let y = rect.y + (12.0 + 26.0 * row(entry.kind)) * text;
        Point::new(axis.px(entry.at_s), y)
    };
    let mut board = Board::new(rect.grown(1.0));
    let is_labelled = log.entries().len() <= LABELLED;
    for entry in log.entries() {
        let at = place(entry);
        let (class, path) = mark(entry.kind, at, text);
        scene.path(class, path);
        if is_labelled {
            let half = (HALF + 1.0) * text;
            board.keep_off(Rect::new(at.x - half, at.y - half, 2.0 * half, 2.0 * half));
        }
    }
    let names = [format!("{} entries", log.entries().len())];
    let lines: Vec<&str> = ["Your log"]
        .into_iter()
        .chain(names.iter().map(String::as_str))
        .collect();
    axis.names(scene, rect, &lines);
    if !is_labelled {
        return;
    }
    let mut named: Vec<EventKind> = Vec::new();
    for entry in log.entries() {
        let is_first = !named.contains(&entry.kind);
        let words = match entry.grams {
            Some(grams) => volume(grams, style),
            None if is_first => entry.kind.name().to_owned(),
            None => continue,
        };
        let label = Text::new(Point::default(), words).sized(Size::Least);
        let size = label.rect(text);
        let at = place(entry);
        let beside = HALF * text + 4.0 * text + size.width / 2.0;
        let wanted = Wanted {
            forms: vec![(size.width, size.height)],
            at: at.moved(-beside, 0.0),
            room: *rect,
            reach: Point::new(2.0 * beside + 6.0, 4.0),
            needed: false,
        };
        if let Some(placed) = board.place(&wanted) {
            named.push(entry.kind);
            let mut label = label.haloed();
            label.at = Point::new(placed.rect.x, placed.rect.y + 0.8 * Size::Least.px() * text);
            scene.text(label);
        }
    }
}

/// Bars of what each trouble says for the first cause against the second: up for it, down and hollow against it.
pub(super) fn says(
    scene: &mut Scene,
    axis: &Axis,
    rect: &Rect,
    (found, log, style): (&Found<'_>, &Log, Style),
) {
    let text = axis.text;
    let mut causes = found.ranking.causes.iter();
    let (Some(first), Some(second)) = (causes.next(), causes.next()) else {
        return;
    };
    let (one, other) = (first.cause.name(), second.cause.name().to_ascii_lowercase());
    let lines = [
        "What each says".to_owned(),
        format!("for {}", one.to_ascii_lowercase()),
        format!("against {other}"),
    ];
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    axis.names(scene, rect, &lines);
    let weights = found.ranking.weights();
    let weights: Vec<(f64, &Weight)> = weights
        .iter()
        .filter_map(|one| Some((axis.px(log.entries().get(one.entry)?.at_s), one)))
        .collect();
    let most = weights
        .iter()
        .map(|(_, one)| one.log.abs())
        .fold(0.7, f64::max);
    let base = rect.y + 0.66 * rect.height;
    let (up, down) = (
        0.66 * rect.height - 16.0 * text,
        0.34 * rect.height - 14.0 * text,
    );
    let (mut above, mut below) = (Path::new(), Path::new());
    let wide = if weights.len() <= LABELLED {
        8.0 * text
    } else {
        2.0
    };
    let mut board = Board::new(rect.grown(6.0));
    let mut labels = Vec::new();
    for (x, one) in &weights {
        let (path, y, high, sign) = if 0.0 <= one.log {
            let high = up * one.log / most;
            (&mut above, base - high, high, '\u{d7}')
        } else {
            (&mut below, base, -down * one.log / most, '\u{f7}')
        };
        let bar = Rect::new(x - wide / 2.0, y, wide, high.max(1.0));
        *path = core::mem::take(path).and(&Path::rect(&bar));
        let end = if 0.0 <= one.log {
            bar.y - 7.0 * text
        } else {
            bar.bottom() + 8.0 * text
        };
        labels.push((
            Point::new(*x, end),
            format!("{sign}{}", times(one.times, style)),
        ));
    }
    scene.path("dw-d-solid", above);
    scene.path("dw-tr-open", below);
    let line = |x: f64| Point::new(x, base);
    scene.line("dw-d-measure", line(rect.x), line(rect.right()));
    if LABELLED < weights.len() {
        return;
    }
    for (at, words) in labels {
        let label = Text::new(at, words)
            .sized(Size::Least)
            .anchored(Anchor::Middle);
        let size = label.rect(text);
        let wanted = Wanted {
            forms: vec![(size.width, size.height)],
            at,
            room: rect.grown(6.0),
            reach: Point::new(4.0, 6.0),
            needed: false,
        };
        if let Some(placed) = board.place(&wanted) {
            let mut label = label.toned(Tone::Second).haloed();
            let centre = placed.rect.centre();
            label.at = Point::new(centre.x, placed.rect.y + 0.8 * Size::Least.px() * text);
            scene.text(label);
        }
    }
}

/// How many times as likely.
pub(super) fn times(times: f64, style: Style) -> String {
    if times < 10.0 {
        fixed(times, 1, style.mark)
    } else {
        significant(times, 2, 0, style.mark)
    }
}
