//! Air along a tube whose wall is held at one temperature and wet all over, of the product's local relations.
//!
//! The product itself knows no such wall: its wall temperature is an answer. The textbooks' tubes do.

use core::f64::consts::PI;

use dewrun_moist_air::humidity::saturated_over_water;
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP};
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio, mole_fraction};
use dewrun_moist_air::transport::{conductivity_w_mk, diffusivity_m2_s, viscosity_pa_s};
use dewrun_tube::film_inside::local;
use dewrun_tube::vapour_flux::stefan_flux_kg_sm;

/// Steps along the tube, enough for five digits.
const STEPS: u32 = 2000;

/// Mean of a function of distance from 0 to `x`, singular at the inlet no more than `x^(-2/3)`: midpoints in the cube root of distance.
pub(super) fn mean_from_inlet(of: impl Fn(f64) -> f64, x: f64) -> f64 {
    let step = 1.0 / f64::from(STEPS);
    (0..STEPS)
        .map(|number| {
            let s = (f64::from(number) + 0.5) * step;
            3.0 * s * s * step * of(x * s * s * s)
        })
        .sum()
}

/// A tube with its wall held and wet.
#[derive(Debug, Clone, Copy)]
pub(super) struct HeldWall {
    pub(super) bore_m: f64,
    pub(super) length_m: f64,
    pub(super) wall_c: f64,
    pub(super) p_pa: f64,
    pub(super) dry_air_kg_s: f64,
}

/// The state of the air.
#[derive(Debug, Clone, Copy)]
pub(super) struct State {
    pub(super) t_c: f64,
    pub(super) w: f64,
}

/// Humidity ratio of air saturated over water.
pub(super) fn saturated_w(t_c: f64, p_pa: f64) -> f64 {
    humidity_ratio(saturated_over_water(t_c, p_pa))
}

impl HeldWall {
    /// The air at the outlet; midpoint steps in the cube root of distance, in which the entry is smooth.
    pub(super) fn outlet(&self, inlet: State) -> State {
        let step = 1.0 / f64::from(STEPS);
        (0..STEPS).fold(inlet, |state, number| {
            let s = f64::from(number) * step;
            let middle = s + 0.5 * step;
            let half = self.moved(state, self.rates(state, s.max(0.25 * step)), 0.5 * step);
            self.moved(state, self.rates(half, middle), step)
        })
    }

    fn moved(&self, from: State, (dt, dw): (f64, f64), step: f64) -> State {
        State {
            t_c: from.t_c + dt * step,
            w: from.w + dw * step,
        }
    }

    /// Change of temperature and humidity ratio with `s`, the distance being `length s^3`.
    fn rates(&self, State { t_c, w }: State, s: f64) -> (f64, f64) {
        let x = mole_fraction(w);
        let (mu, k) = (viscosity_pa_s(t_c, x), conductivity_w_mk(t_c, x));
        let (rho, d) = (
            density_kg_m3(t_c, w, self.p_pa),
            diffusivity_m2_s(t_c, self.p_pa),
        );
        let cp = (DRY_AIR_CP + VAPOUR_CP * w) / (1.0 + w);
        let reynolds = 4.0 * self.dry_air_kg_s * (1.0 + w) / (PI * self.bore_m * mu);
        let bores = self.length_m * s * s * s / self.bore_m;
        let nu = local(reynolds, mu * cp / k, bores);
        let sh = local(reynolds, mu / (rho * d), bores);
        let flux = stefan_flux_kg_sm(PI * rho * d * sh, w, saturated_w(self.wall_c, self.p_pa));
        let sensible = PI * nu * k * (t_c - self.wall_c);
        // Vapour leaves or enters at the film's temperature, halfway to the wall's.
        let carried = flux * VAPOUR_CP * 0.5 * (self.wall_c - t_c);
        let along = 3.0 * s * s * self.length_m / self.dry_air_kg_s;
        (
            -(sensible + carried) / (DRY_AIR_CP + VAPOUR_CP * w) * along,
            -flux * along,
        )
    }
}
