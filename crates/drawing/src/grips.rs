//! What a hand can take hold of in an elevation: the ends of legs, places along the tube, and what stands at its ends.

use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Fall, Length, Style};

use crate::elevation::{
    DrawnTrap, Elevation, FLAT_BELOW, Ground, Handle, Held, LabelKind, Stretch,
};
use crate::frame::Frame;
use crate::geometry::{Point, Rect, kept};
use crate::path::Path;
use crate::scene::Scene;
use crate::shape::Shape;
use crate::svg::overlay;
use crate::text::{Anchor, Text};
use crate::view::View;
use crate::wording;

/// A finger meets a diamond within this, px: 44 px across.
const FINGER: f64 = 22.0;
/// A finger meets the tube within this beside its wall, px.
const BESIDE: f64 = 12.0;
/// A joint takes what comes within this of it, px.
const JOINT: f64 = 10.0;
/// Radius of a leg's balloon at the usual size of the page's text, px.
const BALLOON: f64 = 9.0;

/// Height of the strip that shows all of the tube, px.
const STRIP: f64 = 44.0;
/// The tube takes up to this of it.
const STRIP_TUBE: f64 = 28.0;

/// The sign of a handle: an `svg` element.
pub const DIAMOND: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-handle__sign\" aria-hidden=\"true\" viewBox=\"0 0 14 14\"><path d=\"M7 .8L13.2 7L7 13.2L.8 7Z\"/></svg>";

/// The sign of a trap: an `svg` element.
pub const TRAP: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-trap__sign\" aria-hidden=\"true\" viewBox=\"0 0 14 30\"><path d=\"M7 0V5M1 5H13V20H1ZM3 20L11 28H3L11 20Z\"/></svg>";

/// What can be taken hold of, and where it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Grips {
    /// Of each leg, the diamond at its end.
    pub handles: Vec<Handle>,
    /// Its traps.
    pub traps: Vec<DrawnTrap>,
    /// What stands at the tube's inlet and at its outlet, px.
    pub ends: [Rect; 2],
    /// What the drawing keeps as long as a hand holds something.
    pub held: Held,
    /// The length axis.
    pub frame: Frame,
    ground: Ground,
    balloons: Vec<Option<Point>>,
    size: (f64, f64),
    text: f64,
}

/// What a hand meets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Touched {
    /// The diamond of a leg.
    Handle(usize),
    /// A trap.
    Trap(usize),
    /// A place in a leg.
    Place {
        /// The leg.
        leg: usize,
        /// How far from its start.
        from_start: Length,
        /// How far from the inlet of the tube.
        along: Length,
    },
}

/// A hand on the end of a leg: what it makes of the leg as it moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pull {
    start: Point,
    /// From the hand to the end of the leg.
    to_end: (f64, f64),
    held: Held,
    true_slope: bool,
}

impl Grips {
    /// Those of a drawing.
    #[must_use]
    pub fn new(elevation: &Elevation) -> Self {
        let balloon = |leg: usize| {
            let mut labels = elevation.labels.iter();
            let label = labels.find(|label| label.kind == LabelKind::Leg(leg))?;
            let radius = BALLOON * elevation.frame.text;
            Some(Point::new(label.rect.x + radius, label.rect.centre().y))
        };
        Self {
            handles: elevation.handles.clone(),
            traps: elevation.traps.clone(),
            ends: elevation.ends,
            held: elevation.held,
            frame: elevation.frame,
            ground: elevation.ground.clone(),
            balloons: (0..elevation.handles.len()).map(balloon).collect(),
            size: (elevation.scene.width, elevation.scene.height),
            text: elevation.frame.text,
        }
    }

    /// What a hand meets there: the nearest diamond within reach, else a trap, else the tube.
    #[must_use]
    pub fn touched(&self, at: Point) -> Option<Touched> {
        let diamonds = self.handles.iter().map(|handle| handle.at);
        let traps = self.traps.iter().map(|trap| trap.at);
        nearest(diamonds, at)
            .map(Touched::Handle)
            .or_else(|| nearest(traps, at).map(Touched::Trap))
            .or_else(|| self.place(at))
    }

    /// The place of the tube that lies nearest to a hand, a joint if that is near, and how far away, px.
    #[must_use]
    pub fn along(&self, at: Point) -> (Length, f64) {
        let met = self.met(at);
        let (_, drawn, share, away) = met.unwrap_or_default();
        let (from, to) = (drawn.from.along_m, drawn.to.along_m);
        let here = drawn.from.point.towards(drawn.to.point, share);
        // Water collects at joints: that is where a hand wants to be.
        let joint = [drawn.from, drawn.to]
            .into_iter()
            .find(|joint| joint.point.distance(here) <= JOINT);
        let along = joint.map_or(from + (to - from) * share, |joint| joint.along_m);
        (Length::metres(along), away)
    }

    /// Where a place along the tube lies, px.
    #[must_use]
    pub fn point(&self, along: Length) -> Point {
        self.ground.course.at(along.to_metres()).point
    }

    /// The place of the tube that a hand meets there.
    #[must_use]
    pub fn place(&self, at: Point) -> Option<Touched> {
        let near = |met: &(usize, Stretch, f64, f64)| met.3 <= self.ground.half + BESIDE;
        let (leg, drawn, share, _) = self.met(at).filter(near)?;
        let from_start = (drawn.to.along_m - drawn.from.along_m) * share;
        Some(Touched::Place {
            leg,
            from_start: Length::metres(from_start),
            along: Length::metres(drawn.from.along_m + from_start),
        })
    }

    /// The leg nearest to a hand, how far along it that is, and how far away, px.
    fn met(&self, at: Point) -> Option<(usize, Stretch, f64, f64)> {
        let legs = self.ground.course.legs.iter().enumerate();
        let places = legs.map(|(leg, drawn)| {
            let (from, to) = (drawn.from.point, drawn.to.point);
            let share = share_along(from, to, at);
            (leg, *drawn, share, from.towards(to, share).distance(at))
        });
        places.min_by(|a, b| a.3.total_cmp(&b.3))
    }

    /// A hand that takes hold of a leg's end.
    #[must_use]
    pub fn pull(&self, leg: usize, hand: Point) -> Option<Pull> {
        let drawn = self.ground.course.legs.get(leg)?;
        let end = drawn.to.point;
        Some(Pull {
            start: drawn.from.point,
            to_end: (end.x - hand.x, end.y - hand.y),
            held: self.held,
            true_slope: drawn.true_slope,
        })
    }

    /// All of the tube as a strip so wide, an `svg` element.
    #[must_use]
    pub fn overview(&self, width: f64) -> String {
        let vertices = self.ground.course.vertices.iter().map(|v| v.point);
        let (top, bottom) = vertices
            .clone()
            .fold((f64::INFINITY, 0.0_f64), |(top, bottom), at| {
                (top.min(at.y), bottom.max(at.y))
            });
        let across = width / self.size.0.max(1.0);
        let down = STRIP_TUBE / (bottom - top).max(STRIP_TUBE);
        let line = vertices.map(|at| {
            let y = (STRIP - (bottom - top) * down) / 2.0 + (at.y - top) * down;
            Point::new(at.x * across, y)
        });
        let mut scene = Scene::bare("overview", width, STRIP);
        scene.path("dw-d-seen", Path::through(line));
        for end in self.ends {
            let left = end.x * across;
            let y = STRIP / 2.0 + (end.centre().y - (top + bottom) / 2.0) * down;
            let wide = (end.width * across).max(6.0);
            scene.rect("dw-d-device", &Rect::new(left, y - 5.0, wide, 10.0));
            scene.rect("dw-d-seen", &Rect::new(left, y - 5.0, wide, 10.0));
        }
        overlay(&scene)
    }

    /// The balloon of the chosen leg, as an `svg` element that lies over the drawing.
    #[must_use]
    pub fn chosen(&self, view: &View<'_>, leg: usize) -> String {
        let Some(Some(centre)) = self.balloons.get(leg).copied() else {
            return String::new();
        };
        let mut scene = Scene::bare("chosen", self.size.0, self.size.1);
        scene.circle("dw-d-balloon dw-h-chosen", centre, BALLOON * self.text);
        let number = view.leg_number(leg).to_string();
        let base = centre.moved(0.0, 0.36 * crate::text::Size::Label.px() * self.text);
        scene.text(Text::new(base, number).anchored(Anchor::Middle).bold());
        overlay(&scene)
    }
}

impl Pull {
    /// The leg whose end the hand holds there; `free` does not snap.
    ///
    /// A leg that is drawn with the factor for falls is read with it until the hand is steeper than any such leg can be drawn;
    /// one that is drawn at its true slope stays so until the hand is flatter than that.
    #[must_use]
    pub fn shape(&self, hand: Point, free: bool, style: Style) -> Shape {
        let end = hand.moved(self.to_end.0, self.to_end.1);
        let scale = self.held.px_per_m;
        let across = (end.x - self.start.x).max(0.0) / scale;
        let up = (self.start.y - end.y) / scale;
        let Held { heights, falls, .. } = self.held;
        let turns = FLAT_BELOW * if self.true_slope { heights } else { falls };
        let is_true = turns * across < up.abs();
        let factor = if is_true { heights } else { falls };
        let up = if factor == 0.0 { 0.0 } else { up / factor };
        Shape::reaching(across, up, free, style)
    }
}

/// A leg by its number, its space, its length and its fall, for those who listen.
#[must_use]
pub fn leg_name(view: &View<'_>, leg: usize) -> String {
    let Some(found) = view.legs().get(leg) else {
        return String::new();
    };
    format!(
        "Leg {}, {}, {}",
        view.leg_number(leg),
        view.space_name(found.space),
        leg_shape(view, leg)
    )
}

/// Length and fall of a leg in words.
#[must_use]
pub fn leg_shape(view: &View<'_>, leg: usize) -> String {
    let Some(found) = view.legs().get(leg) else {
        return String::new();
    };
    let length = TUBE_LENGTH.show_entered(found.length, view.style);
    let fall = Fall::of(found.length, found.rise, view.fall_form(leg));
    let (is_down, is_level) = (found.rise < Length::ZERO, found.rise == Length::ZERO);
    let way = match (fall, is_down) {
        (None, true) => "drop".to_owned(),
        (None, false) => "riser".to_owned(),
        _ if is_level => "level".to_owned(),
        (Some(fall), _) => {
            let verb = if is_down { "falls" } else { "rises" };
            format!(
                "{verb} {}",
                wording::fall_number(fall.number.abs(), fall, view.style)
            )
        }
    };
    format!("{length}, {way}")
}

/// A trap by its number and its place.
#[must_use]
pub fn trap_name(view: &View<'_>, trap: usize) -> String {
    let Some(along) = view.fitted().traps.get(trap) else {
        return String::new();
    };
    let place = TUBE_LENGTH.show_entered(*along, view.style);
    format!("Trap {} at {place}", trap + 1)
}

/// The nearest of some points that a finger meets.
fn nearest(points: impl Iterator<Item = Point>, at: Point) -> Option<usize> {
    let near = points
        .map(|point| point.distance(at))
        .enumerate()
        .filter(|(_, away)| *away <= FINGER);
    let nearest = near.min_by(|a, b| a.1.total_cmp(&b.1));
    nearest.map(|(place, _)| place)
}

/// How far along a straight line the place nearest to a point lies, 0 at its start and 1 at its end.
fn share_along(from: Point, to: Point, at: Point) -> f64 {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = dx * dx + dy * dy;
    if long == 0.0 {
        return 0.0;
    }
    kept(
        ((at.x - from.x) * dx + (at.y - from.y) * dy) / long,
        0.0,
        1.0,
    )
}
