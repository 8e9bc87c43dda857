//! The hours' march along the route, several side by side, with the water that each leaves on the walls for the next.
//!
//! Lane j does hour h + j at the cell behind that of lane j - 1: each hour finds the walls as the one before has left them, exactly.
//! An hour in which one cell dries out while another takes up water is done anew in four parts, where that is asked for;
//! the hours that were begun after it are then begun anew.

mod balance;
mod carried;
mod cell;
mod dry;
mod exchange;
mod inside;
mod lanes;
mod load;
mod mean;
mod misty;
mod outside;
mod search;
mod settle;
mod state;
mod tally;
mod walls;
mod wave;

use crate::hours::Hours;
use crate::route::Route;
use crate::sums::{HourSum, LegSum};
use crate::water::{Water, WaterHour};
use carried::Carried;
use cell::{Cell, Place, Roots};
use lanes::{LANES, Lanes, skewed};
use state::State;
use walls::Walls;
use wave::{Besides, Lane, besides};

use dewrun_tube::Factors;

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
    walls: Walls,
    /// What lanes have to do besides, turn by turn.
    besides: Vec<Besides>,
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
        let carried = Carried::new(water, &march.places, hours.len());
        Self {
            besides: besides(&march.places, |at| carried.watches(at)),
            carried: Some(Box::new(carried)),
            ..march
        }
    }

    fn between(route: &Route, hours: &Hours, (grid, steps): (Grid, Steps), roots: Roots) -> Self {
        let cells = cell::cells(route, grid, roots);
        let (cells, places): (Vec<_>, Vec<_>) = cells.into_iter().unzip();
        let count = cells.len();
        let leg_count = route.legs().count();
        let lane = Lane::of_legs(leg_count);
        Self {
            turns: skewed(&cells),
            besides: besides(&places, |_| false),
            places,
            cells,
            detector_w: route.detector_w,
            steps,
            carries: true,
            state: State::idle(),
            lanes: core::array::from_fn(|_| lane.clone()),
            walls: Walls::dry(count),
            turn: 0,
            next: first_part(0, steps),
            done: 0,
            hours: Vec::with_capacity(hours.len()),
            legs: Vec::with_capacity(hours.len() * leg_count),
            leg_count,
            carried: None,
        }
    }

    /// The same, but the films and the diffusivity of vapour are multiplied by factors, to carry their known spread through a year.
    ///
    /// # Range
    /// Before the first hour is marched; factors near 1, as [`Factors`] says.
    #[must_use]
    pub fn with_factors(self, factors: Factors) -> Self {
        let cells = self
            .cells
            .into_iter()
            .map(|cell| cell.with_factors(factors));
        let cells: Vec<_> = cells.collect();
        Self {
            turns: skewed(&cells),
            cells,
            ..self
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
            walls: Walls::dry(self.cells.len()),
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

    /// What came of the hours that are done, for those who march no further.
    #[must_use]
    pub fn into_done(self) -> Done {
        let done = self.done;
        let mut hours = self.hours;
        hours.truncate(done);
        let (mut water_hours, mut levels_kg) = (Vec::new(), Vec::new());
        if let Some(carried) = self.carried {
            let stores = carried.stores;
            (water_hours, levels_kg) = (carried.hours, carried.levels);
            water_hours.truncate(done);
            levels_kg.truncate(done * stores);
        }
        Done {
            hours,
            water_hours,
            levels_kg,
        }
    }

    /// The water as it is now, where it is followed.
    #[must_use]
    pub fn water(&self) -> Option<&Water> {
        self.carried.as_ref().map(|carried| &carried.water)
    }
}

/// What came of hours.
#[derive(Debug, Clone, PartialEq)]
pub struct Done {
    /// Each of them.
    pub hours: Vec<HourSum>,
    /// The water of each; nothing where it is not followed.
    pub water_hours: Vec<WaterHour>,
    /// What stands in each store at the end of each, kg, store by store within an hour.
    pub levels_kg: Vec<f64>,
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
