//! Puts an hour, a space, the detector's heat before a lane.

use dewrun_moist_air::ZERO_CELSIUS_K;
use dewrun_moist_air::fog::{Content, FogAir};
use dewrun_moist_air::latent::{DRY_AIR_CP, vapour_enthalpy_j_kg};
use dewrun_moist_air::mixture::MOLAR_MASS_RATIO;
use dewrun_numeric::fast::fast_ln;
use dewrun_numeric::fast_cbrt;
use dewrun_tube::film_outside::plain::{slender_by_pressure, wind_across};

use super::cell::Cell;
use super::inside::{HOTTEST_C, USUAL_NEARING};
use super::lanes::{LANES, Lanes, any_above, either, is_positive, larger, smaller};
use super::state::State;
use crate::hours::{Around, Hour};

/// More than the error of the dew point that is guessed here, K.
const DEW_MARGIN_K: f64 = 0.5;
/// More than that error, K, and how it grows with the square of the dew point, 1/K: 0.5 K too low at 99 °C.
const CLEAR_MARGIN_K: f64 = 0.3;
const CLEAR_MARGIN_K2: f64 = 1e-4;
/// Shares of the vapour that a dew point was asked for: below the first one is asked for anew, and with some room.
const MUCH_LESS: f64 = 0.94;
const ROOM: f64 = 1.01;
/// Of Magnus's formula over water: WMO-No. 8 (2018), annex 4.B.
const MAGNUS: f64 = 17.62;
const MAGNUS_C: f64 = 243.12;
/// Heat of a kilogram of vapour over the heat capacity of air, K, less as a usual film passes it less well than heat; for a guess.
const LATENT_K: f64 = 2.47e6 / 1010.0 / 1.1;
/// FogAir that bears no vapour has its dew point below any surface, °C.
const NO_DEW_C: f64 = -200.0;
/// The frost point of air that is saturated over water lies over its temperature by no more than this for each kelvin below 0 °C.
const FROST_OVER_DEW: f64 = 0.12;

impl State {
    /// An hour's air at the intake.
    pub(super) fn load(&mut self, l: usize, hour: &Hour, seconds: f64) {
        let given = &mut self.given;
        given.seconds[l] = seconds;
        given.per_second[l] = if 0.0 < seconds { seconds.recip() } else { 0.0 };
        given.p_pa[l] = hour.p_pa;
        given.per_pa[l] = hour.p_pa.recip();
        given.p_root[l] = fast_cbrt(hour.p_pa);
        given.flow[l] = hour.dry_air_kg_s;
        given.per_flow[l] = hour.dry_air_kg_s.recip();
        let entering = FogAir {
            t_c: hour.air_c,
            w: hour.w,
            mist: 0.0,
        };
        self.bound_dew(l, hour.w);
        let air = if self.given.clear_above_c[l] < hour.air_c {
            entering
        } else {
            Content::of(entering).air(hour.p_pa)
        };
        self.put(l, air);
        self.reached.vapour[l] = 0.0;
    }

    /// The air at the end of a cell goes on, in lanes that have an hour; its dew point is asked for anew where its vapour is more than it was asked for, or much less.
    pub(super) fn flow_on(&mut self, active: &Lanes) {
        let (given, reached, settled) = (&self.given, &mut self.reached, &self.settled);
        let mut off: Lanes = [0.0; LANES];
        for l in 0..LANES {
            let here = is_positive(active[l]);
            reached.t_c[l] = either(here, settled.t_c[l], reached.t_c[l]);
            reached.w[l] = either(here, settled.w[l], reached.w[l]);
            let (w, asked) = (reached.w[l], given.clear_w[l]);
            off[l] = active[l] * larger(w - asked, MUCH_LESS * asked - w);
        }
        if any_above(&off, 0.0) {
            for (l, off) in off.into_iter().enumerate() {
                if 0.0 < off {
                    self.bound_dew(l, ROOM * self.reached.w[l]);
                }
            }
        }
    }

    /// Asks for the dew point of a lane's air, with no more vapour than so much.
    fn bound_dew(&mut self, l: usize, w: f64) {
        self.given.clear_w[l] = w;
        let dew_c = dew_c(w, self.given.p_pa[l]);
        let warm_c = larger(dew_c, 0.0);
        self.given.clear_above_c[l] = dew_c + CLEAR_MARGIN_K + CLEAR_MARGIN_K2 * warm_c * warm_c;
    }

    /// A lane without an hour: nothing deposits in a step of no length.
    pub(super) fn stand(&mut self, l: usize) {
        let idle = Hour {
            seconds: 0.0,
            air_c: 15.0,
            w: 0.005,
            p_pa: 1e5,
            dry_air_kg_s: 6e-4,
        };
        self.load(l, &idle, 0.0);
        self.film.water[l] = 0.0;
        self.film.frost[l] = 0.0;
        self.film.pool[l] = 0.0;
        self.film.pooled[l] = 0.0;
        self.given.air_c[l] = 15.0;
        self.given.radiant_k[l] = 288.15;
        self.given.dry_above_c[l] = NO_DEW_C;
        self.given.asked[l] = 1.0;
        self.given.slim[l] = 0.0;
        self.given.shape[l] = 0.0;
        for power in &mut self.given.wind {
            power[l] = 0.0;
        }
    }

    /// A space that a lane comes into.
    ///
    /// Its dew or frost point is asked for once a surface is as cold as air that holds all the vapour it can could have it.
    pub(super) fn surround(&mut self, l: usize, around: &Around) {
        let given = &mut self.given;
        given.air_c[l] = around.air_c;
        given.radiant_k[l] = around.radiant_c + ZERO_CELSIUS_K;
        given.around[l] = around.w;
        given.dry_above_c[l] =
            around.air_c + DEW_MARGIN_K + FROST_OVER_DEW * larger(-around.air_c, 0.0);
        given.asked[l] = 0.0;
    }

    /// Asks for the dew points of the spaces of those lanes whose surface may be as cold.
    #[cold]
    pub(super) fn ask_around(&mut self) {
        let given = &mut self.given;
        for l in 0..LANES {
            if given.asked[l] < 0.5 && self.solving.surface_c[l] < given.dry_above_c[l] {
                given.dry_above_c[l] = dew_c(given.around[l], given.p_pa[l]) + DEW_MARGIN_K;
                given.around[l] = fast_ln(1.0 + given.around[l]);
                given.asked[l] = 1.0;
            }
        }
    }

    /// The first cell of a leg, in the space that the lane is in, with what is on its wall.
    pub(super) fn enter_leg(
        &mut self,
        l: usize,
        around: &Around,
        cell: &Cell<f64>,
        riser: Option<(f64, f64)>,
    ) {
        let given = &mut self.given;
        (given.slim[l], given.shape[l]) = riser.map_or((0.0, 0.0), |(slim, shape)| {
            (slim, shape * slender_by_pressure(given.p_pa[l]))
        });
        let wind = if 0.0 < around.wind_m_s {
            wind_across(
                around.wind_m_s,
                cell.per_outer.recip(),
                given.p_pa[l],
                around.air_c,
            )
        } else {
            [0.0; 3]
        };
        for (power, value) in given.wind.iter_mut().zip(wind) {
            power[l] = value;
        }
        // Within the first cell the air nears the wall, the more the less of it flows.
        let nearing = 0.5 * cell.length * given.per_flow[l] * USUAL_NEARING;
        let warmer = (self.reached.t_c[l] - around.air_c) / (1.0 + nearing);
        let wall_c = self.wall_ahead(l, (around.air_c, warmer), cell);
        self.reached.surface_c[l] = around.air_c + (wall_c - around.air_c) * cell.warmth;
        self.reached.surface_slope[l] = 0.0;
        self.reached.fades[l] = 0.0;
        self.reached.half_before[l] = 0.0;
        self.reached.wall_c[l] = self.reached.t_c[l];
        self.reached.wall_slope[l] = 0.0;
    }

    /// The first wall of a leg as guessed, °C: between air and space by usual films, and where it is wet also by the heat of its vapour.
    fn wall_ahead(&self, l: usize, (space_c, warmer): (f64, f64), cell: &Cell<f64>) -> f64 {
        let traced_k = cell.tracing * cell.inside;
        let dry_c = space_c + (warmer + traced_k) / (1.0 + cell.follows);
        let dew_c = self.given.clear_above_c[l] - CLEAR_MARGIN_K;
        if dew_c <= dry_c && self.film.water[l] + self.film.frost[l] <= 0.0 {
            return dry_c;
        }
        // Vapour at saturation grows with the wall as Magnus's formula has it, about the dew point.
        let over_c = MAGNUS_C + dew_c;
        let heat = LATENT_K * self.reached.w[l] * MAGNUS * MAGNUS_C / (over_c * over_c);
        let pull = warmer + traced_k + heat * (dew_c - space_c);
        space_c + pull / (1.0 + heat + cell.follows)
    }

    /// The detector warms the air of a lane.
    pub(super) fn warm(&mut self, l: usize, power_w: f64) {
        let air = self.warmed(l, power_w);
        self.put(l, air);
    }

    /// The air of a lane as the detector warms it: no further than the relations of the tube behind it hold, for the rest leaves through its housing.
    pub(super) fn warmed(&self, l: usize, power_w: f64) -> FogAir {
        let content = Content::of(self.air(l));
        let hottest = DRY_AIR_CP * HOTTEST_C + content.water * vapour_enthalpy_j_kg(HOTTEST_C);
        let warm = content.enthalpy_j_kg + power_w * self.given.per_flow[l];
        let enthalpy_j_kg = smaller(warm, larger(content.enthalpy_j_kg, hottest));
        let content = Content {
            enthalpy_j_kg,
            ..content
        };
        let clear = content.clear();
        let is_clear = clear.w <= self.given.clear_w[l] && self.given.clear_above_c[l] < clear.t_c;
        if is_clear {
            clear
        } else {
            content.air(self.given.p_pa[l])
        }
    }

    fn put(&mut self, l: usize, air: FogAir) {
        let reached = &mut self.reached;
        (reached.t_c[l], reached.w[l], reached.mist[l]) = (air.t_c, air.w, air.mist);
    }
}

/// Dew or frost point to 0.3 K, °C, to know whether a surface could sweat: Magnus's formula, WMO-No. 8 (2018), annex 4.B.
fn dew_c(w: f64, p_pa: f64) -> f64 {
    if w <= 0.0 {
        return NO_DEW_C;
    }
    let ln = fast_ln(p_pa * w / (MOLAR_MASS_RATIO + w) / 611.2);
    if ln < 0.0 {
        return 272.62 * ln / (22.46 - ln);
    }
    MAGNUS_C * ln / (MAGNUS - ln)
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::fog::saturation;

    use super::*;
    use crate::march::cell::{Grid, Roots, cells};
    use crate::march::lanes::{LANES, skewed};
    use crate::route::{Leg, Route};

    /// The surface of a first cell is guessed to a sixteenth of how far air and space are apart, dry or wet.
    #[test]
    fn the_first_surface_is_near_its_guess() {
        let route = Route {
            intake: vec![Leg::plastic(6.0)],
            detector_w: 0.0,
            exhaust: Vec::new(),
        };
        let roots = Roots::between((6e-4, 6e-4));
        let of_route = cells(&route, Grid::PRODUCT, roots);
        let first = of_route[0].0;
        for (air_c, w, space_c) in [(25.0, 0.004, 12.0), (25.0, 0.016, 5.0), (14.0, 0.009, 30.0)] {
            let mut state = State::idle();
            let hour = Hour {
                seconds: 3600.0,
                air_c,
                w,
                p_pa: 101_325.0,
                dry_air_kg_s: 6e-4,
            };
            let around = Around {
                air_c: space_c,
                w: 0.001,
                radiant_c: space_c,
                wind_m_s: 0.0,
            };
            for l in 0..LANES {
                state.load(l, &hour, 3600.0);
                state.surround(l, &around);
                state.enter_leg(l, &around, &first, None);
            }
            let guess_c = state.reached.surface_c[0];
            state.exchange(&skewed(&[first])[0]);
            let (surface_c, step_k) = (state.solving.surface_c[0], state.solving.step[0]);
            let off_k = (surface_c + step_k - guess_c).abs();
            let apart_k = (air_c - space_c).abs();
            assert!(
                off_k < 0.06 * apart_k,
                "{off_k} K of air at {air_c} °C, {w}"
            );
        }
    }

    /// What is taken as dry has its dew point below what is asked for, with room for the linear last step.
    #[test]
    fn a_dew_point_is_surely_below_its_bound() {
        for p_pa in [50e3, 80e3, 101_325.0, 120e3] {
            for half in -160..=190 {
                let t_c = 0.5 * f64::from(half);
                let (w, _) = saturation(t_c, p_pa);
                if w < 1.0 {
                    let mut state = State::idle();
                    state.given.p_pa[0] = p_pa;
                    state.bound_dew(0, w);
                    let above = state.given.clear_above_c[0] - t_c;
                    assert!(
                        0.2 < above && above < 1.5,
                        "{above} K at {t_c} °C, {p_pa} Pa"
                    );
                }
            }
        }
    }
}
