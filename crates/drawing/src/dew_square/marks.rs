//! The labels of the square: what lies above saturation, the spaces, the dry boundary, duct and sensor.

use dewrun_advice::BoundaryPoint;

use super::layout::Plan;
use super::spaces::{self, Upright};
use super::{ground, limit};
use crate::block::{Block, Line};
use crate::geometry::{Point, Rect};
use crate::measure::text_width;
use crate::place::{Board, Wanted};
use crate::scene::Scene;
use crate::text::{Anchor, Size, Text, Tone};
use crate::view::View;

/// A frost line shorter than this has no name, px.
const LEAST_FROST: f64 = 12.0;

/// Draws the labels; gives what they cover.
pub(super) fn draw(
    scene: &mut Scene,
    boards: &mut Boards,
    view: &View<'_>,
    plan: &Plan,
    boundary: &[BoundaryPoint],
) -> Vec<Rect> {
    let mut placed = Vec::new();
    for upright in spaces::all(view) {
        placed.extend(space(scene, boards, view, plan, &upright));
    }
    let wanted = [
        Some(wet_words(plan)),
        boundary_name(plan, boundary),
        frost_name(view, plan),
    ];
    for mark in wanted.into_iter().flatten() {
        placed.extend(put(scene, boards, &mark, plan.square.rect, plan.text));
    }
    placed
}

/// A label that wants a place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Mark {
    pub(super) block: Block,
    /// Where its middle would best lie.
    pub(super) at: Point,
    /// How far it may move away.
    pub(super) reach: Point,
}

/// Where labels go: first where nothing is drawn at all, else across fine lines, never across the heavy ones.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Boards {
    clear: Board,
    across: Board,
}

impl Boards {
    /// Empty boards over some bounds, with heavy and fine lines drawn there.
    pub(super) fn new(bounds: Rect, heavy: &[Rect], fine: &[Rect]) -> Self {
        let mut across = Board::new(bounds);
        heavy.iter().for_each(|rect| across.keep_off(*rect));
        let mut clear = across.clone();
        fine.iter().for_each(|rect| clear.keep_off(*rect));
        Self { clear, across }
    }

    /// Says that a label lies there already.
    pub(super) fn take(&mut self, rect: Rect) {
        self.clear.take(rect);
        self.across.take(rect);
    }

    /// Places a label, or drops it.
    pub(super) fn place(&mut self, wanted: &Wanted) -> Option<Rect> {
        if let Some(found) = self.clear.place(wanted) {
            self.across.take(found.rect);
            return Some(found.rect);
        }
        let found = self.across.place(wanted)?;
        self.clear.take(found.rect);
        Some(found.rect)
    }
}

/// Places a label and draws it.
pub(super) fn put(
    scene: &mut Scene,
    boards: &mut Boards,
    mark: &Mark,
    room: Rect,
    text: f64,
) -> Option<Rect> {
    let rect = boards.place(&Wanted {
        forms: vec![mark.block.size(text)],
        at: mark.at,
        room,
        reach: mark.reach,
        needed: false,
    })?;
    mark.block.draw(scene, &rect, text);
    Some(rect)
}

/// What it means to lie above the diagonal.
fn wet_words(plan: &Plan) -> Mark {
    let block = Block::of(vec![
        Line::new("Above the diagonal"),
        Line::new("a wall is below the"),
        Line::new("dew point: wet").toned(Tone::Water).bold(),
    ]);
    let rect = &plan.square.rect;
    let (width, height) = block.size(plan.text);
    let top = if plan.is_inset {
        plan.lens.place.bottom() + 0.06 * rect.height
    } else {
        rect.y + 10.0
    };
    let at = Point::new(rect.x + 12.0 + 0.5 * width, top + 0.5 * height);
    Mark {
        block,
        at,
        reach: Point::new(0.5 * rect.width, 0.6 * rect.height),
    }
}

fn boundary_name(plan: &Plan, boundary: &[BoundaryPoint]) -> Option<Mark> {
    let line = limit::states(boundary);
    let (_, end) = *plan.square.pieces(&line).last()?;
    let block = Block::of(vec![Line::new("dry boundary").bold()]);
    let (width, height) = block.size(plan.text);
    let at = end.moved(-0.5 * width - 6.0, 0.5 * height + 5.0);
    Some(Mark {
        block,
        at,
        reach: Point::new(0.4 * plan.square.rect.width, 3.0 * height),
    })
}

fn frost_name(view: &View<'_>, plan: &Plan) -> Option<Mark> {
    let line = ground::frost_line(view, &plan.square);
    let pieces = plan.square.pieces(&line);
    let (from, to) = (pieces.first()?.0, pieces.last()?.1);
    if to.x - from.x < LEAST_FROST {
        return None;
    }
    let block = Block::of(vec![Line::new("frost line").toned(Tone::Frost).bold()]);
    let (width, height) = block.size(plan.text);
    let at = from
        .towards(to, 0.5)
        .moved(0.5 * width + 8.0, 0.5 * height + 4.0);
    Some(Mark {
        block,
        at,
        reach: Point::new(60.0, 60.0),
    })
}

/// The name of a space, upwards at the foot of its upright.
fn space(
    scene: &mut Scene,
    boards: &mut Boards,
    view: &View<'_>,
    plan: &Plan,
    upright: &Upright,
) -> Option<Rect> {
    let (foot, top) = spaces::ends(&plan.square, upright)?;
    let size = Size::Label;
    let (px, line) = (size.px() * plan.text, size.line() * plan.text);
    let full = spaces::words(upright, view);
    let short = upright.names.join(", ");
    let tall = foot.y - top.y - 8.0;
    for (words, is_last) in [(&full, false), (&short, false), (&short, true)] {
        let long = text_width(words, px);
        if tall < long && !is_last {
            continue;
        }
        // Left of its line where there is room, else right of it.
        let found = boards.place(&Wanted {
            forms: vec![(line, long)],
            at: Point::new(foot.x - 0.5 * line - 3.0, foot.y - 5.0 - 0.5 * long),
            room: plan.square.rect,
            reach: Point::new(line + 8.0, (tall - long).max(0.0)),
            needed: is_last,
        });
        if let Some(rect) = found {
            let at = Point::new(rect.x + 0.76 * line, rect.bottom());
            let text = Text::new(at, words.clone()).anchored(Anchor::Start);
            scene.text(text.upright().haloed());
            return Some(rect);
        }
    }
    None
}
