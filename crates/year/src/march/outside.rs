//! The outside film while the surface is searched: natural convection, wind and sweat.

use dewrun_moist_air::fast::{plain_fraction_over_ice, plain_fraction_over_water};
use dewrun_moist_air::latent::{sublimation_j_kg, vaporisation_j_kg};
use dewrun_moist_air::mixture::MOLAR_MASS_RATIO;
use dewrun_numeric::plain::{LN_OF_QUOTIENT_UP_TO, ln_of_quotient, plain_ln, rough_cbrt};
use dewrun_tube::film_outside::plain::{
    conductivity_w_mk, level_natural, lewis_kg_k_j, rising_natural,
};

use super::cell::Cell;
use super::inside::within_range;
use super::lanes::{
    LANES, Lanes, any_above, any_below, either, is_negative, is_positive, larger, smaller,
};
use super::state::State;

/// Below this difference to the air, K, the coefficient of natural convection is held.
const LEAST_DIFFERENCE_K: f64 = 1e-4;
/// A mole fraction beyond which water counts as boiling.
const MOST_FRACTION: f64 = 0.999;

/// `ln(1 + W)` of mole fractions, and its slopes by those of the fractions.
///
/// `1 + W` is the quotient of what both weigh and what the air weighs, so that the logarithm's series and the slope come of one division.
#[inline(always)]
pub(super) fn ln_vapour((fraction, slope): (&Lanes, &Lanes)) -> (Lanes, Lanes) {
    const LIGHTER: f64 = 1.0 - MOLAR_MASS_RATIO;
    let mut ln: Lanes = [0.0; LANES];
    let mut ln_slope: Lanes = [0.0; LANES];
    let mut series: Lanes = [0.0; LANES];
    let mut quotient: Lanes = [0.0; LANES];
    for l in 0..LANES {
        let x = smaller(fraction[l], MOST_FRACTION);
        let (air, both) = (1.0 - x, 1.0 - LIGHTER * x);
        let (product, sum) = (air * both, air + both);
        let per = 1.0 / (product * sum);
        series[l] = MOLAR_MASS_RATIO * x * (per * product);
        ln[l] = ln_of_quotient(series[l]);
        quotient[l] = both * both * (per * sum);
        // Cut off, it rises no more.
        let rises = either(is_negative(fraction[l] - MOST_FRACTION), slope[l], 0.0);
        ln_slope[l] = rises * MOLAR_MASS_RATIO * (per * sum);
    }
    if any_above(&series, LN_OF_QUOTIENT_UP_TO) {
        for l in 0..LANES {
            let far = plain_ln(quotient[l]);
            ln[l] = if series[l] < LN_OF_QUOTIENT_UP_TO {
                ln[l]
            } else {
                far
            };
        }
    }
    (ln, ln_slope)
}

impl State {
    /// Convection of the surfaces that are tried.
    #[inline(always)]
    pub(super) fn convect(&mut self, cell: &Cell<Lanes>) {
        let (given, solving) = (&self.given, &mut self.solving);
        let mut film: Lanes = [0.0; LANES];
        let mut sizes: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let difference = solving.surface_c[l] - given.air_c[l];
            let film_c = within_range(0.5 * (solving.surface_c[l] + given.air_c[l]));
            let root = rough_cbrt(larger(difference.abs(), LEAST_DIFFERENCE_K).sqrt());
            let size = root * given.p_root[l] * cell.size[l];
            (film[l], sizes[l]) = (film_c, size);
            let (number, exponent) = level_natural(size, film_c);
            solving.number[l] = number * cell.natural[l];
            solving.exponent[l] = exponent;
        }
        if any_above(&self.given.slim, 0.0) {
            self.rise(cell, (&film, &sizes));
        }
        if any_above(&self.given.wind[0], 0.0) {
            self.blow();
        }
    }

    /// Those lanes that are in a riser, of their film temperatures and sizes as a level tube has them.
    #[inline(always)]
    fn rise(&mut self, cell: &Cell<Lanes>, (film, sizes): (&Lanes, &Lanes)) {
        let (given, solving) = (&self.given, &mut self.solving);
        for l in 0..LANES {
            let difference = larger(
                (solving.surface_c[l] - given.air_c[l]).abs(),
                LEAST_DIFFERENCE_K,
            );
            let slim = given.slim[l];
            let (number, exponent) = rising_natural(sizes[l], given.shape[l], film[l], difference);
            let rises = is_positive(slim);
            let number = number * slim * cell.natural[l];
            solving.number[l] = either(rises, number, solving.number[l]);
            solving.exponent[l] = either(rises, exponent, solving.exponent[l]);
        }
    }

    /// The wind of those lanes that have any.
    #[inline(always)]
    fn blow(&mut self) {
        let (given, solving) = (&self.given, &mut self.solving);
        for l in 0..LANES {
            let off = 0.5 * (solving.surface_c[l] - given.air_c[l]);
            let [here, slope, bend] = [given.wind[0][l], given.wind[1][l], given.wind[2][l]];
            let forced = here + off * (slope + off * bend);
            let natural = solving.number[l];
            let cubed = natural * natural * natural;
            let both = rough_cbrt(cubed + forced * forced * forced);
            let windy = is_positive(here);
            solving.exponent[l] *= either(windy, cubed / (both * both * both), 1.0);
            solving.number[l] = either(windy, both, natural);
        }
    }

    #[inline(always)]
    fn may_sweat(&self) -> bool {
        let (given, solving) = (&self.given, &self.solving);
        let below: Lanes = core::array::from_fn(|l| given.dry_above_c[l] - solving.surface_c[l]);
        any_above(&below, 0.0)
    }

    /// Sweat of those lanes whose surface is below the dew point of its space.
    #[inline(always)]
    pub(super) fn sweat(&mut self, cell: &Cell<Lanes>) {
        let mut sweats = self.may_sweat();
        if sweats {
            self.ask_around();
            sweats = self.may_sweat();
        }
        let (given, solving) = (&self.given, &mut self.solving);
        if !sweats {
            solving.sweat = [0.0; LANES];
            solving.sweat_heat = [0.0; LANES];
            solving.sweat_slope = [0.0; LANES];
            return;
        }
        // Water and ice in a loop of their own each: both in one, and it would not go side by side.
        let mut fraction: Lanes = [0.0; LANES];
        let mut slope: Lanes = [0.0; LANES];
        let mut heat: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let warm_c = larger(within_range(solving.surface_c[l]), 0.0);
            (fraction[l], slope[l]) =
                plain_fraction_over_water(warm_c, given.p_pa[l], given.per_pa[l]);
            heat[l] = vaporisation_j_kg(warm_c);
        }
        let (mut wall, mut wall_slope) = ln_vapour((&fraction, &slope));
        if any_below(&solving.surface_c, 0.0) {
            let mut ice_heat: Lanes = [0.0; LANES];
            for l in 0..LANES {
                let cold_c = smaller(within_range(solving.surface_c[l]), 0.0);
                (fraction[l], slope[l]) =
                    plain_fraction_over_ice(cold_c, given.p_pa[l], given.per_pa[l]);
                ice_heat[l] = sublimation_j_kg(cold_c);
            }
            let (ice, ice_slope) = ln_vapour((&fraction, &slope));
            for l in 0..LANES {
                let cold = solving.surface_c[l] < 0.0;
                wall[l] = if cold { ice[l] } else { wall[l] };
                wall_slope[l] = if cold { ice_slope[l] } else { wall_slope[l] };
                heat[l] = if cold { ice_heat[l] } else { heat[l] };
            }
        }
        for l in 0..LANES {
            let surface_c = within_range(solving.surface_c[l]);
            let film_c = within_range(0.5 * (surface_c + given.air_c[l]));
            let convection = solving.number[l] * conductivity_w_mk(film_c) * cell.per_outer[l];
            let per_force = cell.outer[l] * lewis_kg_k_j(film_c) * convection;
            let force = larger(given.around[l] - wall[l], 0.0);
            let slope = if 0.0 < force { wall_slope[l] } else { 0.0 };
            solving.sweat[l] = per_force * force;
            solving.sweat_heat[l] = solving.sweat[l] * heat[l];
            solving.sweat_slope[l] = -per_force * slope * heat[l];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ln_vapour;
    use crate::hours::Around;
    use crate::march::cell::{Grid, Roots, cells};
    use crate::march::lanes::{LANES, skewed};
    use crate::march::state::State;
    use crate::route::{Leg, Route};

    /// Beyond boiling the logarithm is cut off: had it a slope there, a wall of any temperature could take up water without bound.
    #[test]
    fn saturation_rises_as_its_slope_says_up_to_boiling_and_no_further() {
        const OFF: f64 = 1e-6;
        for fraction in [0.001, 0.02, 0.2, 0.5, 0.9, 0.998, 1.0, 1.2, 6.0] {
            let at = |x: f64| ln_vapour((&[x; LANES], &[1.0; LANES])).0[0];
            let rises = (at(fraction + OFF) - at(fraction - OFF)) / (2.0 * OFF);
            let (_, slope) = ln_vapour((&[fraction; LANES], &[1.0; LANES]));
            let off = (slope[0] - rises).abs();
            assert!(
                off <= 1e-5 * rises,
                "{} and not {rises} at {fraction}",
                slope[0]
            );
        }
    }

    /// Each lane has the film of its own tube, whatever the lanes beside it are in: still air or wind, a level tube or a riser.
    #[test]
    fn lanes_have_the_film_of_their_own_tube() {
        let route = Route {
            intake: vec![Leg::plastic(4.0)],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let of_route = cells(&route, Grid::PRODUCT, Roots::between((6e-4, 6e-4)));
        let all: Vec<_> = of_route.into_iter().map(|(cell, _)| cell).collect();
        let same = [all[0]; 1];
        let turn = &skewed(&same)[0];
        let films = |kinds: &dyn Fn(usize) -> (f64, Option<(f64, f64)>)| {
            let mut state = State::idle();
            for l in 0..LANES {
                let (wind_m_s, riser) = kinds(l);
                let around = Around {
                    air_c: 12.0,
                    w: 0.001,
                    radiant_c: 12.0,
                    wind_m_s,
                };
                state.surround(l, &around);
                state.enter_leg(l, &around, &all[0], riser);
                state.solving.surface_c[l] = 18.0;
            }
            state.convect(turn);
            (state.solving.number, state.solving.exponent)
        };
        let tubes = [
            (0.0, None),
            (0.0, Some((0.01, 40.0))),
            (2.0, None),
            (2.0, Some((0.01, 40.0))),
        ];
        let beside = films(&|l| tubes[l % 4]);
        for (l, tube) in tubes.into_iter().enumerate() {
            let alone = films(&|_| tube);
            assert_eq!(
                (beside.0[l].to_bits(), beside.1[l].to_bits()),
                (alone.0[l].to_bits(), alone.1[l].to_bits()),
                "{tube:?}"
            );
            assert!(0.0 < alone.0[l], "{tube:?} has a film");
        }
    }
}
