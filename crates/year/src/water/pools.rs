//! Pools that run into the traps below them, over their crests, and together.

use super::held::{FULL, Held, Store};
use super::hour::WaterHour;
use super::places::{Places, To};

impl Held {
    /// The pool in which the water of a low point stands now.
    pub(super) fn live(&self, places: &Places, pool: usize) -> usize {
        let mut top = pool;
        while let Some(whole) = places.pools.get(top).and_then(|place| place.joined_by) {
            if !self.joined.get(whole).is_some_and(|joined| *joined) {
                break;
            }
            top = whole;
        }
        top
    }

    fn is_live(&self, places: &Places, pool: usize) -> bool {
        let joins = places
            .pools
            .get(pool)
            .is_some_and(|place| place.joins.is_some());
        let is_whole = self.joined.get(pool).is_some_and(|joined| *joined);
        (!joins || is_whole) && self.live(places, pool) == pool
    }

    /// Pools run into traps below them that have room, run over, and run together, until all are level.
    pub(super) fn level_out(&mut self, places: &Places, hour: &mut WaterHour) {
        for _ in 0..4 * places.pools.len() {
            let mut moved = false;
            for pool in 0..places.pools.len() {
                moved |= self.part(places, pool);
                if self.is_live(places, pool) {
                    self.sink_into_trap(places, pool, hour);
                    moved |= self.run_over(places, pool, hour);
                }
            }
            for pool in 0..places.pools.len() {
                moved |= self.join(places, pool);
            }
            if !moved {
                return;
            }
        }
    }

    fn sink_into_trap(&mut self, places: &Places, pool: usize, hour: &mut WaterHour) {
        let trap = places.pools.get(pool).and_then(|place| place.trap);
        let Some((trap, held)) = trap.zip(self.pools.get(pool).copied()) else {
            return;
        };
        if held.water <= 0.0 {
            return;
        }
        // It has stood over the trap: what does not go in has not passed it.
        let passed = hour.went.overflowed_kg;
        let left = self.fill_trap(places, trap, held.water, hour);
        hour.went.overflowed_kg = passed;
        if let Some(store) = self.pools.get_mut(pool) {
            store.water = left;
        }
    }

    fn run_over(&mut self, places: &Places, pool: usize, hour: &mut WaterHour) -> bool {
        let Some((place, held)) = places.pools.get(pool).zip(self.pools.get(pool).copied()) else {
            return false;
        };
        let over = (held.all() - place.capacity_kg).min(held.water);
        let Some(to) = place.to.filter(|_| 1e-12 * place.capacity_kg < over) else {
            return false;
        };
        if let To::Pool(next) = to
            && self.live(places, next) == pool
        {
            return false;
        }
        if let Some(store) = self.pools.get_mut(pool) {
            store.water -= over;
        }
        self.come_to(places, to, over, hour);
        true
    }

    /// Two full pools that run over to each other become one.
    fn join(&mut self, places: &Places, whole: usize) -> bool {
        let Some((one, other)) = self.parts(places, whole) else {
            return false;
        };
        let full = |pool: usize| {
            let capacity = places
                .pools
                .get(pool)
                .map_or(f64::INFINITY, |place| place.capacity_kg);
            self.is_live(places, pool) && FULL * capacity <= self.stand(pool).all()
        };
        if self.joined.get(whole).is_some_and(|joined| *joined) || !full(one) || !full(other) {
            return false;
        }
        let (first, second) = (self.stand(one), self.stand(other));
        self.put(
            whole,
            Store {
                water: first.water + second.water,
                ice: first.ice + second.ice,
            },
        );
        self.put(one, Store::default());
        self.put(other, Store::default());
        self.mark(whole, true);
        true
    }

    /// A pool that has fallen below the crest between the two that it was becomes two again.
    fn part(&mut self, places: &Places, whole: usize) -> bool {
        let Some((one, other)) = self.parts(places, whole) else {
            return false;
        };
        let capacity = |pool: usize| {
            places
                .pools
                .get(pool)
                .map_or(0.0, |place| place.capacity_kg)
        };
        let both = capacity(one) + capacity(other);
        let held = self.stand(whole);
        if !self.is_live(places, whole) || FULL * both <= held.all() {
            return false;
        }
        let share = capacity(one) / both;
        let first = held.share_of(share);
        self.put(one, first);
        self.put(
            other,
            Store {
                water: held.water - first.water,
                ice: held.ice - first.ice,
            },
        );
        self.put(whole, Store::default());
        self.mark(whole, false);
        true
    }

    fn parts(&self, places: &Places, whole: usize) -> Option<(usize, usize)> {
        let [one, other] = places.pools.get(whole)?.joins?;
        Some((one, other))
    }

    fn put(&mut self, pool: usize, store: Store) {
        if let Some(held) = self.pools.get_mut(pool) {
            *held = store;
        }
    }

    fn mark(&mut self, whole: usize, is: bool) {
        if let Some(joined) = self.joined.get_mut(whole) {
            *joined = is;
        }
    }
}
