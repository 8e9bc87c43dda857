//! The search for the surface of a cell: how far the next trial goes, when the means over the cell are settled, and when it is done.

use super::lanes::{LANES, Lanes, any_above, either, is_negative, larger, smaller};
use super::state::State;

/// A step after which the balance is taken as solved, K: it is made linearly, and leaves its square times some 0.03 per kelvin.
pub(super) const CONVERGED_K: f64 = 0.2;
/// The same of `ln(1 + W)` at saturation.
pub(super) const CONVERGED_LN: f64 = 1e-2;
/// The first near 0 °C.
const CONVERGED_AT_MELTING_K: f64 = 1e-7;
const MELTING_NEAR_K: f64 = 0.1;
/// The first where a step leads from a wall that takes up water to one that gives it off, or back: the balance has a corner there, unless all of the wall is wet.
const CONVERGED_AT_DEW_K: f64 = 0.01;
/// Longest step of the search, K.
const LONGEST_STEP_K: f64 = 40.0;
/// Trials after which the wall is taken as even along the cell, whatever they have moved.
pub(super) const MOST_SETTLING: u32 = 12;
/// The first trial settles the means over the cell where it moves surface and wall, and the wall's change along the cell, by less than this, K: they are those of where it leads.
pub(super) const SHORT_K: f64 = 2.0;
/// Else a few trials do, the last of which moves them by less than this.
const SETTLING: u32 = 2;
const SETTLED_K: f64 = 4.0;
/// A first step no longer than this, K, may be tried again from where it began.
const NEAR_K: f64 = 1.5 * CONVERGED_K;

impl State {
    /// Whether no lane has settled its means.
    #[inline(always)]
    pub(super) fn all_open(&self) -> bool {
        !any_above(&self.solving.settled, 0.5)
    }

    /// The same as [`State::step`] where nothing is known yet and no means are settled.
    #[inline(always)]
    pub(super) fn first_step(&mut self, l: usize) {
        let solving = &mut self.solving;
        let longest_k = LONGEST_STEP_K / larger(solving.by_surface[l], 1.0);
        let newton = -solving.missing[l] / solving.slope[l];
        let step = smaller(larger(newton, -longest_k), longest_k);
        let surface_c = solving.surface_c[l];
        // Rounded as `step` rounds it.
        solving.surface_c[l] = surface_c + ((surface_c + step) - surface_c);
        solving.step[l] = step;
    }

    /// The next step of the search; a lane whose means are settled may be done, and then moves no more, but keeps its last step for the end.
    #[inline(always)]
    pub(super) fn step(&mut self, l: usize, bisects: u64) {
        let solving = &mut self.solving;
        let surface_c = solving.surface_c[l];
        let newton = -solving.missing[l] / solving.slope[l];
        // Under insulation the wall moves much farther than the surface: too far for what the means make of it.
        let farther = solving.by_surface[l] * (1.0 - solving.settled[l]);
        let longest_k = LONGEST_STEP_K / larger(farther, 1.0);
        let newton = smaller(larger(newton, -longest_k), longest_k);
        // The missing heat falls with the surface's temperature.
        let falls = is_negative(solving.missing[l]);
        let high = either(falls, surface_c, solving.high[l]);
        let low = either(falls, solving.low[l], surface_c);
        let proposed = surface_c + newton;
        // A proposal beyond what is known gives way to the middle; one that is where the search stands already does not.
        let middle = 0.5 * (low + high);
        let beyond = is_negative(proposed - low) | is_negative(high - proposed);
        let next = either(beyond | bisects, middle, proposed);
        // The last step is made as it is: it leads no farther than what is known.
        let step = smaller(larger(newton, low - surface_c), high - surface_c);
        let wall_step = solving.by_surface[l] * step;
        let near = smaller(
            solving.wall_c[l].abs() - wall_step.abs(),
            surface_c.abs() - step.abs(),
        );
        let melts = is_negative(near - MELTING_NEAR_K);
        let falls_by = solving.ln_wall_slope[l] * solving.mean_mass[l] * wall_step;
        let turns = is_negative(solving.force[l] * (solving.force[l] - falls_by));
        let enough = either(turns, CONVERGED_AT_DEW_K, CONVERGED_K);
        let enough = either(melts, CONVERGED_AT_MELTING_K, enough);
        let size = smaller(step.abs(), high - low);
        // Near boiling the linear step holds for less.
        let bend = solving.ln_wall_slope[l] * wall_step.abs();
        let is_small = is_negative(size - enough) & is_negative(bend - CONVERGED_LN);
        let near_enough = either(is_small, solving.settled[l], 0.0);
        let done = larger(solving.done[l], near_enough);
        solving.surface_c[l] = surface_c + (next - surface_c) * (1.0 - done);
        solving.done[l] = done;
        solving.step[l] = step;
        solving.low[l] = low;
        solving.high[l] = high;
    }

    /// A lane keeps its means where the first trial moves little, else once a few have gone by and the last of them was near.
    ///
    /// Until then nothing is known of where the surface is: each trial is that of another balance.
    #[inline(always)]
    pub(super) fn settle_means(&mut self, trial: u32) {
        let solving = &mut self.solving;
        // The first trial counts by how much the wall's change has turned too.
        let (turned, enough_k) = match trial {
            0 => (1.0, SHORT_K),
            MOST_SETTLING.. => (0.0, f64::INFINITY),
            _ if SETTLING <= trial + 1 => (0.0, SETTLED_K),
            _ => (0.0, 0.0),
        };
        for l in 0..LANES {
            let moves_k = solving.step[l].abs() * larger(solving.by_surface[l], 1.0);
            let moves_k = larger(moves_k, turned * solving.wall_turn[l].abs());
            let near = either(is_negative(moves_k - enough_k), 1.0, 0.0);
            let open = is_negative(solving.settled[l] - 0.5);
            solving.low[l] = either(open, -1e3, solving.low[l]);
            solving.high[l] = either(open, 1e3, solving.high[l]);
            solving.settled[l] = larger(solving.settled[l], near);
        }
    }

    /// Puts those lanes back to the surfaces they have tried that have settled their means so near there that another step, by the means that the first has led to, may be the last; true where all of them are there.
    ///
    /// All but the means is known of those surfaces already.
    #[inline(always)]
    pub(super) fn goes_back(&mut self, tried_c: &Lanes) -> bool {
        let solving = &mut self.solving;
        let mut moved: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let near = is_negative(solving.step[l].abs() - NEAR_K);
            let near = near & !is_negative(solving.settled[l] - 0.5);
            solving.surface_c[l] = either(near, tried_c[l], solving.surface_c[l]);
            moved[l] = either(near, 0.0, 1.0);
        }
        !any_above(&moved, 0.5)
    }
}
