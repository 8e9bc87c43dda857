//! What moves water: weight against pinning, the air's drag against weight, and flooding in risers.

use dewrun_numeric::elementary::{atan2, cos};
use dewrun_quantity::{
    Angle, Density, Force, ForcePerLength, Length, MassPerArea, Pressure, Speed, Volume,
};

use crate::{GRAVITY_M_S2, Incline};

/// Flooding constant of a tube with sharp edges where the water enters or leaves: the low end.
pub const SHARP_EDGED: f64 = 0.725;
/// Flooding constant of a tube with smooth ends: the high end.
pub const SMOOTH_ENDED: f64 = 1.0;

/// Force that holds a drop on a wall: `sigma w (cos th_r - cos th_a)`.
///
/// Arguments: surface tension, width of the drop across the slope, receding and advancing contact angle.
///
/// # Range
/// Drops wider than a tenth of a millimetre.
/// # Accuracy
/// 30 %, by how far real drops stray.
/// # Errors
/// None.
/// # Source
/// Furmidge, J. Colloid Sci. 17 (1962) 309, <https://doi.org/10.1016/0095-8522(62)90011-9>.
///
/// ```
/// use dewrun_quantity::{Angle, ForcePerLength, Length};
/// use dewrun_water::moving::furmidge_1962;
/// let sigma = ForcePerLength::newtons_per_metre(0.0728);
/// let force = furmidge_1962(sigma, Length::millimetres(4.0), Angle::degrees(60.0), Angle::degrees(90.0));
/// assert!((force.to_newtons() - 1.456e-4).abs() < 1e-7);
/// ```
#[must_use]
pub fn furmidge_1962(
    surface_tension: ForcePerLength,
    width: Length,
    receding: Angle,
    advancing: Angle,
) -> Force {
    let difference = cos(receding.to_radians()) - cos(advancing.to_radians());
    let pull = surface_tension.to_newtons_per_metre() * width.to_metres();
    Force::newtons(pull * difference)
}

/// The angle at which a drop of that volume slides off the force that holds it; none where it stays even upright.
///
/// # Range
/// Volumes above zero.
/// # Accuracy
/// That of the force.
/// # Errors
/// None.
/// # Source
/// `rho V g sin a = F`.
///
/// ```
/// use dewrun_quantity::{Density, Force, Volume};
/// use dewrun_water::moving::sliding_angle;
/// let water = Density::kilograms_per_cubic_metre(998.2);
/// let angle = sliding_angle(Force::newtons(1.456e-4), Volume::millilitres(0.030), water).unwrap();
/// assert!((angle.to_degrees() - 29.72).abs() < 0.01);
/// ```
#[must_use]
pub fn sliding_angle(holding: Force, volume: Volume, water: Density) -> Option<Angle> {
    let weight_n = water.to_kilograms_per_cubic_metre() * volume.to_cubic_metres() * GRAVITY_M_S2;
    let incline = Incline::per_length(holding.to_newtons() / weight_n)?;
    Some(Angle::radians(atan2(incline.sine(), incline.cosine())))
}

/// Shear with which air drags on the wall and a thin film: `f rho v^2 / 8`.
///
/// Arguments: Darcy friction factor (-), density and mean speed of the air.
///
/// # Range
/// Developed flow over a film that is thin against the bore and smooth.
/// # Accuracy
/// That of the friction factor; ripples raise it.
/// # Errors
/// None.
/// # Source
/// Definition of the Darcy friction factor.
///
/// ```
/// use dewrun_quantity::{Density, Speed};
/// use dewrun_water::moving::wall_shear;
/// let shear = wall_shear(0.0373, Density::kilograms_per_cubic_metre(1.204), Speed::metres_per_second(4.974));
/// assert!((shear.to_pascals() - 0.1389).abs() < 2e-4);
/// ```
#[must_use]
pub fn wall_shear(friction: f64, air: Density, speed: Speed) -> Pressure {
    let v_m_s = speed.to_metres_per_second();
    Pressure::pascals(friction * air.to_kilograms_per_cubic_metre() * v_m_s * v_m_s / 8.0)
}

/// The incline up which the air just holds a film: `tau = rho_w g d sin a`; upright where it holds it at any.
///
/// On flatter legs that rise with the air the film creeps up, on those that fall with it the air helps.
///
/// # Range
/// Films above zero.
/// # Accuracy
/// That of the shear; a film is uneven.
/// # Errors
/// None.
/// # Source
/// Balance of forces on a film.
///
/// ```
/// use dewrun_quantity::{MassPerArea, Pressure};
/// use dewrun_water::moving::incline_that_air_holds;
/// let incline = incline_that_air_holds(Pressure::pascals(0.13892), MassPerArea::grams_per_square_metre(50.0));
/// assert!((incline.sine() - 0.28332).abs() < 1e-4);
/// ```
#[must_use]
pub fn incline_that_air_holds(shear: Pressure, film: MassPerArea) -> Incline {
    let weight_pa = film.to_kilograms_per_square_metre() * GRAVITY_M_S2;
    Incline::per_length(shear.to_pascals() / weight_pa).unwrap_or(Incline::UPRIGHT)
}

/// Speed of air above which water no longer runs down an upright tube against it: `v = C^2 sqrt(g D (rho_w - rho_a)/rho_a)`.
///
/// Arguments: bore, density of air and water, the constant from [`SHARP_EDGED`] to [`SMOOTH_ENDED`].
///
/// # Range
/// Small tubes, up to about 30 capillary lengths of bore, at hardly any water flow; beyond, the Kutateladze number decides.
/// # Accuracy
/// 30 %.
/// # Errors
/// None.
/// # Source
/// Wallis, One-dimensional Two-phase Flow (1969), at no liquid flow (from memory).
///
/// ```
/// use dewrun_quantity::{Density, Length};
/// use dewrun_water::moving::{SHARP_EDGED, wallis_1969_flooding};
/// let of = Density::kilograms_per_cubic_metre;
/// let speed = wallis_1969_flooding(Length::millimetres(10.0), of(1.2046), of(998.2), SHARP_EDGED);
/// assert!((speed.to_metres_per_second() - 4.7366).abs() < 0.005);
/// ```
#[must_use]
pub fn wallis_1969_flooding(bore: Length, air: Density, water: Density, constant: f64) -> Speed {
    let ratio = (water - air) / air;
    let root = (GRAVITY_M_S2 * bore.to_metres() * ratio).max(0.0).sqrt();
    Speed::metres_per_second(constant * constant * root)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_small_drop_stays_upright() {
        let water = Density::kilograms_per_cubic_metre(998.2);
        let holding = Force::newtons(1.456e-4);
        let angle = sliding_angle(holding, Volume::millilitres(0.010), water);
        assert_eq!(angle, None, "10 microlitres weigh 98 micronewtons");
    }

    #[test]
    fn strong_air_holds_a_film_at_any_incline() {
        let incline = incline_that_air_holds(
            Pressure::pascals(1.0),
            MassPerArea::grams_per_square_metre(50.0),
        );
        assert_eq!(incline, Incline::UPRIGHT, "1 Pa is twice the film's weight");
    }

    #[test]
    fn no_air_holds_nothing() {
        let shear = wall_shear(0.04, Density::kilograms_per_cubic_metre(1.2), Speed::ZERO);
        let incline = incline_that_air_holds(shear, MassPerArea::grams_per_square_metre(50.0));
        assert_eq!(incline, Incline::LEVEL, "the film runs on any slope");
    }
}
