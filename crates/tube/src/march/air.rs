//! The air in the tube: enthalpy and water are what the march conserves, temperature and vapour follow from them.

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_moist_air::latent::{
    DRY_AIR_CP, VAPOUR_CP, VAPOUR_ENTHALPY_AT_ZERO, vapour_enthalpy_j_kg,
};
use dewrun_moist_air::mixture::{MOLAR_MASS_RATIO, humidity_ratio};

use dewrun_numeric::within;

use crate::phase::heat_of_deposition;

/// What is conserved, per kg of dry air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Content {
    /// Enthalpy of air, vapour and mist, J.
    pub(crate) enthalpy: f64,
    /// Vapour and mist, kg.
    pub(crate) water: f64,
}

/// The state of the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Air {
    /// Temperature, °C.
    pub(crate) t_c: f64,
    /// Vapour, kg per kg of dry air.
    pub(crate) w: f64,
    /// Vapour at saturation at this temperature, kg per kg of dry air.
    pub(crate) saturation: f64,
    /// Its slope with temperature, 1/K.
    pub(crate) saturation_slope: f64,
    /// Water less saturation, kg per kg of dry air: the mist where it is above zero. In clear air below zero.
    pub(crate) excess: f64,
    /// How temperature follows enthalpy and water.
    pub(crate) t_by: [f64; 2],
    /// How vapour follows enthalpy and water.
    pub(crate) w_by: [f64; 2],
}

impl Air {
    /// Suspended water, kg per kg of dry air.
    pub(crate) fn mist(&self) -> f64 {
        self.excess.max(0.0)
    }

    /// The air after a small change of enthalpy and water, by its slopes.
    pub(crate) fn moved(&self, enthalpy: f64, water: f64) -> Self {
        let t_k = self.t_by[0] * enthalpy + self.t_by[1] * water;
        let saturation_change = self.saturation_slope * t_k;
        Self {
            t_c: self.t_c + t_k,
            w: self.w + self.w_by[0] * enthalpy + self.w_by[1] * water,
            saturation: self.saturation + saturation_change,
            excess: self.excess + water - saturation_change,
            ..*self
        }
    }
}

/// More steps than the temperature of misty air ever took.
const MAX_STEPS: u32 = 60;
/// Longest step of that search, K.
const LONGEST_STEP_K: f64 = 20.0;
/// Change of temperature, K, at which the search ends; the next step would be its square.
const CONVERGED_K: f64 = 1e-10;

impl Content {
    /// The content of air whose water is all vapour, at `t_c`.
    pub(crate) fn of_vapour(t_c: f64, w: f64) -> Self {
        Self {
            enthalpy: DRY_AIR_CP * t_c + w * vapour_enthalpy_j_kg(t_c),
            water: w,
        }
    }

    /// Clear air of this content: all water is vapour, saturated or not.
    pub(crate) fn clear(self, curve: &SaturationCurve) -> Air {
        let air = self.unsaturated();
        let (saturation, saturation_slope) = saturation(curve, air.t_c);
        Air {
            saturation,
            saturation_slope,
            excess: self.water - saturation,
            ..air
        }
    }

    /// The same where it is known to be unsaturated: how far from saturation is not asked.
    pub(crate) fn unsaturated(self) -> Air {
        let per_heat_capacity = 1.0 / (DRY_AIR_CP + VAPOUR_CP * self.water);
        let t_c = (self.enthalpy - VAPOUR_ENTHALPY_AT_ZERO * self.water) * per_heat_capacity;
        Air {
            t_c,
            w: self.water,
            saturation: f64::INFINITY,
            saturation_slope: 0.0,
            excess: f64::NEG_INFINITY,
            t_by: [
                per_heat_capacity,
                -vapour_enthalpy_j_kg(t_c) * per_heat_capacity,
            ],
            w_by: [0.0, 1.0],
        }
    }

    /// Air of this content with its vapour at saturation, the rest suspended as water, or below 0 °C as ice.
    ///
    /// The temperature is the root of a rising function; a step that leaves what is known of it is halved.
    pub(crate) fn misty(self, curve: &SaturationCurve, near_c: f64) -> Air {
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        let mut t_c = near_c;
        for _ in 0..MAX_STEPS {
            let point = self.saturated_at(curve, t_c);
            if point.missing < 0.0 {
                high = t_c;
            } else {
                low = t_c;
            }
            let step = (point.missing / point.heat_capacity).clamp(-LONGEST_STEP_K, LONGEST_STEP_K);
            let next = t_c + step;
            if step.abs() < CONVERGED_K || high - low < CONVERGED_K {
                t_c = next;
                break;
            }
            t_c = within(low, high, next, LONGEST_STEP_K);
        }
        let point = self.saturated_at(curve, t_c);
        let t_by = [
            1.0 / point.heat_capacity,
            -(vapour_enthalpy_j_kg(t_c) - point.deposition) / point.heat_capacity,
        ];
        Air {
            t_c,
            w: point.saturation,
            saturation: point.saturation,
            saturation_slope: point.slope,
            excess: self.water - point.saturation,
            t_by,
            w_by: [point.slope * t_by[0], point.slope * t_by[1]],
        }
    }

    fn saturated_at(self, curve: &SaturationCurve, t_c: f64) -> Saturated {
        let (saturation, slope) = saturation(curve, t_c);
        let (deposition, deposition_slope, _) = heat_of_deposition(t_c);
        let mist = self.water - saturation;
        let enthalpy =
            DRY_AIR_CP * t_c + self.water * vapour_enthalpy_j_kg(t_c) - mist * deposition;
        Saturated {
            saturation,
            slope,
            deposition,
            missing: self.enthalpy - enthalpy,
            heat_capacity: DRY_AIR_CP + VAPOUR_CP * self.water + slope * deposition
                - mist.max(0.0) * deposition_slope,
        }
    }
}

/// Saturated air at a temperature that is tried.
struct Saturated {
    saturation: f64,
    slope: f64,
    deposition: f64,
    missing: f64,
    heat_capacity: f64,
}

/// Humidity ratio at saturation and its slope; without bound where water boils.
pub(crate) fn saturation(curve: &SaturationCurve, t_c: f64) -> (f64, f64) {
    let Some((x, slope)) = saturated_fraction(curve, t_c) else {
        return (f64::INFINITY, 0.0);
    };
    let air = 1.0 - x;
    (humidity_ratio(x), MOLAR_MASS_RATIO * slope / (air * air))
}

/// Mole fraction of vapour at saturation and its slope; none where water boils.
#[inline]
pub(crate) fn saturated_fraction(curve: &SaturationCurve, t_c: f64) -> Option<(f64, f64)> {
    let (x, slope) = curve.mole_fraction(t_c.clamp(COLDEST_C, HOTTEST_C));
    (x < BOILING).then_some((x, slope))
}

/// A mole fraction of vapour from which on water counts as boiling.
pub(crate) const BOILING: f64 = 1.0 - 1e-9;

/// Past these temperatures, °C, every property is taken as at them; a run that gets there is refused.
pub(crate) const COLDEST_C: f64 = -80.0;
/// As [`COLDEST_C`].
pub(crate) const HOTTEST_C: f64 = 160.0;
