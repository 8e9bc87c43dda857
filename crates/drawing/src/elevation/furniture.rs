//! The duct and the detector at the tube's ends, and the stub of the other tube.

use dewrun_run::{Leg, Tube};

use crate::geometry::{Point, Rect};
use crate::path::Path;
use crate::scene::Scene;

/// Which face of a thing the tube is joined to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Face {
    /// The one that looks along the tube.
    Side,
    Top,
    Bottom,
}

/// A duct or detector at an end of the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Device {
    pub(crate) is_duct: bool,
    pub(crate) face: Face,
    /// At the tube's inlet rather than its outlet.
    pub(crate) first: bool,
    /// Width and height, px.
    pub(crate) size: (f64, f64),
}

impl Device {
    /// The thing at the tube's inlet.
    pub(crate) fn at_inlet(tube: Tube, first: Option<&Leg>, width: f64) -> Self {
        Self::new(tube == Tube::Intake, true, first, width)
    }

    /// The thing at the tube's outlet.
    pub(crate) fn at_outlet(tube: Tube, last: Option<&Leg>, width: f64) -> Self {
        Self::new(tube == Tube::Exhaust, false, last, width)
    }

    fn new(is_duct: bool, first: bool, leg: Option<&Leg>, width: f64) -> Self {
        let size = match (is_duct, width < 600.0, width < 1000.0) {
            (true, true, _) => (30.0, 28.0),
            (true, false, true) => (72.0, 52.0),
            (true, false, false) => (88.0, 60.0),
            (false, true, _) => (30.0, 24.0),
            (false, false, _) => (46.0, 34.0),
        };
        Self {
            is_duct,
            face: face(leg, first),
            first,
            size,
        }
    }

    /// What it takes beside the end of the tube, px.
    pub(crate) fn reach(&self) -> f64 {
        match self.face {
            Face::Side => self.size.0 + self.neck(),
            Face::Top | Face::Bottom => self.size.0 / 2.0,
        }
    }

    /// Tube between its last bend and the thing.
    fn neck(&self) -> f64 {
        if self.is_duct { 0.0 } else { 8.0 }
    }

    /// Where it lies when the tube ends at `end`.
    pub(crate) fn place(&self, end: Point) -> Rect {
        let (width, height) = self.size;
        match self.face {
            Face::Side => {
                let x = if self.first {
                    end.x - width - self.neck()
                } else {
                    end.x + self.neck()
                };
                Rect::new(x, end.y - height / 2.0, width, height)
            }
            Face::Top => Rect::new(end.x - width / 2.0, end.y, width, height),
            Face::Bottom => Rect::new(end.x - width / 2.0, end.y - height, width, height),
        }
    }

    /// Draws it, with the tube's end in it.
    pub(crate) fn draw(&self, scene: &mut Scene, end: Point, half: f64) {
        let rect = self.place(end);
        if self.is_duct {
            draw_duct(scene, &rect);
            self.draw_probe(scene, end, half);
        } else {
            self.draw_neck(scene, end, half);
            draw_detector(scene, &rect);
        }
    }

    /// The end of the tube that reaches into the duct, with its holes.
    fn draw_probe(&self, scene: &mut Scene, end: Point, half: f64) {
        let rect = self.place(end);
        let (dx, dy) = match self.face {
            Face::Side => (if self.first { -1.0 } else { 1.0 } * rect.width * 0.85, 0.0),
            Face::Top => (0.0, rect.height * 0.8),
            Face::Bottom => (0.0, -rect.height * 0.8),
        };
        let tip = end.moved(dx, dy);
        let across = if dy == 0.0 {
            Point::new(0.0, half)
        } else {
            Point::new(half, 0.0)
        };
        let outline = [
            end.moved(-across.x, -across.y),
            tip.moved(-across.x, -across.y),
            tip.moved(across.x, across.y),
            end.moved(across.x, across.y),
        ];
        scene.path("dw-d-bore", Path::area(outline));
        scene.path("dw-d-seen", Path::through(outline));
        if 6.0 < half * 2.0 {
            for place in 1..5 {
                let share = f64::from(place) / 5.0;
                scene.circle("dw-d-hole", end.towards(tip, share), 1.3);
            }
        }
    }

    fn draw_neck(&self, scene: &mut Scene, end: Point, half: f64) {
        if self.face != Face::Side {
            return;
        }
        let far = end.moved(
            if self.first {
                -self.neck()
            } else {
                self.neck()
            },
            0.0,
        );
        let (top, bottom) = (end.y - half, end.y + half);
        let area = Rect::between(Point::new(end.x, top), Point::new(far.x, bottom));
        scene.rect("dw-d-bore", &area);
        for y in [top, bottom] {
            scene.line("dw-d-seen", Point::new(end.x, y), Point::new(far.x, y));
        }
    }
}

/// The stub of the other tube, broken off above the detector; gives what it covers.
pub(crate) fn draw_stub(
    scene: &mut Scene,
    detector: &Rect,
    ceiling: f64,
    to_the_right: bool,
) -> Rect {
    let share = if to_the_right { 0.8 } else { 0.2 };
    let x = detector.x + detector.width * share;
    let top = (detector.y - 64.0)
        .max(ceiling + 12.0)
        .min(detector.y - 12.0);
    for side in [-4.0, 4.0] {
        let (from, to) = (Point::new(x + side, detector.y), Point::new(x + side, top));
        scene.line("dw-d-measure", from, to);
    }
    // A wave says that the tube goes on.
    let start = Point::new(x - 8.0, top + 2.0);
    let wave = Path::new()
        .from(start)
        .arc_to(5.0, true, start.moved(8.0, -1.0))
        .arc_to(5.0, false, start.moved(16.0, -3.0));
    scene.path("dw-d-measure", wave);
    Rect::new(x - 8.0, top - 4.0, 16.0, detector.y - top + 4.0)
}

/// A duct cut across: two lines and the crossed diagonals of a hollow.
fn draw_duct(scene: &mut Scene, rect: &Rect) {
    scene.rect("dw-d-duct", rect);
    scene.rect("dw-d-seen", rect);
    scene.rect("dw-d-measure", &rect.grown(-3.0));
    let inner = rect.grown(-3.0);
    let corner = |x, y| Point::new(x, y);
    scene.line(
        "dw-d-measure",
        corner(inner.x, inner.y),
        corner(inner.right(), inner.bottom()),
    );
    scene.line(
        "dw-d-measure",
        corner(inner.x, inner.bottom()),
        corner(inner.right(), inner.y),
    );
}

/// A box with the fan in it.
fn draw_detector(scene: &mut Scene, rect: &Rect) {
    scene.rect("dw-d-device", rect);
    scene.rect("dw-d-seen", rect);
    let radius = rect.height * 0.3;
    let centre = Point::new(rect.right() - rect.height * 0.5, rect.centre().y);
    scene.circle("dw-d-fan", centre, radius);
    let blade = radius * 0.55;
    for (x, y) in [(0.0, -1.0), (0.87, 0.5), (-0.87, 0.5)] {
        let tip = centre.moved(x * radius, y * radius);
        let path = Path::new().from(centre).arc_to(blade, true, tip);
        scene.path("dw-d-measure", path);
    }
    let sensor = Point::new(rect.x + rect.width * 0.22, rect.centre().y);
    scene.line(
        "dw-d-measure",
        sensor.moved(0.0, -radius * 0.7),
        sensor.moved(0.0, radius * 0.7),
    );
}

/// A tube that ends steeply is joined from above or below.
fn face(leg: Option<&Leg>, first: bool) -> Face {
    let Some(leg) = leg.filter(|leg| leg.is_steep()) else {
        return Face::Side;
    };
    let rises = 0.0 < leg.rise.to_metres();
    if rises == first {
        Face::Top
    } else {
        Face::Bottom
    }
}
