//! Finds a free place for each label: near its thing, off the lines, never over another label or past the edge.
//!
//! Labels are placed in the order given, each at the nearest free place within its reach,
//! in its fullest form that fits; a label that is not needed is dropped where none fits.

use crate::geometry::{Point, Rect};

/// Steps between the places that are tried, px.
const STEP: Point = Point::new(6.0, 4.0);
/// Steps that are tried to each side.
const REACH_STEPS: i32 = 44;
/// Paper between two labels, px to the side and up or down: words beside each other read as one sentence.
const GAP: Point = Point::new(8.0, 2.0);

/// A label that wants a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// Its forms as width and height, the fullest first, px.
    pub forms: Vec<(f64, f64)>,
    /// Where the middle of it would best lie.
    pub at: Point,
    /// The room that it must stay in.
    pub room: Rect,
    /// How far it may move away, px to the side and up or down.
    pub reach: Point,
    /// Whether it may lie across a line where there is no other way, rather than be dropped.
    pub needed: bool,
}

/// Where a label has come to lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// Which of its forms fits.
    pub form: usize,
    /// What it covers.
    pub rect: Rect,
}

/// The board that labels are placed on.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    bounds: Rect,
    taken: Vec<Rect>,
    solid: Vec<Rect>,
    steps: Vec<(f64, f64)>,
}

impl Board {
    /// An empty board.
    #[must_use]
    pub fn new(bounds: Rect) -> Self {
        Self {
            bounds,
            taken: Vec::new(),
            solid: Vec::new(),
            steps: steps_by_distance(),
        }
    }

    /// Says that something is drawn there, which labels should keep off.
    pub fn keep_off(&mut self, rect: Rect) {
        self.solid.push(rect);
    }

    /// Says that a label lies there already.
    pub fn take(&mut self, rect: Rect) {
        self.taken.push(rect);
    }

    /// What is drawn, as far as it was told.
    #[must_use]
    pub fn solids(&self) -> &[Rect] {
        &self.solid
    }

    /// Whether a label could lie there without touching another, past no edge and across nothing drawn.
    #[must_use]
    pub fn is_free(&self, rect: &Rect) -> bool {
        self.fits(rect, &self.bounds) && !self.solid.iter().any(|thing| thing.overlaps(rect))
    }

    /// Places a label, or drops it.
    pub fn place(&mut self, wanted: &Wanted) -> Option<Placed> {
        let placed = self
            .nearest(wanted, false)
            .or_else(|| wanted.needed.then(|| self.nearest(wanted, true)).flatten())?;
        self.taken.push(placed.rect);
        Some(placed)
    }

    fn nearest(&self, wanted: &Wanted, across_lines: bool) -> Option<Placed> {
        wanted.forms.iter().enumerate().find_map(|(form, size)| {
            self.steps
                .iter()
                .filter(|(dx, dy)| dx.abs() <= wanted.reach.x && dy.abs() <= wanted.reach.y)
                .map(|&(dx, dy)| around(wanted.at.moved(dx, dy), *size))
                .find(|rect| {
                    self.fits(rect, &wanted.room)
                        && (across_lines || !self.solid.iter().any(|thing| thing.overlaps(rect)))
                })
                .map(|rect| Placed { form, rect })
        })
    }

    fn fits(&self, rect: &Rect, room: &Rect) -> bool {
        let spaced = Rect::new(
            rect.x - GAP.x,
            rect.y - GAP.y,
            rect.width + 2.0 * GAP.x,
            rect.height + 2.0 * GAP.y,
        );
        self.bounds.holds(rect)
            && room.holds(rect)
            && !self.taken.iter().any(|label| label.overlaps(&spaced))
    }
}

fn around(middle: Point, (width, height): (f64, f64)) -> Rect {
    Rect::new(
        middle.x - width / 2.0,
        middle.y - height / 2.0,
        width,
        height,
    )
}

/// All steps within reach, from the nearest on, in rings of growing size.
///
/// Each ring is a rectangle of steps around the middle, walked from its nearest sides to its corners.
fn steps_by_distance() -> Vec<(f64, f64)> {
    let mut steps = vec![(0.0, 0.0)];
    for ring in 1..=REACH_STEPS {
        for aside in 0..=ring {
            let (far, near) = (f64::from(ring), f64::from(aside));
            for (across, down) in [(near, far), (far, near)] {
                for (left, up) in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
                    steps.push((across * left * STEP.x, down * up * STEP.y));
                }
            }
        }
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOUNDS: Rect = Rect::new(0.0, 0.0, 200.0, 100.0);

    fn wanted(x: f64, y: f64, needed: bool) -> Wanted {
        Wanted {
            forms: vec![(60.0, 14.0), (16.0, 14.0)],
            at: Point::new(x, y),
            room: BOUNDS,
            reach: Point::new(80.0, 60.0),
            needed,
        }
    }

    #[test]
    fn first_lies_where_it_wants_to() {
        let placed = Board::new(BOUNDS).place(&wanted(100.0, 50.0, true));
        let expected = Placed {
            form: 0,
            rect: Rect::new(70.0, 43.0, 60.0, 14.0),
        };
        assert_eq!(placed, Some(expected), "nothing is in the way");
    }

    #[test]
    fn labels_make_room_for_each_other() {
        let mut board = Board::new(BOUNDS);
        let placed: Vec<Placed> = (0..8)
            .filter_map(|_| board.place(&wanted(100.0, 50.0, true)))
            .collect();
        assert_eq!(placed.len(), 8, "there is room for eight");
        for (place, label) in placed.iter().enumerate() {
            assert!(BOUNDS.holds(&label.rect), "label {place} stays inside");
            for other in placed.iter().skip(place + 1) {
                assert!(!label.rect.overlaps(&other.rect), "{label:?} and {other:?}");
            }
        }
    }

    #[test]
    fn short_form_goes_where_the_full_one_does_not() {
        let mut board = Board::new(BOUNDS);
        let mut narrow = wanted(100.0, 50.0, true);
        narrow.room = Rect::new(90.0, 0.0, 20.0, 100.0);
        let placed = board.place(&narrow).map(|placed| placed.form);
        assert_eq!(placed, Some(1), "only the short form fits the room");
    }

    #[test]
    fn lines_are_crossed_only_where_needed() {
        let mut board = Board::new(BOUNDS);
        board.keep_off(BOUNDS);
        assert_eq!(
            board.place(&wanted(100.0, 50.0, false)),
            None,
            "a note is dropped"
        );
        assert!(
            board.place(&wanted(100.0, 50.0, true)).is_some(),
            "a figure is not"
        );
    }
}
