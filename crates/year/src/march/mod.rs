//! The hours' march along the route, several side by side, with the water that each leaves on the walls for the next.
//!
//! Lane j does hour h + j at the cell behind that of lane j - 1: each hour finds the walls as the one before has left them, exactly.
//! An hour in which one cell dries out while another takes up water is done anew in four parts, where that is asked for;
//! the hours that were begun after it are then begun anew.

mod balance;
mod carried;
mod cell;
mod inside;
mod lanes;
mod load;
mod mean;
mod misty;
mod outside;
mod settle;
mod state;

use crate::hours::{Hour, Hours};
use crate::route::Route;
use crate::sums::{AirState, HourSum, LegSum};
use crate::water::{Water, WaterHour};
use carried::Carried;
use cell::{Cell, Place, Roots};
use lanes::{LANES, Lanes, skewed};
use state::State;

pub use cell::Grid;

/// In which steps an hour is marched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Steps {
    /// Each as it comes.
    Whole,
    /// Each in four parts.
    Quarters,
    /// As it comes, but in four parts where one cell dries out while another takes up water.
    QuartersWhereDrying,
}

/// Parts of an hour that is divided.
const PARTS: u32 = 4;

/// One step: an hour or a part of it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Part {
    hour: usize,
    /// Which of how many.
    number: u32,
    of: u32,
}

/// What is on the wall of a cell, kg/m2.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct OnWall {
    water: f64,
    frost: f64,
}

/// An hour on its way.
#[derive(Debug, Clone)]
struct Lane {
    part: Option<Part>,
    sum: HourSum,
    leg: LegSum,
    legs: Vec<LegSum>,
    /// What was on each cell's wall before this step.
    before: Vec<OnWall>,
    dried_out: bool,
    wetted: bool,
    /// Heat that the detector gives to the air, W.
    warming_w: f64,
}

/// A march through hours, which stops and goes on where it is told to.
#[derive(Debug, Clone)]
pub struct March {
    places: Vec<Place>,
    cells: Vec<Cell<f64>>,
    turns: Vec<Cell<Lanes>>,
    detector_w: f64,
    steps: Steps,
    /// Whether water stays on the walls from step to step.
    carries: bool,
    state: State,
    lanes: [Lane; LANES],
    /// What is on the wall of each cell.
    walls: Vec<OnWall>,
    /// Turn of the wave since its lanes were last empty.
    turn: usize,
    /// The next step to be begun.
    next: Part,
    /// Hours that are done.
    done: usize,
    hours: Vec<HourSum>,
    legs: Vec<LegSum>,
    leg_count: usize,
    /// What has left the walls, where that is followed.
    carried: Option<Box<Carried>>,
}

impl March {
    /// At the start of the hours, all walls dry.
    ///
    /// # Range
    /// Routes of at least one leg with a length; hours as of [`crate::Hour`].
    #[must_use]
    pub fn new(route: &Route, hours: &Hours, grid: Grid, steps: Steps) -> Self {
        Self::between(route, hours, (grid, steps), flows(hours))
    }

    /// The same, with the water that leaves the walls: pools, traps, and the air that follows them.
    ///
    /// What stands lags by the hours that are marched side by side; where it has moved too far meanwhile, they are marched anew.
    ///
    /// # Range
    /// As [`March::new`]; the water is that of the same run as the route.
    #[must_use]
    pub fn with_water(
        route: &Route,
        hours: &Hours,
        (grid, steps): (Grid, Steps),
        mut water: Water,
    ) -> Self {
        let roots = water.flows_kg_s().map_or_else(
            || flows(hours),
            |[least, usual_kg_s, most]| Roots {
                flow_kg_s: (least, most),
                usual_kg_s,
            },
        );
        let march = Self::between(route, hours, (grid, steps), roots);
        let carried = Some(Box::new(Carried::new(water, &march.places)));
        Self { carried, ..march }
    }

    fn between(route: &Route, hours: &Hours, (grid, steps): (Grid, Steps), roots: Roots) -> Self {
        let cells = cell::cells(route, grid, roots);
        let (cells, places): (Vec<_>, Vec<_>) = cells.into_iter().unzip();
        let count = cells.len();
        let leg_count = route.legs().count();
        let lane = Lane {
            part: None,
            sum: HourSum::NONE,
            leg: LegSum::NONE,
            legs: Vec::with_capacity(leg_count),
            before: vec![OnWall::default(); count],
            dried_out: false,
            wetted: false,
            warming_w: route.detector_w,
        };
        Self {
            turns: skewed(&cells),
            places,
            cells,
            detector_w: route.detector_w,
            steps,
            carries: true,
            state: State::idle(),
            lanes: core::array::from_fn(|_| lane.clone()),
            walls: vec![OnWall::default(); count],
            turn: 0,
            next: first_part(0, steps),
            done: 0,
            hours: Vec::with_capacity(hours.len()),
            legs: Vec::with_capacity(hours.len() * leg_count),
            leg_count,
            carried: None,
        }
    }

    /// The same, but each step begins with dry walls, whatever the one before has left.
    #[must_use]
    pub fn without_carry_over(self) -> Self {
        Self {
            carries: false,
            ..self
        }
    }

    /// Marches on until so many hours are done, or all there are; true when all are.
    ///
    /// Where it stops makes no difference to any number.
    pub fn advance(&mut self, hours: &Hours, until: usize) -> bool {
        let goal = until.min(hours.len());
        while self.done < goal && !self.cells.is_empty() {
            self.wave(hours);
        }
        hours.len() <= self.done
    }

    /// One hour by itself on the same cells, all walls dry at its start: its steady state.
    #[must_use]
    pub fn alone(&self, hours: &Hours, hour: usize) -> Option<HourSum> {
        let mut only = Hours::of_spaces(hours.spaces());
        let &here = hours.hour(hour)?;
        let around = (0..hours.spaces()).filter_map(|space| hours.around(hour, space).copied());
        only.push(here, around);
        let mut march = Self {
            steps: Steps::Whole,
            state: State::idle(),
            walls: vec![OnWall::default(); self.walls.len()],
            turn: 0,
            next: first_part(0, Steps::Whole),
            done: 0,
            hours: Vec::new(),
            legs: Vec::new(),
            carried: None,
            ..self.clone()
        };
        for lane in &mut march.lanes {
            lane.part = None;
        }
        march.advance(&only, 1);
        march.hours.first().copied()
    }

    /// The hours that are done.
    #[must_use]
    pub fn hours(&self) -> &[HourSum] {
        self.hours.get(..self.done).unwrap_or(&self.hours)
    }

    /// The legs in flow order in an hour that is done.
    #[must_use]
    pub fn legs(&self, hour: usize) -> &[LegSum] {
        let from = hour * self.leg_count;
        self.legs.get(from..from + self.leg_count).unwrap_or(&[])
    }

    /// The water of the hours that are done; nothing where it is not followed.
    #[must_use]
    pub fn water_hours(&self) -> &[WaterHour] {
        let hours = self
            .carried
            .as_ref()
            .map_or(&[][..], |carried| &carried.hours);
        hours.get(..self.done).unwrap_or(hours)
    }

    /// What stands in each store at the end of an hour that is done, kg, in the order of [`Water::stores`].
    #[must_use]
    pub fn levels(&self, hour: usize) -> &[f64] {
        let Some(carried) = &self.carried else {
            return &[];
        };
        let from = hour * carried.stores;
        carried
            .levels
            .get(from..from + carried.stores)
            .unwrap_or(&[])
    }

    /// The water as it is now, where it is followed.
    #[must_use]
    pub fn water(&self) -> Option<&Water> {
        self.carried.as_ref().map(|carried| &carried.water)
    }

    /// One turn of the wave: every lane does a cell.
    fn wave(&mut self, hours: &Hours) {
        let count = self.cells.len();
        for l in 0..LANES {
            self.arrive(hours, l, count);
        }
        let Some(cell) = self.turns.get(self.turn % count) else {
            return;
        };
        self.state.meet(cell);
        self.state.solve(cell);
        self.state.settle(cell);
        let active: [bool; LANES] =
            core::array::from_fn(|l| self.lanes.get(l).is_some_and(|lane| lane.part.is_some()));
        let misty: [bool; LANES] = core::array::from_fn(|l| active[l] && self.state.is_misty(l));
        if misty.contains(&true) {
            self.state.mist(cell, &misty);
        }
        let turn = self.turn;
        self.turn += 1;
        for l in 0..LANES {
            if self.lanes[l].part.is_some()
                && self.leave(hours, l, (turn + count * LANES - l) % count)
            {
                return;
            }
        }
    }

    /// Puts a lane before the cell of this turn.
    fn arrive(&mut self, hours: &Hours, l: usize, count: usize) {
        if self.turn < l {
            return;
        }
        let at = (self.turn - l) % count;
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
        if place.first {
            if let Some(around) = hours.around(part.hour, place.space) {
                self.state.enter(l, around, cell, place.riser);
            }
            self.lanes[l].leg = LegSum::NONE;
        }
        let wall = if self.carries {
            wall
        } else {
            OnWall::default()
        };
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
        lane.wetted = false;
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
        let area = cell.inner * cell.length;
        let change = settled.change[l];
        let (leg, sum) = (&mut lane.leg, &mut lane.sum);
        if 0.0 < change {
            leg.condensed_kg += change * area;
            lane.wetted = true;
        } else if change < 0.0 {
            leg.evaporated_kg -= change * area;
            lane.dried_out |= settled.water[l] == 0.0 && settled.frost[l] == 0.0;
        }
        leg.drained_kg += settled.drained[l] * area;
        leg.film_kg += settled.water[l] * area;
        leg.frost_kg += settled.frost[l] * area;
        let thawed = state.film.frost[l] - settled.frost[l];
        leg.slug_kg += thawed.min(settled.drained[l]).max(0.0) * area;
        leg.sweat_kg += state.solving.sweat[l] * cell.length * sum.seconds;
        if place.past_inlet {
            leg.coldest_wall_c = leg.coldest_wall_c.min(settled.wall_c[l]);
        }
        sum.wettest_kg_hm = sum
            .wettest_kg_hm
            .max(change * cell.inner * 3600.0 / sum.seconds);
        sum.most_film_kg_m2 = sum.most_film_kg_m2.max(settled.water[l]);
        sum.most_frost_kg_m2 = sum.most_frost_kg_m2.max(settled.frost[l]);
        if let Some(carried) = &mut self.carried {
            carried.leave(l, at, state, cell);
        }
        (state.reached.t_c[l], state.reached.w[l]) = (settled.t_c[l], settled.w[l]);
        if !place.last {
            return false;
        }
        lane.legs.push(lane.leg);
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
        if divides && lane.dried_out && lane.wetted {
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

/// The first step of an hour.
fn first_part(hour: usize, steps: Steps) -> Part {
    let of = if steps == Steps::Quarters { PARTS } else { 1 };
    Part {
        hour,
        number: 0,
        of,
    }
}

/// Least and greatest flow of all hours.
fn flows(hours: &Hours) -> Roots {
    let flow = |hour: usize| hours.hour(hour).map_or(0.0, |hour| hour.dry_air_kg_s);
    let all = (0..hours.len()).map(flow);
    Roots::between((
        all.clone().fold(f64::INFINITY, f64::min).min(1.0),
        all.fold(0.0, f64::max).max(1e-9),
    ))
}
