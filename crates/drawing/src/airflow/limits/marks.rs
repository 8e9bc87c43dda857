//! The marks of the chart: strip, limits through all rows, rings, diamonds, spans and verdicts.

use super::VERDICT;
use crate::airflow::Shown;
use crate::airflow::head::number;
use crate::airflow::judged::trips;
use crate::airflow::put::put;
use crate::airflow::rows::Row;
use crate::airflow::strip::Strip;
use crate::block::{Block, Line};
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::path::Path;
use crate::pattern::Hatch;
use crate::place::Board;
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};
use dewrun_quantity::measure::AIR_FLOW;

/// Radius of a ring and half of a diamond, px.
const RING: f64 = 4.4;
const DIAMOND: f64 = 6.2;
/// Width of the hatched edge along a limit, px.
const EDGE: f64 = 8.0;

/// A pair of limits under its name.
type Column = (&'static str, [f64; 2]);

pub(super) fn draw(
    scene: &mut Scene,
    strip: &Strip,
    shown: &Shown<'_>,
    (states, faults): (&[Row], &[Row]),
    columns: &[Column],
) {
    let fitted = ground(scene, strip, shown);
    heads(scene, strip, columns);
    if let Some(limits) = shown.limits {
        tolerance(scene, strip, shown, (limits, fitted));
    }
    for (is_fault, rows) in [(false, states), (true, faults)] {
        for (place, row) in rows.iter().enumerate() {
            let top = strip.row(is_fault, place);
            draw_row(scene, strip, row, top);
            if !strip.narrow {
                figures(scene, strip, shown, row, top);
                verdicts(scene, strip, row, columns, top);
            }
        }
    }
}

/// The paper, its grid and the axis with as fitted; what those words cover.
fn ground(scene: &mut Scene, strip: &Strip, shown: &Shown<'_>) -> Rect {
    let text = strip.text;
    let top = strip.band.1 + 6.0;
    let plot = Rect::new(
        strip.left,
        top,
        strip.right - strip.left,
        strip.bottom - top,
    );
    scene.rect("dw-g-sheet", &plot);
    // From the last, which carries the sign, so that on a narrow chart others are left out.
    let mut percent = strip.most;
    let mut placed: Option<Rect> = None;
    while 0.0 <= percent {
        let x = strip.scale.px(percent);
        let (from, to) = (Point::new(x, top), Point::new(x, strip.bottom));
        scene.line("dw-d-grid", from, to);
        let number = number(percent / 100.0, shown.style);
        let words = if placed.is_none() {
            format!("{number}\u{a0}%")
        } else {
            number
        };
        let at = Point::new(x, strip.bottom + 14.0 * text);
        let label = Text::new(at, words)
            .anchored(Anchor::Middle)
            .toned(Tone::Second)
            .within(strip.width, text);
        let rect = label.rect(text);
        if placed.is_none_or(|placed| !placed.grown(3.0).overlaps(&rect)) {
            scene.text(label);
            placed = Some(rect);
        }
        percent -= 20.0;
    }
    let fitted = AIR_FLOW.show(shown.whole.airflow.fitted.sensor, shown.style);
    let at = Point::new(strip.scale.px(100.0), strip.bottom + 29.0 * text);
    let words = format!("as fitted, {fitted}");
    let words = Text::new(at, words)
        .anchored(Anchor::Middle)
        .toned(Tone::Second)
        .within(strip.width, text);
    let rect = words.rect(text);
    scene.text(words);
    rect
}

/// Names of the two groups and of the columns.
fn heads(scene: &mut Scene, strip: &Strip, columns: &[Column]) {
    let text = strip.text;
    let mut head = |y: f64, name: &str, what: &str| {
        let bold = Text::new(Point::new(2.0, y), name).bold();
        let after = bold.rect(text).right() + 8.0;
        scene.text(bold);
        scene.text(Text::new(Point::new(after, y), what).toned(Tone::Second));
    };
    let lift = if strip.narrow { 6.0 } else { 8.0 } * text;
    head(strip.states - lift, "Expected states", "must never trip");
    head(strip.faults - 8.0 * text, "Faults", "should fall outside");
    if strip.narrow {
        return;
    }
    let mut column = |x: f64, lines: [&str; 2], is_bold: bool| {
        for (place, words) in lines.into_iter().enumerate() {
            let y = strip.band.0 - 8.0 * text + if place == 0 { 0.0 } else { 14.0 * text };
            let mut label = Text::new(Point::new(x, y), words)
                .anchored(Anchor::End)
                .toned(Tone::Second);
            label.bold = is_bold;
            scene.text(label);
        }
    };
    let [airflow, from_duct] = strip.columns;
    column(airflow, ["airflow", "%"], false);
    column(from_duct, ["duct", "air, %"], true);
    for (place, (name, _)) in columns.iter().enumerate() {
        let x = verdict_x(strip, place);
        let y = strip.states - lift;
        scene.text(Text::new(Point::new(x, y), *name).bold());
    }
}

fn verdict_x(strip: &Strip, place: usize) -> f64 {
    let before = crate::airflow::strip::count(place);
    strip.right + 16.0 * strip.text + before * VERDICT * strip.text
}

/// The middle of a row's marks.
fn middle(strip: &Strip, row: &Row, top: f64) -> f64 {
    let high = if row.is_fault {
        strip.rows.1
    } else {
        strip.rows.0
    };
    if strip.narrow {
        top + high - 9.0 * strip.text
    } else {
        top + high / 2.0
    }
}

fn draw_row(scene: &mut Scene, strip: &Strip, row: &Row, top: f64) {
    let y = middle(strip, row, top);
    let x = strip.px(row.reading);
    let words = remark(scene, strip, row, (top, x));
    if let Some([low, high]) = row.span {
        let (from, to) = (strip.px(low), strip.px(high));
        // No line runs through words.
        let (before, behind) = words.map_or((to, to), |(left, right)| (left - 4.0, right + 4.0));
        for (from, to) in [(from, to.min(before)), (from.max(behind), to)] {
            if from < to {
                scene.line("dw-v-span", Point::new(from, y), Point::new(to, y));
            }
        }
        if strip.most < 100.0 * high {
            scene.path("dw-v-beyond", arrow_head(Point::new(to, y), 1.0));
        }
    }
    let beyond = strip.most < 100.0 * row.reading;
    let at = Point::new(x, y);
    match (row.is_fault, row.is_wrong) {
        (false, false) => scene.circle("dw-v-state", at, RING),
        (false, true) => scene.circle("dw-v-missed", at, RING),
        (true, false) => scene.path("dw-v-fault", diamond(at)),
        (true, true) => scene.path("dw-v-missed", diamond(at)),
    }
    if beyond {
        scene.path("dw-v-beyond", arrow_head(at.moved(9.0, 0.0), 1.0));
    }
}

/// What the limits make of a row: beside its mark where that is not in the way, on a phone under its name; from where to where that stands among the marks.
fn remark(scene: &mut Scene, strip: &Strip, row: &Row, (top, x): (f64, f64)) -> Option<(f64, f64)> {
    let text = strip.text;
    let tone = if row.is_wrong {
        Tone::Fault
    } else {
        Tone::Second
    };
    if strip.narrow {
        let name = Text::new(Point::new(4.0, top + 12.0 * text), row.name.clone()).haloed();
        scene.text(name);
        if row.is_fault {
            let at = Point::new(4.0, top + 26.0 * text);
            scene.text(Text::new(at, row.remark.clone()).toned(tone).haloed());
        }
        return None;
    }
    if !row.is_told {
        return None;
    }
    let wide = text_width(&row.remark, Size::Label.px() * text);
    let usual = strip.scale.px(12.0);
    let is_free = x + 14.0 < usual || usual + wide + 14.0 < x;
    let left = if is_free { usual } else { x + 14.0 };
    let left = left.min(strip.right - wide - 4.0);
    let y = middle(strip, row, top) + 4.0 * text;
    scene.text(
        Text::new(Point::new(left, y), row.remark.clone())
            .toned(tone)
            .haloed(),
    );
    Some((left, left + wide))
}

/// Name, airflow and duct air at the left.
fn figures(scene: &mut Scene, strip: &Strip, shown: &Shown<'_>, row: &Row, top: f64) {
    let text = strip.text;
    let y = top + strip.rows.0 / 2.0 + 4.0 * text;
    let line = top + strip.rows.0;
    scene.line(
        "dw-d-grid",
        Point::new(0.0, line),
        Point::new(strip.left, line),
    );
    scene.text(Text::new(Point::new(2.0, y), row.name.clone()));
    let [airflow, from_duct] = strip.columns;
    let figure = |x: f64, value: f64| {
        let words = number(value, shown.style);
        Text::new(Point::new(x, y), words).anchored(Anchor::End)
    };
    scene.text(figure(airflow, row.reading));
    let mut share = figure(from_duct, row.share);
    share.bold = row.share < 0.995;
    scene.text(share);
}

/// A tick and "caught", or a cross and "missed", for each pair of limits.
fn verdicts(scene: &mut Scene, strip: &Strip, row: &Row, columns: &[Column], top: f64) {
    let text = strip.text;
    let y = top + strip.rows.0 / 2.0;
    for (place, (_, limits)) in columns.iter().enumerate() {
        let trips = trips(*limits, row.reading);
        let (words, is_right) = match (row.is_fault, trips) {
            (true, true) => ("caught", true),
            (true, false) => ("missed", false),
            (false, true) => ("trips", false),
            (false, false) => continue,
        };
        let at = Point::new(verdict_x(strip, place), y);
        let (class, tone, sign) = if is_right {
            (
                "dw-v-right",
                Tone::Ink,
                [(0.0, 0.0), (3.0, 4.0), (9.0, -5.0)],
            )
        } else {
            (
                "dw-v-wrong",
                Tone::Fault,
                [(1.0, -4.0), (5.0, 0.0), (9.0, 4.0)],
            )
        };
        scene.path(class, Path::through(sign.map(|(dx, dy)| at.moved(dx, dy))));
        if !is_right {
            scene.line(class, at.moved(1.0, 4.0), at.moved(9.0, -4.0));
        }
        scene.text(Text::new(at.moved(14.0, 4.0 * text), words).toned(tone));
    }
}

/// The limits: hatched outside, a dimension line between, lines through all rows.
fn tolerance(
    scene: &mut Scene,
    strip: &Strip,
    shown: &Shown<'_>,
    ([low, high], fitted): ([f64; 2], Rect),
) {
    let (text, (top, bottom)) = (strip.text, strip.band);
    let (left, right) = (strip.px(low), strip.px(high));
    for (from, to) in [(strip.left, left), (right, strip.right)] {
        let outside = Rect::new(from, top, (to - from).max(0.0), bottom - top);
        scene.hatched(Hatch::Cut, Path::rect(&outside));
        scene.rect("dw-d-measure", &outside);
    }
    let under = Rect::new(
        0.0,
        strip.band.1 + 6.0,
        EDGE,
        strip.bottom - strip.band.1 - 6.0,
    );
    for x in [left - EDGE, right] {
        scene.hatched(Hatch::Cut, Path::rect(&Rect { x, ..under }));
    }
    let y = (top + bottom) / 2.0;
    scene.line("dw-d-measure", Point::new(left, y), Point::new(right, y));
    for x in [left, right] {
        let at = Point::new(x, y);
        scene.line("dw-d-tick", at.moved(-4.0, 4.0), at.moved(4.0, -4.0));
        scene.line("dw-d-cut", Point::new(x, top), Point::new(x, strip.bottom));
    }
    words_on_strip(scene, strip, shown, [low, high]);
    let others = [("set now", shown.set), ("advised", shown.advised())];
    let mut board = Board::new(scene.bounds());
    board.take(fitted);
    for (name, other) in others {
        let Some(other) = other else { continue };
        for (value, held) in other.into_iter().zip([low, high]) {
            if (value - held).abs() < 0.005 {
                continue;
            }
            let x = strip.px(value);
            let class = if name == "advised" {
                "dw-d-carry"
            } else {
                "dw-d-planned"
            };
            scene.line(
                class,
                Point::new(x, strip.band.1 + 6.0),
                Point::new(x, strip.bottom),
            );
            let words = format!("{name} {}", number(value, shown.style));
            let words = Block::of(vec![Line::new(words).toned(Tone::Second)]);
            let at = Point::new(x, strip.bottom + 26.0 * text);
            put(
                scene,
                &mut board,
                &[words],
                (at, Point::new(90.0, 4.0)),
                text,
            );
        }
    }
}

/// What the strip says: low, high, and between them no trouble.
fn words_on_strip(scene: &mut Scene, strip: &Strip, shown: &Shown<'_>, [low, high]: [f64; 2]) {
    let (text, (top, bottom)) = (strip.text, strip.band);
    let y = (top + bottom) / 2.0 + 4.0 * text;
    let (left, right) = (strip.px(low), strip.px(high));
    let mut board = Board::new(scene.bounds());
    let mut word = |words: String, at: Point, room: (f64, f64), bold: bool| {
        let mut line = Line::new(words);
        line = if bold {
            line.bold()
        } else {
            line.toned(Tone::Second)
        };
        let block = Block::of(vec![line]);
        if block.size(text).0 + 4.0 < room.1 - room.0 {
            put(
                scene,
                &mut board,
                &[block],
                (at, Point::new(0.0, 0.0)),
                text,
            );
        }
    };
    let middle = |from: f64, to: f64| Point::new((from + to) / 2.0, y - 4.0 * text);
    word(
        "airflow low".to_owned(),
        middle(strip.left, left),
        (strip.left, left),
        false,
    );
    word(
        "airflow high".to_owned(),
        middle(right, strip.right),
        (right, strip.right),
        false,
    );
    let between = format!(
        "no trouble: {} to {}\u{a0}%",
        number(low, shown.style),
        number(high, shown.style)
    );
    word(between, middle(left, right), (left, right), true);
    if strip.narrow {
        return;
    }
    board.take(Rect::new(0.0, 0.0, strip.left, bottom));
    for x in [left, right] {
        board.keep_off(Rect::new(x - 9.0, 0.0, 18.0, top));
    }
    for (name, value, x, way) in [
        ("low limit", low, left, -1.0),
        ("high limit", high, right, 1.0),
    ] {
        let words = format!("{name} {}\u{a0}%", number(value, shown.style));
        let block = Block::of(vec![Line::new(words).bold()]);
        let away = 12.0 + block.size(text).0 / 2.0;
        let at = Point::new(x + way * away, top - 16.0 * text);
        let reach = Point::new(200.0, 0.0);
        put(scene, &mut board, &[block], (at, reach), text);
    }
}

fn diamond(at: Point) -> Path {
    let side = DIAMOND;
    Path::area([(side, 0.0), (0.0, side), (-side, 0.0), (0.0, -side)].map(|(x, y)| at.moved(x, y)))
}

fn arrow_head(tip: Point, way: f64) -> Path {
    Path::through([tip.moved(-5.0 * way, -4.0), tip, tip.moved(-5.0 * way, 4.0)])
}
