//! Water that stands in pools, puddles and traps, and what a step of time makes of it.

use super::hour::WaterHour;
use super::places::{Fills, Lets, Places, SlopeAt, To, TrapAt};

/// Shares of a capacity by which a store counts as full.
pub(super) const FULL: f64 = 1.0 - 1e-9;

/// Less water than this is what rounding has left, kg.
const LEAST_KG: f64 = 1e-18;

/// Water and ice in one place, kg.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Store {
    pub(crate) water: f64,
    pub(crate) ice: f64,
}

impl Store {
    pub(crate) const fn all(self) -> f64 {
        self.water + self.ice
    }

    /// Takes in what there is room for, and gives back the rest.
    fn fill(&mut self, kg: f64, capacity: f64) -> f64 {
        let taken = kg.min((capacity - self.all()).max(0.0));
        self.water += taken;
        kg - taken
    }

    /// Gives up so much, its water first; what rounding leaves of it goes too.
    fn lose(&mut self, kg: f64) {
        let of_ice = (kg - self.water).max(0.0);
        let left = |kg: f64| if LEAST_KG < kg { kg } else { 0.0 };
        self.water = left(self.water - kg);
        self.ice = left(self.ice - of_ice);
    }

    pub(super) fn share_of(self, share: f64) -> Self {
        Self {
            water: share * self.water,
            ice: share * self.ice,
        }
    }
}

/// A trap or drain.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct TrapHeld {
    pub(crate) store: Store,
    /// Height of the standing seal that is left, m.
    pub(crate) seal_m: f64,
    /// It has frozen through: it leaks when it thaws.
    pub(crate) cracked: bool,
    pub(crate) leaks: bool,
}

impl TrapHeld {
    /// Whether its seal is gone, or too low for the pressure that lies on it.
    pub(super) fn lets_air(&self, place: &TrapAt) -> bool {
        place.lets == Lets::OverSeal && self.seal_m <= place.blown_m
    }
}

/// All water that stands in a run.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Held {
    pub(crate) pools: Vec<Store>,
    /// Pools that are the whole of two others now.
    pub(crate) joined: Vec<bool>,
    pub(crate) flats: Vec<Store>,
    pub(crate) traps: Vec<TrapHeld>,
}

/// What comes to the water in a step.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Came<'a> {
    /// Length of the step, s.
    pub(crate) seconds: f64,
    /// What runs down each slope, kg.
    pub(crate) runs: &'a [f64],
    /// What dries from each pool, then each flat stretch, kg.
    pub(crate) took: &'a [f64],
    /// Wall at each pool, then each flat stretch, °C.
    pub(crate) wall_c: &'a [f64],
    /// Temperature of each space, °C.
    pub(crate) outside_c: &'a [f64],
    /// By how much the seal of each trap falls if nothing refills it, m.
    pub(crate) seal_falls_m: &'a [f64],
    /// Somebody comes by at the end of it and empties the traps.
    pub(crate) visited: bool,
}

impl Held {
    /// The same as another of the same run.
    pub(crate) fn take(&mut self, other: &Self) {
        self.pools.clone_from(&other.pools);
        self.joined.clone_from(&other.joined);
        self.flats.clone_from(&other.flats);
        self.traps.clone_from(&other.traps);
    }

    /// Nothing stands; seals are full.
    pub(crate) fn new(places: &Places) -> Self {
        let trap = |seal_m| TrapHeld {
            seal_m,
            ..TrapHeld::default()
        };
        Self {
            pools: vec![Store::default(); places.pools.len()],
            joined: vec![false; places.pools.len()],
            flats: vec![Store::default(); places.flats.len()],
            traps: places
                .traps
                .iter()
                .map(|place| trap(place.seal_m))
                .collect(),
        }
    }

    /// A pool, then a flat stretch.
    pub(crate) fn stand(&self, number: usize) -> Store {
        let flat = number.checked_sub(self.pools.len());
        let found = match flat {
            None => self.pools.get(number),
            Some(flat) => self.flats.get(flat),
        };
        found.copied().unwrap_or_default()
    }

    /// Pools and flat stretches.
    pub(crate) fn stands(&self) -> usize {
        self.pools.len() + self.flats.len()
    }

    /// Lets a step go by.
    pub(crate) fn step(&mut self, places: &Places, came: &Came<'_>) -> WaterHour {
        let mut hour = WaterHour {
            seconds: came.seconds,
            ..WaterHour::NONE
        };
        self.dry(came, &mut hour);
        for (slope, &kg) in places.slopes.iter().zip(came.runs) {
            if 0.0 < kg {
                hour.went.ran_down_kg += kg;
                self.run_down(places, slope, kg, &mut hour);
            }
        }
        self.level_out(places, &mut hour);
        self.freeze(places, came);
        self.age(places, came, &mut hour);
        if came.visited {
            self.visit(places, &mut hour);
        }
        self.tell(places, &mut hour);
        hour
    }

    fn dry(&mut self, came: &Came<'_>, hour: &mut WaterHour) {
        let stands = self.pools.iter_mut().chain(&mut self.flats);
        for (store, &kg) in stands.zip(came.took) {
            store.lose(kg);
            hour.went.evaporated_kg += kg;
        }
    }

    fn run_down(&mut self, places: &Places, slope: &SlopeAt, kg: f64, hour: &mut WaterHour) {
        let mut left = kg;
        for fills in &slope.fills {
            match *fills {
                Fills::Flat(flat) => {
                    let place = self.flats.get_mut(flat).zip(places.flats.get(flat));
                    left = place.map_or(left, |(store, place)| store.fill(left, place.capacity_kg));
                }
                Fills::Trap(trap) => left = self.fill_trap(places, trap, left, hour),
            }
        }
        self.come_to(places, slope.to, left, hour);
    }

    /// What a trap does not take.
    pub(super) fn fill_trap(
        &mut self,
        places: &Places,
        trap: usize,
        kg: f64,
        hour: &mut WaterHour,
    ) -> f64 {
        let Some((held, place)) = self.traps.get_mut(trap).zip(places.traps.get(trap)) else {
            return kg;
        };
        if held.leaks {
            hour.went.leaked_kg += kg;
            return 0.0;
        }
        let passes = held.store.fill(kg, place.capacity_kg);
        hour.went.overflowed_kg += passes;
        passes
    }

    pub(super) fn come_to(&mut self, places: &Places, to: To, kg: f64, hour: &mut WaterHour) {
        match to {
            To::Pool(pool) => {
                let pool = self.live(places, pool);
                if let Some(store) = self.pools.get_mut(pool) {
                    store.water += kg;
                }
            }
            To::Trap(trap) => {
                let found = self.traps.get_mut(trap).zip(places.traps.get(trap));
                let refills = found.map_or(0.0, |(held, place)| refill(held, place, kg));
                hour.went.drained_kg += kg - refills;
            }
            To::Duct => hour.went.into_duct_kg += kg,
            To::Detector => hour.went.into_detector_kg += kg,
        }
    }

    /// Empties the traps that are emptied by hand, and what stands over them; mends those that have cracked.
    fn visit(&mut self, places: &Places, hour: &mut WaterHour) {
        for (held, place) in self.traps.iter_mut().zip(&places.traps) {
            if place.lets == Lets::ByHand {
                hour.went.let_out_kg += held.store.all();
                *held = TrapHeld {
                    seal_m: held.seal_m,
                    ..TrapHeld::default()
                };
            }
        }
        for (store, place) in self.pools.iter_mut().zip(&places.pools) {
            let trap = place.trap.and_then(|trap| places.traps.get(trap));
            if trap.is_some_and(|trap| trap.lets == Lets::ByHand) {
                hour.went.let_out_kg += store.water;
                store.water = 0.0;
            }
        }
    }

    fn tell(&self, places: &Places, hour: &mut WaterHour) {
        for store in self.pools.iter().chain(&self.flats) {
            hour.standing_kg += store.all();
            hour.ice_kg += store.ice;
        }
        for (held, place) in self.traps.iter().zip(&places.traps) {
            hour.trapped_kg += held.store.all() + held.seal_m * place.seal_kg_m;
            let states = &mut hour.states;
            if FULL * place.capacity_kg <= held.store.all() {
                states.trap_full = 1.0;
            }
            if held.lets_air(place) || held.leaks {
                states.trap_leaks = 1.0;
            }
        }
        hour.states.frozen = if 0.0 < hour.ice_kg { 1.0 } else { 0.0 };
    }
}

/// What of so much water refills a seal, kg.
fn refill(held: &mut TrapHeld, place: &TrapAt, kg: f64) -> f64 {
    if place.lets != Lets::OverSeal || place.seal_kg_m <= 0.0 {
        return 0.0;
    }
    let room_kg = (place.seal_m - held.seal_m).max(0.0) * place.seal_kg_m;
    let taken = kg.min(room_kg);
    held.seal_m += taken / place.seal_kg_m;
    taken
}

#[cfg(test)]
pub(super) mod by_hand;
