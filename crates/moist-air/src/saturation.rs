//! Saturation pressure of pure water vapour over liquid water and over ice.

use crate::ZERO_CELSIUS_K;
use dewrun_numeric::elementary::{exp, exp_m1, ln, pow};

/// Where ice, liquid and vapour meet, °C: the two relations over liquid water join here (they differ by 4e-8 of the value).
pub const TRIPLE_POINT_C: f64 = 0.01;

/// Critical temperature of water, K, and critical pressure, Pa (IAPWS SR1-86).
const CRITICAL_K: f64 = 647.096;
const CRITICAL_PA: f64 = 22.064e6;

/// Saturation pressure over liquid water, `t_c` in °C, in Pa; below the triple point over supercooled water.
///
/// # Range
/// -150 to 373 °C; 0 where the temperature is at or below absolute zero. Above the critical point the value means nothing.
/// # Accuracy
/// 0.01 to 100 °C: 0.025 % of the IAPWS-95 value. Supercooled: the curve itself is known to about 1 % at -40 °C.
/// # Source
/// Above 0.01 °C Wagner & Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, eq. 1 (IAPWS SR1-86), <https://doi.org/10.1063/1.555926>;
/// below Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 10, <https://doi.org/10.1256/qj.04.94>.
///
/// ```
/// use dewrun_moist_air::saturation::pressure_over_water_pa;
/// assert!((pressure_over_water_pa(25.0) / 3169.7 - 1.0).abs() < 3e-4); // ASHRAE Fundamentals 2017, ch. 1, table 3
/// assert!((pressure_over_water_pa(-33.15) / 37.667 - 1.0).abs() < 3e-4); // Murphy & Koop 2005, table C1
/// ```
#[must_use]
pub fn pressure_over_water_pa(t_c: f64) -> f64 {
    if t_c < TRIPLE_POINT_C {
        murphy_koop_2005(t_c + ZERO_CELSIUS_K)
    } else {
        wagner_pruss_1993(t_c + ZERO_CELSIUS_K)
    }
}

/// Wagner & Pruss 1993, eq. 1; `t_k` in K (Pa).
fn wagner_pruss_1993(t_k: f64) -> f64 {
    let tau = 1.0 - t_k / CRITICAL_K;
    let root = tau.max(0.0).sqrt();
    let (tau_2, tau_3) = (tau * tau, tau * tau * tau);
    let sum = -7.859_517_83 * tau
        + 1.844_082_59 * tau * root
        + -11.786_649_7 * tau_3
        + 22.680_741_1 * tau_3 * root
        + -15.961_871_9 * tau_2 * tau_2
        + 1.801_225_02 * tau_3 * tau_3 * tau * root;
    CRITICAL_PA * exp(CRITICAL_K / t_k * sum)
}

/// Murphy & Koop 2005, eq. 10; `t_k` in K (Pa).
fn murphy_koop_2005(t_k: f64) -> f64 {
    if t_k <= 0.0 {
        return 0.0;
    }
    let ln_t = ln(t_k);
    let step = tanh(0.0415 * (t_k - 218.8));
    exp(54.842_763 - 6763.22 / t_k - 4.210 * ln_t
        + 0.000_367 * t_k
        + step * (53.878 - 1331.22 / t_k - 9.445_23 * ln_t + 0.014_025 * t_k))
}

/// The hyperbolic tangent, through the one exponential.
fn tanh(x: f64) -> f64 {
    let e = exp_m1(-2.0 * x.abs());
    let size = -e / (e + 2.0);
    if x < 0.0 { -size } else { size }
}

/// Saturation pressure over ice, `t_c` in °C, in Pa.
///
/// # Range
/// -223 to 0.01 °C; above, ice does not exist and the value is the curve's continuation. 0 at or below absolute zero.
/// # Accuracy
/// Within 0.01 % above -83 °C, as its source states.
/// # Source
/// IAPWS R14-08(2011), eq. 6; Wagner, Riethmann, Feistel & Harvey, J. Phys. Chem. Ref. Data 40 (2011) 043103, <https://doi.org/10.1063/1.3657937>.
///
/// ```
/// use dewrun_moist_air::saturation::pressure_over_ice_pa;
/// assert!((pressure_over_ice_pa(-43.15) / 8.94735 - 1.0).abs() < 1e-6); // IAPWS R14-08(2011), table 3, 230 K
/// ```
#[must_use]
pub fn pressure_over_ice_pa(t_c: f64) -> f64 {
    let theta = (t_c + ZERO_CELSIUS_K) / 273.16;
    if theta <= 0.0 {
        return 0.0;
    }
    let sum = -21.214_400_6 * pow(theta, 0.003_333_333_33)
        + 27.320_381_9 * pow(theta, 1.206_666_67)
        + -6.105_981_30 * pow(theta, 1.703_333_33);
    611.657 * exp(sum / theta)
}
