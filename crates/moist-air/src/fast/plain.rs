//! Saturation without a branch, so that a loop over many states runs several at a time.

use super::coefficients::{BETA_ICE, BETA_WATER, LN_ICE_PA, LN_WATER_PA};
use super::saturation_curve::factor;
use crate::enhancement::{OVER_ICE, OVER_WATER};
use dewrun_numeric::plain::plain_exp;
use dewrun_numeric::polynomial::{polynomial, polynomial_with_slope};

/// Mole fraction at saturation over water and its slope [-, 1/K], `t_c` in °C, `p_pa` in Pa and its reciprocal.
///
/// # Range
/// 0 to 95 °C, 50 to 120 kPa.
/// # Accuracy
/// That of [`super::SaturationCurve`]; the slope leaves out that of the enhancement factor, 5e-4 of it.
/// # Source
/// As [`super::SaturationCurve`].
///
/// ```
/// use dewrun_moist_air::fast::plain_fraction_over_water;
/// assert!((plain_fraction_over_water(20.0, 84_000.0, 1.0 / 84_000.0).0 / 0.0279495 - 1.0).abs() < 5e-4); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
#[inline(always)]
pub fn plain_fraction_over_water(t_c: f64, p_pa: f64, per_pa: f64) -> (f64, f64) {
    fraction(
        &LN_WATER_PA,
        (&OVER_WATER.alpha, &BETA_WATER),
        t_c,
        (p_pa, per_pa),
    )
}

/// Mole fraction at saturation over ice and its slope [-, 1/K], `t_c` in °C, `p_pa` in Pa and its reciprocal.
///
/// # Range
/// -60 to 0 °C, 50 to 120 kPa.
/// # Accuracy
/// As [`plain_fraction_over_water`].
/// # Source
/// As [`super::SaturationCurve`].
///
/// ```
/// use dewrun_moist_air::fast::plain_fraction_over_ice;
/// let (x, _) = plain_fraction_over_ice(-20.0, 101_325.0, 1.0 / 101_325.0);
/// assert!((0.621945 * x / (1.0 - x) / 0.0006373 - 1.0).abs() < 2e-3); // ASHRAE Fundamentals 2017, ch. 1, table 2
/// ```
#[must_use]
#[inline(always)]
pub fn plain_fraction_over_ice(t_c: f64, p_pa: f64, per_pa: f64) -> (f64, f64) {
    fraction(
        &LN_ICE_PA,
        (&OVER_ICE.alpha, &BETA_ICE),
        t_c,
        (p_pa, per_pa),
    )
}

#[inline(always)]
fn fraction<const N: usize, const A: usize, const B: usize>(
    ln_e: &[f64; N],
    (alpha, beta): (&[f64; A], &[f64; B]),
    t_c: f64,
    (p_pa, per_pa): (f64, f64),
) -> (f64, f64) {
    let (ln_e, slope) = polynomial_with_slope(ln_e, t_c);
    let e_pa = plain_exp(ln_e);
    let room_pa = if e_pa < p_pa { p_pa - e_pa } else { 0.0 };
    let excess = polynomial(alpha, t_c) * per_pa + polynomial(beta, t_c);
    let x = e_pa * per_pa * factor(room_pa * excess);
    (x, x * slope)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fast::SaturationCurve;

    #[test]
    fn is_the_curve() {
        for p_pa in [60e3, 84e3, 101_325.0, 110e3] {
            let curve = SaturationCurve::at(p_pa);
            for step in -600_i32..=950 {
                let t_c = 0.1 * f64::from(step);
                let ((x, slope), (near, near_slope)) = if t_c < 0.0 {
                    (
                        curve.mole_fraction_over_ice(t_c),
                        plain_fraction_over_ice(t_c, p_pa, p_pa.recip()),
                    )
                } else {
                    (
                        curve.mole_fraction_over_water(t_c),
                        plain_fraction_over_water(t_c, p_pa, p_pa.recip()),
                    )
                };
                assert!((near / x - 1.0).abs() < 1e-12, "{near} for {x} at {t_c} °C");
                assert!(
                    (near_slope / slope - 1.0).abs() < 3e-2,
                    "{near_slope} for {slope} at {t_c} °C"
                );
                assert!(
                    30.0 < t_c || (near_slope / slope - 1.0).abs() < 1e-3,
                    "{near_slope} for {slope} at {t_c} °C"
                );
            }
        }
    }
}
