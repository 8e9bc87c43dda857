//! Water that stands at a low point: the part of the tube under its level.

use dewrun_quantity::{Length, Style};
use dewrun_run::LowPoint;

use super::told;
use crate::elevation::labels::{LabelKind, Labels, Spot};
use crate::elevation::layout::Plan;
use crate::elevation::outline::strip;
use crate::elevation::tube::points;
use crate::geometry::Point;
use crate::path::Path;
use crate::pattern::Hatch;
use crate::scene::Scene;

/// Water stays off the middle of the wall's line by this, px.
const WALL: f64 = 0.6;
/// The ring around a low point keeps off the tube by this, px.
const RING: f64 = 7.0;
/// A surface shorter than this has no level mark, px.
const MARKED: f64 = 18.0;

/// A pool on the paper, px.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pool {
    /// The tube around it, from crest to crest, as an area.
    pub(super) bore: Vec<Point>,
    /// The lowest place of its floor.
    floor: f64,
    /// Its surface.
    pub(super) level: f64,
    /// The level at which it closes the bore.
    pub(super) seals: f64,
    /// Half of the bore.
    half: f64,
    /// The middle of the bore at the low point.
    pub(super) at: Point,
    /// The tube around it.
    pub(super) tube: Vec<Point>,
}

impl Pool {
    /// How water stands on the paper; none where the tube has no such place.
    ///
    /// The bore is drawn by the factor of the falls, and so is the depth: surface and lengths come out true.
    pub(super) fn of(plan: &Plan, low: &LowPoint, catchment: [Length; 2]) -> Option<Self> {
        let [from, to] = catchment.map(Length::to_metres);
        let tube = points(&plan.course.part(from, to));
        let half = plan.half;
        let bore = strip(&tube, half, -half);
        let floor = bore.iter().map(|point| point.y).max_by(f64::total_cmp)?;
        let middle = (low.at + low.until) * 0.5;
        let mut pool = Self {
            bore,
            floor,
            level: floor,
            seals: floor,
            half,
            at: plan.course.at(middle.to_metres()).point,
            tube,
        };
        pool.seals = pool.level_of(1.0);
        pool.level = pool.level_of(low.stand.share);
        Some(pool)
    }

    /// The level of water that deep at the low point, over the bore.
    pub(super) fn level_of(&self, share: f64) -> f64 {
        self.floor - share * 2.0 * self.half
    }

    /// What water up to a level fills.
    pub(super) fn filled(&self, level: f64) -> Vec<Point> {
        below(&self.bore, level)
    }

    /// The longest piece of its free surface, from left to right.
    pub(super) fn surface(&self) -> Option<[f64; 2]> {
        let area = self.filled(self.level);
        let on_it = area.iter().filter(|p| p.y < self.level + 1e-6);
        let mut ends: Vec<f64> = on_it.map(|p| p.x).collect();
        ends.sort_by(f64::total_cmp);
        let (pieces, _) = ends.as_chunks::<2>();
        let long = |[left, right]: &[f64; 2]| right - left;
        let longest = pieces.iter().max_by(|a, b| long(a).total_cmp(&long(b)));
        longest.copied()
    }

    /// The ring around the low point: its radius.
    pub(super) fn ring(plan: &Plan) -> f64 {
        plan.half + RING
    }

    pub(super) fn draw(&self, scene: &mut Scene, plan: &Plan, is_frozen: bool) {
        let inner = strip(&self.tube, self.half - WALL, WALL - self.half);
        let area = Path::area(below(&inner, self.level));
        scene.path("dw-s-water", area.clone());
        if is_frozen {
            scene.hatched(Hatch::Ice, area);
        }
        if let Some([left, right]) = self.surface()
            && MARKED < right - left
        {
            let tip = Point::new((left + right) / 2.0, self.level);
            scene.path("dw-d-level", level_mark(tip, plan.half * 0.6));
        }
        scene.circle("dw-d-ring", self.at, Self::ring(plan));
    }

    /// Says what stands there, and that a trap belongs there where that is not said beside.
    pub(super) fn label(
        &self,
        labels: &mut Labels<'_>,
        plan: &Plan,
        (number, low): (usize, &LowPoint),
        (style, has_trap): (Style, bool),
    ) {
        let forms = told::low_point(low, (style, has_trap), plan.frame.narrow);
        let size = forms
            .first()
            .map_or((0.0, 0.0), |form| form.size(labels.scale));
        let down = Self::ring(plan) + 6.0 * labels.scale + size.1 / 2.0;
        let spot = Spot {
            at: self.at.moved(0.0, down),
            room: plan.floor_at(self.at),
            reach: Point::new(260.0, 130.0),
            needed: true,
            thing: Some(self.at.moved(0.0, Self::ring(plan))),
        };
        labels.place(LabelKind::LowPoint(number), forms, spot);
    }
}

/// The sign of a level: a triangle that stands on it with its tip.
pub(super) fn level_mark(tip: Point, size: f64) -> Path {
    Path::area([tip, tip.moved(-size, -size), tip.moved(size, -size)])
}

/// The part of an area that lies under a level.
pub(super) fn below(area: &[Point], level: f64) -> Vec<Point> {
    kept_side(area, |point| point.y - level)
}

/// The part of an area where a distance that changes evenly is not negative.
pub(super) fn kept_side(area: &[Point], inside: impl Fn(Point) -> f64) -> Vec<Point> {
    let mut kept = Vec::new();
    let last = area.last().copied();
    let mut before = last.map(|point| (point, inside(point)));
    for point in area {
        let here = (*point, inside(*point));
        if let Some((from, far)) = before
            && (far < 0.0) != (here.1 < 0.0)
        {
            kept.push(from.towards(*point, far / (far - here.1)));
        }
        if 0.0 <= here.1 {
            kept.push(*point);
        }
        before = Some(here);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_of_a_square_lies_under_its_middle() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)];
        let square = square.map(|(x, y)| Point::new(x, y));
        let lower = below(&square, 1.0);
        let expected = [(2.0, 1.0), (2.0, 2.0), (0.0, 2.0), (0.0, 1.0)];
        for (x, y) in expected {
            assert!(
                lower.contains(&Point::new(x, y)),
                "a corner at {x}, {y} of {lower:?}"
            );
        }
        assert_eq!(lower.len(), 4, "and no others: {lower:?}");
    }
}
