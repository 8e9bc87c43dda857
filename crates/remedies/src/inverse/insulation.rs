//! The least insulation against sweat outside.

use dewrun_numeric::itp;
use dewrun_quantity::{Length, Temperature};
use dewrun_tube::layers::cylinder_resistance_mk_w;

use super::StillTube;

/// Thicker than this nobody insulates a tube, m.
const THICKEST_M: f64 = 0.5;
/// Nobody measures finer, m.
const FINE_M: f64 = 1e-7;

/// The least thickness that keeps the outermost surface at the dew point of the air around; zero where the tube itself is as warm, none where no thickness does.
///
/// Arguments: the tube (its own thickness is not looked at), the temperature of its outer face, the dew point of the air around.
///
/// # Range
/// Still air; a tube colder than its surroundings.
///
/// # Accuracy
/// That of the outside film, 20 % of its coefficient.
///
/// # Errors
/// None.
///
/// # Source
/// Root of `(t_dew - t)/R = (h_c + h_r) pi D (t_a - t_dew)`; the film is that of [`dewrun_tube::film_outside`].
///
/// ```
/// use dewrun_quantity::{Conductivity, Length, Pressure, Temperature};
/// use dewrun_remedies::inverse::{StillTube, least_insulation};
/// let tube = StillTube {
///     outside_diameter: Length::millimetres(12.0), insulation: Length::ZERO,
///     conductivity: Conductivity::watts_per_metre_kelvin(0.035), emissivity: 0.9,
///     around: Temperature::celsius(30.0), pressure: Pressure::pascals(101_325.0),
/// };
/// // 80 % relative humidity at 30 °C.
/// let thickness = least_insulation(&tube, Temperature::celsius(12.0), Temperature::celsius(26.17)).unwrap();
/// assert!((thickness.to_millimetres() - 9.03).abs() < 0.2);
/// ```
#[must_use]
pub fn least_insulation(
    tube: &StillTube,
    face: Temperature,
    dew_point: Temperature,
) -> Option<Length> {
    let (face_c, dew_c) = (face.to_celsius(), dew_point.to_celsius());
    if dew_c <= face_c {
        return Some(Length::ZERO);
    }
    let outside_m = tube.outside_diameter.to_metres();
    let k_w_mk = tube.conductivity.to_watts_per_metre_kelvin();
    // What the layer lets through beyond what the film brings: above zero the surface is colder than the dew point.
    let excess = |thickness_m: f64| {
        let outer_m = outside_m + 2.0 * thickness_m;
        let resistance = cylinder_resistance_mk_w(outside_m, outer_m, k_w_mk);
        (dew_c - face_c) + resistance * tube.loss_w_m(outer_m, dew_c)
    };
    let thickness_m = itp(excess, 0.0, THICKEST_M, FINE_M).ok()?;
    Some(Length::metres(thickness_m))
}
