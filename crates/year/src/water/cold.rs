//! Standing water that freezes and thaws, traps that crack, seals that dry out.

use dewrun_moist_air::latent::FUSION;

use super::held::{Came, Held, Store};
use super::hour::WaterHour;
use super::places::{Lets, Outside, Places};

/// Share of the wall that a pool wets along its length, and that a puddle wets.
const POOL_WETS: f64 = 0.5;
const PUDDLE_WETS: f64 = 0.25;
/// Heat that the bare wall of a trap gives to still air and its surroundings, W/(m2 K). Common practice, no source.
const TRAP_W_M2K: f64 = 9.0;
/// A trap with less in it does not crack, kg.
const CRACKS_KG: f64 = 1e-3;

/// Freezes or thaws what so much heat takes in a step: `q / L_f`; heat out of the water is positive, W.
pub(crate) fn exchange(store: &mut Store, heat_w: f64, seconds: f64) {
    let freezes = heat_w * seconds / FUSION;
    let freezes = freezes.min(store.water).max(-store.ice);
    store.water -= freezes;
    store.ice += freezes;
}

/// Heat that leaves through a metre of wall at 0 °C, W: where the wall is below, to the colder of it and the space; where it is above, from the warmer.
fn heat_w_m(outside: Outside, wall_c: f64, space_c: f64) -> f64 {
    let from_c = if wall_c < 0.0 {
        wall_c.min(space_c)
    } else {
        wall_c.max(space_c)
    };
    -outside.passes_w_mk * from_c
}

impl Held {
    /// Freezes and thaws what stands in pools, puddles and traps.
    pub(super) fn freeze(&mut self, places: &Places, came: &Came<'_>) {
        let space_c = |space: usize| came.outside_c.get(space).copied().unwrap_or(20.0);
        let wall_c = |stand: usize| came.wall_c.get(stand).copied().unwrap_or(20.0);
        for (number, (store, place)) in self.pools.iter_mut().zip(&places.pools).enumerate() {
            if 0.0 < store.all() {
                let level = place.levels.at(store.all());
                let length_m = level.before_m + level.after_m;
                let outside = place.outside;
                let heat_w = heat_w_m(outside, wall_c(number), space_c(outside.space));
                exchange(store, POOL_WETS * length_m * heat_w, came.seconds);
            }
        }
        let pools = self.pools.len();
        for (number, (store, place)) in self.flats.iter_mut().zip(&places.flats).enumerate() {
            if 0.0 < store.all() {
                let along = place.along;
                let length_m = (along.to_m - along.from_m) * store.all() / place.capacity_kg;
                let outside = place.outside;
                let heat_w = heat_w_m(outside, wall_c(pools + number), space_c(outside.space));
                exchange(store, PUDDLE_WETS * length_m * heat_w, came.seconds);
            }
        }
        for (held, place) in self.traps.iter_mut().zip(&places.traps) {
            // The wall of a column: 4/D of its volume.
            let wall_m2 = 4.0 * held.store.all() / (WATER_KG_M3 * place.bore_m);
            let heat_w = -TRAP_W_M2K * wall_m2 * space_c(place.space);
            exchange(&mut held.store, heat_w, came.seconds);
        }
    }

    /// Traps crack and leak, seals fall.
    pub(super) fn age(&mut self, places: &Places, came: &Came<'_>, hour: &mut WaterHour) {
        let falls_m = came
            .seal_falls_m
            .iter()
            .copied()
            .chain(core::iter::repeat(0.0));
        for ((held, place), falls_m) in self.traps.iter_mut().zip(&places.traps).zip(falls_m) {
            let store = &mut held.store;
            let closed = place.lets == Lets::ByHand;
            held.cracked |= closed && store.water <= 0.0 && CRACKS_KG <= store.ice;
            held.leaks |= held.cracked && store.ice <= 0.0;
            if held.leaks {
                hour.went.leaked_kg += store.water;
                store.water = 0.0;
            }
            if place.lets == Lets::OverSeal {
                let falls_m = falls_m.max(0.0).min(held.seal_m);
                held.seal_m -= falls_m;
                hour.went.off_seals_kg += falls_m * place.seal_kg_m;
            }
        }
    }
}

const WATER_KG_M3: f64 = 1000.0;
