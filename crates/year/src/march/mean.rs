//! The mean over a cell of the difference between air and wall, of temperature and of vapour.
//!
//! With a wall of even slope the air nears it exponentially. The means are rational in the number of transfer units,
//! after Padé's (2,3) form of the exponential: right to 1e-4 at one unit, and bounded however many there are.

use dewrun_moist_air::latent::VAPOUR_CP;

use super::cell::Cell;
use super::lanes::{LANES, Lanes, larger, smaller};
use super::state::{Film, Given, Solving, State};

/// No growth below this, kg/m2, tells the share of a wall that dries.
const LEAST_GROWTH: f64 = 1e-30;

/// Mean of a decay over `units`, of its start; and what an even slope of the wall adds, of the wall's change over the cell.
#[inline(always)]
pub(super) fn decay(units: f64) -> (f64, f64) {
    let square = units * units;
    let below = 1.0 / (1.0 + units * (0.6 + units * 0.15) + square * units * (1.0 / 60.0));
    (
        (1.0 + units * 0.1 + square * (1.0 / 60.0)) * below,
        -(units * (1.0 / 12.0) + square * (1.0 / 120.0)) * below,
    )
}

/// Mean over a cell of `ln(1 + W)` in the air over that at saturation at its wall, which has `ln_wall` in the middle.
#[inline(always)]
pub(super) fn force(film: &Film, solving: &Solving, l: usize, ln_wall: f64) -> f64 {
    (film.ln_vapour[l] - ln_wall) * solving.mean_mass[l]
        + solving.ln_wall_slope[l] * solving.added_mass[l]
}

/// Transfer units of heat and of vapour in a cell all of whose wall takes part, and nothing that stands.
#[inline(always)]
pub(super) fn whole_units(given: &Given, film: &Film, cell: &Cell<Lanes>, l: usize) -> (f64, f64) {
    let per_flow = cell.length[l] * given.per_flow[l];
    (
        film.heat[l] * per_flow * film.per_heat_capacity[l],
        film.mass[l] * per_flow * film.per_moist[l],
    )
}

/// Means and what bends them, as one trial has them.
struct Means {
    heat: Lanes,
    mass: Lanes,
    added_heat: Lanes,
    added_mass: Lanes,
    wall_change: Lanes,
}

impl Means {
    /// None found yet.
    const OPEN: Self = Self {
        heat: [0.0; LANES],
        mass: [0.0; LANES],
        added_heat: [0.0; LANES],
        added_mass: [0.0; LANES],
        wall_change: [0.0; LANES],
    };
}

impl State {
    /// The means of the lanes that are still open to them: of the wall that was tried last, or, of one that the last step moves by less than `short_k`, of where it leads.
    #[inline(always)]
    pub(super) fn means(&mut self, cell: &Cell<Lanes>, short_k: f64) {
        let found = self.means_of_all(cell, short_k);
        let solving = &mut self.solving;
        for l in 0..LANES {
            solving.wall_turn[l] = found.wall_change[l] - solving.wall_change[l];
        }
        self.take_over(&found);
    }

    /// Those of walls of one temperature, all of which take part: whatever is tried with them, the missing heat falls as the surface gets warmer.
    #[cold]
    pub(super) fn even_means(&mut self, cell: &Cell<Lanes>) {
        let (given, film) = (&self.given, &self.film);
        let mut means = Means::OPEN;
        for l in 0..LANES {
            let (heat, mass) = whole_units(given, film, cell, l);
            (means.heat[l], _) = decay(heat);
            (means.mass[l], _) = decay((1.0 + film.pool[l]) * mass);
        }
        self.take_over(&means);
    }

    #[inline(always)]
    fn take_over(&mut self, found: &Means) {
        let solving = &mut self.solving;
        let open = solving.settled;
        put(&mut solving.wall_change, &found.wall_change, &open);
        put(&mut solving.mean_heat, &found.heat, &open);
        put(&mut solving.mean_mass, &found.mass, &open);
        put(&mut solving.added_heat, &found.added_heat, &open);
        put(&mut solving.added_mass, &found.added_mass, &open);
    }

    /// Those of all lanes: one that is skipped would keep the others from going side by side.
    #[inline(always)]
    fn means_of_all(&self, cell: &Cell<Lanes>, short_k: f64) -> Means {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &self.film, &self.solving);
        let mut means = Means::OPEN;
        for l in 0..LANES {
            let per_flow = cell.length[l] * given.per_flow[l];
            let step = solving.step[l];
            let step = if step.abs() < short_k { step } else { 0.0 };
            let wall_step = solving.by_surface[l] * step;
            let wall_c = solving.wall_c[l] + wall_step;
            let ln_wall = solving.ln_wall[l] + solving.ln_wall_slope[l] * wall_step;
            let vapour = solving.vapour[l]
                - solving.vapour_slope[l]
                    * solving.ln_wall_slope[l]
                    * solving.mean_mass[l]
                    * wall_step;
            // The share of the wall that takes part in the mean; all of it where a dry one may yet turn wet.
            let whole = film.mass[l] * force(film, solving, l, ln_wall);
            let share = if whole < -LEAST_GROWTH && (vapour < 0.0 || short_k <= 0.0) {
                vapour / whole
            } else {
                1.0
            };
            let share = smaller(larger(share, 0.0), 1.0 + film.pool[l]);
            let heat_units =
                (film.heat[l] - 0.5 * VAPOUR_CP * vapour) * per_flow * film.per_heat_capacity[l];
            let heat_units = larger(heat_units, 0.0);
            let mass_units = share * film.mass[l] * per_flow * film.per_moist[l];
            let (mean_heat, bent_heat) = decay(heat_units);
            let (mean_mass, bent_mass) = decay(mass_units);
            let above = (reached.t_c[l] - wall_c) * mean_heat;
            let vapour_slope = solving.vapour_slope[l];
            // How the wall follows the air, the outside being what it is.
            let inward = film.heat[l]
                + vapour_slope * solving.ln_wall_slope[l] * solving.per_kg[l]
                // A wall that melts or freezes stays where it is.
                - smaller(
                    vapour * solving.deposit_slope[l] + solving.fusing_slope[l],
                    0.0,
                );
            let by_surface = solving.by_surface[l];
            let by_air = by_surface / (inward * by_surface + solving.outward[l]);
            let cooling = -heat_units * above;
            let drying = -mass_units * (film.ln_vapour[l] - ln_wall) * mean_mass;
            let wall_change =
                by_air * (film.heat[l] * cooling + vapour_slope * solving.per_kg[l] * drying);
            means.heat[l] = mean_heat;
            means.mass[l] = mean_mass;
            means.added_heat[l] = bent_heat * wall_change;
            means.added_mass[l] = bent_mass * wall_change;
            means.wall_change[l] = wall_change;
        }
        means
    }
}

/// Takes over what was found for the lanes that are not settled.
#[inline(always)]
pub(super) fn put(kept: &mut Lanes, found: &Lanes, settled: &Lanes) {
    for l in 0..LANES {
        kept[l] = if settled[l] < 0.5 { found[l] } else { kept[l] };
    }
}
