//! Water that stands in pools, puddles and traps, and what a step of time makes of it.

use super::hour::WaterHour;
use super::places::{Fills, Lets, Places, SlopeAt, To};

/// Shares of a capacity by which a store counts as full.
pub(super) const FULL: f64 = 1.0 - 1e-9;

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

    /// Gives up so much, its water first.
    fn lose(&mut self, kg: f64) {
        let of_ice = (kg - self.water).max(0.0);
        self.water = (self.water - kg).max(0.0);
        self.ice = (self.ice - of_ice).max(0.0);
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
            let dry = place.lets == Lets::OverSeal && held.seal_m <= 0.0;
            if dry || held.leaks {
                states.trap_leaks = 1.0;
            }
        }
        hour.states.frozen = if 0.0 < hour.ice_kg { 1.0 } else { 0.0 };
    }
}

/// What of so much water refills a seal, kg.
fn refill(held: &mut TrapHeld, place: &super::places::TrapAt, kg: f64) -> f64 {
    if place.lets != Lets::OverSeal || place.seal_kg_m <= 0.0 {
        return 0.0;
    }
    let room_kg = (place.seal_m - held.seal_m).max(0.0) * place.seal_kg_m;
    let taken = kg.min(room_kg);
    held.seal_m += taken / place.seal_kg_m;
    taken
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::{Conductivity, Length, Mass, Temperature};
    use dewrun_run::{Drain, StandingTube, Trap, Tube};
    use dewrun_water::Water;
    use dewrun_water::drainage::{DrainLeg, DrainTube, TrapAt};
    use dewrun_water::held::{Keeping, Puddle};
    use dewrun_water::trap::TrapKind;

    /// Legs of 10 m with their rise, m, in a bore of 20 mm that passes 0.30 W/(m K); by-hand traps with what they take, kg.
    fn places(rises_m: &[f64], traps: &[(f64, f64)]) -> Places {
        let leg = |rise_m: &f64| DrainLeg {
            length: Length::metres(10.0),
            rise: Length::metres(*rise_m),
            bore: Length::millimetres(20.0),
            keeping: Keeping {
                puddle: Puddle {
                    length: Length::metres(10.0),
                    ..Puddle::USUAL
                },
                ..Keeping::USUAL
            },
            reachable: true,
        };
        let at = |(at_m, kg): &(f64, f64)| TrapAt {
            at: Length::metres(*at_m),
            capacity: Some(Mass::kilograms(*kg)),
        };
        let built = |(at_m, kg): &(f64, f64)| Trap {
            at: Length::metres(*at_m),
            drain: Drain::ByHand,
            open: false,
            kind: TrapKind::EqualLegs,
            capacity: Mass::kilograms(*kg),
            seal: Length::ZERO,
            outlet_drop: Length::ZERO,
            bore: Length::millimetres(19.0),
        };
        let tube = StandingTube {
            tube: Tube::Intake,
            drain: DrainTube {
                legs: rises_m.iter().map(leg).collect(),
                traps: traps.iter().map(at).collect(),
                water: Water::at(Temperature::celsius(4.0)),
            },
            traps: traps.iter().map(built).collect(),
            passes: vec![Conductivity::watts_per_metre_kelvin(0.30); rises_m.len()],
            spaces: vec![0; rises_m.len()],
        };
        Places::of(&[tube]).expect("a plain tube")
    }

    /// An hour at a temperature of space and walls with what runs down each slope, kg.
    fn hour(held: &mut Held, places: &Places, runs: &[f64], t_c: f64, visited: bool) -> WaterHour {
        let walls = vec![t_c; held.stands()];
        held.step(
            places,
            &Came {
                seconds: 3600.0,
                runs,
                took: &[],
                wall_c: &walls,
                outside_c: &[t_c],
                seal_falls_m: &[],
                visited,
            },
        )
    }

    #[track_caller]
    fn near(got: f64, expected: f64, share: f64) {
        assert!(
            (got - expected).abs() <= share * expected.abs(),
            "{got}, by hand {expected}"
        );
    }

    /// Standing water freezes and thaws: 50 g between falls of 1:50 and 1:25 wet 0.5 m and 0.25 m of floor (the pool's own test).
    ///
    /// They wet half of the wall, which passes 0.30 W/(m K): at −10 °C 0.5 · 0.75 · 0.30 · 10 = 1.125 W leave, 4.05 kJ an hour,
    /// and freeze 4.05/333.46 = 12.15 g; all is ice after 4.1 h. At +5 °C half as much comes in: 6.07 g an hour, all is water again after 8.2 h.
    #[test]
    fn a_pool_freezes_and_thaws() {
        // Per length: sines of 1:50 and 1:25.
        let places = places(&[-0.199_96, 0.399_68], &[]);
        let mut held = Held::new(&places);
        let first = hour(&mut held, &places, &[0.050, 0.0], -10.0, false);
        near(first.standing_kg, 0.050, 1e-9);
        near(first.ice_kg, 0.012_15, 0.01);
        for _ in 0..3 {
            assert!(0.0 < held.pools[0].water, "some is water still: {held:?}");
            hour(&mut held, &places, &[], -10.0, false);
        }
        let frozen = hour(&mut held, &places, &[], -10.0, false);
        near(frozen.ice_kg, 0.050, 1e-9);
        let thaws = hour(&mut held, &places, &[], 5.0, false);
        near(0.050 - thaws.ice_kg, 0.006_07, 0.01);
        let hours = (1..20).find(|_| hour(&mut held, &places, &[], 5.0, false).ice_kg == 0.0);
        assert_eq!(hours, Some(8), "in the ninth hour");
    }

    /// A closed trap freezes, cracks, leaks at thaw, and is mended at a visit: 100 g in a bore of 19 mm.
    ///
    /// 100 mL have 4 · 1e-4/0.019 = 0.021 05 m2 of wall: at −10 °C 9 · 0.021 05 · 10 = 1.895 W leave, 6.82 kJ an hour, 20.5 g:
    /// ice through and through in the fifth hour. At +10 °C it thaws as fast, and then runs out, with all that comes until somebody mends it.
    #[test]
    fn a_trap_cracks_in_the_frost() {
        let places = places(&[-0.2, 0.4], &[(10.0, 0.5)]);
        let mut held = Held::new(&places);
        let first = hour(&mut held, &places, &[0.100], -10.0, false);
        near(first.trapped_kg, 0.100, 1e-9);
        near(held.traps[0].store.ice, 0.020_5, 0.01);
        for _ in 0..4 {
            assert!(!held.traps[0].cracked, "not yet: {held:?}");
            hour(&mut held, &places, &[], -10.0, false);
        }
        assert!(held.traps[0].cracked && !held.traps[0].leaks, "{held:?}");
        let thaw = (1..20).find(|_| {
            let thawed = hour(&mut held, &places, &[], 10.0, false);
            0.0 < thawed.went.leaked_kg
        });
        assert_eq!(thaw, Some(5), "in the fifth hour: {held:?}");
        let more = hour(&mut held, &places, &[0.030], 10.0, true);
        near(more.went.leaked_kg, 0.030, 1e-9);
        let mended = hour(&mut held, &places, &[0.030], 10.0, false);
        assert_eq!(
            (mended.went.leaked_kg, held.traps[0].store.water),
            (0.0, 0.030),
            "{held:?}"
        );
    }

    /// Down 0.4 m, up 0.1 m, down 0.1 m, up 0.4 m: two low points with a crest of 0.1 m between them, each of which holds the same.
    ///
    /// The first fills and runs over into the second; when both are full they are one, which rises towards the ends;
    /// as it dries below the crest there are two again, each full.
    #[test]
    fn two_pools_run_together_and_part() {
        let places = places(&[-0.4, 0.1, -0.1, 0.4], &[]);
        let mut held = Held::new(&places);
        let capacity = places.pools[0].capacity_kg;
        hour(&mut held, &places, &[1.5 * capacity], 10.0, false);
        near(held.pools[0].water, capacity, 1e-9);
        near(held.pools[1].water, 0.5 * capacity, 1e-9);
        hour(&mut held, &places, &[capacity], 10.0, false);
        assert!(held.joined[2] && held.pools[0].water == 0.0, "{held:?}");
        near(held.pools[2].water, 2.5 * capacity, 1e-9);
        held.step(
            &places,
            &Came {
                seconds: 3600.0,
                runs: &[],
                took: &[0.0, 0.0, capacity],
                wall_c: &[10.0; 3],
                outside_c: &[10.0],
                seal_falls_m: &[],
                visited: false,
            },
        );
        assert!(!held.joined[2], "{held:?}");
        near(held.pools[0].water, 0.75 * capacity, 1e-6);
        near(held.pools[1].water, 0.75 * capacity, 1e-6);
    }

    /// A tube that falls all the way gives its water to the detector; one that rises, to the duct.
    #[test]
    fn ends_take_what_comes() {
        for (rise_m, duct_kg, detector_kg) in [(-0.4, 0.0, 0.010), (0.4, 0.010, 0.0)] {
            let places = places(&[rise_m], &[]);
            let mut held = Held::new(&places);
            let told = hour(&mut held, &places, &[0.010], 10.0, false);
            assert_eq!(told.went.into_duct_kg, duct_kg, "{rise_m} m");
            assert_eq!(told.went.into_detector_kg, detector_kg, "{rise_m} m");
        }
    }
}
