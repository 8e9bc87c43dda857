//! The inside film of a cell: properties of the air in its middle, and the coefficients of heat and vapour.

use core::f64::consts::PI;

use dewrun_moist_air::ZERO_CELSIUS_K;
use dewrun_moist_air::fast::{diffusivity_m2_s, transport};
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};
use dewrun_moist_air::mixture::{DRY_AIR_MOLAR_MASS, GAS_CONSTANT, MOLAR_MASS_RATIO};
use dewrun_numeric::plain::{plain_cbrt, plain_ln, rough_cbrt};
use dewrun_numeric::polynomial::polynomial;
use dewrun_tube::film_inside::{FAR_FROM_ENTRY, LAMINAR_UP_TO, TURBULENT_FROM};

use super::cell::Cell;
use super::lanes::{LANES, Lanes, greatest, larger, smaller};
use super::state::State;

/// Past these temperatures, °C, every property is taken as at them.
const COLDEST_C: f64 = -80.0;
pub(super) const HOTTEST_C: f64 = 160.0;
/// `pi k Nu / cp` of developed laminar flow, kg/(s m): for the first guess of the middle.
pub(super) const USUAL_NEARING: f64 = PI * 0.026 * FAR_FROM_ENTRY / 1010.0;
/// No film thinner than this has a root, kg/m2.
const LEAST_FILM: f64 = 1e-60;

#[inline(always)]
pub(super) fn within_range(t_c: f64) -> f64 {
    smaller(larger(t_c, COLDEST_C), HOTTEST_C)
}

impl State {
    /// The inside film of the cells that the lanes are at.
    #[inline(always)]
    pub(super) fn meet(&mut self, cell: &Cell<Lanes>) {
        for l in 0..LANES {
            let half = 0.5 * cell.length[l];
            self.solving.surface_c[l] =
                self.reached.surface_c[l] + half * self.reached.surface_slope[l];
        }
        self.properties(cell);
        if LAMINAR_UP_TO < greatest(&self.film.reynolds) {
            self.any_regime(cell);
        } else {
            self.laminar(cell);
        }
        let film = &mut self.film;
        for l in 0..LANES {
            let all = film.water[l] + film.frost[l];
            film.ice[l] = film.frost[l] / larger(all, LEAST_FILM);
            film.wet[l] = smaller(all, cell.retained[l]);
        }
        film.ice_or_pools = 0.0 < greatest(&film.frost) || 0.0 < greatest(&film.pool);
        if 0.0 < greatest(&film.wet) {
            for l in 0..LANES {
                let root = plain_cbrt(larger(film.wet[l], LEAST_FILM));
                film.root[l] = if 0.0 < film.wet[l] { root } else { 0.0 };
            }
        } else {
            film.root = [0.0; LANES];
        }
    }

    /// The air in the middle of the cell, as first guessed, and its properties.
    #[inline(always)]
    fn properties(&mut self, cell: &Cell<Lanes>) {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &mut self.film, &self.solving);
        for l in 0..LANES {
            let half = 0.5 * cell.length[l] * given.per_flow[l];
            let nearing = half * USUAL_NEARING;
            // The surface as guessed tells the wall well enough here.
            let difference = solving.surface_c[l] - reached.t_c[l];
            let t_c = within_range(reached.t_c[l] + difference * nearing / (1.0 + nearing));
            let lost = larger(reached.vapour[l], 0.0) * half;
            let w = larger(reached.w[l] - lost, 0.5 * reached.w[l]);
            film.middle_c[l] = t_c;
            film.middle_w[l] = w;
            film.ln_vapour[l] = plain_ln(1.0 + reached.w[l]);
            let x = w / (MOLAR_MASS_RATIO + w);
            let both = transport(t_c, x);
            let per_gas = DRY_AIR_MOLAR_MASS / GAS_CONSTANT;
            // Of ideal gases; the pressure drops out.
            let diffusive = cell.diffusivity[l]
                * diffusivity_m2_s(t_c, 1.0)
                * per_gas
                * (1.0 - (1.0 - MOLAR_MASS_RATIO) * x)
                / (t_c + ZERO_CELSIUS_K);
            let heat_capacity = DRY_AIR_CP + VAPOUR_CP * w;
            let per_bore = cell.per_bore[l] * given.flow[l];
            let moving = per_bore * (1.0 + w);
            film.reynolds[l] = moving / both.viscosity_pa_s;
            let per_conductivity = heat_capacity / both.conductivity_w_mk;
            film.prandtl[l] = both.viscosity_pa_s * per_conductivity / (1.0 + w);
            film.schmidt[l] = both.viscosity_pa_s / diffusive;
            film.heat_root[l] = rough_cbrt(per_bore * per_conductivity);
            film.mass_root[l] = rough_cbrt(moving / diffusive);
            film.conductivity[l] = both.conductivity_w_mk;
            film.diffusive[l] = diffusive;
        }
    }

    #[inline(always)]
    fn laminar(&mut self, cell: &Cell<Lanes>) {
        let film = &mut self.film;
        for l in 0..LANES {
            film.heat[l] = PI * film.conductivity[l] * laminar(cell, l, film.heat_root[l]);
            film.mass[l] = PI * film.diffusive[l] * laminar(cell, l, film.mass_root[l]);
        }
    }

    /// Laminar, turbulent and between.
    #[inline(always)]
    fn any_regime(&mut self, cell: &Cell<Lanes>) {
        let film = &mut self.film;
        for l in 0..LANES {
            let reynolds = film.reynolds[l];
            // The laminar number at the edge of its regime, beyond it.
            let beyond = rough_cbrt(LAMINAR_UP_TO / larger(reynolds, 1.0));
            let slower = if LAMINAR_UP_TO < reynolds {
                beyond
            } else {
                1.0
            };
            let share = smaller(
                larger(
                    (reynolds - LAMINAR_UP_TO) / (TURBULENT_FROM - LAMINAR_UP_TO),
                    0.0,
                ),
                1.0,
            );
            let faster = larger(reynolds, TURBULENT_FROM);
            let root = 1.8 * core::f64::consts::LOG10_E * plain_ln(faster) - 1.5;
            let eighth = 0.125 / (root * root);
            let turbulent = |number: f64| {
                let third = rough_cbrt(number);
                eighth * (faster - 1000.0) * number * cell.entry[l]
                    / (1.0 + 12.7 * eighth.sqrt() * (third * third - 1.0))
            };
            let nusselt = laminar(cell, l, film.heat_root[l] * slower);
            let sherwood = laminar(cell, l, film.mass_root[l] * slower);
            let nusselt = nusselt + share * (turbulent(film.prandtl[l]) - nusselt);
            let sherwood = sherwood + share * (turbulent(film.schmidt[l]) - sherwood);
            film.heat[l] = PI * film.conductivity[l] * nusselt;
            film.mass[l] = PI * film.diffusive[l] * sherwood;
        }
    }
}

/// Mean laminar number over the cell.
#[inline(always)]
fn laminar(cell: &Cell<Lanes>, l: usize, root: f64) -> f64 {
    let scaled = (root - cell.root_middle[l]) * cell.root_per_half[l];
    let scaled = smaller(larger(scaled, -1.1), 1.1);
    let coefficients = [
        cell.number[0][l],
        cell.number[1][l],
        cell.number[2][l],
        cell.number[3][l],
        cell.number[4][l],
        cell.number[5][l],
        cell.number[6][l],
    ];
    polynomial(&coefficients, scaled)
}
