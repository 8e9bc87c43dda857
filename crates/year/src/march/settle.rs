//! The end of a cell: the last, linear step, what the wall has taken up, and the air that goes on.

use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};
use dewrun_numeric::plain::plain_ln;

use super::balance::{change_of_film, change_of_frost, change_of_pool, frozen_share};
use super::cell::Cell;
use super::lanes::{LANES, Lanes, larger};
use super::state::State;

/// What is on a wall when a step is over, kg/m2, and what has run off.
#[derive(Debug, Clone, Copy)]
pub(super) struct Kept {
    pub(super) water: f64,
    pub(super) frost: f64,
    pub(super) drained: f64,
}

/// Frost does not drain; of the water that is not frozen the wall keeps what it can.
#[inline(always)]
pub(super) fn kept(all: f64, frozen: f64, retained: f64) -> Kept {
    let frost = frozen * all;
    let water = all - frost;
    let drained = larger(water - retained, 0.0);
    Kept {
        water: water - drained,
        frost,
        drained,
    }
}

impl State {
    /// Takes the solved balance over into the wall and the air.
    ///
    /// The water that the air loses is, to rounding, what the wall gains; its heat follows from its own exchange.
    #[inline(always)]
    pub(super) fn settle(&mut self, cell: &Cell<Lanes>) {
        let (given, film, solving, settled) =
            (&self.given, &self.film, &self.solving, &mut self.settled);
        let reached = &mut self.reached;
        for l in 0..LANES {
            let wall_step = solving.by_surface[l] * solving.step[l];
            let wall_c = solving.wall_c[l] + wall_step;
            let ln_wall = solving.ln_wall[l] + solving.ln_wall_slope[l] * wall_step;
            let force = (film.ln_vapour[l] - ln_wall) * solving.mean_mass[l]
                + solving.ln_wall_slope[l] * solving.added_mass[l];
            let growth = film.mass[l] * force * given.seconds[l] * cell.per_inner[l];
            let (film_change, _) = change_of_film(
                growth,
                film.wet[l],
                film.root[l],
                cell.root_step[l],
                cell.per_root[l],
            );
            let before = film.water[l] + film.frost[l];
            let frozen = frozen_share(wall_c);
            let (ice_change, _) = change_of_frost(growth, before);
            let change = film_change + film.ice[l] * (ice_change - film_change);
            let (pooled, _) = change_of_pool(growth, film.pool[l], film.pooled[l]);
            // Air that stands comes to rest with the wall, and no farther.
            let rests = (1.0 + reached.w[l]) * (film.ln_vapour[l] - ln_wall).abs()
                / (cell.length[l] * given.per_flow[l] * given.per_second[l] * cell.inner[l]);
            let all = (change + pooled).abs();
            let kept_back = if 0.5 < given.still[l] && rests < all {
                rests / all
            } else {
                1.0
            };
            let (change, pooled) = (change * kept_back, pooled * kept_back);
            let vapour = (change + pooled) * given.per_second[l] * cell.inner[l];
            let above = (reached.t_c[l] - wall_c) * solving.mean_heat[l] + solving.added_heat[l];
            let per_flow = cell.length[l] * given.per_flow[l];
            let w = reached.w[l] - vapour * per_flow;
            // What the vapour takes along is counted at the mean of air and wall.
            let taken = film.heat[l] * above + vapour * VAPOUR_CP * (wall_c + 0.5 * above);
            let t_c = ((DRY_AIR_CP + VAPOUR_CP * reached.w[l]) * reached.t_c[l] - taken * per_flow)
                / (DRY_AIR_CP + VAPOUR_CP * w);
            let left = kept(before + change, frozen, cell.retained[l]);
            settled.change[l] = change;
            settled.drained[l] = left.drained;
            settled.pooled[l] = pooled;
            settled.water[l] = left.water;
            settled.frost[l] = left.frost;
            settled.wall_c[l] = wall_c;
            settled.t_c[l] = t_c;
            settled.w[l] = w;
            // Saturation bends upwards: its tangent at the wall is never above it.
            settled.clear_by[l] =
                ln_wall + solving.ln_wall_slope[l] * (t_c - wall_c) - plain_ln(1.0 + w);
            settled.taken_w_m[l] = taken;
            let along = solving.wall_change[l] / solving.by_surface[l];
            reached.surface_c[l] = solving.surface_c[l] + solving.step[l] + 0.5 * along;
            reached.surface_slope[l] = along / cell.length[l];
            reached.wall_slope[l] = solving.wall_change[l] / cell.length[l];
            reached.vapour[l] = vapour;
        }
    }
}
