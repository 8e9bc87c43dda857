//! The mean over a cell of the difference between air and wall, of temperature and of vapour.
//!
//! With a wall of even slope the air nears it exponentially. The means are rational in the number of transfer units,
//! after Padé's (2,3) form of the exponential: right to 1e-4 at one unit, and bounded however many there are.

use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};

use super::cell::Cell;
use super::lanes::{LANES, Lanes, larger, smaller};
use super::state::State;

/// No growth below this, kg/m2, tells the share of a wall that dries.
const LEAST_GROWTH: f64 = 1e-30;

/// Mean of a decay over `units`, of its start; and what an even slope of the wall adds, of the wall's change over the cell.
#[inline(always)]
fn decay(units: f64) -> (f64, f64) {
    let square = units * units;
    let below = 1.0 / (1.0 + units * (0.6 + units * 0.15) + square * units * (1.0 / 60.0));
    (
        (1.0 + units * 0.1 + square * (1.0 / 60.0)) * below,
        -(units * (1.0 / 12.0) + square * (1.0 / 120.0)) * below,
    )
}

impl State {
    /// The means of the wall that was tried last, of the lanes that are still open to them.
    pub(super) fn means(&mut self, cell: &Cell<Lanes>) {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &self.film, &mut self.solving);
        for l in 0..LANES {
            let open = solving.settled[l] < 0.5;
            let w = film.middle_w[l];
            let per_flow = cell.length[l] * given.per_flow[l];
            let heat_capacity = DRY_AIR_CP + VAPOUR_CP * w;
            let vapour = solving.vapour[l];
            let wall_c = solving.wall_c[l];
            // The share of the wall that takes part in the mean.
            let force = (film.ln_vapour[l] - solving.ln_wall[l]) * solving.mean_mass[l]
                + solving.ln_wall_slope[l] * solving.added_mass[l];
            let whole = film.mass[l] * force;
            let share = if whole < -LEAST_GROWTH {
                vapour / whole
            } else {
                1.0
            };
            let share = smaller(larger(share, 0.0), 1.0 + film.pool[l]);
            let heat_units = (film.heat[l] - 0.5 * VAPOUR_CP * vapour) * per_flow / heat_capacity;
            let heat_units = larger(heat_units, 0.0);
            let mass_units = share * film.mass[l] * per_flow / (1.0 + w);
            let (mean_heat, bent_heat) = decay(heat_units);
            let (mean_mass, bent_mass) = decay(mass_units);
            let above = (reached.t_c[l] - wall_c) * mean_heat;
            let vapour_slope = solving.vapour_slope[l];
            // How the wall follows the air, the outside being what it is.
            let by_air = 1.0
                / (film.heat[l]
                    + vapour_slope * solving.ln_wall_slope[l] * solving.per_kg[l]
                    + solving.outward[l] / solving.by_surface[l]
                    // A wall that melts or freezes stays where it is.
                    - smaller(
                        vapour * solving.deposit_slope[l] + solving.fusing_slope[l],
                        0.0,
                    ));
            let cooling = -heat_units * above;
            let drying = -mass_units * (film.ln_vapour[l] - solving.ln_wall[l]) * mean_mass;
            let wall_change =
                by_air * (film.heat[l] * cooling + vapour_slope * solving.per_kg[l] * drying);
            solving.wall_change[l] = if open {
                wall_change
            } else {
                solving.wall_change[l]
            };
            solving.mean_heat[l] = if open {
                mean_heat
            } else {
                solving.mean_heat[l]
            };
            solving.mean_mass[l] = if open {
                mean_mass
            } else {
                solving.mean_mass[l]
            };
            solving.added_heat[l] = if open {
                bent_heat * wall_change
            } else {
                solving.added_heat[l]
            };
            solving.added_mass[l] = if open {
                bent_mass * wall_change
            } else {
                solving.added_mass[l]
            };
        }
    }
}
