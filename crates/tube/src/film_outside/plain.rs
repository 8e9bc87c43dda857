//! The outside film without a branch, so that a loop over many places runs several at a time.
//!
//! The same relations and fits as [`super::FilmOutside`], part by part.

use dewrun_numeric::plain::{plain_exp, plain_ln};
use dewrun_numeric::polynomial::polynomial;

use super::coefficients::{CONDUCTIVITY, HORIZONTAL, KINEMATIC, LEWIS, PRANDTL, SLENDER, VERTICAL};
use super::{SLENDER_EXPONENT, churchill_bernstein_1977};
use dewrun_numeric::elementary::pow;

/// Nusselt number of natural convection around a level tube, on its diameter, and its exponent on the difference of temperature.
///
/// `size` is `(p^2 D^3 dT)^(1/6)` in Pa, m, K; `film_c` the mean of surface and air, °C.
///
/// # Range
/// Film temperatures from -80 to 160 °C.
/// # Accuracy
/// 2e-4 of [`super::churchill_chu_1975_horizontal`].
/// # Source
/// A fit of that relation.
///
/// ```
/// // 100 kPa, 20 mm, 10 K: Ra = 8085, Pr = 0.708, by hand 4.156.
/// let size = (1e10_f64 * 8e-6 * 10.0).sqrt().cbrt();
/// let (number, _) = dewrun_tube::film_outside::plain::level_natural(size, 20.0);
/// assert!((number - 4.156).abs() < 0.005);
/// ```
#[must_use]
#[inline(always)]
pub fn level_natural(size: f64, film_c: f64) -> (f64, f64) {
    let rise = polynomial(&HORIZONTAL, film_c) * size;
    let root = 0.60 + rise;
    (root * root, rise / (3.0 * root))
}

/// What a riser's height and diameter make of its factor of slenderness, at a pressure: `height_m`, `diameter_m`, `p_pa`.
///
/// # Range
/// All above zero.
/// # Source
/// As [`super::popiel_2008_slender`].
///
/// ```
/// assert!(0.0 < dewrun_tube::film_outside::plain::slender_shape(3.0, 0.02, 1e5));
/// ```
#[must_use]
pub fn slender_shape(height_m: f64, diameter_m: f64, p_pa: f64) -> f64 {
    let cubed = height_m * height_m * height_m;
    let shape = pow(32.0_f64.sqrt() * height_m / diameter_m, 0.909);
    0.300 * shape * pow(p_pa * p_pa * cubed, -SLENDER_EXPONENT)
}

/// Factor on [`slender_shape`] at 1 Pa that makes it that at a pressure, Pa.
///
/// # Range
/// Pressures above zero.
/// # Accuracy
/// 1e-9 of it.
/// # Source
/// As [`super::popiel_2008_slender`].
///
/// ```
/// use dewrun_tube::film_outside::plain::{slender_by_pressure, slender_shape};
/// let by_pressure = slender_shape(3.0, 0.02, 1.0) * slender_by_pressure(1e5);
/// assert!((by_pressure / slender_shape(3.0, 0.02, 1e5) - 1.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn slender_by_pressure(p_pa: f64) -> f64 {
    plain_exp(-2.0 * SLENDER_EXPONENT * plain_ln(p_pa))
}

/// Nusselt number of natural convection around a riser, on its height, and its exponent on the difference of temperature.
///
/// `size` is `(p^2 H^3 dT)^(1/6)`; `shape` that of [`slender_shape`]; `difference_k` above zero.
///
/// # Range
/// Film temperatures from -80 to 160 °C.
/// # Accuracy
/// 3e-4 of the relations.
/// # Source
/// Fits of [`super::churchill_chu_1975_vertical`] and [`super::popiel_2008_slender`].
///
/// ```
/// let (number, exponent) = dewrun_tube::film_outside::plain::rising_natural(100.0, 0.0, 20.0, 10.0);
/// assert!(200.0 < number && exponent < 0.34);
/// ```
#[must_use]
#[inline(always)]
pub fn rising_natural(size: f64, shape: f64, film_c: f64, difference_k: f64) -> (f64, f64) {
    let rise = polynomial(&VERTICAL, film_c) * size;
    let root = 0.825 + rise;
    let slender = shape
        * polynomial(&SLENDER, film_c)
        * plain_exp(-SLENDER_EXPONENT * plain_ln(difference_k));
    let share = slender / (1.0 + slender);
    (
        root * root * (1.0 + slender),
        rise / (3.0 * root) - SLENDER_EXPONENT * share,
    )
}

/// Nusselt number of the wind across a tube as a polynomial in the film temperature less that of the air, K.
///
/// # Range
/// Air from -80 to 160 °C; no wind gives the limit 0.3 of the relation.
/// # Accuracy
/// 2e-4 of it for a surface within 60 K of the air.
/// # Source
/// [`super::churchill_bernstein_1977`], by three points.
///
/// ```
/// // Re = 3273, Pr = 0.7106, by hand 29.45.
/// let [number, ..] = dewrun_tube::film_outside::plain::wind_across(3.0, 0.015, 101_325.0, 5.0);
/// assert!((number - 29.45).abs() < 0.05);
/// ```
#[must_use]
pub fn wind_across(wind_m_s: f64, diameter_m: f64, p_pa: f64, air_c: f64) -> [f64; 3] {
    const APART_K: f64 = 15.0;
    let at = |film_c: f64| {
        let reynolds = wind_m_s * diameter_m * p_pa / polynomial(&KINEMATIC, film_c);
        churchill_bernstein_1977(reynolds, polynomial(&PRANDTL, film_c))
    };
    let (below, here, above) = (at(air_c - APART_K), at(air_c), at(air_c + APART_K));
    let slope = (above - below) / (2.0 * APART_K);
    let bend = (above - 2.0 * here + below) / (2.0 * APART_K * APART_K);
    [here, slope, bend]
}

/// Conductivity of dry air, `film_c` in °C [W/(m K)].
///
/// # Range
/// -80 to 160 °C.
/// # Source
/// A fit of [`dewrun_moist_air::transport::dry_air_conductivity_w_mk`].
///
/// ```
/// assert!((dewrun_tube::film_outside::plain::conductivity_w_mk(20.0) - 0.02587).abs() < 1e-4);
/// ```
#[must_use]
#[inline(always)]
pub fn conductivity_w_mk(film_c: f64) -> f64 {
    polynomial(&CONDUCTIVITY, film_c)
}

/// Chilton and Colburn's factor between the coefficients of heat and vapour, `(Pr/Sc)^(2/3)/cp`, `film_c` in °C [kg K/J].
///
/// # Range
/// -80 to 160 °C.
/// # Source
/// As [`super::FilmOutside`].
///
/// ```
/// assert!((dewrun_tube::film_outside::plain::lewis_kg_k_j(20.0) - 1.1e-3).abs() < 1e-5);
/// ```
#[must_use]
#[inline(always)]
pub fn lewis_kg_k_j(film_c: f64) -> f64 {
    polynomial(&LEWIS, film_c)
}

#[cfg(test)]
mod tests {
    use super::super::{FilmOutside, OuterSurface, Surroundings, blended};
    use super::*;
    use dewrun_moist_air::fast::SaturationCurve;
    use dewrun_numeric::fast_cbrt;

    #[test]
    fn is_the_prepared_film() {
        let (p_pa, diameter_m) = (95e3, 0.024);
        let curve = SaturationCurve::at(p_pa);
        for (wind_m_s, riser_m) in [(0.0, None), (2.0, None), (0.0, Some(3.0)), (1.0, Some(0.8))] {
            for difference in [-15.0, -0.3, 0.5, 20.0] {
                let surface = OuterSurface {
                    diameter_m,
                    emissivity: 0.9,
                    riser_m,
                };
                let around = Surroundings {
                    air_c: 12.0,
                    w: 0.0,
                    radiant_c: 12.0,
                    wind_m_s,
                    p_pa,
                };
                let expected = FilmOutside::new(&curve, surface, around).at(12.0 + difference);
                let film_c = 12.0 + 0.5 * difference;
                let length: f64 = riser_m.unwrap_or(diameter_m);
                let size = fast_cbrt(
                    (p_pa * p_pa * (length * length * length) * f64::abs(difference)).sqrt(),
                );
                let natural = match riser_m {
                    None => level_natural(size, film_c).0,
                    Some(height) => {
                        let shape = slender_shape(height, diameter_m, p_pa);
                        let (number, _) = rising_natural(size, shape, film_c, f64::abs(difference));
                        number * diameter_m / height
                    }
                };
                let number = if 0.0 < wind_m_s {
                    let [here, slope, bend] = wind_across(wind_m_s, diameter_m, p_pa, 12.0);
                    let off = film_c - 12.0;
                    blended(natural, here + off * (slope + off * bend))
                } else {
                    natural
                };
                let got = number * conductivity_w_mk(film_c) / diameter_m;
                let ratio = got / expected.convection_w_m2k;
                assert!(
                    (ratio - 1.0).abs() < 1e-3,
                    "{ratio} at {difference} K, {riser_m:?}, {wind_m_s} m/s"
                );
            }
        }
    }
}
