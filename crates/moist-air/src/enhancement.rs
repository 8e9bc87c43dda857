//! How much more vapour saturated air holds than the vapour's own pressure says: the enhancement factor.

use crate::saturation::{pressure_over_ice_pa, pressure_over_water_pa};
use dewrun_numeric::elementary::exp;
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
    /// Factor at `t_c` [°C] and pressure `p_pa` [Pa] where the saturation pressure is `e_pa` [Pa].
    fn factor(&self, t_c: f64, p_pa: f64, e_pa: f64) -> f64 {
        if p_pa <= e_pa {
            return 1.0;
        }
        let alpha = polynomial(&self.alpha, t_c);
        let beta = exp(polynomial(&self.ln_beta, t_c));
        exp(alpha * (1.0 - e_pa / p_pa) + beta * (p_pa / e_pa - 1.0))
    }
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
    curve.factor(t_c, p_pa, pressure_over_water_pa(t_c))
}

/// Enhancement factor over ice, `t_c` in °C, `p_pa` in Pa [-].
///
/// # Range
/// -100 to 0.01 °C, 50 to 120 kPa.
/// # Accuracy
/// Against TEOS-10 2.5e-4 low at 0 °C, 7e-4 low at -40 °C, which is worth 0.006 K of frost point.
/// # Source
/// As [`over_water`], table 3 of Hardy.
///
/// ```
/// use dewrun_moist_air::enhancement::over_ice;
/// assert!((over_ice(-20.0, 101_325.0) - 1.004229).abs() < 1e-5);
/// ```
#[must_use]
pub fn over_ice(t_c: f64, p_pa: f64) -> f64 {
    OVER_ICE.factor(t_c, p_pa, pressure_over_ice_pa(t_c))
}
