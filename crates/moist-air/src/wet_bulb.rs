//! Wet bulb: the temperature of adiabatic saturation, with water or with ice on the wick.

use crate::humidity::{saturated_over_ice, saturated_over_water};
use crate::mixture::{MOLAR_MASS_RATIO, humidity_ratio};
use dewrun_numeric::{RootError, itp};

/// How near the wet bulb is found, K.
const TOLERANCE_K: f64 = 1.0e-9;
/// Below every wet bulb of air from -60 °C up.
const COLDEST_C: f64 = -80.0;
/// How far above the air's temperature ice on the wick can be, K: air saturated over water warms it by at most 0.5 K.
const ABOVE_K: f64 = 1.0;

/// What wets the wick.
#[derive(Clone, Copy)]
enum Wick {
    Water,
    Ice,
}

/// What holds at a wick: `W (evaporated from the wick to air at t) = W_s (evaporated at the wick) - 1.006 (t - t*)`, in kJ/kg.
struct AtWick {
    /// Mole fraction at saturation.
    x: f64,
    /// Heat to evaporate at the wick.
    heat: f64,
    /// Heat from the wick's water or ice to vapour at the air's temperature.
    heat_to_air: f64,
    /// Heat that a kilogram of dry air gives up on cooling to the wick.
    cooled: f64,
}

impl Wick {
    /// The terms of the handbook's equations 33 and 35, with its constants.
    fn at(self, t_c: f64, wet_bulb_c: f64, p_pa: f64) -> AtWick {
        let cooled = 1.006 * (t_c - wet_bulb_c);
        match self {
            Self::Water => AtWick {
                x: saturated_over_water(wet_bulb_c, p_pa),
                heat: 2501.0 - 2.326 * wet_bulb_c,
                heat_to_air: 2501.0 + 1.86 * t_c - 4.186 * wet_bulb_c,
                cooled,
            },
            Self::Ice => AtWick {
                x: saturated_over_ice(wet_bulb_c, p_pa),
                heat: 2830.0 - 0.24 * wet_bulb_c,
                heat_to_air: 2830.0 + 1.86 * t_c - 2.1 * wet_bulb_c,
                cooled,
            },
        }
    }

    /// Humidity ratio from dry and wet bulb; negative where dry air cools the wick less, infinite where water boils.
    fn humidity_ratio(self, t_c: f64, wet_bulb_c: f64, p_pa: f64) -> f64 {
        let AtWick {
            x,
            heat,
            heat_to_air,
            cooled,
        } = self.at(t_c, wet_bulb_c, p_pa);
        if 1.0 <= x {
            return f64::INFINITY;
        }
        (humidity_ratio(x) * heat - cooled) / heat_to_air
    }

    /// Wet bulb from dry bulb and humidity ratio.
    fn wet_bulb_c(self, t_c: f64, w: f64, p_pa: f64) -> Result<f64, RootError> {
        // The balance times the share of dry air stays finite where water boils, and is positive there.
        let surplus = |wet_bulb_c: f64| {
            let AtWick {
                x,
                heat,
                heat_to_air,
                cooled,
            } = self.at(t_c, wet_bulb_c, p_pa);
            MOLAR_MASS_RATIO * x * heat - (1.0 - x) * (cooled + w * heat_to_air)
        };
        itp(surplus, COLDEST_C, t_c + ABOVE_K, TOLERANCE_K)
    }
}

/// Humidity ratio from dry bulb `t_c` and a wet bulb `wet_bulb_c` with liquid water on the wick, both in °C, `p_pa` in Pa.
///
/// Negative where even dry air would not cool the wick that far; infinite where water boils at the wet bulb.
///
/// # Range
/// -60 to 95 °C, 50 to 120 kPa.
/// # Accuracy
/// 0.4 % of the real gas, 0.01 K of wet bulb.
/// # Source
/// Adiabatic saturation, ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33 with its constants, at the humidity ratio of saturation of the real gas.
///
/// ```
/// use dewrun_moist_air::wet_bulb::humidity_ratio_over_water;
/// let w = humidity_ratio_over_water(30.0, 25.0, 95_461.0);
/// assert!((w / 0.0193143 - 1.0).abs() < 5e-3); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
pub fn humidity_ratio_over_water(t_c: f64, wet_bulb_c: f64, p_pa: f64) -> f64 {
    Wick::Water.humidity_ratio(t_c, wet_bulb_c, p_pa)
}

/// The same with ice on the wick.
///
/// # Range
/// Dry bulb -60 to 95 °C, wet bulb up to 0.01 °C, 50 to 120 kPa.
/// # Accuracy
/// As [`humidity_ratio_over_water`].
/// # Source
/// As [`humidity_ratio_over_water`], eq. 35 in place of 33.
///
/// ```
/// use dewrun_moist_air::wet_bulb::humidity_ratio_over_ice;
/// let w = humidity_ratio_over_ice(5.0, -1.5, 101_325.0);
/// assert!((w / 0.0010335 - 1.0).abs() < 5e-3); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
pub fn humidity_ratio_over_ice(t_c: f64, wet_bulb_c: f64, p_pa: f64) -> f64 {
    Wick::Ice.humidity_ratio(t_c, wet_bulb_c, p_pa)
}

/// Wet bulb with liquid water on the wick, dry bulb `t_c` in °C, humidity ratio `w`, `p_pa` in Pa [°C].
///
/// # Range
/// -60 to 95 °C, 50 to 120 kPa, up to saturation over water.
/// # Accuracy
/// 0.01 K of the real gas.
/// # Errors
/// [`RootError`] where no wet bulb lies up to 1 K above the dry bulb: supersaturated, or NaN.
/// # Source
/// As [`humidity_ratio_over_water`]; the root by [`itp`].
///
/// ```
/// use dewrun_moist_air::wet_bulb::over_water_c;
/// let t = over_water_c(40.0, 0.0064525, 101_325.0).unwrap();
/// assert!((t - 20.0).abs() < 0.02); // CoolProp 8.0.0, HAPropsSI
/// ```
pub fn over_water_c(t_c: f64, w: f64, p_pa: f64) -> Result<f64, RootError> {
    Wick::Water.wet_bulb_c(t_c, w, p_pa)
}

/// Wet bulb with ice on the wick, dry bulb `t_c` in °C, humidity ratio `w`, `p_pa` in Pa [°C].
///
/// Above 0 °C ice does not stay on a wick and the value is only the curve's continuation. In air between the saturation over ice and over water it lies above the dry bulb.
///
/// # Range
/// As [`over_water_c`].
/// # Accuracy
/// As [`over_water_c`].
/// # Errors
/// As [`over_water_c`].
/// # Source
/// As [`humidity_ratio_over_ice`]; the root by [`itp`].
///
/// ```
/// use dewrun_moist_air::wet_bulb::over_ice_c;
/// let t = over_ice_c(-10.0, 0.0011136, 101_325.0).unwrap();
/// assert!((t - -11.0).abs() < 0.02); // CoolProp 8.0.0, HAPropsSI
/// ```
pub fn over_ice_c(t_c: f64, w: f64, p_pa: f64) -> Result<f64, RootError> {
    Wick::Ice.wet_bulb_c(t_c, w, p_pa)
}
