//! Mole fraction at saturation and its derivative, for one pressure.

use super::coefficients::{
    BETA_ICE, BETA_SUPERCOOLED, BETA_WATER, LN_ICE_PA, LN_SUPERCOOLED_PA, LN_WATER_PA,
};
use crate::enhancement::{OVER_ICE, OVER_SUPERCOOLED, OVER_WATER};
use dewrun_numeric::fast::fast_exp;
use dewrun_numeric::polynomial::polynomial_with_slope;

/// `alpha / p + beta / e` of Greenspan's factor, in powers of the temperature: `ln f = (p - e)` times it.
type Excess = [f64; 6];
/// The same over supercooled water, which bends more.
type ExcessSupercooled = [f64; 7];

/// Saturated moist air at one pressure: the mole fraction of vapour over temperature, with its slope.
///
/// `x = f e / p`; where the saturation pressure `e` reaches `p`, `f` is 1 and `x` runs on past 1, where water boils.
///
/// # Range
/// -60 to 95 °C, 50 to 120 kPa.
/// # Accuracy
/// 1e-6 of the value and 2e-5 of the slope against [`crate::saturation`] and [`crate::enhancement`].
/// # Source
/// Fits of those relations by `tests/generate/moist_air_fits.py`; Greenspan's exponent is kept in its own form, `ln f = (p - e) (alpha / p + beta / e)`.
///
/// ```
/// use dewrun_moist_air::fast::SaturationCurve;
/// let curve = SaturationCurve::at(101_325.0);
/// let w = 0.621945 / (1.0 / curve.mole_fraction(25.0).0 - 1.0);
/// assert!((w / 0.020173 - 1.0).abs() < 2e-3); // ASHRAE Fundamentals 2017, ch. 1, table 2
/// ```
#[derive(Debug, Clone, Copy)]
pub struct SaturationCurve {
    p_pa: f64,
    per_pa: f64,
    water: Excess,
    supercooled: ExcessSupercooled,
    ice: Excess,
}

impl SaturationCurve {
    /// The curve at the pressure `p_pa` in Pa.
    ///
    /// # Range
    /// 50 to 120 kPa.
    /// # Source
    /// As [`SaturationCurve`].
    ///
    /// ```
    /// use dewrun_moist_air::fast::SaturationCurve;
    /// assert!((SaturationCurve::at(84_000.0).mole_fraction(20.0).0 / 0.0279495 - 1.0).abs() < 5e-4); // CoolProp 8.0.0, HAPropsSI
    /// ```
    #[must_use]
    pub fn at(p_pa: f64) -> Self {
        let per_pa = p_pa.recip();
        Self {
            p_pa,
            per_pa,
            water: excess(&OVER_WATER.alpha, &BETA_WATER, per_pa),
            supercooled: excess(&OVER_SUPERCOOLED.alpha, &BETA_SUPERCOOLED, per_pa),
            ice: excess(&OVER_ICE.alpha, &BETA_ICE, per_pa),
        }
    }

    /// Mole fraction at saturation and its slope [-, 1/K]: over water from 0 °C up, over ice below.
    ///
    /// # Range
    /// -60 to 95 °C.
    /// # Source
    /// As [`SaturationCurve`].
    ///
    /// ```
    /// use dewrun_moist_air::fast::SaturationCurve;
    /// let curve = SaturationCurve::at(101_325.0);
    /// assert_eq!(curve.mole_fraction(-5.0), curve.mole_fraction_over_ice(-5.0));
    /// assert_eq!(curve.mole_fraction(0.0), curve.mole_fraction_over_water(0.0));
    /// ```
    #[must_use]
    #[inline]
    pub fn mole_fraction(&self, t_c: f64) -> (f64, f64) {
        if t_c < 0.0 {
            self.saturated(&LN_ICE_PA, &self.ice, t_c)
        } else {
            self.saturated(&LN_WATER_PA, &self.water, t_c)
        }
    }

    /// Mole fraction at saturation over liquid water, supercooled below 0 °C, and its slope [-, 1/K].
    ///
    /// # Range
    /// -60 to 95 °C.
    /// # Source
    /// As [`SaturationCurve`].
    ///
    /// ```
    /// use dewrun_moist_air::fast::SaturationCurve;
    /// let curve = SaturationCurve::at(101_325.0);
    /// let ratio = curve.mole_fraction_over_ice(-10.0).0 / curve.mole_fraction_over_water(-10.0).0;
    /// assert!((ratio - 0.907).abs() < 1e-3);
    /// ```
    #[must_use]
    #[inline]
    pub fn mole_fraction_over_water(&self, t_c: f64) -> (f64, f64) {
        if t_c < 0.0 {
            self.saturated(&LN_SUPERCOOLED_PA, &self.supercooled, t_c)
        } else {
            self.saturated(&LN_WATER_PA, &self.water, t_c)
        }
    }

    /// Mole fraction at saturation over ice and its slope [-, 1/K].
    ///
    /// # Range
    /// -60 to 0 °C.
    /// # Source
    /// As [`SaturationCurve`].
    ///
    /// ```
    /// use dewrun_moist_air::fast::SaturationCurve;
    /// let (x, _) = SaturationCurve::at(101_325.0).mole_fraction_over_ice(-20.0);
    /// assert!((0.621945 * x / (1.0 - x) / 0.0006373 - 1.0).abs() < 2e-3); // ASHRAE Fundamentals 2017, ch. 1, table 2
    /// ```
    #[must_use]
    #[inline]
    pub fn mole_fraction_over_ice(&self, t_c: f64) -> (f64, f64) {
        self.saturated(&LN_ICE_PA, &self.ice, t_c)
    }

    /// `f e / p` and its slope from the fits of one curve.
    #[inline]
    fn saturated<const N: usize, const M: usize>(
        &self,
        ln_e: &[f64; N],
        excess: &[f64; M],
        t_c: f64,
    ) -> (f64, f64) {
        let (ln_e, ln_e_slope) = polynomial_with_slope(ln_e, t_c);
        let (excess, excess_slope) = polynomial_with_slope(excess, t_c);
        let e_pa = fast_exp(ln_e);
        let e_slope = e_pa * ln_e_slope;
        let room_pa = self.p_pa - e_pa;
        let x = e_pa * self.per_pa;
        if room_pa <= 0.0 {
            return (x, e_slope * self.per_pa);
        }
        let z = room_pa * excess;
        let z_slope = room_pa * excess_slope - e_slope * excess;
        let f = factor(z);
        (x * f, x * f * (ln_e_slope + z_slope))
    }
}

/// The enhancement factor from its logarithm, which stays below 0.01: the square is right to 2e-7.
#[inline]
pub(super) fn factor(z: f64) -> f64 {
    1.0 + (z + 0.5 * z * z)
}

/// The polynomial of `alpha / p + beta / e`, from the reciprocal of the pressure.
#[inline]
pub(super) fn excess<const A: usize, const M: usize>(
    alpha: &[f64; A],
    beta: &[f64; M],
    per_pa: f64,
) -> [f64; M] {
    let mut sum = *beta;
    for (term, alpha) in sum.iter_mut().zip(alpha) {
        *term += alpha * per_pa;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::enhancement::VIRIAL_FROM_C;
    use crate::{enhancement, saturation};

    fn over_water(t_c: f64, p_pa: f64) -> f64 {
        enhancement::over_water(t_c, p_pa) * saturation::pressure_over_water_pa(t_c) / p_pa
    }

    fn over_ice(t_c: f64, p_pa: f64) -> f64 {
        enhancement::over_ice(t_c, p_pa) * saturation::pressure_over_ice_pa(t_c) / p_pa
    }

    /// Largest relative error of value and slope over a dense grid, the joints of the relations left out of the slope.
    #[track_caller]
    fn check(
        low: f64,
        high: f64,
        fit: impl Fn(&SaturationCurve, f64) -> (f64, f64),
        exact: impl Fn(f64, f64) -> f64,
    ) {
        for p_pa in [50e3, 60e3, 70e3, 84e3, 95e3, 101_325.0, 110e3, 120e3] {
            let curve = SaturationCurve::at(p_pa);
            for step in 0..=4000 {
                let t_c = low + (high - low) * f64::from(step) / 4000.0;
                let (x, slope) = fit(&curve, t_c);
                let value = exact(t_c, p_pa);
                assert!(
                    (x / value - 1.0).abs() < 2e-6,
                    "{x} for {value} at {t_c} °C, {p_pa} Pa"
                );
                let h = 1e-3;
                let (below, above) = (exact(t_c - h, p_pa), exact(t_c + h, p_pa));
                let joint = (t_c.abs() < 0.02)
                    || (t_c - VIRIAL_FROM_C).abs() < h
                    || ((below < 1.0) != (above < 1.0));
                let numeric = (above - below) / (2.0 * h);
                assert!(
                    joint || (slope / numeric - 1.0).abs() < 5e-5,
                    "slope {slope} for {numeric} at {t_c} °C, {p_pa} Pa"
                );
            }
        }
    }

    #[test]
    fn over_water_is_met_in_value_and_slope() {
        check(
            0.0,
            95.0,
            |curve, t_c| curve.mole_fraction_over_water(t_c),
            over_water,
        );
    }

    #[test]
    fn over_supercooled_water_is_met_in_value_and_slope() {
        check(
            -60.0,
            0.0,
            |curve, t_c| curve.mole_fraction_over_water(t_c),
            over_water,
        );
    }

    #[test]
    fn over_ice_is_met_in_value_and_slope() {
        check(
            -60.0,
            0.0,
            |curve, t_c| curve.mole_fraction_over_ice(t_c),
            over_ice,
        );
    }

    #[test]
    fn past_boiling_the_fraction_runs_on() {
        let curve = SaturationCurve::at(50e3);
        let (x, slope) = curve.mole_fraction(95.0);
        assert!(1.0 < x && 0.0 < slope, "{x} and {slope} past boiling");
    }
}
