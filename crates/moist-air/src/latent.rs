//! Heats of phase change and heat capacities: the constants every balance closes with.

pub use crate::mixture::MOLAR_MASS_RATIO;

use dewrun_numeric::polynomial::polynomial;

/// Heat capacity of dry air, J/(kg K).
pub const DRY_AIR_CP: f64 = 1006.0;
/// Heat capacity of water vapour, J/(kg K).
pub const VAPOUR_CP: f64 = 1875.0;
/// Enthalpy of water vapour at 0 °C over liquid water at the triple point, J/kg.
pub const VAPOUR_ENTHALPY_AT_ZERO: f64 = 2500.9e3;
/// Heat of fusion of ice at 0 °C, J/kg: [`sublimation_j_kg`] less [`vaporisation_j_kg`] there.
pub const FUSION: f64 = 333.46e3;

/// Heat of vaporisation of water, `t_c` in °C [J/kg].
///
/// # Range
/// 0 to 100 °C; below it runs on and is 0.4 % under Murphy & Koop 2005 at -40 °C.
/// # Accuracy
/// 2e-5 of the IAPWS-95 value.
/// # Source
/// Cubic through IAPWS R6-95(2018) (Wagner & Pruss, J. Phys. Chem. Ref. Data 31 (2002) 387, <https://doi.org/10.1063/1.1461829>).
///
/// ```
/// use dewrun_moist_air::latent::vaporisation_j_kg;
/// assert!((vaporisation_j_kg(20.0) / 2453.5e3 - 1.0).abs() < 1e-4);
/// ```
#[must_use]
#[inline]
pub fn vaporisation_j_kg(t_c: f64) -> f64 {
    polynomial(
        &[
            2.500_905_63e6,
            -2.374_634_42e3,
            0.520_926_136,
            -0.012_238_833_1,
        ],
        t_c,
    )
}

/// Heat of sublimation of ice, `t_c` in °C [J/kg].
///
/// # Range
/// -60 to 0 °C.
/// # Accuracy
/// 1e-5 of the difference of vapour (IAPWS-95) and ice (R10-06), which is what the slope of R14-08 gives with the real vapour's volume.
/// # Source
/// Cubic through IAPWS R10-06(2009), R6-95(2018) and R14-08(2011), <https://doi.org/10.1063/1.3657937>.
///
/// ```
/// use dewrun_moist_air::latent::sublimation_j_kg;
/// assert!((sublimation_j_kg(-20.0) / 2838.4e3 - 1.0).abs() < 1e-3);
/// ```
#[must_use]
#[inline]
pub fn sublimation_j_kg(t_c: f64) -> f64 {
    polynomial(
        &[
            2.834_367_41e6,
            -266.452_771,
            -4.134_720_73,
            -0.003_383_179_53,
        ],
        t_c,
    )
}

/// Enthalpy of water vapour, `t_c` in °C, over liquid water at the triple point [J/kg].
///
/// # Range
/// -60 to 95 °C.
/// # Accuracy
/// 0.5 % at 95 °C against the saturated vapour of IAPWS-95.
/// # Source
/// ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30 in form; heat capacity 1875 J/(kg K).
///
/// ```
/// use dewrun_moist_air::latent::vapour_enthalpy_j_kg;
/// assert!((vapour_enthalpy_j_kg(20.0) - 2538.4e3).abs() < 1.0);
/// ```
#[must_use]
#[inline]
pub fn vapour_enthalpy_j_kg(t_c: f64) -> f64 {
    VAPOUR_ENTHALPY_AT_ZERO + VAPOUR_CP * t_c
}
