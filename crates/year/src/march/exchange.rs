//! What a turn of the wave computes, with vectors as wide as the machine has them.
//!
//! On x86-64 the same source is compiled for three widths, and the widest that the machine knows is taken.
//! Each lane is computed by the same operations in the same order, none of them fused, so that all give the same bits.

use super::cell::Cell;
use super::lanes::Lanes;
use super::state::State;

impl State {
    /// Film, balance and what comes of it, of the cells that the lanes are at; true where all of them are dry and stay so.
    pub(super) fn exchange(&mut self, cell: &Cell<Lanes>) -> bool {
        #[cfg(target_arch = "x86_64")]
        if let Some(is_dry) = wide::exchange(self, cell) {
            return is_dry;
        }
        self.exchange_as_compiled(cell)
    }

    /// The same, in the width that the function it becomes part of is compiled for.
    #[inline(always)]
    fn exchange_as_compiled(&mut self, cell: &Cell<Lanes>) -> bool {
        self.meet(cell);
        if self.arrives_dry() {
            if self.exchange_dry(cell) {
                return true;
            }
            // Tried in vain, it has been moved.
            self.guess(cell);
        }
        self.exchange_wet(cell);
        false
    }

    /// The full balance of the cells, whose air and film of heat have been met.
    #[inline(always)]
    pub(super) fn exchange_wet(&mut self, cell: &Cell<Lanes>) {
        self.meet_vapour(cell);
        self.solve(cell);
        self.settle(cell);
    }
}

#[cfg(target_arch = "x86_64")]
mod wide {
    use super::{Cell, Lanes, State};

    /// Done with the widest vectors there are; none where there are none beyond those that every machine has.
    #[expect(
        unsafe_code,
        reason = "a function compiled for wide vectors may be called only where the machine has them, which is asked just before"
    )]
    pub(super) fn exchange(state: &mut State, cell: &Cell<Lanes>) -> Option<bool> {
        if is_x86_feature_detected!("avx512f")
            && is_x86_feature_detected!("avx512dq")
            && is_x86_feature_detected!("avx512vl")
        {
            // SAFETY: the machine has what the function is compiled for.
            return Some(unsafe { in_eights(state, cell) });
        }
        if is_x86_feature_detected!("avx2") {
            // SAFETY: as above.
            return Some(unsafe { in_fours(state, cell) });
        }
        None
    }

    /// Eight lanes at a time.
    #[target_feature(enable = "avx512f,avx512dq,avx512vl")]
    fn in_eights(state: &mut State, cell: &Cell<Lanes>) -> bool {
        state.exchange_as_compiled(cell)
    }

    /// Four lanes at a time.
    #[target_feature(enable = "avx2")]
    fn in_fours(state: &mut State, cell: &Cell<Lanes>) -> bool {
        state.exchange_as_compiled(cell)
    }
}

#[cfg(test)]
mod tests {
    use crate::hours::{Around, Hour};
    use crate::march::cell::{Grid, Roots, cells};
    use crate::march::lanes::{LANES, skewed};
    use crate::march::state::State;
    use crate::route::{Leg, Route};

    /// What is shown of a state tells each of its numbers apart from any other.
    #[test]
    fn all_widths_give_the_same_bits() {
        let leg = Leg::plastic(6.0);
        let route = Route {
            intake: vec![leg],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let of_route = cells(&route, Grid::PRODUCT, Roots::between((6e-4, 6e-4)));
        let all: Vec<_> = of_route.into_iter().map(|(cell, _)| cell).collect();
        let turns = skewed(&all);
        for (air_c, w, space_c) in [(30.0, 0.025, 12.0), (45.0, 0.01, 35.0), (5.0, 0.004, -8.0)] {
            let mut wide = State::idle();
            for (l, cell) in (0..LANES).zip(all.iter().cycle()) {
                let hour = Hour {
                    seconds: 3600.0,
                    air_c,
                    w,
                    p_pa: 101_325.0,
                    dry_air_kg_s: 6e-4,
                };
                wide.load(l, &hour, 3600.0);
                let around = Around {
                    air_c: space_c,
                    w: 0.003,
                    radiant_c: space_c,
                    wind_m_s: [0.0, 3.0][l % 2],
                };
                wide.surround(l, &around);
                wide.enter_leg(l, &around, cell, None);
                wide.film.water[l] = [0.0, 0.002, 0.03, 0.05][l % 4];
            }
            for cell in &turns {
                let mut plain = wide.clone();
                let is_dry = wide.exchange(cell);
                assert_eq!(
                    plain.exchange_as_compiled(cell),
                    is_dry,
                    "which way it went"
                );
                assert_eq!(
                    format!("{wide:?}"),
                    format!("{plain:?}"),
                    "air of {air_c} °C in {space_c} °C"
                );
                wide.reached.t_c = wide.settled.t_c;
                wide.reached.w = wide.settled.w;
            }
        }
    }
}
