//! Where everything of an elevation lies: the tube first, the building around it, the rows of dimensions under it.

use dewrun_quantity::Length;
use dewrun_run::{Leg, Tube};

use super::building::{Building, building, floors};
use super::course::{Course, Factors, Stretch, across_m, courses, drawn, flat_course, jogs};
use super::crossing::{Crossing, Passage, crossings, walls_only};
use super::furniture::Device;
use crate::frame::{Frame, Margins, Room};
use crate::geometry::{Point, Rect, kept};
use crate::view::View;

/// Height of the hatched edge of ceiling and floor, px.
pub(crate) const EDGE: f64 = 12.0;
/// Height of the strip in which joints are carried to the axis, px.
const CARRY: f64 = 22.0;
/// Half of the bore is never drawn smaller or larger, px: on a phone and on a wide drawing.
const BORES: [(f64, f64); 2] = [(3.5, 6.0), (4.5, 8.0)];

/// Everything in its place, px.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Plan {
    pub(crate) frame: Frame,
    pub(crate) course: Course,
    /// For each leg but the first, what lies before it.
    pub(crate) crossings: Vec<Crossing>,
    pub(crate) building: Building,
    pub(crate) inlet: Device,
    pub(crate) outlet: Device,
    /// The stub of the other tube is drawn.
    pub(crate) has_stub: bool,
    /// Half of the bore as drawn.
    pub(crate) half: f64,
    /// The bore is drawn with the factor for falls.
    pub(crate) bore_to_scale: bool,
    pub(crate) wall_thickness: f64,
    /// Between ceiling and floor.
    pub(crate) outer: Rect,
    pub(crate) height: f64,
    /// Base lines of the bar of wet lengths and of the dimensions.
    pub(crate) rows: Option<Rows>,
}

/// What a drawing keeps of the one before it as long as a hand is on the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Scale, px per m.
    pub px_per_m: f64,
    /// By how much heights are drawn larger than lengths.
    pub heights: f64,
    /// The same for falls of legs flatter than 1:5.
    pub falls: f64,
    /// Where the tube begins, px.
    pub inlet: Point,
    /// Top of the floor, px.
    pub floor: f64,
}

/// The rows under a tube that stays on one floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rows {
    pub(crate) bar: f64,
    pub(crate) dimensions: Option<f64>,
}

impl Plan {
    /// What a drawing of the changed tube is to keep.
    pub(crate) fn held(&self) -> Held {
        let Factors { heights, falls } = self.course.factors;
        Held {
            px_per_m: self.frame.px_per_m,
            heights,
            falls,
            inlet: self.start(),
            floor: self.outer.bottom(),
        }
    }

    /// Where the tube begins.
    pub(crate) fn start(&self) -> Point {
        self.course
            .vertices
            .first()
            .map_or(Point::default(), |v| v.point)
    }

    /// The middle of what is seen of a leg between the slabs of its floor.
    pub(crate) fn middle_of(&self, leg: &Stretch) -> Point {
        let middle = leg.from.point.towards(leg.to.point, 0.5);
        if !leg.steep {
            return middle;
        }
        let band = self.band_at(middle);
        let slab = self.wall_thickness / 2.0;
        let (top, bottom) = (
            leg.from.point.y.min(leg.to.point.y),
            leg.from.point.y.max(leg.to.point.y),
        );
        let (top, bottom) = (top.max(band.y + slab), bottom.min(band.bottom() - slab));
        Point::new(middle.x, (top + bottom) / 2.0)
    }

    /// The space in which a thing lies.
    pub(crate) fn band_at(&self, thing: Point) -> Rect {
        let here = self.building.bands.iter().find(|band| {
            band.rect
                .grown(0.5)
                .holds(&Rect::new(thing.x, thing.y, 0.0, 0.0))
        });
        here.map_or(self.outer, |band| band.rect)
    }

    /// The floor on which a thing lies, over the whole width.
    pub(crate) fn floor_at(&self, thing: Point) -> Rect {
        let here = self
            .building
            .bands
            .iter()
            .find(|band| band.rect.y <= thing.y && thing.y <= band.rect.bottom());
        here.map_or(self.outer, |band| {
            Rect::new(
                self.outer.x,
                band.rect.y,
                self.outer.width,
                band.rect.height,
            )
        })
    }

    /// Where it ends.
    pub(crate) fn end(&self) -> Point {
        self.course.end()
    }
}

/// Plans the elevation of a tube, with room for a flag of that height under its dimensions.
pub(crate) fn plan(view: &View<'_>, room: Room, flag: f64, held: Option<&Held>) -> Plan {
    let passages: Vec<Passage> = view.legs().iter().map(passage).collect();
    let natural = crossings(&passages);
    if let Some(held) = held {
        return plan_held(view, room, &passages, natural, flag, held);
    }
    let frame = frame(view, room, &natural);
    let fitting = courses(view.legs(), &natural, &frame)
        .find(|drawn| floors(drawn, &natural, &ends(view, room, drawn)).is_some());
    if let Some(drawn) = fitting {
        return arrange(view, room, &passages, natural, frame, drawn, flag, None);
    }
    let walls = walls_only(&passages);
    let frame = self::frame(view, room, &walls);
    let drawn = courses(view.legs(), &walls, &frame)
        .next()
        .unwrap_or_else(|| flat_course(view.legs(), &walls, &frame));
    arrange(view, room, &passages, walls, frame, drawn, flag, None)
}

/// The bends of another tube from the same inlet, drawn to the scale of an elevation.
pub(crate) fn bends_of(
    view: &View<'_>,
    frame: &Frame,
    factors: Factors,
    inlet: Point,
) -> Vec<Point> {
    let passages: Vec<Passage> = view.legs().iter().map(passage).collect();
    let course = drawn(view.legs(), &crossings(&passages), frame, factors);
    let course = course.moved(inlet.x, inlet.y);
    course.vertices.iter().map(|vertex| vertex.point).collect()
}

/// Plans it at the scale and place of the drawing before it.
fn plan_held(
    view: &View<'_>,
    room: Room,
    passages: &[Passage],
    natural: Vec<Crossing>,
    flag: f64,
    held: &Held,
) -> Plan {
    let factors = Factors {
        heights: held.heights,
        falls: held.falls,
    };
    let scaled = |crossings: &[Crossing]| {
        let frame = Frame {
            px_per_m: held.px_per_m,
            origin: held.inlet.x,
            ..frame(view, room, crossings)
        };
        (frame, drawn(view.legs(), crossings, &frame, factors))
    };
    let (frame, course) = scaled(&natural);
    if floors(&course, &natural, &ends(view, room, &course)).is_some() {
        return arrange(
            view,
            room,
            passages,
            natural,
            frame,
            course,
            flag,
            Some(held),
        );
    }
    let walls = walls_only(passages);
    let (frame, course) = scaled(&walls);
    arrange(view, room, passages, walls, frame, course, flag, Some(held))
}

/// What the things at both ends of the tube cover.
fn ends(view: &View<'_>, room: Room, drawn: &Course) -> [Rect; 2] {
    let (inlet, outlet) = devices(view, room.width);
    let start = drawn.vertices.first().map_or(Point::default(), |v| v.point);
    [inlet.place(start), outlet.place(drawn.end())]
}

fn passage(leg: &Leg) -> Passage {
    Passage {
        space: leg.space,
        steep: leg.is_steep(),
        rises: 0.0 < leg.rise.to_metres(),
    }
}

fn devices(view: &View<'_>, width: f64) -> (Device, Device) {
    let (first, last) = (view.legs().first(), view.legs().last());
    (
        Device::at_inlet(view.tube, first, width),
        Device::at_outlet(view.tube, last, width),
    )
}

fn frame(view: &View<'_>, room: Room, crossings: &[Crossing]) -> Frame {
    let (inlet, outlet) = devices(view, room.width);
    let narrow = room.is_narrow();
    let words = if narrow { 8.0 } else { 132.0 * room.text };
    let edge = match (narrow, room.width < 1000.0) {
        (true, _) => 12.0,
        (false, true) => 36.0,
        (false, false) => 72.0,
    };
    let margins = Margins {
        before: (inlet.reach() + edge).max(if narrow { 34.0 } else { 132.0 } * room.text),
        after: outlet.reach() + words,
        jogs: jogs(view.legs(), crossings, narrow),
    };
    let across: f64 = view.legs().iter().map(across_m).sum();
    Frame::new(room, view.length(), Length::metres(across), margins)
}

/// Puts the building around the tube and finds the heights of all rows.
#[expect(
    clippy::too_many_arguments,
    reason = "each is a thing of its own, and together they are met only here"
)]
fn arrange(
    view: &View<'_>,
    room: Room,
    passages: &[Passage],
    crossings: Vec<Crossing>,
    frame: Frame,
    drawn: Course,
    flag: f64,
    held: Option<&Held>,
) -> Plan {
    let (inlet, outlet) = devices(view, room.width);
    let (half, bore_to_scale) = bore(view, &frame, drawn.factors.falls);
    let (first, last) = (inlet.place(Point::default()), outlet.place(drawn.end()));
    let highest = (drawn.highest() - half).min(first.y).min(last.y);
    let ceiling = EDGE;
    let down = ceiling + headroom(view, &frame) - highest;
    let down = held.map_or(down, |held| held.inlet.y.max(down));
    let drawn = drawn.moved(frame.origin, down);
    let lowest = (drawn.lowest() + half)
        .max(first.bottom() + down)
        .max(last.bottom() + down);
    let has_slabs = crossings.iter().any(|c| matches!(c, Crossing::Slab { .. }));
    let rows = (!has_slabs).then(|| rows(&frame, &drawn, half));
    let bottom = floor_level(&frame, rows, lowest, flag).max(held.map_or(0.0, |held| held.floor));
    let outer = Rect::new(0.0, ceiling, frame.width, bottom - ceiling);
    let building = floors(&drawn, &crossings, &ends(view, room, &drawn))
        .map(|floors| building(&drawn, passages, &crossings, &floors, &outer))
        .unwrap_or_default();
    let has_stub = match view.tube {
        Tube::Intake => !view.run.exhaust.is_empty(),
        Tube::Exhaust => true,
    };
    Plan {
        frame,
        course: drawn,
        crossings,
        building,
        inlet,
        outlet,
        has_stub,
        half,
        bore_to_scale,
        wall_thickness: if frame.narrow { 6.0 } else { 14.0 },
        outer,
        height: bottom + EDGE + if frame.on_paper { CARRY / 2.0 } else { CARRY },
        rows,
    }
}

/// Half of the bore on the paper, and whether that is to scale.
fn bore(view: &View<'_>, frame: &Frame, factor: f64) -> (f64, bool) {
    let bores = view.legs().iter().map(|leg| leg.tube.bore.to_metres());
    let (least, most) = bores.fold((f64::INFINITY, 0.0_f64), |(least, most), bore| {
        (least.min(bore), most.max(bore))
    });
    let true_half = most * factor * frame.px_per_m / 2.0;
    let (thin, thick) = BORES[usize::from(!frame.narrow)];
    let half = kept(true_half, thin, thick);
    (half, half == true_half && least == most)
}

/// Between the ceiling and the highest thing: a row of leg numbers, more where they crowd.
fn headroom(view: &View<'_>, frame: &Frame) -> f64 {
    let wide = if frame.narrow { 24.0 } else { 84.0 };
    let legs = view.legs().iter().fold(0.0, |sum, _| sum + 1.0);
    let rows = (legs * wide / (frame.end() - frame.origin).max(1.0)).ceil();
    let rows = kept(rows, 1.0, 4.0);
    let least = if frame.narrow || frame.on_paper {
        12.0
    } else {
        22.0
    };
    (least + rows * 22.0) * frame.text
}

/// The rows lie under all of the tube but a drop at its end.
fn rows(frame: &Frame, course: &Course, half: f64) -> Rows {
    let end = course.end().x;
    let lowest = course
        .vertices
        .iter()
        .filter(|v| v.point.x < end - 1.0)
        .map(|v| v.point.y)
        .fold(f64::NEG_INFINITY, f64::max);
    let start = course.vertices.first().map_or(0.0, |v| v.point.y);
    let base = lowest.max(start) + half;
    if frame.narrow {
        return Rows {
            bar: base + 40.0 * frame.text,
            dimensions: None,
        };
    }
    let (bar, dimensions) = if frame.on_paper {
        (40.0, 66.0)
    } else {
        (46.0, 76.0)
    };
    Rows {
        bar: base + bar * frame.text,
        dimensions: Some(base + dimensions * frame.text),
    }
}

/// Under the rows there is room for the names of the spaces, and on a wide drawing for the pointer's flag.
fn floor_level(frame: &Frame, rows: Option<Rows>, lowest: f64, flag: f64) -> f64 {
    let below_rows = if frame.narrow {
        46.0 * frame.text
    } else {
        // Between narrow walls the flag goes above the names, on a wide drawing beside them.
        let names = if frame.width < 1000.0 { 36.0 } else { 0.0 };
        // Without a flag the names alone.
        f64::max(flag + 12.0 + names * frame.text, 52.0 * frame.text)
    };
    let under_rows = rows.map(|rows| rows.dimensions.unwrap_or(rows.bar) + below_rows);
    let below = match (rows, frame.on_paper) {
        (Some(_), _) => 24.0,
        (None, true) => 30.0 * frame.text,
        (None, false) => 60.0 * frame.text,
    };
    let under_all = lowest + below;
    under_rows.map_or(under_all, |under| under.max(under_all))
}
