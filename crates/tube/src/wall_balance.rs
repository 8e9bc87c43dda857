//! The balance of heat in the wall at one place, and how everything exchanged there follows the air.

use core::f64::consts::PI;

use dewrun_moist_air::fast::{SaturationCurve, diffusivity_m2_s, transport};
use dewrun_moist_air::latent::{DRY_AIR_CP, VAPOUR_CP, vapour_enthalpy_j_kg};
use dewrun_moist_air::mixture::{density_kg_m3, humidity_ratio, mole_fraction};
use dewrun_numeric::fast::fast_ln;
use dewrun_numeric::within;

use crate::film_inside::FilmInside;
use crate::film_outside::{FilmOutside, OutsideFluxes};
use crate::layers::cylinder_resistance_mk_w;
use crate::march::air::{Air, COLDEST_C, HOTTEST_C, saturated_fraction};
use crate::march::fluxes::Fluxes;
use crate::march::regime::Regime;
use crate::march::{Factors, Segment, Stream};
use crate::phase::{heat_of_deposition, ln_vapour_slope};

/// A change of the outer surface, K, after which the balance is taken as solved.
///
/// The change is made, linearly and in all parts alike; what is left is its square times some 0.03 per kelvin, below 3e-5 K.
const CONVERGED_K: f64 = 3e-2;
/// The same near 0 °C, where the heat of deposition turns within a thousandth of a kelvin.
const CONVERGED_AT_MELTING_K: f64 = 1e-7;
/// Near enough for that, K.
const MELTING_NEAR_K: f64 = 0.1;
/// The same where nothing linear closes the balance afterwards.
const STANDING_CONVERGED_K: f64 = 1e-11;
/// The missing heat falls at least as fast as this for the search, W/(m K).
///
/// Rime from air that is supersaturated over ice can make a stretch of the balance rise; the root that is found is one where it falls, which is stable.
const LEAST_SLOPE_W_MK: f64 = -1e-3;
/// Longest step of the search, K.
const LONGEST_STEP_K: f64 = 40.0;
/// More steps than bisection from any start needs.
const MAX_STEPS: u32 = 120;

/// A segment of tube, prepared for many balances.
#[derive(Debug)]
pub(crate) struct Wall<'curve> {
    pub(crate) curve: &'curve SaturationCurve,
    pub(crate) outside: FilmOutside<'curve>,
    factors: Factors,
    pub(crate) p_pa: f64,
    pub(crate) dry_air_kg_s: f64,
    pub(crate) bore_m: f64,
    pub(crate) tracing_w_m: f64,
    tube_mk_w: f64,
    insulation_mk_w: f64,
    /// Temperature to begin the search for the outer surface from, without a better guess, °C.
    pub(crate) start_c: f64,
}

/// The balance at one place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Balance {
    /// What is exchanged.
    pub(crate) fluxes: Fluxes,
    /// How it follows the temperature of the air.
    pub(crate) by_t: Fluxes,
    /// How it follows the vapour of the air.
    pub(crate) by_w: Fluxes,
    /// `ln(1 + W)` of the air less that at saturation at the wall: above zero water forms. Not asked of a dry wall.
    pub(crate) force: f64,
    /// Slope of `ln(1 + W)` at saturation with the temperature of the wall, 1/K.
    pub(crate) force_slope: f64,
    /// The same of the space's air over the outer surface: above zero it sweats.
    pub(crate) sweat_force: f64,
    /// What that is measured by: the vapour of the space, kg/kg.
    pub(crate) sweat_vapour: f64,
    /// Slope of `ln(1 + W)` at saturation with the temperature of the surface, 1/K.
    pub(crate) sweat_force_slope: f64,
    /// Coefficient of vapour, kg/(s m).
    pub(crate) vapour_kg_sm: f64,
}

/// Coefficients of the inside film, per metre of tube.
struct Inside {
    heat_w_mk: f64,
    vapour_kg_sm: f64,
}

/// What the air gives to the wall at a temperature of the wall.
struct Given {
    vapour: f64,
    vapour_slope: f64,
    /// Heat that reaches the wall, latent included.
    heat: f64,
    heat_slope: f64,
    /// Latent and superheat per kg of vapour.
    per_kg: f64,
    deposition: f64,
    deposition_slope: f64,
    force: f64,
    force_slope: f64,
}

impl<'curve> Wall<'curve> {
    pub(crate) fn new(curve: &'curve SaturationCurve, segment: &Segment, stream: &Stream) -> Self {
        let (p_pa, factors) = (stream.p_pa, stream.factors());
        let outer_m = segment.tube_outside_m + 2.0 * segment.insulation_m;
        let surface = crate::film_outside::OuterSurface {
            diameter_m: outer_m,
            emissivity: segment.emissivity,
            riser_m: segment.riser_m,
        };
        let surroundings = crate::film_outside::Surroundings {
            air_c: segment.air_c,
            w: segment.air_w,
            radiant_c: segment.radiant_c,
            wind_m_s: segment.wind_m_s,
            p_pa,
        };
        let insulation_mk_w = if 0.0 < segment.insulation_m {
            cylinder_resistance_mk_w(segment.tube_outside_m, outer_m, segment.insulation_w_mk)
        } else {
            0.0
        };
        Self {
            curve,
            outside: FilmOutside::new(curve, surface, surroundings)
                .with_natural_factor(factors.outside),
            factors,
            p_pa,
            dry_air_kg_s: stream.dry_air_kg_s,
            bore_m: segment.bore_m,
            tracing_w_m: segment.tracing_w_m,
            tube_mk_w: cylinder_resistance_mk_w(
                segment.bore_m,
                segment.tube_outside_m,
                segment.tube_w_mk,
            ),
            insulation_mk_w,
            start_c: segment.air_c,
        }
    }

    /// Solves the balance for air of a state, beginning from a guess of the outer surface's temperature.
    pub(crate) fn balance(&self, air: &Air, x_m: f64, regime: Regime, guess_c: f64) -> Balance {
        // The properties hold up to saturation.
        let inside = self.inside(air.t_c, air.w.min(air.saturation), x_m);
        let ln_bulk = fast_ln(1.0 + air.w);
        let mut surface_c = guess_c;
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        for _ in 0..MAX_STEPS {
            let trial = Trial::at(self, &inside, air, ln_bulk, regime, surface_c);
            let step = (-trial.missing / trial.missing_slope.min(LEAST_SLOPE_W_MK))
                .clamp(-LONGEST_STEP_K, LONGEST_STEP_K);
            let near_melting =
                trial.wall_c.abs() < MELTING_NEAR_K || surface_c.abs() < MELTING_NEAR_K;
            let enough = if near_melting {
                CONVERGED_AT_MELTING_K
            } else {
                CONVERGED_K
            };
            if step.abs() < enough || high - low < CONVERGED_AT_MELTING_K {
                return trial.finish(air, step, &inside);
            }
            // The missing heat falls with the surface's temperature.
            if trial.missing < 0.0 {
                high = surface_c;
            } else {
                low = surface_c;
            }
            let next = surface_c + step;
            surface_c = within(low, high, next, LONGEST_STEP_K);
        }
        let last = Trial::at(self, &inside, air, ln_bulk, regime, surface_c);
        let step = -last.missing / last.missing_slope;
        last.finish(air, step, &inside)
    }

    /// Inner wall, outer surface and what it exchanges, where no air flows in the tube.
    pub(crate) fn without_air(&self) -> (f64, (f64, OutsideFluxes)) {
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        let mut surface_c = self.start_c;
        let mut outside = self.outside.at(surface_c);
        for _ in 0..MAX_STEPS {
            let missing = self.tracing_w_m - (outside.loss_w_m - outside.sweat_heat_w_m);
            let slope = outside.loss_slope - outside.sweat_heat_slope;
            let step =
                (missing / slope.max(-LEAST_SLOPE_W_MK)).clamp(-LONGEST_STEP_K, LONGEST_STEP_K);
            if missing < 0.0 {
                high = surface_c;
            } else {
                low = surface_c;
            }
            if step.abs() < STANDING_CONVERGED_K || high - low < STANDING_CONVERGED_K {
                break;
            }
            let next = surface_c + step;
            surface_c = within(low, high, next, LONGEST_STEP_K);
            outside = self.outside.at(surface_c);
        }
        let through = outside.loss_w_m - outside.sweat_heat_w_m;
        (
            surface_c + through * self.insulation_mk_w,
            (surface_c, outside),
        )
    }

    fn inside(&self, t_c: f64, w: f64, x_m: f64) -> Inside {
        let x = mole_fraction(w);
        let t_c = t_c.clamp(COLDEST_C, HOTTEST_C);
        let both = transport(t_c, x);
        let density = density_kg_m3(t_c, w, self.p_pa);
        let diffusivity = self.factors.diffusivity * diffusivity_m2_s(t_c, self.p_pa);
        let viscosity = both.viscosity_pa_s;
        let conductivity = both.conductivity_w_mk;
        let reynolds = 4.0 * self.dry_air_kg_s * (1.0 + w) / (PI * self.bore_m * viscosity);
        let prandtl = viscosity * (DRY_AIR_CP + VAPOUR_CP * w) / ((1.0 + w) * conductivity);
        let schmidt = viscosity / (density * diffusivity);
        let film = FilmInside::at(reynolds, x_m, self.bore_m);
        let (nusselt, sherwood) = (film.number(prandtl), film.number(schmidt));
        Inside {
            heat_w_mk: PI * conductivity * (self.factors.inside * nusselt),
            vapour_kg_sm: PI * density * diffusivity * (self.factors.inside * sherwood),
        }
    }

    /// What the air gives to the wall at a temperature of the wall.
    fn given(&self, inside: &Inside, air: &Air, ln_bulk: f64, wet: bool, wall_c: f64) -> Given {
        let (deposition, deposition_slope, _) = heat_of_deposition(wall_c);
        let difference = air.t_c - wall_c;
        let per_kg = deposition + 0.5 * VAPOUR_CP * difference;
        let mut given = Given {
            vapour: 0.0,
            vapour_slope: 0.0,
            heat: inside.heat_w_mk * difference,
            heat_slope: -inside.heat_w_mk,
            per_kg,
            deposition,
            deposition_slope,
            force: 0.0,
            force_slope: 0.0,
        };
        if !wet {
            return given;
        }
        (given.force, given.force_slope) = self.force(ln_bulk, wall_c);
        given.vapour = inside.vapour_kg_sm * given.force;
        given.vapour_slope = -inside.vapour_kg_sm * given.force_slope;
        given.heat += given.vapour * per_kg;
        given.heat_slope +=
            given.vapour_slope * per_kg + given.vapour * (deposition_slope - 0.5 * VAPOUR_CP);
        given
    }

    /// Driving force of vapour towards a wall, and the slope of its part at the wall.
    pub(crate) fn force(&self, ln_bulk: f64, wall_c: f64) -> (f64, f64) {
        let Some((x, slope)) = saturated_fraction(self.curve, wall_c) else {
            return (f64::NEG_INFINITY, 0.0);
        };
        (
            ln_bulk - fast_ln(1.0 + humidity_ratio(x)),
            ln_vapour_slope(x, slope),
        )
    }
}

/// One trial of the outer surface's temperature.
struct Trial {
    surface_c: f64,
    wall_c: f64,
    /// How the inner wall follows the outer surface.
    wall_by_surface: f64,
    outside: OutsideFluxes,
    given: Given,
    wet: bool,
    missing: f64,
    missing_slope: f64,
}

impl Trial {
    #[inline]
    fn at(
        wall: &Wall<'_>,
        inside: &Inside,
        air: &Air,
        ln_bulk: f64,
        regime: Regime,
        surface_c: f64,
    ) -> Self {
        let outside = wall.outside.under(surface_c, regime.sweating);
        let through = outside.loss_w_m - outside.sweat_heat_w_m;
        let through_slope = outside.loss_slope - outside.sweat_heat_slope;
        let from_air = through - wall.tracing_w_m;
        let wall_c = surface_c + through * wall.insulation_mk_w + from_air * wall.tube_mk_w;
        let wall_by_surface = 1.0 + through_slope * (wall.insulation_mk_w + wall.tube_mk_w);
        let given = wall.given(inside, air, ln_bulk, regime.wet, wall_c);
        Self {
            surface_c,
            wall_c,
            wall_by_surface,
            missing: given.heat - from_air,
            missing_slope: given.heat_slope * wall_by_surface - through_slope,
            outside,
            given,
            wet: regime.wet,
        }
    }

    /// The balance after a last, linear step, in which it closes to rounding.
    #[inline]
    fn finish(self, air: &Air, step: f64, inside: &Inside) -> Balance {
        let by_surface = self.by_surface(air, inside);
        let fluxes = self.fluxes(air, inside) + by_surface * step;
        // The surface's answer to the air: the missing heat stays nil.
        let given = &self.given;
        let vapour_by_w = if self.wet {
            inside.vapour_kg_sm / (1.0 + air.w)
        } else {
            0.0
        };
        let heat_by_t = inside.heat_w_mk + 0.5 * VAPOUR_CP * given.vapour;
        let heat_by_w = vapour_by_w * given.per_kg;
        let surface_by_t = -heat_by_t / self.missing_slope;
        let surface_by_w = -heat_by_w / self.missing_slope;
        let energy_by_w = vapour_by_w * self.film_enthalpy(air);
        let direct_t = Fluxes {
            energy: heat_by_t,
            ..Fluxes::default()
        };
        let direct_w = Fluxes {
            energy: energy_by_w,
            vapour: vapour_by_w,
            condensate_heat: energy_by_w - heat_by_w,
            ..Fluxes::default()
        };
        Balance {
            fluxes,
            by_t: direct_t + by_surface * surface_by_t,
            by_w: direct_w + by_surface * surface_by_w,
            force: given.force - given.force_slope * self.wall_by_surface * step,
            force_slope: given.force_slope,
            sweat_force: 0.0,
            sweat_vapour: 1.0,
            sweat_force_slope: 0.0,
            vapour_kg_sm: inside.vapour_kg_sm,
        }
    }

    /// Enthalpy of vapour in the middle of the film, J/kg.
    fn film_enthalpy(&self, air: &Air) -> f64 {
        vapour_enthalpy_j_kg(0.5 * (air.t_c + self.wall_c))
    }

    fn fluxes(&self, air: &Air, inside: &Inside) -> Fluxes {
        let vapour = self.given.vapour;
        let energy = inside.heat_w_mk * (air.t_c - self.wall_c) + vapour * self.film_enthalpy(air);
        Fluxes {
            energy,
            vapour,
            loss: self.outside.loss_w_m,
            sweat_heat: self.outside.sweat_heat_w_m,
            condensate_heat: vapour * (vapour_enthalpy_j_kg(self.wall_c) - self.given.deposition),
            sweat: self.outside.sweat_kg_sm,
            wall_c: self.wall_c,
            surface_c: self.surface_c,
        }
    }

    /// How the fluxes follow the temperature of the outer surface.
    fn by_surface(&self, air: &Air, inside: &Inside) -> Fluxes {
        let by_wall = self.wall_by_surface;
        let vapour = self.given.vapour;
        let vapour_slope = self.given.vapour_slope * by_wall;
        let energy = (-inside.heat_w_mk + 0.5 * VAPOUR_CP * vapour) * by_wall
            + vapour_slope * self.film_enthalpy(air);
        Fluxes {
            energy,
            vapour: vapour_slope,
            loss: self.outside.loss_slope,
            sweat_heat: self.outside.sweat_heat_slope,
            condensate_heat: vapour_slope
                * (vapour_enthalpy_j_kg(self.wall_c) - self.given.deposition)
                + vapour * (VAPOUR_CP - self.given.deposition_slope) * by_wall,
            sweat: self.outside.sweat_slope,
            wall_c: by_wall,
            surface_c: 1.0,
        }
    }
}
