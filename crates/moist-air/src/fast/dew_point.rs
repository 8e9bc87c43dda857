//! Dew point and frost point in tens of nanoseconds, real gas.
//!
//! No exponential: the logarithm of the vapour's pressure, less that of the enhancement factor by one Newton step, goes into a polynomial of the temperature.

use super::coefficients::{
    BETA_ICE, BETA_SUPERCOOLED, BETA_WATER, ICE, ICE_COLD, ICE_PA, LN_ICE_PA, LN_SUPERCOOLED_PA,
    LN_WATER_PA, SUPERCOOLED, SUPERCOOLED_COLD, SUPERCOOLED_PA, WATER, WATER_PA,
};
use super::saturation_curve::{excess, factor};
use crate::enhancement::{OVER_ICE, OVER_SUPERCOOLED, OVER_WATER};
use crate::pair::Over;
use crate::saturation::TRIPLE_POINT_C;
use dewrun_numeric::fast::fast_ln;
use dewrun_numeric::polynomial::{polynomial, polynomial_with_slope};

/// One piece of the inverse of a curve: temperature and enhancement over the logarithm of the pressure.
pub(super) struct Piece<const N: usize> {
    /// Middle of the piece, ln(e / Pa), from which the powers count.
    pub(super) middle: f64,
    /// Temperature of saturation of pure vapour, °C.
    pub(super) temperature_c: [f64; N],
    /// Greenspan's alpha.
    pub(super) alpha: [f64; 7],
    /// Greenspan's beta over e, 1/Pa.
    pub(super) beta: [f64; 7],
}

/// Saturation over one curve: ln(e / Pa), e / Pa and the enhancement factor's coefficients, in powers of the temperature in °C.
struct Curve<const N: usize, const L: usize, const M: usize> {
    ln_e: [f64; N],
    e_pa: [f64; L],
    alpha: [f64; 4],
    beta: [f64; M],
}

const WATER_CURVE: Curve<8, 7, 6> = Curve {
    ln_e: LN_WATER_PA,
    e_pa: WATER_PA,
    alpha: OVER_WATER.alpha,
    beta: BETA_WATER,
};
const ICE_CURVE: Curve<7, 6, 6> = Curve {
    ln_e: LN_ICE_PA,
    e_pa: ICE_PA,
    alpha: OVER_ICE.alpha,
    beta: BETA_ICE,
};
const SUPERCOOLED_CURVE: Curve<12, 6, 7> = Curve {
    ln_e: LN_SUPERCOOLED_PA,
    e_pa: SUPERCOOLED_PA,
    alpha: OVER_SUPERCOOLED.alpha,
    beta: BETA_SUPERCOOLED,
};

/// Coldest dew point and frost point that are answered, °C: the enhancement factor's coefficients end here.
pub const COLDEST_C: f64 = -100.0;

/// ln(e / Pa) over ice at -100 °C and over water at 105 °C, beyond which no piece runs on.
const LN_PA_COLDEST: f64 = -6.6;
const LN_PA_WARMEST: f64 = 11.71;

/// Dry bulbs from which relative humidity is taken, °C.
const DRY_BULBS_C: core::ops::RangeInclusive<f64> = -60.0..=100.0;

/// ln(e / Pa) where the pieces over supercooled water join, at -50 °C, and those over ice, at -60 °C; near enough, as each piece runs on past its end.
const LN_PA_SUPERCOOLED_COLD: f64 = 1.85;
const LN_PA_ICE_COLD: f64 = 0.08;

/// Where the water curve begins, at 0 °C over supercooled water and at the triple point over ice.
const ZERO_CELSIUS: Joint = joint(0.0);
const TRIPLE_POINT: Joint = joint(TRIPLE_POINT_C);

/// ln(e / Pa) over water where two pieces join, e in Pa, Greenspan's alpha, and his beta over e.
type Joint = [f64; 4];

/// The water curve so near 0 °C that its fits are straight.
const fn joint(t_c: f64) -> Joint {
    let [ln_0, ln_1, ..] = LN_WATER_PA;
    let [e_0, e_1, ..] = WATER_PA;
    let [alpha_0, alpha_1, ..] = OVER_WATER.alpha;
    let [beta_0, beta_1, ..] = BETA_WATER;
    [
        ln_0 + ln_1 * t_c,
        e_0 + e_1 * t_c,
        alpha_0 + alpha_1 * t_c,
        beta_0 + beta_1 * t_c,
    ]
}

/// Vapour in air: its pressure, mole fraction times pressure (Pa), the logarithm of that, the pressure of the air (Pa) and its reciprocal.
#[derive(Clone, Copy)]
struct Vapour {
    y_pa: f64,
    ln_y: f64,
    p_pa: f64,
    per_pa: f64,
}

impl Vapour {
    /// From the mole fraction.
    fn of(x: f64, p_pa: f64) -> Self {
        let y_pa = x * p_pa;
        Self {
            y_pa,
            ln_y: fast_ln(y_pa),
            p_pa,
            per_pa: p_pa.recip(),
        }
    }

    /// From relative humidity over a curve of saturation.
    ///
    /// Only the enhancement factor needs the pressure itself, and half a pascal is enough for it.
    #[inline]
    fn at<const N: usize, const L: usize, const M: usize>(
        curve: &Curve<N, L, M>,
        t_c: f64,
        rh: f64,
        p_pa: f64,
    ) -> Self {
        let per_pa = p_pa.recip();
        let e_pa = polynomial(&curve.e_pa, t_c);
        let excess = excess(&curve.alpha, &curve.beta, per_pa);
        let z = room_pa(p_pa, e_pa) * polynomial(&excess, t_c);
        Self {
            y_pa: rh * e_pa * factor(z),
            ln_y: fast_ln(rh) + polynomial(&curve.ln_e, t_c) + z,
            p_pa,
            per_pa,
        }
    }

    /// Temperature of saturation over one piece of a curve, °C.
    #[inline]
    fn saturated<const N: usize>(self, piece: &Piece<N>) -> f64 {
        let u = self.ln_y - piece.middle;
        let excess = excess(&piece.alpha, &piece.beta, self.per_pa);
        let (excess, excess_slope) = polynomial_with_slope(&excess, u);
        let room_pa = room_pa(self.p_pa, self.y_pa);
        // ln e is sought with ln e + ln f = ln y; `q` is the slope of ln f, a few thousandths, so the series of 1/(1 + q) ends early.
        let q = room_pa * excess_slope - self.y_pa * excess;
        let ln_f = room_pa * excess * (1.0 - q * (1.0 - q));
        polynomial(&piece.temperature_c, u - ln_f)
    }

    /// The point, where water does not boil first.
    #[inline]
    fn answer(self, point_c: impl Fn(Self) -> f64) -> Option<f64> {
        if self.p_pa < self.y_pa {
            return None;
        }
        self.covered(point_c)
    }

    /// The point, where the fits cover it; NaN they do not cover.
    #[inline]
    fn covered(self, point_c: impl Fn(Self) -> f64) -> Option<f64> {
        if !(LN_PA_COLDEST..=LN_PA_WARMEST).contains(&self.ln_y) {
            return None;
        }
        let point_c = point_c(self);
        (COLDEST_C <= point_c).then_some(point_c)
    }

    /// `ln_y` of air saturated where two pieces join.
    #[inline]
    fn ln_y_at(self, [ln_e, e_pa, alpha, beta]: Joint) -> f64 {
        ln_e + (self.p_pa - e_pa) * (alpha * self.per_pa + beta)
    }

    /// Dew point over liquid water, °C.
    #[inline]
    fn dew_point_c(self) -> f64 {
        if self.ln_y_at(ZERO_CELSIUS) <= self.ln_y {
            self.saturated(&WATER)
        } else if LN_PA_SUPERCOOLED_COLD <= self.ln_y {
            self.saturated(&SUPERCOOLED)
        } else {
            self.saturated(&SUPERCOOLED_COLD)
        }
    }

    /// Frost point over ice, °C.
    #[inline]
    fn frost_point_c(self) -> f64 {
        if LN_PA_ICE_COLD <= self.ln_y {
            self.saturated(&ICE)
        } else {
            self.saturated(&ICE_COLD)
        }
    }

    /// Dew point, or frost point where that lies below the triple point, °C.
    #[inline]
    fn dew_or_frost_point_c(self) -> f64 {
        if self.ln_y_at(TRIPLE_POINT) <= self.ln_y {
            self.saturated(&WATER)
        } else {
            self.frost_point_c()
        }
    }
}

/// Pressure that the vapour leaves to the air, none where water boils.
#[inline]
fn room_pa(p_pa: f64, vapour_pa: f64) -> f64 {
    let room_pa = p_pa - vapour_pa;
    if room_pa < 0.0 { 0.0 } else { room_pa }
}

/// Dew point over liquid water, from dry bulb `t_c` in °C, relative humidity `rh` over liquid water as a fraction, `p_pa` in Pa [°C].
///
/// `None` where there is none: bone-dry air, a dew point below -100 °C, water that boils first, a dry bulb out of range, or NaN.
///
/// # Range
/// -60 to 95 °C, 0 to 1, 50 to 120 kPa.
/// # Accuracy
/// 2e-5 K of the relations in [`crate::dew_point`]; 1e-4 K within 1e-4 K of 0 °C, where the enhancement factor's coefficients step.
/// # Source
/// Fits by `tests/generate/moist_air_fits.py` of [`crate::saturation`] and its inverse; enhancement factor as [`crate::enhancement`].
///
/// ```
/// use dewrun_moist_air::fast::dew_point_c;
/// let t = dew_point_c(35.0, 0.70, 101_325.0).unwrap();
/// assert!((t - 28.7045).abs() < 0.01); // CoolProp 8.0.0, HAPropsSI
/// assert_eq!(dew_point_c(20.0, 0.0, 101_325.0), None);
/// ```
#[must_use]
#[inline]
pub fn dew_point_c(t_c: f64, rh: f64, p_pa: f64) -> Option<f64> {
    if !DRY_BULBS_C.contains(&t_c) {
        return None;
    }
    let vapour = if t_c < 0.0 {
        Vapour::at(&SUPERCOOLED_CURVE, t_c, rh, p_pa)
    } else {
        Vapour::at(&WATER_CURVE, t_c, rh, p_pa)
    };
    vapour.answer(Vapour::dew_point_c)
}

/// Dew point, or frost point below the triple point, with `rh` over ice below it too: the custom of handbooks [°C].
///
/// # Range
/// As [`dew_point_c`].
/// # Accuracy
/// As [`dew_point_c`]; within 0.01 K of CoolProp's `HAPropsSI`, which has the same custom, wherever water does not boil.
/// # Source
/// As [`dew_point_c`].
///
/// ```
/// use dewrun_moist_air::fast::dew_or_frost_point_c;
/// let t = dew_or_frost_point_c(-15.0, 0.85, 101_325.0).unwrap();
/// assert!((t - -16.7497).abs() < 0.01); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
#[inline]
pub fn dew_or_frost_point_c(t_c: f64, rh: f64, p_pa: f64) -> Option<f64> {
    if !DRY_BULBS_C.contains(&t_c) {
        return None;
    }
    let vapour = if t_c < TRIPLE_POINT_C {
        Vapour::at(&ICE_CURVE, t_c, rh, p_pa)
    } else {
        Vapour::at(&WATER_CURVE, t_c, rh, p_pa)
    };
    vapour.answer(Vapour::dew_or_frost_point_c)
}

/// Dew point over liquid water of air with mole fraction `x` of vapour, `p_pa` in Pa [°C].
///
/// # Range
/// Dew points of -100 to 105 °C, else `None`; 50 to 120 kPa.
/// # Accuracy
/// As [`dew_point_c`].
/// # Source
/// As [`dew_point_c`].
///
/// ```
/// use dewrun_moist_air::{fast::dew_point_of_c, mixture::mole_fraction};
/// let t = dew_point_of_c(mole_fraction(0.010), 84_000.0).unwrap();
/// assert!((t - 11.13).abs() < 0.02); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
#[inline]
pub fn dew_point_of_c(x: f64, p_pa: f64) -> Option<f64> {
    Vapour::of(x, p_pa).answer(Vapour::dew_point_c)
}

/// Frost point over ice of air with mole fraction `x` of vapour, `p_pa` in Pa [°C].
///
/// # Range
/// Frost points of -100 to 0.01 °C, else `None`; 50 to 120 kPa.
/// # Accuracy
/// As [`dew_point_c`].
/// # Source
/// As [`dew_point_c`].
///
/// ```
/// use dewrun_moist_air::{fast::frost_point_of_c, mixture::mole_fraction};
/// let t = frost_point_of_c(mole_fraction(0.001033), 101_325.0).unwrap();
/// assert!((t - -14.9).abs() < 0.1);
/// assert_eq!(frost_point_of_c(mole_fraction(0.010), 101_325.0), None);
/// ```
#[must_use]
#[inline]
pub fn frost_point_of_c(x: f64, p_pa: f64) -> Option<f64> {
    Vapour::of(x, p_pa)
        .answer(Vapour::frost_point_c)
        .filter(|point_c| *point_c <= TRIPLE_POINT_C)
}

/// Dew point, or frost point where that lies below the triple point, of air with mole fraction `x` of vapour, `p_pa` in Pa [°C].
///
/// # Range
/// As [`dew_point_of_c`].
/// # Accuracy
/// As [`dew_or_frost_point_c`].
/// # Source
/// As [`dew_point_c`].
///
/// ```
/// use dewrun_moist_air::{fast::dew_or_frost_point_of_c, mixture::mole_fraction};
/// let t = dew_or_frost_point_of_c(mole_fraction(0.0008674), 101_325.0).unwrap();
/// assert!((t - -16.7497).abs() < 0.01); // CoolProp 8.0.0, HAPropsSI
/// ```
#[must_use]
#[inline]
pub fn dew_or_frost_point_of_c(x: f64, p_pa: f64) -> Option<f64> {
    Vapour::of(x, p_pa).answer(Vapour::dew_or_frost_point_c)
}

/// Temperature at which mole fraction `x` is saturation, by the custom that `over` names; past 1 above boiling, where relative humidity still has a meaning.
pub(crate) fn saturation_c(x: f64, p_pa: f64, over: Over) -> Option<f64> {
    match over {
        Over::Water => Vapour::of(x, p_pa).covered(Vapour::dew_point_c),
        Over::Ice => Vapour::of(x, p_pa).covered(Vapour::dew_or_frost_point_c),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{dew_point, humidity};

    /// Fits against the relations over states from -60 °C to where water boils.
    #[test]
    fn dew_points_follow_the_relations() {
        let mut compared = 0;
        for p_pa in [50e3, 70e3, 101_325.0, 120e3] {
            for step in 0..=310 {
                let t_c = -60.0 + 0.5 * f64::from(step);
                for rh in [0.001, 0.01, 0.1, 0.5, 1.0] {
                    compared += compare(t_c, rh, p_pa);
                }
            }
        }
        assert!(5000 < compared, "only {compared} states have a dew point");
    }

    #[track_caller]
    fn compare(t_c: f64, rh: f64, p_pa: f64) -> u32 {
        let x = rh * humidity::saturated_over_water(t_c, p_pa);
        if 1.0 <= x {
            return 0;
        }
        let Ok(exact) = dew_point::over_water_c(x, p_pa) else {
            return 0;
        };
        for fast in [dew_point_c(t_c, rh, p_pa), dew_point_of_c(x, p_pa)] {
            let error = fast.map_or(f64::NAN, |fast| fast - exact);
            // Greenspan's coefficients step by 6e-6 of the value at 0 °C, which is worth 8e-5 K there.
            let bound = if exact.abs() < 1e-4 { 1e-4 } else { 2e-5 };
            assert!(
                error.abs() < bound,
                "dew point off by {error} at {t_c} °C, {rh}, {p_pa} Pa"
            );
        }
        1
    }

    #[test]
    fn frost_points_follow_the_relations() {
        for p_pa in [50e3, 70e3, 101_325.0, 120e3] {
            for step in 0..=1000 {
                let t_c = -100.0 + 0.1 * f64::from(step);
                let x = humidity::saturated_over_ice(t_c, p_pa);
                let error = Vapour::of(x, p_pa).frost_point_c() - t_c;
                assert!(
                    error.abs() < 1e-5,
                    "frost point off by {error} at {t_c} °C, {p_pa} Pa"
                );
            }
        }
    }

    #[test]
    fn dew_or_frost_point_rises_across_the_triple_point() {
        for p_pa in [50e3, 101_325.0, 120e3] {
            let mut last = f64::NEG_INFINITY;
            for step in 0..40_000 {
                let x = (605.0 + 0.0005 * f64::from(step)) / p_pa;
                let point = dew_or_frost_point_of_c(x, p_pa).unwrap_or(f64::NAN);
                assert!(last <= point, "{point} after {last} at {x}, {p_pa} Pa");
                last = point;
            }
        }
    }

    #[test]
    fn nothing_comes_out_of_nothing() {
        assert_eq!(dew_point_c(f64::NAN, 0.5, 1e5), None, "missing temperature");
        assert_eq!(dew_point_c(20.0, f64::NAN, 1e5), None, "missing humidity");
        assert_eq!(dew_or_frost_point_c(20.0, 0.0, 1e5), None, "bone-dry air");
        assert_eq!(dew_point_of_c(-0.1, 1e5), None, "less than no vapour");
        assert_eq!(dew_point_of_c(1e-16, 1e5), None, "colder than the fits go");
        assert_eq!(
            dew_point_of_c(1.1, 1e5),
            None,
            "more vapour than air has room for"
        );
        assert_eq!(dew_point_c(-300.0, 0.5, 1e5), None, "below absolute zero");
        assert_eq!(dew_point_c(95.0, 1.0, 5e4), None, "water boils first");
        assert_eq!(frost_point_of_c(0.0, 1e5), None, "bone-dry air");
    }
}
