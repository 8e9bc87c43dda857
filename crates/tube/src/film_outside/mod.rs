//! The film between the outer surface and the space: convection, radiation and sweat.
//!
//! The relations stand under their authors' names; [`FilmOutside`] is the same, prepared once for a leg
//! and fitted so that a wall balance costs little, and held against them by a test.

mod coefficients;
mod forced;
mod natural;
pub mod plain;
mod radiation;

use core::f64::consts::PI;

use dewrun_moist_air::fast::{SaturationCurve, dew_or_frost_point_of_c};
use dewrun_moist_air::mixture::{humidity_ratio, mole_fraction};
use dewrun_numeric::elementary::{ln_1p, pow};
use dewrun_numeric::fast::{fast_exp, fast_ln};
use dewrun_numeric::fast_cbrt as cbrt;
use dewrun_numeric::polynomial::{polynomial, polynomial_with_slope};

pub use forced::{blended, churchill_bernstein_1977};
pub use natural::{
    churchill_chu_1975_horizontal, churchill_chu_1975_vertical, popiel_2008_slender,
};
pub use radiation::{STEFAN_BOLTZMANN, radiation_coefficient};

use crate::march::air::{COLDEST_C, HOTTEST_C, saturated_fraction};
use crate::phase::heat_of_deposition;
use coefficients::{CONDUCTIVITY, HORIZONTAL, KINEMATIC, LEWIS, PRANDTL, SLENDER, VERTICAL};

/// 0 °C on the thermodynamic scale, K.
const ZERO_CELSIUS_K: f64 = 273.15;
/// Below this difference to the air, K, the coefficient of natural convection is held: a riser's has an infinite slope at none.
const LEAST_DIFFERENCE_K: f64 = 1e-4;
/// More than the error of a dew point, K.
const DEW_MARGIN_K: f64 = 0.1;
/// Slope of the driving force that is assumed at least, 1/K.
const LEAST_DEW_SLOPE: f64 = 1e-9;
/// Exponent of the Grashof number in the factor of a slender riser: 0.25 times 0.909.
const SLENDER_EXPONENT: f64 = 0.25 * 0.909;

/// What lies around a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Humidity ratio of the air, kg/kg.
    pub w: f64,
    /// Temperature of the surfaces that the tube sees, °C.
    pub radiant_c: f64,
    /// Air speed across the tube, m/s.
    pub wind_m_s: f64,
    /// Pressure, Pa.
    pub p_pa: f64,
}

/// The outermost surface of a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OuterSurface {
    /// Its diameter, m.
    pub diameter_m: f64,
    /// Its emissivity.
    pub emissivity: f64,
    /// Height of the riser that the leg is part of, along the tube, m; none for legs flatter than 45 degrees.
    pub riser_m: Option<f64>,
}

/// What an outer surface exchanges with the space, per metre of tube, and how that changes with its temperature.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct OutsideFluxes {
    /// Coefficient of convection, W/(m2 K).
    pub convection_w_m2k: f64,
    /// Heat given to the space by convection and radiation, W/m.
    pub loss_w_m: f64,
    /// Its slope, W/(m K).
    pub loss_slope: f64,
    /// Sweat that deposits, kg/(s m); zero where the surface is above the space's dew point.
    pub sweat_kg_sm: f64,
    /// Its slope, kg/(s m K).
    pub sweat_slope: f64,
    /// Heat that sweat gives to the surface, W/m.
    pub sweat_heat_w_m: f64,
    /// Its slope, W/(m K).
    pub sweat_heat_slope: f64,
    /// Share of the sweat that freezes: rime.
    pub frozen_share: f64,
}

/// Nusselt number of natural convection and its logarithmic slopes.
struct Natural {
    number: f64,
    /// Exponent on the difference of temperature.
    exponent: f64,
    /// Change per kelvin of film temperature.
    by_film: f64,
}

/// The outside film of one leg, prepared.
#[derive(Debug, Clone, Copy)]
pub struct FilmOutside<'curve> {
    curve: &'curve SaturationCurve,
    surroundings: Surroundings,
    surface: OuterSurface,
    /// Sixth root of `p^2 X^3`, X the diameter or the height of the riser.
    size: f64,
    /// Factor of the slender riser without its share of temperature.
    slender: f64,
    /// What natural convection is multiplied by; 1 as published.
    natural_factor: f64,
    /// `ln(1 + W)` of the space's air.
    ln_vapour: f64,
    /// Above this temperature the surface does not sweat, °C: the space's dew or frost point with a margin.
    dry_above_c: f64,
    /// That point, °C, and the slope of `ln(1 + W)` at saturation there, 1/K.
    dew_c: f64,
    dew_slope: f64,
}

impl<'curve> FilmOutside<'curve> {
    /// Prepares the film of a surface in its surroundings; the curve must be that of the surroundings' pressure.
    #[must_use]
    pub fn new(
        curve: &'curve SaturationCurve,
        surface: OuterSurface,
        surroundings: Surroundings,
    ) -> Self {
        let length = surface.riser_m.unwrap_or(surface.diameter_m);
        let p = surroundings.p_pa;
        let cubed = length * length * length;
        let slender = surface.riser_m.map_or(0.0, |height| {
            let shape = pow(32.0_f64.sqrt() * height / surface.diameter_m, 0.909);
            0.300 * shape * pow(p * p * cubed, -SLENDER_EXPONENT)
        });
        let dew_c = dew_or_frost_point_of_c(mole_fraction(surroundings.w), p).unwrap_or(
            if 0.0 < surroundings.w {
                surroundings.air_c
            } else {
                COLDEST_C
            },
        );
        let (x, x_slope) = curve.mole_fraction(dew_c);
        Self {
            curve,
            surroundings,
            surface,
            size: cbrt((p * p * cubed).sqrt()),
            slender,
            natural_factor: 1.0,
            ln_vapour: ln_1p(surroundings.w),
            dry_above_c: dew_c + DEW_MARGIN_K,
            dew_c,
            dew_slope: crate::phase::ln_vapour_slope(x, x_slope).clamp(LEAST_DEW_SLOPE, 1.0),
        }
    }

    /// The same film with natural convection multiplied by a factor, to carry how far the relation is known to be off.
    #[must_use]
    pub const fn with_natural_factor(self, natural_factor: f64) -> Self {
        Self {
            natural_factor,
            ..self
        }
    }

    /// What the surface exchanges at a temperature of its own, °C.
    ///
    /// # Range
    /// Film temperatures from -80 to 160 °C.
    ///
    /// # Accuracy
    /// Within 3e-4 of the relations it stands for; theirs is 20 %.
    #[must_use]
    pub fn at(&self, surface_c: f64) -> OutsideFluxes {
        self.under(surface_c, 0.0 < self.sweat_force(surface_c).0)
    }

    /// The same where it is known whether water covers the surface: then sweat of either sign, else none.
    #[inline]
    pub(crate) fn under(&self, surface_c: f64, sweating: bool) -> OutsideFluxes {
        let around = &self.surroundings;
        let difference = surface_c - around.air_c;
        let film_c = (0.5 * (surface_c + around.air_c)).clamp(COLDEST_C, HOTTEST_C);
        let (convection, convection_slope) = self.convection(difference, film_c);
        let perimeter = PI * self.surface.diameter_m;
        let surface_k = surface_c + ZERO_CELSIUS_K;
        let radiant_k = around.radiant_c + ZERO_CELSIUS_K;
        let radiation = radiation_coefficient(self.surface.emissivity, surface_k, radiant_k);
        let radiation_slope =
            4.0 * self.surface.emissivity * STEFAN_BOLTZMANN * surface_k * surface_k * surface_k;
        let mut fluxes = OutsideFluxes {
            convection_w_m2k: convection,
            loss_w_m: perimeter * (convection * difference + radiation * (surface_k - radiant_k)),
            loss_slope: perimeter * (convection + convection_slope * difference + radiation_slope),
            ..OutsideFluxes::default()
        };
        if sweating {
            self.add_sweat(&mut fluxes, surface_c, film_c, convection_slope);
        }
        fluxes
    }

    /// Coefficient of convection on the diameter, W/(m2 K), and its slope with the surface's temperature.
    fn convection(&self, difference: f64, film_c: f64) -> (f64, f64) {
        let (conductivity, conductivity_slope) = polynomial_with_slope(&CONDUCTIVITY, film_c);
        let size = difference.abs();
        let mut natural = self.natural(size.max(LEAST_DIFFERENCE_K), film_c);
        natural.number *= self.natural_factor;
        let (number, share, forced_by_film) = if 0.0 < self.surroundings.wind_m_s {
            let (forced, forced_by_film) = self.forced(film_c);
            let number = blended(natural.number, forced);
            let part = natural.number / number;
            (number, part * part * part, forced_by_film)
        } else {
            (natural.number, 1.0, 0.0)
        };
        let coefficient = number * conductivity / self.surface.diameter_m;
        let moving = if LEAST_DIFFERENCE_K < size {
            natural.exponent / difference
        } else {
            0.0
        };
        let by_film = share * natural.by_film
            + (1.0 - share) * forced_by_film
            + conductivity_slope / conductivity;
        (coefficient, coefficient * (share * moving + 0.5 * by_film))
    }

    /// Natural convection on the diameter.
    fn natural(&self, difference: f64, film_c: f64) -> Natural {
        let sixth = cbrt(difference.sqrt()) * self.size;
        let Some(height) = self.surface.riser_m else {
            let (factor, factor_slope) = polynomial_with_slope(&HORIZONTAL, film_c);
            let rise = factor * sixth;
            let root = 0.60 + rise;
            return Natural {
                number: root * root,
                exponent: rise / (3.0 * root),
                by_film: 2.0 * factor_slope * sixth / root,
            };
        };
        let (factor, factor_slope) = polynomial_with_slope(&VERTICAL, film_c);
        let rise = factor * sixth;
        let root = 0.825 + rise;
        let (thinness, thinness_slope) = polynomial_with_slope(&SLENDER, film_c);
        let slender = self.slender * thinness * fast_exp(-SLENDER_EXPONENT * fast_ln(difference));
        let slender_share = slender / (1.0 + slender);
        Natural {
            number: root * root * (1.0 + slender) * self.surface.diameter_m / height,
            exponent: rise / (3.0 * root) - SLENDER_EXPONENT * slender_share,
            by_film: 2.0 * factor_slope * sixth / root + slender_share * thinness_slope / thinness,
        }
    }

    /// Nusselt number of the wind, and its change per kelvin of film temperature.
    ///
    /// For the slope the number is taken as proportional to the square root of Re, which it nearly is.
    fn forced(&self, film_c: f64) -> (f64, f64) {
        let (kinematic, kinematic_slope) = polynomial_with_slope(&KINEMATIC, film_c);
        let reynolds =
            self.surroundings.wind_m_s * self.surface.diameter_m * self.surroundings.p_pa
                / kinematic;
        let number = churchill_bernstein_1977(reynolds, polynomial(&PRANDTL, film_c));
        (number, -0.5 * kinematic_slope / kinematic)
    }

    /// What a driving force of sweat is measured by: the vapour of the space, kg/kg.
    pub(crate) fn vapour_around(&self) -> f64 {
        self.surroundings.w
    }

    /// Driving force of sweat, `ln(1 + W)` of the space's air less that at saturation at the surface, and the slope of the part at the surface.
    pub(crate) fn sweat_force(&self, surface_c: f64) -> (f64, f64) {
        if self.dry_above_c <= surface_c {
            // Far from sweating a straight line through the dew point serves.
            return (self.dew_slope * (self.dew_c - surface_c), self.dew_slope);
        }
        let Some((x, x_slope)) = saturated_fraction(self.curve, surface_c) else {
            return (f64::NEG_INFINITY, 0.0);
        };
        (
            self.ln_vapour - ln_1p(humidity_ratio(x)),
            crate::phase::ln_vapour_slope(x, x_slope),
        )
    }

    /// Sweat by Chilton & Colburn, with the logarithmic driving force.
    fn add_sweat(
        &self,
        fluxes: &mut OutsideFluxes,
        surface_c: f64,
        film_c: f64,
        convection_slope: f64,
    ) {
        let (force, force_slope) = self.sweat_force(surface_c);
        if !force.is_finite() {
            return;
        }
        let factor = PI * self.surface.diameter_m * polynomial(&LEWIS, film_c);
        let (heat, heat_slope, share) = heat_of_deposition(surface_c);
        let sweat = factor * fluxes.convection_w_m2k * force;
        let slope = factor * (convection_slope * force - fluxes.convection_w_m2k * force_slope);
        fluxes.sweat_kg_sm = sweat;
        fluxes.sweat_slope = slope;
        fluxes.sweat_heat_w_m = sweat * heat;
        fluxes.sweat_heat_slope = slope * heat + sweat * heat_slope;
        fluxes.frozen_share = share;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_moist_air::mixture::{DRY_AIR_MOLAR_MASS, GAS_CONSTANT};
    use dewrun_moist_air::transport::{dry_air_conductivity_w_mk, dry_air_viscosity_pa_s};

    /// The coefficient of convection straight from the authors' relations.
    fn convection(surface: &OuterSurface, around: &Surroundings, surface_c: f64) -> f64 {
        let film_c = 0.5 * (surface_c + around.air_c);
        let t_k = film_c + ZERO_CELSIUS_K;
        let density = around.p_pa * DRY_AIR_MOLAR_MASS / (GAS_CONSTANT * t_k);
        let nu = dry_air_viscosity_pa_s(film_c) / density;
        let k = dry_air_conductivity_w_mk(film_c);
        let pr = nu * density * 1006.0 / k;
        let d = surface.diameter_m;
        let x = surface.riser_m.unwrap_or(d);
        let grashof = 9.80665 * (surface_c - around.air_c).abs() * x * x * x / (t_k * nu * nu);
        let natural = match surface.riser_m {
            None => churchill_chu_1975_horizontal(grashof * pr, pr),
            Some(height) => {
                churchill_chu_1975_vertical(grashof * pr, pr)
                    * popiel_2008_slender(grashof, height / d)
                    * d
                    / height
            }
        };
        let forced = churchill_bernstein_1977(around.wind_m_s * d / nu, pr);
        let number = if 0.0 < around.wind_m_s {
            blended(natural, forced)
        } else {
            natural
        };
        number * k / d
    }

    #[test]
    fn the_prepared_film_is_the_relations() {
        for p_pa in [60e3, 101_325.0, 110e3] {
            let curve = SaturationCurve::at(p_pa);
            for (air_c, wind_m_s) in [(-30.0, 0.0), (-5.0, 3.0), (20.0, 0.0), (45.0, 0.3)] {
                for riser_m in [None, Some(0.4), Some(9.0)] {
                    let around = Surroundings {
                        air_c,
                        w: 0.0,
                        radiant_c: air_c,
                        wind_m_s,
                        p_pa,
                    };
                    let surface = OuterSurface {
                        diameter_m: 0.03,
                        emissivity: 0.0,
                        riser_m,
                    };
                    let film = FilmOutside::new(&curve, surface, around);
                    for difference in [-20.0, -1.0, -0.01, 0.02, 3.0, 50.0] {
                        let expected = convection(&surface, &around, air_c + difference);
                        let got = film.at(air_c + difference).convection_w_m2k;
                        assert!(
                            (got / expected - 1.0).abs() < 3e-4,
                            "{got} against {expected} at {difference} K, {around:?}, {surface:?}"
                        );
                    }
                }
            }
        }
    }

    /// The slopes steer a search that ends by the values; that of sweat leaves out how the Lewis factor and the latent heat change.
    #[test]
    fn the_slopes_are_those_of_the_values() {
        let curve = SaturationCurve::at(95e3);
        for (wind_m_s, riser_m) in [(0.0, None), (0.0, Some(2.0)), (2.0, None), (0.4, Some(3.0))] {
            let around = Surroundings {
                air_c: 25.0,
                w: 0.016,
                radiant_c: 22.0,
                wind_m_s,
                p_pa: 95e3,
            };
            let surface = OuterSurface {
                diameter_m: 0.022,
                emissivity: 0.9,
                riser_m,
            };
            let film = FilmOutside::new(&curve, surface, around);
            for surface_c in [-8.0, 5.0, 18.0, 24.5, 26.0, 60.0] {
                let step = 1e-4;
                let (low, high) = (film.at(surface_c - step), film.at(surface_c + step));
                let here = film.at(surface_c);
                let loss = (high.loss_w_m - low.loss_w_m) / (2.0 * step);
                let sweat = (high.sweat_heat_w_m - low.sweat_heat_w_m) / (2.0 * step);
                assert!(
                    (loss / here.loss_slope - 1.0).abs() < 5e-3,
                    "{loss} against {here:?}"
                );
                assert!(
                    (sweat - here.sweat_heat_slope).abs() <= 2e-2 * sweat.abs(),
                    "{sweat} against {here:?}"
                );
            }
        }
    }
}
