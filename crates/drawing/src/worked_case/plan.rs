//! Where everything of a small picture lies.

use dewrun_run::Leg;

use crate::geometry::{Point, Rect};
use crate::view::View;

/// Size of the picture, px.
pub(super) const WIDTH: f64 = 256.0;
pub(super) const HEIGHT: f64 = 118.0;
/// Under side of the slab above, px.
pub(super) const SLAB: f64 = 8.0;
/// Top of the floor, px.
pub(super) const FLOOR: f64 = 111.0;
/// Between these everything is drawn, px.
pub(super) const LEFT: f64 = 8.0;
pub(super) const RIGHT: f64 = WIDTH - 8.0;
/// Half the outside diameter of the tube, px.
pub(super) const HALF: f64 = 5.5;

/// Highest and lowest place of the tube, px.
const TOP: f64 = 30.0;
const BOTTOM: f64 = 84.0;
/// What the falls of all flat legs take together at most, px.
const FALLS: f64 = 18.0;
const DUCT: (f64, f64) = (34.0, 24.0);
const DETECTOR: (f64, f64) = (26.0, 18.0);
/// Two floors are not drawn closer than this, px.
const STOREY: f64 = 11.0;

/// What parts two spaces.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Border {
    /// An upright wall, and where the tube goes through it.
    Wall(Point),
    /// A floor at this height.
    Floor(f64),
}

/// Where everything lies.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan {
    /// Ends of the legs, the duct's first.
    pub(super) joints: Vec<Point>,
    pub(super) duct: Rect,
    pub(super) detector: Rect,
    pub(super) borders: Vec<Border>,
    /// Legs that lie above the first floor.
    upper: usize,
    /// Before which leg each wall stands, and where.
    walls: Vec<(usize, f64)>,
}

impl Plan {
    pub(super) fn of(view: &View<'_>) -> Self {
        let legs = view.legs();
        let rises = legs.first().is_some_and(Leg::is_steep);
        let drops = legs.last().is_some_and(Leg::is_steep);
        let start = if rises {
            LEFT + DUCT.0 / 2.0
        } else {
            LEFT + DUCT.0
        };
        let end = if drops {
            RIGHT - DETECTOR.0 / 2.0
        } else {
            RIGHT - DETECTOR.0
        };
        let joints = joints(legs, start, end);
        let first = joints.first().copied().unwrap_or_default();
        let last = joints.last().copied().unwrap_or_default();
        let duct = if rises {
            Rect::new(first.x - DUCT.0 / 2.0, first.y, DUCT.0, DUCT.1)
        } else {
            Rect::new(first.x - DUCT.0, first.y - DUCT.1 / 2.0, DUCT.0, DUCT.1)
        };
        let detector = if drops {
            Rect::new(last.x - DETECTOR.0 / 2.0, last.y, DETECTOR.0, DETECTOR.1)
        } else {
            Rect::new(last.x, last.y - DETECTOR.1 / 2.0, DETECTOR.0, DETECTOR.1)
        };
        let mut plan = Self {
            joints,
            duct,
            detector,
            borders: Vec::new(),
            upper: 0,
            walls: Vec::new(),
        };
        plan.part(legs);
        plan
    }

    /// Puts a wall or floor wherever the tube goes from one space into another.
    fn part(&mut self, legs: &[Leg]) {
        let mut last_floor = None;
        for (before, pair) in legs.windows(2).enumerate() {
            let [leg, next] = pair else { continue };
            let Some(joint) = self.joints.get(before + 1).copied() else {
                continue;
            };
            if leg.space == next.space {
                continue;
            }
            if !next.is_steep() {
                // Behind a drop the wall stands clear of the upright tube.
                let clear = if leg.is_steep() { 14.0 } else { 0.0 };
                let at = joint.moved(clear, 0.0);
                self.walls.push((before + 1, at.x));
                self.borders.push(Border::Wall(at));
                continue;
            }
            let floor = match last_floor {
                None => (joint.y + 2.0 * HALF).max(self.duct.bottom() + 3.0),
                Some(above) => joint.y.max(above + STOREY),
            };
            if last_floor.is_none() {
                self.upper = before + 1;
            }
            last_floor = Some(floor);
            self.borders.push(Border::Floor(floor));
        }
    }

    /// Whether a leg lies above the first floor.
    pub(super) const fn is_upper(&self, leg: usize) -> bool {
        leg < self.upper
    }

    /// Right of the wall before a leg, or 0.
    pub(super) fn first_wall_before(&self, leg: usize) -> f64 {
        let before = self.walls.iter().filter(|(first, _)| *first <= leg);
        before.map(|(_, x)| x + 8.0).fold(0.0, f64::max)
    }

    /// A place within a leg, as a share of its length.
    pub(super) fn at(&self, leg: usize, share: f64) -> Option<Point> {
        let (from, to) = (self.joints.get(leg)?, self.joints.get(leg + 1)?);
        Some(from.towards(*to, share))
    }
}

/// The ends of the legs: lengths to one scale, falls of flat legs to another, drops to a third.
fn joints(legs: &[Leg], start: f64, end: f64) -> Vec<Point> {
    let mut ends = vec![(0.0, 0.0, 0.0)];
    let (mut along, mut fallen, mut dropped) = (0.0, 0.0, 0.0);
    for leg in legs {
        let (length, rise) = (leg.length.to_metres(), leg.rise.to_metres());
        if leg.is_steep() {
            dropped -= rise;
        } else {
            fallen -= rise;
        }
        along += (length * length - rise * rise).max(0.0).sqrt();
        ends.push((along, fallen, dropped));
    }
    let wide = scale(ends.iter().map(|end| end.0), end - start);
    let falls = scale(ends.iter().map(|end| end.1), FALLS);
    let drops = scale(ends.iter().map(|end| end.2), BOTTOM - TOP - FALLS);
    let height = |&(_, fallen, dropped): &(f64, f64, f64)| fallen * falls + dropped * drops;
    let top = ends.iter().map(height).fold(f64::INFINITY, f64::min);
    ends.iter()
        .map(|place| Point::new(start + place.0 * wide, TOP - top + height(place)))
        .collect()
}

/// What makes a spread of values so many px wide; 0 where they do not differ.
fn scale(values: impl Iterator<Item = f64>, px: f64) -> f64 {
    let (low, high) = values.fold((0.0, 0.0), |(low, high): (f64, f64), value| {
        (low.min(value), high.max(value))
    });
    let spread = high - low;
    if 0.0 < spread { px / spread } else { 0.0 }
}
