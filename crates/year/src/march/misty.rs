//! A cell in which the air is, or becomes, misty: in a few parts, each with the air of its middle in equilibrium.

use dewrun_moist_air::fog::{Content, FogAir, saturation};
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_ENTHALPY_AT_ZERO};

use super::balance::frozen_share;
use super::cell::{AT_ONE_PLACE_M, Cell};
use super::lanes::{LANES, Lanes, any_above, larger, smaller};
use super::mean::decay;
use super::settle::kept;
use super::state::State;

/// Parts of a misty cell, and trials of the middle of each.
const PARTS: u32 = 4;
const TRIALS: u32 = 2;
/// Transfer units of a part from which on it is left to what its start asks for, which fades along it: its middle would swing about the wall.
const SWINGS: f64 = 0.5;

impl State {
    /// Whether any lane with an hour has to be asked if it is misty.
    pub(super) fn may_be_misty(&self, active: &Lanes) -> bool {
        let (given, reached, settled) = (&self.given, &self.reached, &self.settled);
        let mut asks: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let moving = active[l] - given.still[l];
            asks[l] = smaller(moving, larger(reached.mist[l], 0.0 - settled.clear_by[l]));
        }
        any_above(&asks, 0.0)
    }

    /// Whether the air of a lane is misty, or would be over saturation at the end of the cell.
    pub(super) fn is_misty(&self, l: usize) -> bool {
        if 0.5 < self.given.still[l] {
            return false;
        }
        if 0.0 < self.reached.mist[l] {
            return true;
        }
        let settled = &self.settled;
        settled.clear_by[l] < 0.0 && saturation(settled.t_c[l], self.given.p_pa[l]).0 < settled.w[l]
    }

    /// Does the cell anew for the lanes that are misty; the others keep what they have.
    pub(super) fn mist(&mut self, cell: &Cell<Lanes>, misty: &[bool; LANES]) {
        let mut aside = self.clone();
        // The others have nothing to solve, and keep nobody waiting.
        for l in (0..LANES).filter(|&l| !misty[l]) {
            aside.given.seconds[l] = 0.0;
            aside.given.per_second[l] = 0.0;
        }
        let place = Cell {
            length: [AT_ONE_PLACE_M; LANES],
            per_length: [AT_ONE_PLACE_M.recip(); LANES],
            ..*cell
        };
        let start: [Content; LANES] = core::array::from_fn(|l| Content::of(self.air(l)));
        let mut content = start;
        let mut change: Lanes = [0.0; LANES];
        let mut pooled: Lanes = [0.0; LANES];
        let fading = self.fading(cell);
        for _ in 0..PARTS {
            let from = content;
            let mut middle = from;
            for _ in 0..TRIALS {
                for l in 0..LANES {
                    if misty[l] {
                        let air = middle[l].air(aside.given.p_pa[l]);
                        (aside.reached.t_c[l], aside.reached.w[l]) = (air.t_c, air.w);
                    }
                }
                aside.exchange(&place);
                for l in 0..LANES {
                    let along =
                        fading[l] * cell.length[l] * self.given.per_flow[l] / f64::from(PARTS);
                    let vapour = aside.reached.vapour[l];
                    let energy = aside.settled.taken_w_m[l] + vapour * VAPOUR_ENTHALPY_AT_ZERO;
                    content[l] = Content {
                        enthalpy_j_kg: from[l].enthalpy_j_kg - energy * along,
                        water: from[l].water - vapour * along,
                    };
                    if fading[l] < 1.0 {
                        continue;
                    }
                    middle[l] = Content {
                        enthalpy_j_kg: 0.5 * (from[l].enthalpy_j_kg + content[l].enthalpy_j_kg),
                        water: 0.5 * (from[l].water + content[l].water),
                    };
                }
            }
            for l in 0..LANES {
                change[l] += fading[l] * aside.settled.change[l] / f64::from(PARTS);
                pooled[l] += fading[l] * aside.settled.pooled[l] / f64::from(PARTS);
            }
        }
        for l in (0..LANES).filter(|&l| misty[l]) {
            // What the wall gains is what the air loses, to rounding.
            let along = cell.length[l] * self.given.per_flow[l];
            let lost = (change[l] + pooled[l]) * self.given.per_second[l] * cell.inner[l] * along;
            let end = Content {
                water: start[l].water - lost,
                ..content[l]
            };
            let air = end.air(self.given.p_pa[l]);
            self.settled.wall_c[l] = aside.settled.wall_c[l];
            self.settled.pooled[l] = pooled[l];
            self.end_misty(cell, l, air, change[l]);
            self.reached.surface_c[l] = aside.reached.surface_c[l];
            self.reached.surface_slope[l] = 0.0;
            self.reached.wall_c[l] = aside.settled.wall_c[l];
            self.reached.wall_slope[l] = 0.0;
            self.reached.vapour[l] = aside.reached.vapour[l];
        }
    }

    /// Mean over a part of what its start asks for, where so little air passes that it nears the wall within it; else 1.
    fn fading(&self, cell: &Cell<Lanes>) -> Lanes {
        core::array::from_fn(|l| {
            let heat = self.film.heat[l] / DRY_AIR_CP;
            let fastest = (1.0 + self.film.pool[l]) * larger(heat, self.film.mass[l]);
            let units = fastest * cell.length[l] * self.given.per_flow[l] / f64::from(PARTS);
            if SWINGS < units { decay(units).0 } else { 1.0 }
        })
    }

    fn end_misty(&mut self, cell: &Cell<Lanes>, l: usize, air: FogAir, change: f64) {
        let settled = &mut self.settled;
        let all = self.film.water[l] + self.film.frost[l] + change;
        let left = kept(all, frozen_share(settled.wall_c[l]), cell.retained[l]);
        settled.change[l] = change;
        settled.drained[l] = left.drained;
        settled.water[l] = left.water;
        settled.frost[l] = left.frost;
        (settled.t_c[l], settled.w[l]) = (air.t_c, air.w);
        self.reached.mist[l] = air.mist;
    }

    /// The air that a lane has reached.
    pub(super) fn air(&self, l: usize) -> FogAir {
        let reached = &self.reached;
        FogAir {
            t_c: reached.t_c[l],
            w: reached.w[l],
            mist: reached.mist[l],
        }
    }
}
