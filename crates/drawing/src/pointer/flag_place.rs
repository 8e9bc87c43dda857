//! Where the flag stands beside the pointer's line: on the freest paper, low down and to the right for choice.

use crate::geometry::{Point, Rect};

/// Width of the flag at the usual size of the page's text, px; the style sheet has the same.
const WIDTH: f64 = 184.0;
/// Height of a row, the head being one.
const ROW: f64 = 16.0;
/// Paper above and under the rows, both together with the flag's edge.
const PADDING: f64 = 14.0;
/// Between the line and the flag, px.
const AWAY: f64 = 10.0;
/// Between two heights that are tried, px.
const STEP: f64 = 8.0;
/// What covering a label weighs against covering a line of the drawing.
const LABEL: f64 = 6.0;
/// What a pixel of height weighs, in square pixels covered.
const HEIGHT: f64 = 12.0;
/// What standing on the left weighs.
const LEFT: f64 = 900.0;

/// Width and height of a flag of so many rows, px.
pub(crate) fn size(rows: usize, text: f64) -> (f64, f64) {
    let rows = (0..=rows).fold(0.0, |sum, _| sum + ROW);
    (WIDTH * text, rows * text + PADDING)
}

/// The left upper corner of a flag beside the line at `x`.
pub(crate) fn place(
    x: f64,
    (width, height): (f64, f64),
    room: &Rect,
    labels: &[Rect],
    solids: &[Rect],
) -> Point {
    let lowest = (room.bottom() - height - 4.0).max(room.y);
    let fits = |left: f64| room.x <= left && left + width <= room.right();
    let (right, left) = (x + AWAY, x - AWAY - width);
    let mut best = (
        f64::INFINITY,
        Point::new(right.min(room.right() - width).max(room.x), lowest),
    );
    for (side, extra) in [(right, 0.0), (left, LEFT)] {
        let mut y = lowest;
        while fits(side) && room.y <= y {
            let flag = Rect::new(side, y, width, height);
            let cost = LABEL * covered(&flag, labels)
                + covered(&flag, solids)
                + extra
                + (lowest - y) * HEIGHT;
            if cost < best.0 {
                best = (cost, Point::new(side, y));
            }
            y -= STEP;
        }
    }
    best.1
}

/// The area that a flag covers of things, things that lie over each other counted twice.
fn covered(flag: &Rect, things: &[Rect]) -> f64 {
    let part = |thing: &Rect| {
        let width = flag.right().min(thing.right()) - flag.x.max(thing.x);
        let height = flag.bottom().min(thing.bottom()) - flag.y.max(thing.y);
        width.max(0.0) * height.max(0.0)
    };
    things.iter().map(part).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROOM: Rect = Rect::new(0.0, 0.0, 1000.0, 300.0);
    const SIZE: (f64, f64) = (184.0, 142.0);

    #[test]
    fn on_free_paper_it_stands_low_and_to_the_right() {
        let at = place(400.0, SIZE, &ROOM, &[], &[]);
        assert_eq!(
            at,
            Point::new(410.0, 154.0),
            "beside the line, on the floor"
        );
    }

    #[test]
    fn near_the_right_edge_it_stands_on_the_left() {
        let at = place(900.0, SIZE, &ROOM, &[], &[]);
        assert_eq!(at, Point::new(706.0, 154.0), "inside the drawing");
    }

    #[test]
    fn it_leaves_labels_uncovered_where_it_can() {
        let label = Rect::new(420.0, 270.0, 120.0, 15.0);
        let at = place(400.0, SIZE, &ROOM, &[label], &[]);
        let flag = Rect::new(at.x, at.y, SIZE.0, SIZE.1);
        assert!(!flag.overlaps(&label), "{at:?} covers {label:?}");
    }

    #[test]
    fn a_drawing_that_is_too_low_still_gets_one_inside() {
        let low = Rect::new(0.0, 0.0, 150.0, 80.0);
        let at = place(140.0, SIZE, &low, &[], &[]);
        assert_eq!(at, Point::new(0.0, 0.0), "from its corner on");
    }
}
