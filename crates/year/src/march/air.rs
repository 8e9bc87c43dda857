//! The air between clear and misty: what exceeds saturation is suspended water, at constant enthalpy.

use dewrun_moist_air::latent::{
    DRY_AIR_CP, VAPOUR_CP, VAPOUR_ENTHALPY_AT_ZERO, vapour_enthalpy_j_kg,
};
use dewrun_moist_air::mixture::humidity_ratio;
use dewrun_numeric::within;

use super::balance::deposition;
use super::outside::over_either;

/// What is conserved, per kg of dry air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Content {
    /// Enthalpy of air, vapour and mist, J.
    pub(super) enthalpy: f64,
    /// Vapour and mist, kg.
    pub(super) water: f64,
}

/// The state of the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Air {
    pub(super) t_c: f64,
    pub(super) w: f64,
    pub(super) mist: f64,
}

/// Change of temperature, K, at which the search ends.
const CONVERGED_K: f64 = 1e-10;
const LONGEST_STEP_K: f64 = 20.0;
const MOST_STEPS: u32 = 60;
/// A mole fraction beyond which water counts as boiling.
const BOILING: f64 = 1.0 - 1e-9;

/// Vapour at saturation, kg per kg of dry air, and its slope.
pub(super) fn saturation(t_c: f64, p_pa: f64) -> (f64, f64) {
    let (x, slope) = over_either(t_c, p_pa, p_pa.recip());
    if BOILING <= x {
        return (f64::INFINITY, 0.0);
    }
    let w = humidity_ratio(x);
    (w, w * slope / (x * (1.0 - x)))
}

impl Content {
    /// The content of air of a state.
    pub(super) fn of(air: Air) -> Self {
        let water = air.w + air.mist;
        let heat = if 0.0 < air.mist {
            deposition(air.t_c).0
        } else {
            0.0
        };
        Self {
            enthalpy: DRY_AIR_CP * air.t_c + water * vapour_enthalpy_j_kg(air.t_c)
                - air.mist * heat,
            water,
        }
    }

    /// The air of this content; its temperature is the root of a rising function.
    pub(super) fn air(self, p_pa: f64) -> Air {
        let clear_c = (self.enthalpy - VAPOUR_ENTHALPY_AT_ZERO * self.water)
            / (DRY_AIR_CP + VAPOUR_CP * self.water);
        if self.water <= saturation(clear_c, p_pa).0 {
            return Air {
                t_c: clear_c,
                w: self.water,
                mist: 0.0,
            };
        }
        let (mut low, mut high) = (clear_c, f64::INFINITY);
        let mut t_c = clear_c;
        for _ in 0..MOST_STEPS {
            let (w, slope) = saturation(t_c, p_pa);
            let (heat, _, _) = deposition(t_c);
            let enthalpy =
                DRY_AIR_CP * t_c + self.water * vapour_enthalpy_j_kg(t_c) - (self.water - w) * heat;
            let missing = self.enthalpy - enthalpy;
            if missing < 0.0 {
                high = t_c;
            } else {
                low = t_c;
            }
            let step = missing / (DRY_AIR_CP + VAPOUR_CP * self.water + slope * heat);
            if step.abs() < CONVERGED_K || high - low < CONVERGED_K {
                t_c += step;
                break;
            }
            t_c = within(low, high, t_c + step, LONGEST_STEP_K);
        }
        let w = saturation(t_c, p_pa).0;
        Air {
            t_c,
            w,
            mist: self.water - w,
        }
    }
}
