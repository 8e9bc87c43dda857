//! The building around the tube: spaces as bands, parted by walls and slabs that the tube passes.

use super::course::Course;
use super::crossing::{Crossing, Passage};
use crate::geometry::{Point, Rect, kept};

/// Tubes keep this far from a slab that they turn off beside, px.
const CLEARANCE: f64 = 20.0;

/// Where a steep tube goes through a slab, that is drawn no further from the joint, px.
const NEAR: f64 = 6.0;

/// A space on the paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Band {
    pub(crate) space: usize,
    pub(crate) rect: Rect,
    /// Floors above the one where the tube begins.
    pub(crate) floor: i32,
}

/// A wall that is cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Wall {
    pub(crate) x: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
    /// Where the tube passes, if it does.
    pub(crate) gap: Option<f64>,
}

/// A slab that is cut, from edge to edge.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Slab {
    pub(crate) y: f64,
    /// Where the tube passes, from left to right, since a tube never runs back.
    pub(crate) gaps: Vec<f64>,
}

/// All of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Building {
    pub(crate) bands: Vec<Band>,
    pub(crate) walls: Vec<Wall>,
    pub(crate) slabs: Vec<Slab>,
}

/// A stretch of legs in one space on one floor.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Stay {
    space: usize,
    floor: i32,
    first: usize,
    last: usize,
}

/// Where the slabs lie, lowest first, and the floor on which each leg runs; none where floors can't be told apart.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Floors {
    pub(crate) of_leg: Vec<i32>,
    pub(crate) lowest: i32,
    pub(crate) slabs: Vec<Slab>,
}

/// Finds one height for each slab that suits every place where the tube passes it and leaves the things at its ends on their floors.
pub(crate) fn floors(course: &Course, crossings: &[Crossing], ends: &[Rect; 2]) -> Option<Floors> {
    let of_leg = floors_of_legs(crossings);
    let lowest = of_leg.iter().copied().min().unwrap_or(0);
    let highest = of_leg.iter().copied().max().unwrap_or(0);
    let mut slabs = Vec::new();
    for below in lowest..highest {
        slabs.push(slab(course, crossings, &of_leg, below)?);
    }
    let found = Floors {
        of_leg,
        lowest,
        slabs,
    };
    found.hold(course, ends).then_some(found)
}

/// The building between ceiling and floor.
pub(crate) fn building(
    course: &Course,
    legs: &[Passage],
    crossings: &[Crossing],
    floors: &Floors,
    outer: &Rect,
) -> Building {
    let stays = stays(legs, &floors.of_leg);
    let mut building = Building {
        slabs: floors.slabs.clone(),
        ..Building::default()
    };
    let highest = floors.of_leg.iter().copied().max().unwrap_or(0);
    for floor in floors.lowest..=highest {
        let (top, bottom) = floors.extent(floor, outer);
        let here: Vec<Stay> = stays.iter().filter(|s| s.floor == floor).copied().collect();
        let mut left = outer.x;
        for (place, stay) in here.iter().enumerate() {
            let next = here.get(place + 1);
            if next.is_some_and(|next| next.space == stay.space) {
                continue;
            }
            let wall = next.map(|next| wall(course, crossings, stay, next, (top, bottom)));
            let right = wall.map_or(outer.right(), |wall| wall.x);
            building.bands.push(Band {
                space: stay.space,
                rect: Rect::new(left, top, right - left, bottom - top),
                floor: floor - floors.lowest,
            });
            left = right;
            building.walls.extend(wall);
        }
    }
    building
}

impl Floors {
    /// Upper and lower edge of a floor.
    fn extent(&self, floor: i32, outer: &Rect) -> (f64, f64) {
        let slab = |place: i32| {
            usize::try_from(place)
                .ok()
                .and_then(|place| self.slabs.get(place))
                .map(|slab| slab.y)
        };
        let place = floor - self.lowest;
        (
            slab(place).unwrap_or(outer.y),
            slab(place - 1).unwrap_or(outer.bottom()),
        )
    }

    /// Whether every level leg and the things at both ends keep clear of the slabs of their floor.
    fn hold(&self, course: &Course, ends: &[Rect; 2]) -> bool {
        let everywhere = Rect::new(0.0, -1e6, 0.0, 2e6);
        let clear = |floor: &i32, top: f64, bottom: f64| {
            let (upper, lower) = self.extent(*floor, &everywhere);
            upper + CLEARANCE - 1.0 <= top && bottom <= lower - CLEARANCE + 1.0
        };
        let legs = course.legs.iter().zip(&self.of_leg).all(|(leg, floor)| {
            let (a, b) = (leg.from.point.y, leg.to.point.y);
            leg.steep || clear(floor, a.min(b), a.max(b))
        });
        let floors = [self.of_leg.first(), self.of_leg.last()];
        let things = ends.iter().zip(floors).all(|(thing, floor)| {
            floor.is_some_and(|floor| {
                clear(
                    floor,
                    thing.y + CLEARANCE / 2.0,
                    thing.bottom() - CLEARANCE / 2.0,
                )
            })
        });
        legs && things
    }
}

fn floors_of_legs(crossings: &[Crossing]) -> Vec<i32> {
    let mut floor = 0;
    let mut floors = vec![floor];
    for crossing in crossings {
        match crossing {
            Crossing::Slab { up: true } => floor += 1,
            Crossing::Slab { up: false } => floor -= 1,
            Crossing::None | Crossing::Wall => {}
        }
        floors.push(floor);
    }
    floors
}

/// The slab between a floor and the one above it.
fn slab(course: &Course, crossings: &[Crossing], of_leg: &[i32], below: i32) -> Option<Slab> {
    let mut spans: Vec<(f64, f64, f64)> = Vec::new();
    let mut gaps = Vec::new();
    for (place, crossing) in crossings.iter().enumerate() {
        let lower = of_leg
            .get(place)
            .zip(of_leg.get(place + 1))
            .map(|(a, b)| *a.min(b));
        if matches!(crossing, Crossing::Slab { .. }) && lower == Some(below) {
            let pass = course.passes.get(place)?;
            spans.push(slab_span(course, place, *pass)?);
            gaps.push(pass.x);
        }
    }
    let suits = |y: &f64| spans.iter().all(|(top, bottom, _)| top <= y && y <= bottom);
    let y = spans.iter().map(|(_, _, best)| *best).find(suits)?;
    Some(Slab { y, gaps })
}

/// Highest, lowest and best height of a slab between leg `place` and the next, which meet at `pass`.
fn slab_span(course: &Course, place: usize, pass: Point) -> Option<(f64, f64, f64)> {
    let (before, after) = (course.legs.get(place)?, course.legs.get(place + 1)?);
    let far_before = if before.steep {
        before.from.point.y
    } else {
        pass.y
    };
    let far_after = if after.steep {
        after.to.point.y
    } else {
        pass.y
    };
    // Beside a bend the slab keeps its distance from the level leg.
    let near = |far: f64| pass.y + kept(far - pass.y, -CLEARANCE, CLEARANCE);
    let (near, far) = match (before.steep, after.steep) {
        (true, true) => return Some((pass.y - NEAR, pass.y + NEAR, pass.y)),
        (_, true) => (near(far_after), far_after),
        _ => (near(far_before), far_before),
    };
    Some((near.min(far), near.max(far), near))
}

fn stays(legs: &[Passage], of_leg: &[i32]) -> Vec<Stay> {
    let mut stays: Vec<Stay> = Vec::new();
    for (place, (leg, floor)) in legs.iter().zip(of_leg).enumerate() {
        match stays.last_mut() {
            Some(last) if last.space == leg.space && last.floor == *floor => last.last = place,
            _ => stays.push(Stay {
                space: leg.space,
                floor: *floor,
                first: place,
                last: place,
            }),
        }
    }
    stays
}

/// The wall between two stays on one floor: where the tube passes it, or halfway between where it leaves and comes back.
fn wall(
    course: &Course,
    crossings: &[Crossing],
    stay: &Stay,
    next: &Stay,
    (top, bottom): (f64, f64),
) -> Wall {
    let passes = stay.last + 1 == next.first && crossings.get(stay.last) == Some(&Crossing::Wall);
    let pass = course.passes.get(stay.last).copied().unwrap_or_default();
    let leaves = course
        .legs
        .get(stay.last)
        .map_or(pass.x, |leg| leg.to.point.x);
    let returns = course
        .legs
        .get(next.first)
        .map_or(pass.x, |leg| leg.from.point.x);
    Wall {
        x: if passes {
            pass.x
        } else {
            (leaves + returns) / 2.0
        },
        top,
        bottom,
        gap: passes.then_some(pass.y),
    }
}
