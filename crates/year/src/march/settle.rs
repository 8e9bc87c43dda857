//! The end of a cell: the last, linear step, what the wall has taken up, and the air that goes on.

use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};

use super::balance::{change_of_frost, change_of_pool, frozen_share, grows};
use super::cell::Cell;
use super::lanes::{LANES, Lanes, any_above, larger, smaller};
use super::state::{Reached, Solving, State};

/// By how much `ln(1 + W)` at saturation bends upwards, and how that grows, of its slope, 1/K and 1/K2: no more than it does from any wall to any warmer air, from 50 to 120 kPa; it bends least at 48 °C.
const BEND_K: f64 = 0.024;
const BEND_K2: f64 = 0.00045;

/// Air that is no farther from its space nears it no more, K2.
const NO_DIFFERENCE_K2: f64 = 1e-9;

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

/// No less than `ln(1 + W)` of air that had `ln_before`, of the vapour before and now, kg/kg.
///
/// The logarithm bends down, and the reciprocal of `1 + W` lies above `1 - W`.
#[inline(always)]
fn most_ln(ln_before: f64, (before, now): (f64, f64)) -> f64 {
    let gains = now - before;
    ln_before + larger(gains, gains * (1.0 - before))
}

/// How surface and wall go on from the middle of a cell, as the last step leaves them: as the air nears the space of `space_c` along the cell, to `end_c`.
#[inline(always)]
pub(super) fn go_on(
    reached: &mut Reached,
    solving: &Solving,
    cell: &Cell<Lanes>,
    l: usize,
    (space_c, end_c): (f64, f64),
) {
    let apart = reached.t_c[l] - space_c;
    let nears = (reached.t_c[l] - end_c) * apart / (apart * apart + NO_DIFFERENCE_K2);
    reached.fades[l] = smaller(larger(nears, 0.0), 1.0) * cell.per_length[l];
    reached.half_before[l] = 0.5 * cell.length[l];
    let along = solving.wall_change[l] / solving.by_surface[l];
    reached.surface_c[l] = solving.surface_c[l] + solving.step[l];
    reached.surface_slope[l] = along * cell.per_length[l];
    reached.wall_slope[l] = solving.wall_change[l] * cell.per_length[l];
}

impl State {
    /// Lanes, a bit each, from whose walls water runs off.
    pub(super) fn draining(&self) -> u8 {
        let mut bits = 0;
        for (l, drained) in self.settled.drained.iter().enumerate() {
            bits |= u8::from(0.0 < *drained) << l;
        }
        bits
    }

    /// Takes the solved balance over into the wall and the air.
    ///
    /// The water that the air loses is, to rounding, what the wall gains; its heat follows from its own exchange.
    #[inline(always)]
    pub(super) fn settle(&mut self, cell: &Cell<Lanes>) {
        let (given, film, solving, settled) =
            (&self.given, &self.film, &self.solving, &mut self.settled);
        for l in 0..LANES {
            let wall_step = solving.by_surface[l] * solving.step[l];
            let ln_wall = solving.ln_wall[l] + solving.ln_wall_slope[l] * wall_step;
            let (growth, (film_change, _)) = grows((given, film, solving), cell, l, ln_wall);
            let (ice_change, _) = change_of_frost(growth, film.water[l] + film.frost[l]);
            let (pooled, _) = change_of_pool(growth, film.pool[l], film.pooled[l]);
            settled.wall_c[l] = solving.wall_c[l] + wall_step;
            settled.change[l] = film_change + film.ice[l] * (ice_change - film_change);
            settled.pooled[l] = pooled;
            settled.ln_wall[l] = ln_wall;
        }
        if any_above(&given.still, 0.5) {
            self.keep_back(cell);
        }
        let (given, film, solving, settled) =
            (&self.given, &self.film, &self.solving, &mut self.settled);
        let reached = &mut self.reached;
        for l in 0..LANES {
            let (wall_c, ln_wall) = (settled.wall_c[l], settled.ln_wall[l]);
            let (change, pooled) = (settled.change[l], settled.pooled[l]);
            let before = film.water[l] + film.frost[l];
            let frozen = frozen_share(wall_c);
            let vapour = (change + pooled) * given.per_second[l] * cell.inner[l];
            let above = (reached.t_c[l] - wall_c) * solving.mean_heat[l] + solving.added_heat[l];
            let per_flow = cell.length[l] * given.per_flow[l];
            let w = reached.w[l] - vapour * per_flow;
            // What the vapour takes along is counted at the mean of air and wall.
            let taken = film.heat[l] * above + vapour * VAPOUR_CP * (wall_c + 0.5 * above);
            let t_c = ((DRY_AIR_CP + VAPOUR_CP * reached.w[l]) * reached.t_c[l] - taken * per_flow)
                / (DRY_AIR_CP + VAPOUR_CP * w);
            let left = kept(before + change, frozen, cell.retained[l]);
            settled.drained[l] = left.drained;
            settled.water[l] = left.water;
            settled.frost[l] = left.frost;
            settled.t_c[l] = t_c;
            settled.w[l] = w;
            let most = most_ln(film.ln_vapour[l], (reached.w[l], w));
            settled.clear_by[l] = ln_wall + solving.ln_wall_slope[l] * rises(wall_c, t_c) - most;
            settled.taken_w_m[l] = taken;
            settled.dries_by[l] = solving.ln_wall[l] - film.ln_vapour[l];
            reached.wall_c[l] = wall_c;
            reached.vapour[l] = vapour;
            go_on(reached, solving, cell, l, (given.air_c[l], t_c));
        }
    }

    /// Air that stands comes to rest with the wall, and no farther.
    fn keep_back(&mut self, cell: &Cell<Lanes>) {
        let (given, reached, film, settled) =
            (&self.given, &self.reached, &self.film, &mut self.settled);
        for l in 0..LANES {
            let apart = (film.ln_vapour[l] - settled.ln_wall[l]).abs();
            let rests = (1.0 + reached.w[l]) * apart
                / (cell.length[l] * given.per_flow[l] * given.per_second[l] * cell.inner[l]);
            let all = (settled.change[l] + settled.pooled[l]).abs();
            if 0.5 < given.still[l] && rests < all {
                settled.change[l] *= rests / all;
                settled.pooled[l] *= rests / all;
            }
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

    /// Were it below the logarithm, mist would be missed; were it far above, each turn would be asked for it.
    #[test]
    fn vapour_is_bounded_from_above_and_closely() {
        for before in [0.0, 1e-4, 0.005, 0.03, 0.2, 0.9, 2.5] {
            for share in [-0.9, -0.1, -1e-3, 0.0, 1e-3, 0.1, 0.9] {
                let now = before * (1.0 + share);
                let most = most_ln(ln(1.0 + before), (before, now));
                let over = most - ln(1.0 + now);
                assert!(-1e-15 <= over, "{over} from {before} to {now}");
                let close = before * (now - before).abs() * (1.0 + before);
                assert!(over <= 2.0 * close + 1e-15, "{over} from {before} to {now}");
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
