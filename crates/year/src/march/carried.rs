//! What the lanes bring to the water that stands and take from it, and where on the way it lies.

use core::f64::consts::PI;

use dewrun_run::Tube;
use dewrun_water::ice::FROST_DENSITY;

use super::cell::{Cell, Place};
use super::lanes::{LANES, larger, smaller};
use super::state::State;
use crate::hours::Hours;
use crate::water::{Along, Found, Made, Marched, Water, WaterHour};

/// What of the water concerns a cell.
#[derive(Debug, Clone, Default)]
struct AtCell {
    /// Slopes that it lies on, and its share on each.
    slopes: Vec<(usize, f64)>,
    /// Where it lies along its tube, m.
    from_m: f64,
    to_m: f64,
    /// Pools and flat stretches of its tube that may stand in it.
    stands: Vec<usize>,
    /// Those whose wall is told of here.
    walls: Vec<usize>,
    /// Traps that hang here.
    traps: Vec<usize>,
}

/// A lane's part of it.
#[derive(Debug, Clone, Default)]
struct LaneWater {
    found: Found,
    made: Made,
}

/// The water beside the march.
#[derive(Debug, Clone)]
pub(super) struct Carried {
    pub(super) water: Water,
    cells: Vec<AtCell>,
    lanes: [LaneWater; LANES],
    pub(super) hours: Vec<WaterHour>,
    pub(super) levels: Vec<f64>,
    pub(super) stores: usize,
}

/// How much of a stretch lies in another, m.
fn overlap_m((from_m, to_m): (f64, f64), (start_m, end_m): (f64, f64)) -> f64 {
    larger(smaller(to_m, end_m) - larger(from_m, start_m), 0.0)
}

impl Carried {
    /// At the start of so many hours.
    pub(super) fn new(water: Water, places: &[Place], hours: usize) -> Self {
        let stores = water.stores().len();
        Self {
            cells: places.iter().map(|place| at_cell(&water, place)).collect(),
            water,
            lanes: Default::default(),
            hours: Vec::with_capacity(hours),
            levels: Vec::with_capacity(hours * stores),
            stores,
        }
    }

    /// A step begins in a lane: gives the air that flows, where the water rules it.
    pub(super) fn begin(&mut self, hours: &Hours, hour: usize, l: usize) -> Option<Marched> {
        let places = self.water.places();
        let stands = places.pools.len() + places.flats.len();
        let lane = self.lanes.get_mut(l)?;
        let made = &mut lane.made;
        let fresh = |values: &mut Vec<f64>, count: usize, value: f64| {
            values.clear();
            values.resize(count, value);
        };
        fresh(&mut made.runs, places.slopes.len(), 0.0);
        fresh(&mut made.took, stands, 0.0);
        fresh(&mut made.wall_c, stands, 20.0);
        made.dries.clear();
        made.dries.resize(stands, false);
        made.at_traps.clear();
        made.at_traps.resize(places.traps.len(), (20.0, 0.0));
        made.frosted = 0.0;
        self.water.look(hours, hour, &mut lane.found)
    }

    /// Whether water may stand in a cell, or somebody asks for its air or its wall.
    pub(super) fn watches(&self, at: usize) -> bool {
        self.cells.get(at).is_some_and(|here| {
            !(here.stands.is_empty() && here.walls.is_empty() && here.traps.is_empty())
        })
    }

    /// Surface of the water that stands in a cell over its wall, and all of that water, kg per m2 of wall.
    pub(super) fn surface(&self, l: usize, at: usize, cell: &Cell<f64>) -> (f64, f64) {
        let here = self.cells.get(at).filter(|here| !here.stands.is_empty());
        let Some((here, lane)) = here.zip(self.lanes.get(l)) else {
            return (0.0, 0.0);
        };
        let (mut m2, mut kg) = (0.0, 0.0);
        for (stand_m2, stand_kg, _) in standing(here, &lane.found) {
            m2 += stand_m2;
            kg += stand_kg;
        }
        let per_wall = 1.0 / cell.area;
        (m2 * per_wall, kg * per_wall)
    }

    /// Takes down what a lane has done at its cell.
    pub(super) fn leave(&mut self, l: usize, at: usize, state: &State, cell: &Cell<f64>) {
        let Some((here, lane)) = self.cells.get(at).zip(self.lanes.get_mut(l)) else {
            return;
        };
        let settled = &state.settled;
        let made = &mut lane.made;
        let area_m2 = cell.area;
        let drained_kg = settled.drained[l] * area_m2;
        if 0.0 < drained_kg {
            for (slope, share) in &here.slopes {
                if let Some(runs) = made.runs.get_mut(*slope) {
                    *runs += share * drained_kg;
                }
            }
        }
        for trap in &here.traps {
            if let Some(air) = made.at_traps.get_mut(*trap) {
                *air = (settled.t_c[l], settled.w[l]);
            }
        }
        for stand in &here.walls {
            if let Some(wall_c) = made.wall_c.get_mut(*stand) {
                *wall_c = settled.wall_c[l];
            }
        }
        if here.stands.is_empty() {
            return;
        }
        let dries = 0.0 < settled.dries_by[l];
        for stand in &here.stands {
            if let Some(all) = made.dries.get_mut(*stand) {
                *all |= dries;
            }
        }
        let taken_kg = -settled.pooled[l] * area_m2;
        if 0.0 < taken_kg {
            share_out(here, &lane.found, taken_kg, &mut made.took);
        }
    }

    /// Most frost over the bore that it lies in, kg/m3 times pi, in the step that a lane has come through.
    pub(super) fn note_frost(&mut self, l: usize, most_in_bore: f64) {
        if let Some(lane) = self.lanes.get_mut(l) {
            let density = FROST_DENSITY.to_kilograms_per_cubic_metre();
            lane.made.frosted = most_in_bore * PI / density;
        }
    }

    pub(super) fn has_moved(&mut self, hours: &Hours, hour: usize, l: usize) -> bool {
        let lane = self.lanes.get(l);
        lane.is_some_and(|lane| self.water.has_moved(hours, hour, &lane.found, &lane.made))
    }

    /// A step is done.
    pub(super) fn finish(
        &mut self,
        hours: &Hours,
        (hour, number, of): (usize, u32, u32),
        seconds: f64,
        l: usize,
    ) {
        let Some(lane) = self.lanes.get(l) else {
            return;
        };
        let is_last = number + 1 == of;
        let step = (hour, seconds, is_last);
        let told = self.water.step(hours, step, (&lane.found, &lane.made));
        match self.hours.last_mut() {
            Some(last) if 0 < number => *last = last.then(&told),
            _ => self.hours.push(told),
        }
        if is_last {
            self.levels.extend(self.water.levels());
        }
    }
}

/// Surface, water and position of all that stands in a cell.
fn standing<'a>(
    here: &'a AtCell,
    found: &'a Found,
) -> impl Iterator<Item = (f64, f64, usize)> + 'a {
    here.stands.iter().filter_map(|stand| {
        let surface = found.surfaces.get(*stand)?;
        let length_m = surface.to_m - surface.from_m;
        let here_m = overlap_m((here.from_m, here.to_m), (surface.from_m, surface.to_m));
        let share = here_m / length_m;
        (!found.still && 0.0 < surface.kg && 0.0 < length_m && 0.0 < here_m).then_some((
            share * surface.m2,
            share * surface.kg,
            *stand,
        ))
    })
}

/// What a cell's water has lost, by surface, no more of any than there is.
fn share_out(here: &AtCell, found: &Found, taken_kg: f64, took: &mut [f64]) {
    let mut all: Vec<(f64, f64, usize)> = standing(here, found).collect();
    // The shallowest give out first, and what they cannot give the others do.
    all.sort_by(|one, other| (one.1 * other.0).total_cmp(&(other.1 * one.0)));
    let mut left_kg = taken_kg;
    let mut left_m2: f64 = all.iter().map(|(m2, ..)| m2).sum();
    for (m2, kg, stand) in all {
        let by_surface = if m2 < left_m2 {
            left_kg * m2 / left_m2
        } else {
            left_kg
        };
        let gives = by_surface.min(kg);
        if let Some(took) = took.get_mut(stand) {
            *took += gives;
        }
        left_kg -= gives;
        left_m2 -= m2;
    }
}

fn at_cell(water: &Water, place: &Place) -> AtCell {
    let places = water.places();
    let tube = if place.behind {
        Tube::Exhaust
    } else {
        Tube::Intake
    };
    let here = (place.from_m, place.to_m);
    let length_m = here.1 - here.0;
    let lies_on = |along: &Along| along.tube == tube;
    let inside = |at_m: f64| here.0 <= at_m && (at_m < here.1 || place.ends);
    let slopes = places.slopes.iter().enumerate();
    let slopes = slopes
        .filter(|(_, slope)| lies_on(&slope.along))
        .filter_map(|(number, slope)| {
            let share = overlap_m(here, (slope.along.from_m, slope.along.to_m)) / length_m;
            (0.0 < share).then_some((number, share))
        });
    let mut slopes: Vec<(usize, f64)> = slopes.collect();
    // Whatever the rounding of lengths, all that drains goes somewhere.
    let all: f64 = slopes.iter().map(|(_, share)| share).sum();
    for (_, share) in &mut slopes {
        *share /= all;
    }
    let pools = places.pools.iter().map(|pool| (pool.along, pool.reach_m()));
    let flats = places
        .flats
        .iter()
        .map(|flat| (flat.along, (flat.along.from_m, flat.along.to_m)));
    let (mut stands, mut walls) = (Vec::new(), Vec::new());
    for (stand, (along, reach_m)) in pools.chain(flats).enumerate() {
        if lies_on(&along) && 0.0 < overlap_m(here, reach_m) {
            stands.push(stand);
        }
        if lies_on(&along) && inside(0.5 * (along.from_m + along.to_m)) {
            walls.push(stand);
        }
    }
    let traps = places.traps.iter().enumerate();
    let traps = traps.filter(|(_, trap)| trap.tube == tube && inside(trap.at_m));
    AtCell {
        slopes,
        from_m: here.0,
        to_m: here.1,
        stands,
        walls,
        traps: traps.map(|(number, _)| number).collect(),
    }
}
