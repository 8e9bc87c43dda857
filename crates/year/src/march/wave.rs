//! The wave of lanes over the cells: each arrives with the walls as they are, leaves them as it made them, and hands its hour in.

use super::lanes::LANES;
use super::{March, OnWall, PARTS, Part, Steps, first_part};
use crate::hours::{Hour, Hours};
use crate::sums::{AirState, HourSum, LegSum};

/// An hour on its way.
#[derive(Debug, Clone)]
pub(super) struct Lane {
    pub(super) part: Option<Part>,
    sum: HourSum,
    legs: Vec<LegSum>,
    /// What was on each cell's wall before this step.
    before: Vec<OnWall>,
    dried_out: bool,
    /// Heat that the detector gives to the air, W.
    warming_w: f64,
}

impl Lane {
    /// No hour yet, on a route of so many cells and legs.
    pub(super) fn of_cells(cells: usize, legs: usize) -> Self {
        Self {
            part: None,
            sum: HourSum::NONE,
            legs: Vec::with_capacity(legs),
            before: vec![OnWall::default(); cells],
            dried_out: false,
            warming_w: 0.0,
        }
    }
}

impl March {
    /// One turn of the wave: every lane does a cell.
    pub(super) fn wave(&mut self, hours: &Hours) {
        let count = self.cells.len();
        let first = self.turn % count;
        let mut next = first;
        // Each lane is a cell behind the one before.
        let at: [usize; LANES] = core::array::from_fn(|_| {
            let at = next;
            next = at.checked_sub(1).unwrap_or(count - 1);
            at
        });
        for (l, at) in at.into_iter().enumerate() {
            self.arrive(hours, l, at);
        }
        let Some(cell) = self.turns.get(first) else {
            return;
        };
        let is_dry = self.state.exchange(cell);
        let active: [bool; LANES] =
            core::array::from_fn(|l| self.lanes.get(l).is_some_and(|lane| lane.part.is_some()));
        let misty: [bool; LANES] = core::array::from_fn(|l| active[l] && self.state.is_misty(l));
        let is_misty = misty.contains(&true);
        if is_misty {
            self.state.mist(cell, &misty);
        }
        if is_dry && !is_misty {
            self.state.tally_dry(cell);
        } else {
            self.state.tally(cell);
        }
        self.turn += 1;
        for (l, at) in at.into_iter().enumerate() {
            if self.lanes[l].part.is_some() && self.leave(hours, l, at) {
                return;
            }
        }
    }

    /// Puts a lane before its cell of this turn.
    fn arrive(&mut self, hours: &Hours, l: usize, at: usize) {
        if self.turn < l {
            return;
        }
        if at == 0 {
            self.begin(hours, l);
        }
        let Some(part) = self.lanes[l].part else {
            return;
        };
        let (Some(&place), Some(cell), Some(&wall)) =
            (self.places.get(at), self.cells.get(at), self.walls.get(at))
        else {
            return;
        };
        if place.behind_detector {
            self.state.warm(l, self.lanes[l].warming_w);
        }
        let wall = if self.carries {
            wall
        } else {
            OnWall::default()
        };
        if place.first {
            if let Some(around) = hours.around(part.hour, place.space) {
                let on_wall = wall.water + wall.frost;
                self.state.enter(l, around, cell, place.riser, on_wall);
            }
            self.state.tally.begin_leg(l);
        }
        self.state.film.water[l] = wall.water;
        self.state.film.frost[l] = wall.frost;
        if let Some(before) = self.lanes[l].before.get_mut(at) {
            *before = wall;
        }
        if let Some(carried) = &self.carried {
            let film = &mut self.state.film;
            (film.pool[l], film.pooled[l]) = carried.surface(l, at, cell);
        }
    }

    /// The next step begins in a lane.
    fn begin(&mut self, hours: &Hours, l: usize) {
        let lane = &mut self.lanes[l];
        let part = self.next;
        let Some(hour) = hours.hour(part.hour) else {
            lane.part = None;
            self.state.stand(l);
            return;
        };
        lane.part = Some(part);
        lane.sum = HourSum {
            parts: 1,
            ..HourSum::NONE
        };
        lane.legs.clear();
        lane.dried_out = false;
        let seconds = hour.seconds / f64::from(part.of);
        let marched = self
            .carried
            .as_mut()
            .and_then(|carried| carried.begin(hours, part.hour, l));
        let hour = &marched.map_or(*hour, |marched| Hour {
            dry_air_kg_s: marched.dry_air_kg_s,
            w: marched.w,
            ..*hour
        });
        lane.warming_w = self.detector_w * marched.map_or(1.0, |marched| marched.warms);
        let still = marched.is_some_and(|marched| marched.still);
        self.state.given.still[l] = if still { 1.0 } else { 0.0 };
        self.state.load(l, hour, seconds);
        self.state.tally.begin_step(l);
        lane.sum.seconds = seconds;
        lane.sum.dry_air_kg = hour.dry_air_kg_s * seconds;
        lane.sum.water_in_kg = lane.sum.dry_air_kg * hour.w;
        self.next = if part.number + 1 < part.of {
            Part {
                number: part.number + 1,
                ..part
            }
        } else {
            first_part(part.hour + 1, self.steps)
        };
    }

    /// Takes down what a lane has done at its cell; true where the hours have to be begun anew.
    fn leave(&mut self, hours: &Hours, l: usize, at: usize) -> bool {
        let (Some(&place), Some(cell), Some(wall)) = (
            self.places.get(at),
            self.cells.get(at),
            self.walls.get_mut(at),
        ) else {
            return false;
        };
        let (state, lane) = (&mut self.state, &mut self.lanes[l]);
        let settled = &state.settled;
        *wall = OnWall {
            water: settled.water[l],
            frost: settled.frost[l],
        };
        let is_dry = settled.water[l] == 0.0 && settled.frost[l] == 0.0;
        lane.dried_out |= settled.change[l] < 0.0 && is_dry;
        if let Some(carried) = &mut self.carried {
            carried.leave(l, at, state, cell);
        }
        (state.reached.t_c[l], state.reached.w[l]) = (settled.t_c[l], settled.w[l]);
        state.follow_dew(l);
        if !place.last {
            return false;
        }
        lane.legs.push(state.tally.leg(l));
        if place.before_detector {
            let warm = state.warmed(l, lane.warming_w);
            lane.sum.chamber = AirState {
                t_c: warm.t_c,
                w: warm.w,
                mist: warm.mist,
            };
        }
        if at + 1 < self.cells.len() {
            return false;
        }
        state.tally.put_most(l, &mut lane.sum);
        let air = state.air(l);
        lane.sum.outlet = AirState {
            t_c: air.t_c,
            w: air.w,
            mist: air.mist,
        };
        self.finish(hours, l)
    }

    /// A step is done.
    fn finish(&mut self, hours: &Hours, l: usize) -> bool {
        let lane = &mut self.lanes[l];
        let Some(part) = lane.part else {
            return false;
        };
        let divides = self.steps == Steps::QuartersWhereDrying && part.of == 1;
        let wetted = lane.legs.iter().any(|leg| 0.0 < leg.condensed_kg);
        if divides && lane.dried_out && wetted {
            let anew = Part {
                hour: part.hour,
                number: 0,
                of: PARTS,
            };
            return self.begin_anew(l, anew);
        }
        if let Some(carried) = &mut self.carried
            && carried.has_moved(hours, part.hour, l)
        {
            return self.begin_anew(l, part);
        }
        let lane = &mut self.lanes[l];
        let sum = &mut lane.sum;
        sum.water_out_kg = sum.dry_air_kg * (sum.outlet.w + sum.outlet.mist);
        for leg in &lane.legs {
            sum.condensed_kg += leg.condensed_kg;
            sum.evaporated_kg += leg.evaporated_kg;
            sum.drained_kg += leg.drained_kg;
            sum.film_kg += leg.film_kg;
            sum.frost_kg += leg.frost_kg;
            sum.slug_kg += leg.slug_kg;
            sum.coldest_wall_c = sum.coldest_wall_c.min(leg.coldest_wall_c);
        }
        if part.number == 0 {
            self.hours.push(*sum);
            self.legs.extend_from_slice(&lane.legs);
        } else {
            if let Some(last) = self.hours.last_mut() {
                *last = last.then(sum);
            }
            let from = self.legs.len() - lane.legs.len();
            for (leg, next) in self.legs.iter_mut().skip(from).zip(&lane.legs) {
                *leg = leg.then(next);
            }
        }
        let seconds = lane.sum.seconds;
        lane.part = None;
        if let Some(carried) = &mut self.carried {
            carried.note_frost(l, self.state.tally.most_frost_in_bore(l));
            carried.finish(hours, (part.hour, part.number, part.of), seconds, l);
        }
        if part.number + 1 == part.of {
            self.done = part.hour + 1;
        }
        false
    }

    /// The walls as a lane found them, and all steps from its own on once more.
    fn begin_anew(&mut self, l: usize, part: Part) -> bool {
        self.walls.copy_from_slice(&self.lanes[l].before);
        self.next = part;
        self.turn = 0;
        for lane in &mut self.lanes {
            lane.part = None;
        }
        true
    }
}
