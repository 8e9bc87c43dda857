//! A turn in which nothing is wet in any lane, and nothing can become so: heat alone, at half the work.
//!
//! Where no wall that is tried comes near the dew point, the balance of [`super::balance`] takes up nothing and gives off nothing.
//! What is left out here are terms that are nought there, so that it makes no difference to any bit which way a lane has gone.

use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};

use super::balance::{EVEN_FROM_UNITS, change_before};
use super::cell::{AT_ONE_PLACE_M, Cell};
use super::lanes::{LANES, Lanes, any_above, any_below, larger, smaller};
use super::mean::{decay, put};
use super::search::{MOST_SETTLING, SHORT_K};
use super::settle::go_on;
use super::state::State;

/// Transfer units of heat up to which those of vapour make no wall even: they are no more than half as many again.
const SURELY_UNEVEN_UNITS: f64 = EVEN_FROM_UNITS / 1.5;
/// So many times what the wall changes along a cell may lie between its middle and what decides of dew in the mean.
const CHANGES: f64 = 2.0;
/// More than half of by how much the slope of saturation grows with each kelvin, 1/K: what a linear step is short of it.
const BENDS_K: f64 = 0.06;

/// Up to this temperature of a wall, °C, a last step of so much, K, bends saturation by less than what ends a search: further from boiling nobody need ask.
const UNBENT_UP_TO_C: f64 = 45.0;
const UNBENT_K: f64 = 1.0;

impl State {
    /// Does the cells of all lanes, which have arrived dry, if they surely stay so; else nothing is done but the search begun, and they are to be done in full.
    #[inline(always)]
    pub(super) fn exchange_dry(&mut self, cell: &Cell<Lanes>) -> bool {
        self.begin_dry(cell) && self.solve_dry(cell) && self.settle_dry(cell)
    }

    /// Nothing is on the walls or in the air but vapour, and no more of that than was asked for its dew point; the wall of the cell before is warmer.
    #[inline(always)]
    pub(super) fn arrives_dry(&self) -> bool {
        let (given, reached, film) = (&self.given, &self.reached, &self.film);
        let mut wet: Lanes = [0.0; LANES];
        let mut below: Lanes = [0.0; LANES];
        for l in 0..LANES {
            wet[l] = film.water[l] + film.frost[l] + film.pool[l] + reached.mist[l];
            wet[l] = larger(wet[l], reached.w[l] - given.clear_w[l]);
            below[l] = given.clear_above_c[l] - smaller(reached.t_c[l], reached.wall_c[l]);
        }
        !any_above(&wet, 0.0) && !any_above(&below, 0.0)
    }

    /// As [`State::begin`] does.
    #[inline(always)]
    fn begin_dry(&mut self, cell: &Cell<Lanes>) -> bool {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &self.film, &mut self.solving);
        let mut unsure = 0.0;
        for l in 0..LANES {
            let per_flow = cell.length[l] * given.per_flow[l];
            let heat_units = film.heat[l] * per_flow * film.per_heat_capacity[l];
            let even = EVEN_FROM_UNITS < heat_units || cell.length[l] <= AT_ONE_PLACE_M;
            let between = SURELY_UNEVEN_UNITS <= heat_units && !even;
            unsure += if between { 1.0 } else { 0.0 };
            let (mean_heat, bent_heat) = decay(heat_units);
            let wall_change = change_before(reached, solving, cell, l);
            let wall_change = if even { 0.0 } else { wall_change };
            solving.heat_units[l] = heat_units;
            solving.mean_heat[l] = mean_heat;
            solving.bent_heat[l] = bent_heat;
            solving.added_heat[l] = bent_heat * wall_change;
            solving.wall_change[l] = wall_change;
            solving.done[l] = if 0.0 < given.seconds[l] { 0.0 } else { 1.0 };
            solving.settled[l] = if even { 1.0 } else { solving.done[l] };
        }
        solving.frozen = [0.0; LANES];
        solving.fusing = [0.0; LANES];
        solving.fusing_slope = [0.0; LANES];
        solving.vapour = [0.0; LANES];
        solving.vapour_slope = [0.0; LANES];
        solving.ln_wall_slope = [0.0; LANES];
        solving.force = [0.0; LANES];
        solving.low = [-1e3; LANES];
        solving.high = [1e3; LANES];
        unsure <= 0.0
    }

    /// Whether walls are so far above the dew point that nothing deposits anywhere in their cells, and far from boiling.
    #[inline(always)]
    fn is_clear_at(&self, wall_c: &Lanes) -> bool {
        let mut above: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let change = CHANGES * self.solving.wall_change[l].abs();
            above[l] = smaller(
                wall_c[l] - change - self.given.clear_above_c[l],
                UNBENT_UP_TO_C - wall_c[l],
            );
        }
        !any_below(&above, 0.0)
    }

    /// Whether a lane has ended its search by a step that saturation may bend too much for.
    #[inline(always)]
    fn may_bend(&self) -> bool {
        let (given, solving) = (&self.given, &self.solving);
        let ended: Lanes = core::array::from_fn(|l| {
            // A lane without an hour has ended nothing.
            let ends = smaller(solving.done[l], given.seconds[l]);
            ends * (solving.by_surface[l] * solving.step[l]).abs()
        });
        any_above(&ended, UNBENT_K)
    }

    #[inline(always)]
    fn solve_dry(&mut self, cell: &Cell<Lanes>) -> bool {
        for trial in 0..MOST_SETTLING {
            self.convect(cell);
            self.sweat(cell);
            self.through(cell);
            if !self.is_clear_at(&self.solving.wall_c) {
                return false;
            }
            let tried_c = self.solving.surface_c;
            if trial == 0 && self.all_open() {
                self.weigh_dry(State::first_step);
            } else {
                self.weigh_dry(|state, l| state.step(l, 0));
            }
            if self.may_bend() {
                return false;
            }
            if any_below(&self.solving.settled, 0.5) {
                self.means_dry(if trial == 0 { SHORT_K } else { 0.0 });
                self.settle_means(trial);
                if trial == 0 && self.goes_back(&tried_c) {
                    self.weigh_dry(|state, l| state.step(l, 0));
                    if self.may_bend() {
                        return false;
                    }
                    if !any_below(&self.solving.done, 0.5) {
                        return true;
                    }
                }
            } else if !any_below(&self.solving.done, 0.5) {
                return true;
            }
        }
        false
    }

    /// As [`State::weigh`] does, without vapour.
    #[inline(always)]
    fn weigh_dry(&mut self, step: impl Fn(&mut Self, usize)) {
        for l in 0..LANES {
            self.miss(l);
            step(self, l);
        }
    }

    /// As [`State::means`] has them, without vapour: those of temperature are what they were, but for how the wall changes.
    #[inline(always)]
    fn means_dry(&mut self, short_k: f64) {
        let (reached, film, solving) = (&self.reached, &self.film, &mut self.solving);
        let mut found: Lanes = [0.0; LANES];
        let mut added: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let step = solving.step[l];
            let step = if step.abs() < short_k { step } else { 0.0 };
            let wall_c = solving.wall_c[l] + solving.by_surface[l] * step;
            let above = (reached.t_c[l] - wall_c) * solving.mean_heat[l];
            let by_surface = solving.by_surface[l];
            let by_air = by_surface / (film.heat[l] * by_surface + solving.outward[l]);
            let cooling = -solving.heat_units[l] * above;
            found[l] = by_air * (film.heat[l] * cooling);
            added[l] = solving.bent_heat[l] * found[l];
            solving.wall_turn[l] = found[l] - solving.wall_change[l];
        }
        put(&mut solving.wall_change, &found, &solving.settled);
        put(&mut solving.added_heat, &added, &solving.settled);
    }

    /// As [`State::settle`] does; false, and nothing is done, where the last step leads near the dew point after all.
    #[inline(always)]
    fn settle_dry(&mut self, cell: &Cell<Lanes>) -> bool {
        let (given, film, solving, settled) =
            (&self.given, &self.film, &self.solving, &mut self.settled);
        let reached = &self.reached;
        for l in 0..LANES {
            let wall_c = solving.wall_c[l] + solving.by_surface[l] * solving.step[l];
            let above = (reached.t_c[l] - wall_c) * solving.mean_heat[l] + solving.added_heat[l];
            let per_flow = cell.length[l] * given.per_flow[l];
            let heat_capacity = DRY_AIR_CP + VAPOUR_CP * reached.w[l];
            let taken = film.heat[l] * above;
            let t_c = (heat_capacity * reached.t_c[l] - taken * per_flow) / heat_capacity;
            settled.wall_c[l] = wall_c;
            settled.t_c[l] = t_c;
            settled.taken_w_m[l] = taken;
            settled.clear_by[l] = t_c - given.clear_above_c[l];
        }
        let linear_c: Lanes = core::array::from_fn(|l| {
            let wall_step = solving.by_surface[l] * solving.step[l];
            settled.wall_c[l] - BENDS_K * wall_step * wall_step
        });
        if any_below(&settled.clear_by, 0.0) || !self.is_clear_at(&linear_c) {
            return false;
        }
        let (given, solving, settled, reached) = (
            &self.given,
            &self.solving,
            &mut self.settled,
            &mut self.reached,
        );
        settled.change = [0.0; LANES];
        settled.drained = [0.0; LANES];
        settled.pooled = [0.0; LANES];
        settled.water = [0.0; LANES];
        settled.frost = [0.0; LANES];
        settled.dries_by = [1.0; LANES];
        settled.w = reached.w;
        reached.vapour = [0.0; LANES];
        for l in 0..LANES {
            reached.wall_c[l] = settled.wall_c[l];
            let ends = (given.air_c[l], settled.t_c[l]);
            go_on(reached, solving, cell, l, ends);
        }
        true
    }
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::fog::saturation;

    use super::{UNBENT_K, UNBENT_UP_TO_C};
    use crate::march::search::CONVERGED_LN;

    use crate::hours::{Around, Hour};
    use crate::march::cell::{Cell, Grid, Roots, cells};
    use crate::march::lanes::{LANES, Lanes, skewed};
    use crate::march::state::State;
    use crate::route::{Leg, Route};

    /// A tube of two legs, the second under insulation, in turns of the wave.
    fn turns(flow_kg_s: f64) -> (Vec<Cell<f64>>, Vec<Cell<Lanes>>) {
        let insulated = Leg {
            insulation_m: 0.019,
            insulation_w_mk: 0.036,
            ..Leg::plastic(4.0)
        };
        let route = Route {
            intake: vec![Leg::plastic(6.0), insulated],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let of_route = cells(
            &route,
            Grid::PRODUCT,
            Roots::between((flow_kg_s, flow_kg_s)),
        );
        let all: Vec<_> = of_route.into_iter().map(|(cell, _)| cell).collect();
        let turns = skewed(&all);
        (all, turns)
    }

    /// Lanes whose air is by so many kelvin warmer than their spaces, and drier than its walls by little or by much.
    fn lanes(all: &[Cell<f64>], flow_kg_s: f64, warmer_k: f64, humidity: f64) -> State {
        let mut state = State::idle();
        for (l, cell) in (0..LANES).zip(all) {
            #[expect(clippy::cast_precision_loss, reason = "there are eight")]
            let space_c = 4.0 * l as f64 - 12.0;
            let air_c = space_c + warmer_k;
            let (saturated, _) = saturation(air_c, 95e3);
            let hour = Hour {
                seconds: 3600.0,
                air_c,
                w: humidity * saturated,
                p_pa: 95e3,
                dry_air_kg_s: flow_kg_s,
            };
            state.load(l, &hour, 3600.0);
            let around = Around {
                air_c: space_c,
                w: 0.9 * saturation(space_c, 95e3).0,
                radiant_c: space_c - 2.0,
                wind_m_s: [0.0, 1.5][l % 2],
            };
            let riser = [None, Some((0.01, 40.0))][l / 2 % 2];
            state.surround(l, &around);
            state.enter_leg(l, &around, cell, riser);
        }
        state
    }

    /// All that goes on from a cell, nought with a minus as nought.
    fn told(state: &State) -> Vec<u64> {
        let (settled, reached, solving) = (&state.settled, &state.reached, &state.solving);
        let all = [
            settled.change,
            settled.water,
            settled.frost,
            settled.drained,
            settled.pooled,
            settled.wall_c,
            settled.t_c,
            settled.w,
            settled.taken_w_m,
            reached.wall_c,
            reached.surface_c,
            reached.surface_slope,
            reached.wall_slope,
            reached.fades,
            reached.half_before,
            reached.vapour,
            solving.sweat,
        ];
        all.as_flattened()
            .iter()
            .map(|n| (n + 0.0).to_bits())
            .collect()
    }

    #[test]
    fn a_wall_far_from_boiling_bends_no_step() {
        for p_pa in [50e3, 80e3, 120e3] {
            let warmest = (-80..=45).map(f64::from);
            for t_c in warmest.filter(|t_c| *t_c <= UNBENT_UP_TO_C) {
                let (w, slope) = saturation(t_c, p_pa);
                let bend = slope / (1.0 + w) * UNBENT_K;
                assert!(bend < CONVERGED_LN, "{bend} at {t_c} °C, {p_pa} Pa");
            }
        }
    }

    /// Were a term left out that is not nought, or a wall taken as dry that is not, some bit would differ.
    #[test]
    fn a_dry_turn_is_the_full_one_to_the_last_bit() {
        let mut dry_turns = 0;
        // Of flows that creep there are many, for a cell's transfer units to come by what makes a wall even.
        let creeping = (20..60).map(|step| 1e-7 * f64::from(step));
        for flow_kg_s in creeping.chain([2e-5, 1e-4, 5e-4, 2e-3]) {
            let (all, turns) = turns(flow_kg_s);
            for (warmer_k, humidity) in [
                (-8.0, 0.3),
                (-8.0, 0.95),
                (0.0, 0.9),
                (0.5, 0.97),
                (3.0, 0.5),
                (10.0, 0.45),
                (10.0, 0.55),
                (25.0, 0.1),
                (25.0, 0.3),
                (50.0, 0.05),
                (65.0, 0.02),
            ] {
                let mut dry = lanes(&all, flow_kg_s, warmer_k, humidity);
                let mut full = dry.clone();
                for cell in turns.iter().cycle().take(2 * turns.len()) {
                    dry.meet(cell);
                    full.meet(cell);
                    if dry.arrives_dry() && dry.exchange_dry(cell) {
                        dry_turns += 1;
                        dry.tally_dry(cell);
                    } else {
                        dry.guess(cell);
                        dry.exchange_wet(cell);
                        dry.tally(cell);
                    }
                    full.exchange_wet(cell);
                    full.tally(cell);
                    assert_eq!(
                        format!("{:?}", dry.tally),
                        format!("{:?}", full.tally),
                        "what it comes to"
                    );
                    assert_eq!(
                        told(&dry),
                        told(&full),
                        "{flow_kg_s} kg/s, {warmer_k} K, {humidity}"
                    );
                    for state in [&mut dry, &mut full] {
                        state.flow_on(&[1.0; LANES]);
                        state.film.water = state.settled.water;
                        state.film.frost = state.settled.frost;
                    }
                }
            }
        }
        assert!(200 < dry_turns, "{dry_turns} turns were dry");
    }
}
