//! Air between clear and misty: what exceeds saturation is suspended water, below 0 °C ice, at constant enthalpy.

use dewrun_numeric::within;

use crate::fast::{plain_fraction_over_ice, plain_fraction_over_water};
use crate::latent::{
    DRY_AIR_CP, VAPOUR_CP, VAPOUR_ENTHALPY_AT_ZERO, sublimation_j_kg, vaporisation_j_kg,
    vapour_enthalpy_j_kg,
};
use crate::mixture::humidity_ratio;

/// A state of the air, misty or clear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FogAir {
    /// Temperature, °C.
    pub t_c: f64,
    /// Vapour, kg per kg of dry air.
    pub w: f64,
    /// Suspended water, kg per kg of dry air.
    pub mist: f64,
}

/// What is conserved, per kg of dry air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Content {
    /// Enthalpy of air, vapour and mist, J, counted from dry air at 0 °C and liquid water at the triple point.
    pub enthalpy_j_kg: f64,
    /// Vapour and mist, kg.
    pub water: f64,
}

/// Half the stretch over which mist goes from all water to all ice, K.
const MELTING_HALF_BAND_K: f64 = 1e-3;
/// Change of temperature, K, at which the search ends.
const CONVERGED_K: f64 = 1e-10;
const LONGEST_STEP_K: f64 = 20.0;
const MOST_STEPS: u32 = 60;
/// From here on water boils at every pressure in range, and the fits of saturation are none, °C: at 120 kPa it does at 104.8 °C.
const BOILS_FROM_C: f64 = 110.0;
/// Below this the fits are none, and hardly any vapour is left, °C.
const NO_VAPOUR_C: f64 = -100.0;
/// A mole fraction beyond which water counts as boiling.
const BOILING: f64 = 1.0 - 1e-9;

/// Vapour at saturation, kg per kg of dry air, over water from 0 °C up and over ice below, and its slope, 1/K; without bound where water boils.
///
/// # Range
/// -80 to 95 °C, 50 to 120 kPa; anything beyond is boiling, or as dry as at -100 °C.
/// # Source
/// As [`crate::fast::SaturationCurve`].
///
/// ```
/// assert!((dewrun_moist_air::fog::saturation(25.0, 101_325.0).0 / 0.020173 - 1.0).abs() < 2e-3); // ASHRAE Fundamentals 2017, ch. 1, table 2
/// ```
#[must_use]
pub fn saturation(t_c: f64, p_pa: f64) -> (f64, f64) {
    if BOILS_FROM_C <= t_c {
        return (f64::INFINITY, 0.0);
    }
    let t_c = t_c.max(NO_VAPOUR_C);
    let (x, slope) = if t_c < 0.0 {
        plain_fraction_over_ice(t_c, p_pa, p_pa.recip())
    } else {
        plain_fraction_over_water(t_c, p_pa, p_pa.recip())
    };
    if BOILING <= x {
        return (f64::INFINITY, 0.0);
    }
    let w = humidity_ratio(x);
    (w, w * slope / (x * (1.0 - x)))
}

/// Heat that a kilogram of vapour gives up to mist, J/kg.
fn heat_of_mist(t_c: f64) -> f64 {
    let frozen = (0.5 - 0.5 * t_c / MELTING_HALF_BAND_K).clamp(0.0, 1.0);
    let water = vaporisation_j_kg(t_c);
    water + frozen * (sublimation_j_kg(t_c.min(0.0)) - water)
}

impl Content {
    /// The content of air of a state.
    ///
    /// # Range
    /// -80 to 95 °C.
    /// # Source
    /// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30, with the constants of [`crate::latent`]; mist has the vapour's enthalpy less its latent heat.
    ///
    /// ```
    /// use dewrun_moist_air::fog::{Content, FogAir};
    /// let content = Content::of(FogAir { t_c: 30.0, w: 0.02, mist: 0.0 });
    /// assert!((content.enthalpy_j_kg / 81_316.0 - 1.0).abs() < 5e-4);
    /// ```
    #[must_use]
    pub fn of(air: FogAir) -> Self {
        let water = air.w + air.mist;
        let mist_heat = if 0.0 < air.mist {
            air.mist * heat_of_mist(air.t_c)
        } else {
            0.0
        };
        Self {
            enthalpy_j_kg: DRY_AIR_CP * air.t_c + water * vapour_enthalpy_j_kg(air.t_c) - mist_heat,
            water,
        }
    }

    /// The air of this content where all its water is vapour: which it is as long as that does not exceed saturation.
    ///
    /// # Range
    /// Contents of air from -80 to 160 °C that is known to be clear; else [`Content::air`].
    /// # Source
    /// As [`Content::of`].
    ///
    /// ```
    /// use dewrun_moist_air::fog::{Content, FogAir};
    /// let air = FogAir { t_c: 30.0, w: 0.02, mist: 0.0 };
    /// assert!((Content::of(air).clear().t_c - 30.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn clear(self) -> FogAir {
        FogAir {
            t_c: (self.enthalpy_j_kg - VAPOUR_ENTHALPY_AT_ZERO * self.water)
                / (DRY_AIR_CP + VAPOUR_CP * self.water),
            w: self.water,
            mist: 0.0,
        }
    }

    /// The air of this content at a pressure, Pa; its temperature is the root of a rising function.
    ///
    /// # Range
    /// Contents of air from -80 to 95 °C, 50 to 120 kPa.
    /// # Accuracy
    /// 1e-10 K of the relations.
    /// # Source
    /// As [`Content::of`].
    ///
    /// ```
    /// use dewrun_moist_air::fog::{Content, FogAir};
    /// // 28 °C and 2 °C at 95 % in equal parts: 17.525 °C and 0.9669 g/kg of mist; the vapour of both too is that of CoolProp 8.0.0.
    /// let of = |t_c, w| Content::of(FogAir { t_c, w, mist: 0.0 });
    /// let (warm, cold) = (of(28.0, 0.022_973), of(2.0, 0.004_161_2));
    /// let half = |a: f64, b: f64| 0.5 * (a + b);
    /// let mixed = Content { enthalpy_j_kg: half(warm.enthalpy_j_kg, cold.enthalpy_j_kg), water: half(warm.water, cold.water) };
    /// let air = mixed.air(101_325.0);
    /// assert!((air.t_c - 17.525).abs() < 0.03 && (air.mist - 0.000_967).abs() < 1e-5, "{air:?}");
    /// ```
    #[must_use]
    pub fn air(self, p_pa: f64) -> FogAir {
        let clear = self.clear();
        let clear_c = clear.t_c;
        if self.water <= saturation(clear_c, p_pa).0 {
            return clear;
        }
        let (mut low, mut high) = (clear_c, f64::INFINITY);
        let mut t_c = clear_c;
        for _ in 0..MOST_STEPS {
            let (w, slope) = saturation(t_c, p_pa);
            let heat = heat_of_mist(t_c);
            let enthalpy =
                DRY_AIR_CP * t_c + self.water * vapour_enthalpy_j_kg(t_c) - (self.water - w) * heat;
            let missing = self.enthalpy_j_kg - enthalpy;
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
        FogAir {
            t_c,
            w,
            mist: self.water - w,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_state_is_found_again() {
        for t_c in [-30.0, -5.0, 3.0, 20.0, 45.0] {
            for mist in [0.0, 1e-5, 2e-3] {
                let w = saturation(t_c, 95e3).0 * if mist == 0.0 { 0.7 } else { 1.0 };
                let air = FogAir { t_c, w, mist };
                let again = Content::of(air).air(95e3);
                let off = (again.t_c - t_c).abs() + (again.w - w).abs() + (again.mist - mist).abs();
                assert!(off < 1e-8, "{air:?}, {again:?}");
            }
        }
    }

    /// Far beyond where water boils, and far below where there is any vapour, the fits of saturation are none.
    #[test]
    fn air_beyond_the_fits_is_clear() {
        for p_pa in [50e3, 120e3] {
            for t_c in [110.0, 200.0, 350.0, 700.0, 1500.0, 4500.0] {
                assert_eq!(saturation(t_c, p_pa).0, f64::INFINITY, "{t_c} °C");
                let hot = FogAir {
                    t_c,
                    w: 0.009,
                    mist: 0.0,
                };
                let again = Content::of(hot).air(p_pa);
                let off = (again.t_c - t_c).abs() / t_c;
                assert!(off < 1e-9 && again.mist == 0.0, "{again:?} of {t_c} °C");
            }
            let (w, slope) = saturation(-3000.0, p_pa);
            assert!((0.0..1e-6).contains(&w) && 0.0 <= slope, "{w}, {slope}");
        }
    }
}
