//! The wall's balance of a cell: the one temperature of the outer surface at which what the air gives is what the outside takes.
//!
//! What deposits and what dries is the mean over the step, found together with the wall's temperature;
//! the difference between air and wall is its mean over the cell.

use dewrun_moist_air::ZERO_CELSIUS_K;
use dewrun_moist_air::fast::{plain_fraction_over_ice, plain_fraction_over_water};
use dewrun_moist_air::latent::{FUSION, VAPOUR_CP, sublimation_j_kg, vaporisation_j_kg};
use dewrun_tube::film_outside::plain::conductivity_w_mk;

use super::cell::{AT_ONE_PLACE_M, Cell};
use super::inside::within_range;
use super::lanes::{LANES, Lanes, any_below, either, is_negative, larger, smaller};
use super::mean::{decay, force, whole_units};
use super::outside::ln_vapour;
use super::search::{MOST_SETTLING, SHORT_K};
use super::state::{Film, Given, Reached, Solving, State};

/// Half the stretch over which a wall held at 0 °C goes from all water to all ice, K, as the steady march has it.
const MELTING_HALF_BAND_K: f64 = 1e-3;
/// Walls from here up hold no ice, °C; colder ones are asked.
const SURELY_WATER_C: f64 = 0.5;
/// The missing heat falls at least as fast as this for the search, W/(m K).
const LEAST_SLOPE_W_MK: f64 = 1e-3;
/// Transfer units of a cell from which on its wall is taken as even at once, as it is at one place: the air comes to rest with it in a part of the cell.
pub(super) const EVEN_FROM_UNITS: f64 = 4.0;
/// Trials after which the search halves what is known, whatever the slope proposes: past the range of the properties it creeps.
const BISECTS_FROM: u32 = 40;
/// More than halving takes from there to the last bit.
const MOST_STEPS: u32 = BISECTS_FROM + 50;

/// What a wall takes up in a step, of a growth that a wholly wet wall would have (kg/m2, of either sign): its change, and the share of the wall that takes part.
#[inline(always)]
fn change_of_film(growth: f64, water: f64, root: f64, root_step: f64, per_root: f64) -> (f64, f64) {
    let left = larger(root + growth * root_step, 0.0);
    let dried = left * left * left - water;
    let share = left * per_root;
    let dries = is_negative(growth);
    (
        either(dries, dried, growth),
        either(dries, share * share, 1.0),
    )
}

/// What a wholly wet wall would take up in the step at a wall's `ln(1 + W)`, kg/m2, and what a film makes of it: its change, and the share of the wall that takes part.
#[inline(always)]
pub(super) fn grows(
    (given, film, solving): (&Given, &Film, &Solving),
    cell: &Cell<Lanes>,
    l: usize,
    ln_wall: f64,
) -> (f64, (f64, f64)) {
    let force = force(film, solving, l, ln_wall);
    let growth = film.mass[l] * force * given.seconds[l] * cell.per_inner[l];
    let of_film = change_of_film(
        growth,
        film.wet[l],
        film.root[l],
        cell.root_step[l],
        cell.per_root[l],
    );
    (growth, of_film)
}

/// What a wall takes up in a step where what is on it is ice: all of the wall takes part, until nothing is left.
#[inline(always)]
pub(super) fn change_of_frost(growth: f64, all: f64) -> (f64, f64) {
    let gone = is_negative(growth + all);
    (either(gone, -all, growth), either(gone, 0.0, 1.0))
}

/// What dries from standing water, of a growth that a wholly wet wall would have: its change, and its surface while there is any left.
#[inline(always)]
pub(super) fn change_of_pool(growth: f64, surface: f64, all: f64) -> (f64, f64) {
    let wanted = smaller(growth, 0.0) * surface;
    let gone = is_negative(wanted + all);
    let share = either(is_negative(growth) & !gone, surface, 0.0);
    (either(gone, -all, wanted), share)
}

/// Share of what is on a wall that is ice when a step is over: between water and ice the wall stays at 0 °C, and the share is the unknown.
#[inline(always)]
pub(super) fn frozen_share(wall_c: f64) -> f64 {
    smaller(larger(0.5 - 0.5 / MELTING_HALF_BAND_K * wall_c, 0.0), 1.0)
}

/// Heat that a kilogram of deposit gives up, its slope, and the share that freezes.
#[inline(always)]
fn deposition(wall_c: f64) -> (f64, f64, f64) {
    let water = vaporisation_j_kg(wall_c);
    let ice = sublimation_j_kg(smaller(wall_c, 0.0));
    let share = frozen_share(wall_c);
    let between = 0.0 < share && share < 1.0;
    let slope = if between {
        -0.5 / MELTING_HALF_BAND_K * (ice - water)
    } else {
        -2.4e3
    };
    (water + share * (ice - water), slope, share)
}

/// How the wall changes along a cell if it goes on as in the one before: it lies between the air and its surroundings, and changes by no more than they differ.
#[inline(always)]
pub(super) fn change_before(
    reached: &Reached,
    solving: &Solving,
    cell: &Cell<Lanes>,
    l: usize,
) -> f64 {
    let apart = (reached.t_c[l] - solving.surface_c[l]).abs();
    let middles = 0.5 * cell.length[l] + reached.half_before[l];
    let left = 1.0 - smaller(reached.fades[l] * middles, 1.0);
    let change = left * reached.wall_slope[l] * cell.length[l];
    smaller(larger(change, -apart), apart)
}

impl State {
    /// Solves the balances of all lanes.
    #[inline(always)]
    pub(super) fn solve(&mut self, cell: &Cell<Lanes>) {
        self.begin(cell);
        for trial in 0..MOST_STEPS {
            let bisects = if BISECTS_FROM <= trial { u64::MAX } else { 0 };
            self.convect(cell);
            self.sweat(cell);
            self.through(cell);
            let cold = any_below(&self.solving.wall_c, SURELY_WATER_C);
            if cold {
                self.over_any();
            } else {
                self.over_water();
            }
            let any = cold || self.film.ice_or_pools;
            let tried_c = self.solving.surface_c;
            if trial == 0 && self.all_open() {
                self.weigh(cell, any, State::first_step);
            } else {
                self.weigh(cell, any, |state, l| state.step(l, bisects));
            }
            if any_below(&self.solving.settled, 0.5) {
                if MOST_SETTLING <= trial {
                    self.even_means(cell);
                } else {
                    self.means(cell, if trial == 0 { SHORT_K } else { 0.0 });
                }
                self.settle_means(trial);
                if trial == 0 && self.goes_back(&tried_c) {
                    self.weigh(cell, any, |state, l| state.step(l, bisects));
                    if !any_below(&self.solving.done, 0.5) {
                        break;
                    }
                }
            } else if !any_below(&self.solving.done, 0.5) {
                break;
            }
        }
    }

    /// What is missing at the surfaces that are tried, and the next step of each; with ice or water that stands, where there may be `any`.
    #[inline(always)]
    fn weigh(&mut self, cell: &Cell<Lanes>, any: bool, step: impl Fn(&mut Self, usize)) {
        // One loop for all three: short ones would be unrolled, and then not go side by side.
        if any {
            for l in 0..LANES {
                self.take_up_any(cell, l);
                self.miss(l);
                step(self, l);
            }
        } else {
            for l in 0..LANES {
                self.take_up(cell, l);
                self.miss(l);
                step(self, l);
            }
        }
    }

    /// Before the first trial the means are those of a wall that changes as in the cell before, and takes part as a whole.
    #[inline(always)]
    fn begin(&mut self, cell: &Cell<Lanes>) {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &self.film, &mut self.solving);
        for l in 0..LANES {
            let (heat_units, mass_units) = whole_units(given, film, cell, l);
            let surface = 1.0 + film.pool[l];
            let even = EVEN_FROM_UNITS < larger(heat_units, surface * mass_units)
                || cell.length[l] <= AT_ONE_PLACE_M;
            let mass_units = if even {
                surface * mass_units
            } else {
                mass_units
            };
            let (mean_heat, bent_heat) = decay(heat_units);
            let (mean_mass, bent_mass) = decay(mass_units);
            let wall_change = change_before(reached, solving, cell, l);
            let wall_change = if even { 0.0 } else { wall_change };
            solving.mean_heat[l] = mean_heat;
            solving.mean_mass[l] = mean_mass;
            solving.added_heat[l] = bent_heat * wall_change;
            solving.added_mass[l] = bent_mass * wall_change;
            solving.wall_change[l] = wall_change;
            // A cautious guess of the wall, to ask whether ice is to be thought of.
            solving.wall_c[l] = smaller(reached.t_c[l], solving.surface_c[l]);
            // A lane without an hour has nothing to solve.
            solving.done[l] = if 0.0 < given.seconds[l] { 0.0 } else { 1.0 };
            solving.settled[l] = if even { 1.0 } else { solving.done[l] };
        }
        solving.frozen = [0.0; LANES];
        solving.low = [-1e3; LANES];
        solving.high = [1e3; LANES];
    }

    /// Heat through the wall at the surface that is tried, and the inner wall that it makes.
    #[inline(always)]
    pub(super) fn through(&mut self, cell: &Cell<Lanes>) {
        let (given, solving) = (&self.given, &mut self.solving);
        for l in 0..LANES {
            let surface_c = solving.surface_c[l];
            let difference = surface_c - given.air_c[l];
            let film_c = within_range(0.5 * (surface_c + given.air_c[l]));
            let convection = solving.number[l] * conductivity_w_mk(film_c) * cell.per_outer[l];
            let surface_k = surface_c + ZERO_CELSIUS_K;
            let radiant_k = given.radiant_k[l];
            let squares = surface_k * surface_k + radiant_k * radiant_k;
            let radiation = cell.radiative[l] * squares * (surface_k + radiant_k);
            let loss =
                cell.outer[l] * (convection * difference + radiation * (surface_k - radiant_k));
            let cubed = 4.0 * cell.radiative[l] * surface_k * surface_k * surface_k;
            let loss_slope = cell.outer[l] * (convection * (1.0 + solving.exponent[l]) + cubed);
            let through = loss - solving.sweat_heat[l];
            let outward = loss_slope - solving.sweat_slope[l];
            let from_air = through - cell.tracing[l];
            let wall_c = surface_c + through * cell.insulation[l] + from_air * cell.tube[l];
            solving.outward[l] = outward;
            solving.from_air[l] = from_air;
            solving.wall_c[l] = wall_c;
            solving.held_c[l] = within_range(wall_c);
            solving.by_surface[l] = 1.0 + outward * (cell.insulation[l] + cell.tube[l]);
        }
    }

    /// Saturation and heat of deposition at walls that are surely above 0 °C.
    #[inline(always)]
    fn over_water(&mut self) {
        let (given, solving) = (&self.given, &mut self.solving);
        solving.frozen = [0.0; LANES];
        let mut fraction: Lanes = [0.0; LANES];
        let mut slope: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let held_c = solving.held_c[l];
            (fraction[l], slope[l]) =
                plain_fraction_over_water(held_c, given.p_pa[l], given.per_pa[l]);
            solving.deposit[l] = vaporisation_j_kg(held_c);
            solving.deposit_slope[l] = -2.4e3;
        }
        (solving.ln_wall, solving.ln_wall_slope) = ln_vapour((&fraction, &slope));
    }

    /// The same where some may be below.
    #[inline(always)]
    fn over_any(&mut self) {
        self.over_water();
        let (given, solving) = (&self.given, &mut self.solving);
        let mut fraction: Lanes = [0.0; LANES];
        let mut slope: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let cold_c = smaller(solving.held_c[l], 0.0);
            (fraction[l], slope[l]) =
                plain_fraction_over_ice(cold_c, given.p_pa[l], given.per_pa[l]);
        }
        let (ice, ice_slope) = ln_vapour((&fraction, &slope));
        for l in 0..LANES {
            let held_c = solving.held_c[l];
            let (deposit, slope, frozen) = deposition(held_c);
            let cold = held_c < 0.0;
            solving.ln_wall[l] = if cold { ice[l] } else { solving.ln_wall[l] };
            solving.ln_wall_slope[l] = if cold {
                ice_slope[l]
            } else {
                solving.ln_wall_slope[l]
            };
            solving.deposit[l] = deposit;
            solving.deposit_slope[l] = slope;
            solving.frozen[l] = frozen;
        }
    }

    /// What the wall takes up at the temperature that it has, where nothing but a film is on it and nothing freezes.
    #[inline(always)]
    fn take_up(&mut self, cell: &Cell<Lanes>, l: usize) {
        let (given, film, solving) = (&self.given, &self.film, &mut self.solving);
        let ln_wall = solving.ln_wall[l];
        let (_, (change, share)) = grows((given, film, solving), cell, l, ln_wall);
        solving.force[l] = force(film, solving, l, ln_wall);
        solving.fusing[l] = 0.0;
        solving.fusing_slope[l] = 0.0;
        solving.vapour[l] = change * given.per_second[l] * cell.inner[l];
        solving.vapour_slope[l] = film.mass[l] * share;
    }

    /// The same where there may be ice, or water that stands.
    #[inline(always)]
    fn take_up_any(&mut self, cell: &Cell<Lanes>, l: usize) {
        let (given, film, solving) = (&self.given, &self.film, &mut self.solving);
        let ln_wall = solving.ln_wall[l];
        let (growth, (film_change, film_share)) = grows((given, film, solving), cell, l, ln_wall);
        solving.force[l] = force(film, solving, l, ln_wall);
        let all = film.water[l] + film.frost[l];
        let (ice_change, ice_share) = change_of_frost(growth, all);
        let frozen = solving.frozen[l];
        // What was ice when the step began dries as ice: else a wall at 0 °C had two balances.
        let change = film_change + film.ice[l] * (ice_change - film_change);
        let share = film_share + film.ice[l] * (ice_share - film_share);
        let (pool_change, pool_share) = change_of_pool(growth, film.pool[l], film.pooled[l]);
        let (change, share) = (change + pool_change, share + pool_share);
        let between = 0.0 < frozen && frozen < 1.0;
        let turning = if between {
            -0.5 / MELTING_HALF_BAND_K
        } else {
            0.0
        };
        let fusion = FUSION * cell.inner[l] * given.per_second[l];
        solving.fusing[l] = fusion * (frozen * all - film.frost[l]);
        solving.fusing_slope[l] = fusion * all * turning;
        solving.vapour[l] = change * given.per_second[l] * cell.inner[l];
        solving.vapour_slope[l] = film.mass[l] * share;
    }

    /// The heat that is missing, and how it falls with the surface's temperature.
    #[inline(always)]
    pub(super) fn miss(&mut self, l: usize) {
        let (reached, film, solving) = (&self.reached, &self.film, &mut self.solving);
        let vapour = solving.vapour[l];
        let above =
            (reached.t_c[l] - solving.wall_c[l]) * solving.mean_heat[l] + solving.added_heat[l];
        let per_kg = solving.deposit[l] + 0.5 * VAPOUR_CP * above;
        let slope = -(film.heat[l] + 0.5 * VAPOUR_CP * vapour) * solving.mean_heat[l]
            - solving.vapour_slope[l] * solving.ln_wall_slope[l] * solving.mean_mass[l] * per_kg
            + smaller(
                vapour * solving.deposit_slope[l] + solving.fusing_slope[l],
                0.0,
            );
        solving.per_kg[l] = per_kg;
        solving.missing[l] =
            film.heat[l] * above + vapour * per_kg + solving.fusing[l] - solving.from_air[l];
        solving.slope[l] = smaller(
            slope * solving.by_surface[l] - solving.outward[l],
            -LEAST_SLOPE_W_MK,
        );
    }
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::humidity::saturated_over_water;
    use dewrun_moist_air::mixture::humidity_ratio;

    use crate::hours::{Around, Hour};
    use crate::march::cell::{Cell, Grid, Roots, cells};
    use crate::march::lanes::{LANES, Lanes, skewed};
    use crate::march::state::State;
    use crate::route::{Leg, Route};

    const CREEPS_KG_S: f64 = 1.4e-5;

    /// Short cells, in which air that creeps comes to rest with a wall by and by.
    fn short() -> Vec<Cell<f64>> {
        let route = Route {
            intake: vec![Leg::plastic(2.0)],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let roots = Roots::between((CREEPS_KG_S, CREEPS_KG_S));
        let all = cells(&route, Grid::Cells(20), roots);
        all.into_iter().map(|(cell, _)| cell).collect()
    }

    /// Saturated air of a temperature in a space of the same, over a film and a pool.
    fn at_rest(all: &[Cell<f64>], space_c: f64) -> State {
        let mut state = State::idle();
        for (l, cell) in (0..LANES).zip(all) {
            let hour = Hour {
                seconds: 900.0,
                air_c: space_c,
                w: humidity_ratio(saturated_over_water(space_c, 101_325.0)),
                p_pa: 101_325.0,
                dry_air_kg_s: CREEPS_KG_S,
            };
            state.load(l, &hour, 900.0);
            let around = Around {
                air_c: space_c,
                w: 0.0,
                radiant_c: space_c,
                wind_m_s: 0.0,
            };
            state.surround(l, &around);
            state.enter_leg(l, &around, cell, None);
            state.film.water[l] = 0.05;
            state.film.pool[l] = 0.25;
            state.film.pooled[l] = 3.0;
        }
        state
    }

    fn walls_are_at(space_c: f64, within_k: f64, walls_c: Lanes) {
        for wall_c in walls_c {
            assert!(
                (wall_c - space_c).abs() < within_k,
                "{wall_c} °C in {space_c} °C"
            );
        }
    }

    /// The missing heat is nought there, or its step less than the last bit: such a step leads nowhere else.
    #[test]
    fn a_wet_wall_at_rest_with_the_air_stays_where_it_is() {
        let all = short();
        let turns = skewed(&all);
        for tenth in 50..400 {
            let space_c = 0.1 * f64::from(tenth);
            let mut state = at_rest(&all, space_c);
            for cell in turns.iter().cycle().take(3 * turns.len()) {
                state.exchange(cell);
                walls_are_at(space_c, 0.1, state.settled.wall_c);
                state.reached.t_c = state.settled.t_c;
                state.reached.w = state.settled.w;
            }
        }
    }

    /// Within what the film's properties, which are those of the start, make of it.
    #[test]
    fn a_wall_is_found_from_any_start() {
        let all = short();
        for cell in &skewed(&all) {
            for start_c in [-200.0, -60.0, 0.0, 90.0, 170.0, 500.0, 900.0] {
                let mut state = at_rest(&all, 15.0);
                state.reached.surface_c = [start_c; LANES];
                state.exchange(cell);
                walls_are_at(15.0, 0.5, state.settled.wall_c);
            }
        }
    }

    /// A dry wall near the dew point: were a step across it the last, what deposits would hang on where the search began.
    #[test]
    fn a_step_across_the_dew_point_is_not_the_last() {
        let route = Route {
            intake: vec![Leg::plastic(6.0)],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let of_route = cells(&route, Grid::PRODUCT, Roots::between((6e-4, 6e-4)));
        let cell = of_route[0].0;
        let turn = &skewed(&[cell])[0];
        let deposits = |w: f64, starts_c: Lanes| {
            let mut state = State::idle();
            for (l, start_c) in starts_c.into_iter().enumerate() {
                let hour = Hour {
                    seconds: 3600.0,
                    air_c: 30.0,
                    w,
                    p_pa: 101_325.0,
                    dry_air_kg_s: 6e-4,
                };
                state.load(l, &hour, 3600.0);
                let around = Around {
                    air_c: 20.0,
                    w: 0.0,
                    radiant_c: 20.0,
                    wind_m_s: 0.0,
                };
                state.surround(l, &around);
                state.enter_leg(l, &around, &cell, None);
                state.reached.surface_c[l] = start_c;
            }
            state.exchange(turn);
            let solving = &state.solving;
            (state.settled.change, solving.surface_c[0] + solving.step[0])
        };
        let (_, dry_c) = deposits(0.005, [25.0; LANES]);
        let starts_c = [-0.19, -0.13, -0.08, -0.02, 0.02, 0.08, 0.13, 0.19].map(|off| dry_c + off);
        let (mut most, mut apart) = (0.0_f64, 0.0_f64);
        for step in 0..200 {
            let w = 0.018 + 4e-5 * f64::from(step);
            let (change, _) = deposits(w, starts_c);
            let least = change.into_iter().fold(f64::INFINITY, f64::min);
            let here = change.into_iter().fold(0.0, f64::max);
            if here < 0.02 {
                apart = apart.max(here - least);
                most = most.max(here);
            }
        }
        assert!(0.01 < most, "{most} kg/m2 come near it");
        assert!(apart < 2e-4, "{apart} kg/m2 apart");
    }
}
