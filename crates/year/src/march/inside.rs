//! The inside film of a cell: properties of the air in its middle, and the coefficients of heat and vapour.

use core::f64::consts::PI;

use dewrun_moist_air::ZERO_CELSIUS_K;
use dewrun_moist_air::fast::{conductivity_w_mk, diffusivity_m2_s, viscosity_pa_s};
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};
use dewrun_moist_air::mixture::{DRY_AIR_MOLAR_MASS, GAS_CONSTANT, MOLAR_MASS_RATIO};
use dewrun_numeric::plain::{ln_of_quotient, plain_cbrt, plain_ln, rough_cbrt};
use dewrun_numeric::polynomial::polynomial;
use dewrun_tube::film_inside::{FAR_FROM_ENTRY, LAMINAR_UP_TO, TURBULENT_FROM};

use super::cell::Cell;
use super::lanes::{LANES, Lanes, any_above, larger, smaller};
use super::state::{Film, State};

/// Past these temperatures, °C, every property is taken as at them.
const COLDEST_C: f64 = -80.0;
pub(super) const HOTTEST_C: f64 = 160.0;
/// `pi k Nu / cp` of developed laminar flow, kg/(s m): for the first guess of the middle.
pub(super) const USUAL_NEARING: f64 = PI * 0.026 * FAR_FROM_ENTRY / 1010.0;
/// Up to here, kg/kg, `ln(1 + W)` is that of a quotient near one.
const MUCH_VAPOUR: f64 = 0.4;
/// No film thinner than this has a root, kg/m2.
const LEAST_FILM: f64 = 1e-60;

/// No moist air is less viscous than this, `x` its mole fraction of vapour, Pa s: a chord of dry air's viscosity, which bends down, from -80 to 160 °C, less half of it for steam.
#[inline(always)]
fn least_viscosity_pa_s(t_c: f64, x: f64) -> f64 {
    (1.675e-5 + 4.79e-8 * t_c) * (1.0 - 0.5 * x)
}

#[inline(always)]
pub(super) fn within_range(t_c: f64) -> f64 {
    smaller(larger(t_c, COLDEST_C), HOTTEST_C)
}

impl State {
    /// The air in the cells that the lanes are at, and the film of heat.
    #[inline(always)]
    pub(super) fn meet(&mut self, cell: &Cell<Lanes>) {
        self.guess(cell);
        self.middle(cell);
        if self.film.any_regime {
            self.regime();
            self.heat_in_any_regime(cell);
        } else {
            let film = &mut self.film;
            for l in 0..LANES {
                film.heat[l] = PI * film.conductivity[l] * laminar(cell, l, film.heat_root[l]);
            }
        }
    }

    /// The surface as first guessed: that of the cell before goes on as it went, fading, and as the films of both cells differ.
    #[inline(always)]
    pub(super) fn guess(&mut self, cell: &Cell<Lanes>) {
        for l in 0..LANES {
            let (reached, space_c) = (&self.reached, self.given.air_c[l]);
            let apart = 0.5 * cell.length[l] + reached.half_before[l];
            let faded = 1.0 - 0.5 * smaller(reached.fades[l] * apart, 1.0);
            let goes_on = reached.surface_c[l] + apart * faded * reached.surface_slope[l];
            self.solving.surface_c[l] = space_c + (goes_on - space_c) * cell.eases[l];
        }
    }

    /// The film of vapour, and what is on the wall.
    #[inline(always)]
    pub(super) fn meet_vapour(&mut self, cell: &Cell<Lanes>) {
        self.vapour_in_middle(cell);
        if self.film.any_regime {
            self.vapour_in_any_regime(cell);
        } else {
            let film = &mut self.film;
            for l in 0..LANES {
                film.mass[l] = PI * film.diffusive[l] * laminar(cell, l, film.mass_root[l]);
            }
        }
        let film = &mut self.film;
        for l in 0..LANES {
            let all = film.water[l] + film.frost[l];
            film.ice[l] = film.frost[l] / larger(all, LEAST_FILM);
            film.wet[l] = smaller(all, cell.retained[l]);
        }
        film.ice_or_pools = any_above(&film.frost, 0.0) || any_above(&film.pool, 0.0);
        if any_above(&film.wet, 0.0) {
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
    fn middle(&mut self, cell: &Cell<Lanes>) {
        let (given, reached, film, solving) =
            (&self.given, &self.reached, &mut self.film, &self.solving);
        for l in 0..LANES {
            let half = 0.5 * cell.length[l] * given.per_flow[l];
            let nearing = half * USUAL_NEARING;
            let lost = larger(reached.vapour[l], 0.0) * half;
            let w = larger(reached.w[l] - lost, 0.5 * reached.w[l]);
            // Two quotients of one division, here and below.
            let (nears, both) = (1.0 + nearing, MOLAR_MASS_RATIO + w);
            let per = 1.0 / (nears * both);
            // The surface as guessed tells the wall well enough here.
            let difference = solving.surface_c[l] - reached.t_c[l];
            let t_c = within_range(reached.t_c[l] + difference * nearing * (per * both));
            film.middle_c[l] = t_c;
            film.middle_w[l] = w;
            let x = w * (per * nears);
            film.middle_x[l] = x;
            let conductivity = conductivity_w_mk(t_c, x);
            let heat_capacity = DRY_AIR_CP + VAPOUR_CP * w;
            let per_bore = cell.per_bore[l] * given.flow[l];
            let per = 1.0 / (heat_capacity * conductivity);
            let per_conductivity = heat_capacity * heat_capacity * per;
            let moving = per_bore * (1.0 + w);
            film.moving[l] = moving;
            film.per_heat_capacity[l] = conductivity * per;
            film.per_conductivity[l] = per_conductivity;
            film.heat_root[l] = rough_cbrt(per_bore * per_conductivity);
            film.conductivity[l] = conductivity;
        }
        let beyond: Lanes = core::array::from_fn(|l| {
            film.moving[l]
                - LAMINAR_UP_TO * least_viscosity_pa_s(film.middle_c[l], film.middle_x[l])
        });
        film.any_regime = any_above(&beyond, 0.0);
    }

    /// What its vapour does there.
    #[inline(always)]
    fn vapour_in_middle(&mut self, cell: &Cell<Lanes>) {
        let (reached, film) = (&self.reached, &mut self.film);
        for l in 0..LANES {
            let t_c = film.middle_c[l];
            film.ln_vapour[l] = ln_of_quotient(reached.w[l] / (2.0 + reached.w[l]));
            let (moist, t_k) = (1.0 + film.middle_w[l], t_c + ZERO_CELSIUS_K);
            let per = 1.0 / (moist * t_k);
            let per_gas = DRY_AIR_MOLAR_MASS / GAS_CONSTANT;
            // Of ideal gases; the pressure drops out.
            let diffusive = cell.diffusivity[l]
                * diffusivity_m2_s(t_c, 1.0)
                * per_gas
                * (1.0 - (1.0 - MOLAR_MASS_RATIO) * film.middle_x[l])
                * (per * moist);
            film.per_moist[l] = per * t_k;
            film.mass_root[l] = rough_cbrt(film.moving[l] / diffusive);
            film.diffusive[l] = diffusive;
        }
        if any_above(&reached.w, MUCH_VAPOUR) {
            for l in 0..LANES {
                let w = reached.w[l];
                let far = plain_ln(1.0 + w);
                film.ln_vapour[l] = if w < MUCH_VAPOUR {
                    film.ln_vapour[l]
                } else {
                    far
                };
            }
        }
    }

    /// How turbulent the air is.
    #[inline(always)]
    fn regime(&mut self) {
        let film = &mut self.film;
        for l in 0..LANES {
            film.viscosity[l] = viscosity_pa_s(film.middle_c[l], film.middle_x[l]);
            let reynolds = film.moving[l] / film.viscosity[l];
            // The laminar number at the edge of its regime, beyond it.
            let beyond = rough_cbrt(LAMINAR_UP_TO / larger(reynolds, 1.0));
            film.slower[l] = if LAMINAR_UP_TO < reynolds {
                beyond
            } else {
                1.0
            };
            film.turbulent[l] = smaller(
                larger(
                    (reynolds - LAMINAR_UP_TO) / (TURBULENT_FROM - LAMINAR_UP_TO),
                    0.0,
                ),
                1.0,
            );
            let faster = larger(reynolds, TURBULENT_FROM);
            let root = 1.8 * core::f64::consts::LOG10_E * plain_ln(faster) - 1.5;
            let eighth = 0.125 / (root * root);
            film.drive[l] = eighth * (faster - 1000.0);
            film.rough[l] = 12.7 * eighth.sqrt();
        }
    }

    #[inline(always)]
    fn heat_in_any_regime(&mut self, cell: &Cell<Lanes>) {
        let film = &mut self.film;
        for l in 0..LANES {
            let prandtl = film.viscosity[l] * film.per_conductivity[l] / (1.0 + film.middle_w[l]);
            let nusselt = any_regime(film, cell, l, (prandtl, film.heat_root[l]));
            film.heat[l] = PI * film.conductivity[l] * nusselt;
        }
    }

    #[inline(always)]
    fn vapour_in_any_regime(&mut self, cell: &Cell<Lanes>) {
        let film = &mut self.film;
        for l in 0..LANES {
            let schmidt = film.viscosity[l] / film.diffusive[l];
            let sherwood = any_regime(film, cell, l, (schmidt, film.mass_root[l]));
            film.mass[l] = PI * film.diffusive[l] * sherwood;
        }
    }
}

/// Mean number over the cell, laminar, turbulent or between, of the Prandtl or Schmidt number and the laminar film's root.
#[inline(always)]
fn any_regime(film: &Film, cell: &Cell<Lanes>, l: usize, (number, root): (f64, f64)) -> f64 {
    let third = rough_cbrt(number);
    let turbulent =
        film.drive[l] * number * cell.entry[l] / (1.0 + film.rough[l] * (third * third - 1.0));
    let slow = laminar(cell, l, root * film.slower[l]);
    slow + film.turbulent[l] * (turbulent - slow)
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Were the bound above the viscosity, a flow would be taken as laminar that is not.
    #[test]
    fn no_moist_air_is_less_viscous_than_its_bound() {
        for t_c in (-80..=160).map(f64::from) {
            for x in (0..=20).map(|step| 0.05 * f64::from(step)) {
                let (least, is) = (least_viscosity_pa_s(t_c, x), viscosity_pa_s(t_c, x));
                assert!(least < is, "{least} of {is} Pa s at {t_c} °C, {x}");
            }
        }
    }
}
