//! The wave of lanes over the cells: each arrives with the walls as they are, leaves them as it made them, and hands its hour in.

use super::cell::Place;
use super::lanes::{LANES, smaller};
use super::{March, PARTS, Part, Steps, first_part};
use crate::hours::{Hour, Hours};
use crate::sums::{AirState, HourSum, LegSum};

/// An hour on its way.
#[derive(Debug, Clone)]
pub(super) struct Lane {
    pub(super) part: Option<Part>,
    sum: HourSum,
    legs: Vec<LegSum>,
    /// Space of the leg that it is in.
    space: Option<usize>,
    /// Heat that the detector gives to the air, W.
    warming_w: f64,
}

impl Lane {
    /// No hour yet, on a route of so many legs.
    pub(super) fn of_legs(legs: usize) -> Self {
        Self {
            part: None,
            sum: HourSum::NONE,
            legs: Vec::with_capacity(legs),
            space: None,
            warming_w: 0.0,
        }
    }
}

/// Lanes, a bit each.
type Bits = u8;

/// Which lanes have more to do at a turn than what all lanes do.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Besides {
    /// Before their cell: its leg, its tube or its step begins there, or water may stand in it.
    arrive: Bits,
    /// After it: its leg ends there, or somebody asks what has become of its air or its wall.
    leave: Bits,
}

/// The same for all turns.
pub(super) fn besides(places: &[Place], is_watched: impl Fn(usize) -> bool) -> Vec<Besides> {
    let count = places.len();
    let turn = |first: usize| {
        let mut turn = Besides::default();
        for l in 0..LANES {
            let at = (first + count * LANES - l) % count;
            let Some(place) = places.get(at) else {
                continue;
            };
            let bit = |is: bool| if is { 1 << l } else { 0 };
            turn.arrive |= bit(place.first || place.behind_detector || is_watched(at));
            turn.leave |= bit(place.last || is_watched(at));
        }
        turn
    };
    (0..count).map(turn).collect()
}

/// The lanes that some bits stand for.
fn lanes(mut bits: Bits) -> impl Iterator<Item = usize> {
    core::iter::from_fn(move || {
        let l = bits.trailing_zeros() as usize;
        bits &= bits.wrapping_sub(1);
        (l < LANES).then_some(l)
    })
}

impl March {
    /// One turn of the wave: every lane does a cell.
    pub(super) fn wave(&mut self, hours: &Hours) {
        let count = self.cells.len();
        let first = self.turn % count;
        // Each lane is a cell behind the one before.
        let at = |l: usize| first.checked_sub(l).unwrap_or(first + count - l);
        let besides = self.besides.get(first).copied().unwrap_or_default();
        if first < LANES {
            self.begin(hours, first);
        }
        if self.carries {
            self.walls.pass_on(&mut self.state, first);
        }
        if self.carried.is_some() {
            self.state.film.pool = [0.0; LANES];
            self.state.film.pooled = [0.0; LANES];
        }
        for l in lanes(besides.arrive) {
            self.arrive(hours, l, at(l));
        }
        let Some(cell) = self.turns.get(first) else {
            return;
        };
        let is_dry = self.state.exchange(cell);
        let may_be = self.state.may_be_misty(&self.walls.active);
        let misty: [bool; LANES] = core::array::from_fn(|l| {
            may_be && self.lanes[l].part.is_some() && self.state.is_misty(l)
        });
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
        self.walls.take(&self.state, at(LANES - 1));
        self.state.flow_on(&self.walls.active);
        let drains = if self.carried.is_some() && !is_dry {
            self.state.draining()
        } else {
            0
        };
        for l in lanes(besides.leave | drains) {
            if self.lanes[l].part.is_some() && self.leave(hours, l, at(l)) {
                return;
            }
        }
    }

    /// Puts a lane before its cell of this turn, where there is more to it than what all lanes do.
    fn arrive(&mut self, hours: &Hours, l: usize, at: usize) {
        let Some(part) = self.lanes[l].part else {
            return;
        };
        let (Some(&place), Some(cell)) = (self.places.get(at), self.cells.get(at)) else {
            return;
        };
        if place.behind_detector {
            self.state.warm(l, self.lanes[l].warming_w);
        }
        if place.first {
            if let Some(around) = hours.around(part.hour, place.space) {
                let lane = &mut self.lanes[l];
                if lane.space.replace(place.space) != Some(place.space) {
                    self.state.surround(l, around);
                }
                self.state.enter_leg(l, around, cell, place.riser);
            }
            self.state.tally.begin_leg(l);
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
            self.walls.active[l] = 0.0;
            self.state.stand(l);
            return;
        };
        lane.part = Some(part);
        lane.sum = HourSum {
            parts: 1,
            ..HourSum::NONE
        };
        lane.legs.clear();
        lane.space = None;
        self.walls.active[l] = 1.0;
        self.walls.dried_out[l] = 0.0;
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

    /// Takes down what a lane has done at its cell, where there is more to it than what all lanes do; true where the hours have to be begun anew.
    fn leave(&mut self, hours: &Hours, l: usize, at: usize) -> bool {
        let (Some(place), Some(cell)) = (self.places.get(at), self.cells.get(at)) else {
            return false;
        };
        let (state, lane) = (&mut self.state, &mut self.lanes[l]);
        if let Some(carried) = &mut self.carried {
            carried.leave(l, at, state, cell);
        }
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
        if divides && wetted && 0.5 < self.walls.dried_out[l] {
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
            sum.coldest_wall_c = smaller(sum.coldest_wall_c, leg.coldest_wall_c);
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
        self.walls.put_back(l);
        self.next = part;
        self.turn = 0;
        for lane in &mut self.lanes {
            lane.part = None;
        }
        true
    }
}
