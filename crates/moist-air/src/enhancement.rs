//! How much more vapour saturated air holds than the vapour's own pressure says: the enhancement factor.

use crate::ZERO_CELSIUS_K;
use crate::mixture::GAS_CONSTANT;
use crate::saturation::{pressure_over_ice_pa, pressure_over_water_pa};
use dewrun_numeric::elementary::{exp, pow};
use dewrun_numeric::polynomial::polynomial;

/// Coefficients of one curve: of `alpha` and of `ln beta`, in powers of the temperature in °C.
pub(crate) struct Greenspan {
    pub(crate) alpha: [f64; 4],
    pub(crate) ln_beta: [f64; 4],
}

/// Over liquid water, 0 to 100 °C.
pub(crate) const OVER_WATER: Greenspan = Greenspan {
    alpha: [3.536_24e-4, 2.932_836_3e-5, 2.616_897_9e-7, 8.581_360_9e-9],
    ln_beta: [-10.7588, 6.326_813_4e-2, -2.536_893_4e-4, 6.340_528_6e-7],
};

/// Over supercooled water, -50 to 0 °C.
pub(crate) const OVER_SUPERCOOLED: Greenspan = Greenspan {
    alpha: [3.621_83e-4, 2.606_124_4e-5, 3.866_777_0e-7, 3.826_895_8e-9],
    ln_beta: [-10.7604, 6.398_744_1e-2, -2.635_156_6e-4, 1.672_508_4e-6],
};

/// Over ice, -100 to 0 °C.
pub(crate) const OVER_ICE: Greenspan = Greenspan {
    alpha: [3.644_49e-4, 2.936_758_5e-5, 4.887_476_6e-7, 4.366_991_8e-9],
    ln_beta: [-10.7271, 7.621_511_5e-2, -1.749_015_5e-4, 2.466_827_9e-6],
};

impl Greenspan {
    /// `ln f / (p - e)` [1/Pa]: the exponent `alpha (1 - e/p) + beta (p/e - 1)` with `p - e` taken out.
    fn excess_per_pa(&self, t_c: f64, p_pa: f64, e_pa: f64) -> f64 {
        polynomial(&self.alpha, t_c) / p_pa + exp(polynomial(&self.ln_beta, t_c)) / e_pa
    }
}

/// `f` from `ln f / (p - e)`; 1 where water boils.
fn factor(excess_per_pa: f64, p_pa: f64, e_pa: f64) -> f64 {
    exp((p_pa - e_pa).max(0.0) * excess_per_pa)
}

/// Greenspan's coefficients leave the real gas below this, °C: 0.1 % of the vapour at -75 °C.
pub(crate) const VIRIAL_FROM_C: f64 = -60.0;
/// From here down the virial coefficients stand alone, °C; between the two the exponents are weighted linearly.
pub(crate) const VIRIAL_ALONE_C: f64 = -100.0;
/// Molar volume of ice, m3/mol: 18.015 g/mol over 917 kg/m3.
const ICE_MOLAR_VOLUME: f64 = 19.65e-6;

/// `ln f / (p - e)` over ice from second virial coefficients, vapour being a trace: `(v_ice - 2 B_aw + B_aa) / (R T)` [1/Pa].
///
/// `B_aw` is that of Harvey & Huang 2007 (IAPWS G11-15), `B_aa` that of Hyland & Wexler 1983.
fn virial_excess_per_pa(t_c: f64) -> f64 {
    let t_k = t_c + ZERO_CELSIUS_K;
    let hundreds = 0.01 * t_k;
    let air_water = 66.5687 * pow(hundreds, -0.237)
        - 238.834 * pow(hundreds, -1.048)
        - 176.755 * pow(hundreds, -3.183);
    let air_air = polynomial(&[34.9568, -6687.72, -2.101_41e6, 92.4746e6], t_k.recip());
    (ICE_MOLAR_VOLUME + 1.0e-6 * (air_air - 2.0 * air_water)) / (GAS_CONSTANT * t_k)
}

/// Enhancement factor over liquid water, `t_c` in °C, `p_pa` in Pa [-]: saturated air holds `f e_s / p` vapour by mole.
///
/// `f = exp(alpha (1 - e/p) + beta (p/e - 1))`; 1 where the saturation pressure reaches `p`.
///
/// # Range
/// -50 to 100 °C, 50 to 120 kPa; colder, the coefficients run on to about -80 °C without harm.
/// # Accuracy
/// 3e-4 above 0 °C; against TEOS-10 2.5e-4 low at 0 to 20 °C.
/// # Source
/// Greenspan, J. Res. NBS 80A (1976) 41, <https://doi.org/10.6028/jres.080A.007>; coefficients for ITS-90: Hardy, Third Int. Symp. Humidity & Moisture, London (1998), table 2.
///
/// ```
/// use dewrun_moist_air::enhancement::over_water;
/// assert!((over_water(60.0, 101_325.0) - 1.005736).abs() < 1e-5);
/// assert_eq!(over_water(95.0, 60_000.0), 1.0);
/// ```
#[must_use]
pub fn over_water(t_c: f64, p_pa: f64) -> f64 {
    let curve = if t_c < 0.0 {
        OVER_SUPERCOOLED
    } else {
        OVER_WATER
    };
    let e_pa = pressure_over_water_pa(t_c);
    factor(curve.excess_per_pa(t_c, p_pa, e_pa), p_pa, e_pa)
}

/// Enhancement factor over ice, `t_c` in °C, `p_pa` in Pa [-].
///
/// # Range
/// -100 to 0.01 °C, 50 to 120 kPa.
/// # Accuracy
/// Against TEOS-10 2.5e-4 low at 0 °C, 7e-4 low at -40 °C, which is worth 0.006 K of frost point; 1e-3 low at -65 °C and 2e-5 at -100 °C.
/// # Source
/// As [`over_water`], table 3 of Hardy, down to -60 °C. Colder, it goes over linearly to the second virial coefficients at -100 °C:
/// Harvey & Huang, Int. J. Thermophys. 28 (2007) 556, <https://doi.org/10.1007/s10765-007-0197-8> (IAPWS G11-15) and Hyland & Wexler, ASHRAE Trans. 89 (2A) (1983) 520.
///
/// ```
/// use dewrun_moist_air::enhancement::over_ice;
/// assert!((over_ice(-20.0, 101_325.0) - 1.004229).abs() < 1e-5);
/// ```
#[must_use]
pub fn over_ice(t_c: f64, p_pa: f64) -> f64 {
    let e_pa = pressure_over_ice_pa(t_c);
    let greenspan = OVER_ICE.excess_per_pa(t_c, p_pa, e_pa);
    if VIRIAL_FROM_C <= t_c {
        return factor(greenspan, p_pa, e_pa);
    }
    let share = ((VIRIAL_FROM_C - t_c) / (VIRIAL_FROM_C - VIRIAL_ALONE_C)).min(1.0);
    let excess = greenspan + share * (virial_excess_per_pa(t_c) - greenspan);
    factor(excess, p_pa, e_pa)
}
