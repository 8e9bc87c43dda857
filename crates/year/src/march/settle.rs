//! The end of a cell: the last, linear step, what the wall has taken up, and the air that goes on.

use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};
use dewrun_numeric::plain::plain_ln;

use super::balance::{change_of_frost, change_of_pool, frozen_share, grows};
use super::cell::Cell;
use super::lanes::{LANES, Lanes, larger, smaller};
use super::state::{Reached, Solving, State};

/// By how much `ln(1 + W)` at saturation bends upwards, and how that grows, of its slope, 1/K and 1/K2: no more than it does from any wall to any warmer air, from 50 to 120 kPa; it bends least at 48 °C.
const BEND_K: f64 = 0.024;
const BEND_K2: f64 = 0.00045;

/// Share by which the slope of saturation over ice is steeper at 0 °C than over water, and more: heats of 2834 and 2501 kJ/kg.
const TURNS: f64 = 0.14;

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

/// By how much `ln(1 + W)` at saturation rises at least from a wall to air, over its slope at the wall, K.
///
/// It bends upwards by more than [`BEND_K`] and [`BEND_K2`] say; where 0 °C lies between them, its slope turns there by [`TURNS`].
#[inline(always)]
fn rises(wall_c: f64, air_c: f64) -> f64 {
    let warmer = air_c - wall_c;
    let thawed = smaller(larger(wall_c, 0.0), 1.0);
    let frozen = smaller(larger(-wall_c, 0.0), 1.0);
    let beyond = (1.0 - thawed) * larger(air_c, 0.0) + (1.0 - frozen) * larger(-air_c, 0.0);
    let bent = larger(warmer, 0.0);
    warmer + bent * bent * (BEND_K + BEND_K2 * bent) - TURNS * beyond
}

/// How surface and wall go on from the end of a cell, as the last step leaves them.
#[inline(always)]
pub(super) fn go_on(reached: &mut Reached, solving: &Solving, cell: &Cell<Lanes>, l: usize) {
    let along = solving.wall_change[l] / solving.by_surface[l];
    reached.surface_c[l] = solving.surface_c[l] + solving.step[l] + 0.5 * along;
    reached.surface_slope[l] = along * cell.per_length[l];
    reached.wall_slope[l] = solving.wall_change[l] * cell.per_length[l];
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
            let (growth, (film_change, _)) = grows((given, film, solving), cell, l, ln_wall);
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
            settled.clear_by[l] =
                ln_wall + solving.ln_wall_slope[l] * rises(wall_c, t_c) - plain_ln(1.0 + w);
            settled.taken_w_m[l] = taken;
            settled.dries_by[l] = solving.ln_wall[l] - film.ln_vapour[l];
            reached.wall_c[l] = wall_c;
            reached.vapour[l] = vapour;
            go_on(reached, solving, cell, l);
        }
    }
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::fog::saturation;
    use dewrun_numeric::elementary::ln;

    use super::*;

    /// Were the bound above saturation, mist would be missed.
    #[test]
    fn saturation_rises_by_no_less_than_its_bound() {
        for p_pa in [50e3, 80e3, 101_325.0, 120e3] {
            for wall in -80..78 {
                let wall_c = f64::from(wall) + 0.5;
                let (wall_w, slope) = saturation(wall_c, p_pa);
                for warmer in [
                    -20.0, -3.0, -0.1, 0.1, 0.6, 1.0, 2.0, 5.0, 9.0, 14.0, 20.0, 30.0, 40.0,
                ] {
                    let air_c = wall_c + warmer;
                    let (w, _) = saturation(air_c, p_pa);
                    // Saturation is a fit, and its slope that of the fit, to some 1e-5.
                    let most = ln(1.0 + w) * (1.0 + 1e-5) + 1e-12;
                    let least = ln(1.0 + wall_w) + slope / (1.0 + wall_w) * rises(wall_c, air_c);
                    assert!(
                        least < most,
                        "{least} for {w} at {air_c} °C over {wall_c} °C, {p_pa} Pa"
                    );
                }
            }
        }
    }

    #[test]
    fn most_of_the_rise_is_counted() {
        let (wall_w, slope) = saturation(15.0, 101_325.0);
        let (w, _) = saturation(20.0, 101_325.0);
        let rise = ln((1.0 + w) / (1.0 + wall_w)) / (slope / (1.0 + wall_w));
        let counted = rises(15.0, 20.0);
        assert!(5.0 < counted && counted < rise, "{counted} K of {rise} K");
    }
}
