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
use super::lanes::{larger, smaller};
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
/// FogAir that bears no vapour has its dew point below any surface, °C.
const NO_DEW_C: f64 = -200.0;

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

    /// Asks anew for the dew point of a lane's air where its vapour is more than it was asked for, or much less.
    #[inline(always)]
    pub(super) fn follow_dew(&mut self, l: usize) {
        let (w, asked) = (self.reached.w[l], self.given.clear_w[l]);
        if asked < w || w < MUCH_LESS * asked {
            self.bound_dew(l, ROOM * w);
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
        self.given.slim[l] = 0.0;
        self.given.shape[l] = 0.0;
        for power in &mut self.given.wind {
            power[l] = 0.0;
        }
    }

    /// A leg's space, at its first cell.
    pub(super) fn enter(
        &mut self,
        l: usize,
        around: &Around,
        cell: &Cell<f64>,
        riser: Option<(f64, f64)>,
    ) {
        let given = &mut self.given;
        given.air_c[l] = around.air_c;
        given.radiant_k[l] = around.radiant_c + ZERO_CELSIUS_K;
        given.around[l] = fast_ln(1.0 + around.w);
        given.dry_above_c[l] = dew_c(around.w, given.p_pa[l]) + DEW_MARGIN_K;
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
        let warmer = (self.reached.t_c[l] - around.air_c) * cell.warmth / (1.0 + nearing);
        let traced = cell.tracing * cell.warmth / (cell.outer * 9.0);
        self.reached.surface_c[l] = around.air_c + warmer + traced;
        self.reached.surface_slope[l] = 0.0;
        self.reached.wall_c[l] = self.reached.t_c[l];
        self.reached.wall_slope[l] = 0.0;
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
    243.12 * ln / (17.62 - ln)
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::fog::saturation;

    use super::*;

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
