//! Mist in the film between a cold wall and air that is not saturated itself.
//!
//! Saturation is convex, so the straight line of states from wall to bulk can cross it although neither end does.

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_moist_air::mixture::humidity_ratio;
use dewrun_numeric::itp;

use crate::march::air::BOILING;

/// The place of a march where mist near the wall is likeliest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearWall {
    /// Distance from the inlet, m.
    pub x_m: f64,
    /// Highest vapour content over that at saturation (over water) in the film, above 1.
    pub saturation_ratio: f64,
    /// No more than this forms in the films of the whole march, kg/s.
    pub bound_kg_s: f64,
}

/// Width of temperature, K, to which the place in the film is found; the maximum is flat there.
const TOLERANCE_K: f64 = 1e-2;

/// Highest humidity ratio over that at saturation (over water) on the straight line of states from wall to bulk [-].
///
/// Arguments: curve of the pressure, temperature of the wall [°C] and humidity ratio at it, temperature of the bulk [°C] and its humidity ratio.
///
/// # Range
/// -60 to 95 °C.
///
/// # Accuracy
/// 1e-6: the maximum is flat.
///
/// # Errors
/// None; 0 where water boils.
///
/// # Source
/// The criterion is that of Brouwers & Chesters, Int. J. Heat Mass Transfer 35 (1992) 1.
///
/// ```
/// use dewrun_moist_air::fast::SaturationCurve;
/// let curve = SaturationCurve::at(101_325.0);
/// let ratio = dewrun_tube::highest_saturation_ratio(&curve, -10.0, 0.00160, 30.0, 0.01603);
/// assert!((ratio - 1.38).abs() < 0.03);
/// ```
#[must_use]
pub fn highest_saturation_ratio(
    curve: &SaturationCurve,
    wall_c: f64,
    w_wall: f64,
    bulk_c: f64,
    w_bulk: f64,
) -> f64 {
    if bulk_c - wall_c < TOLERANCE_K {
        // No line to speak of: its ends are all there is.
        return (w_wall / over_water(curve, wall_c).0).max(w_bulk / over_water(curve, bulk_c).0);
    }
    let ratio = |t_c: f64| line(wall_c, w_wall, bulk_c, w_bulk, t_c) / over_water(curve, t_c).0;
    let ends = ratio(wall_c).max(ratio(bulk_c));
    let slope = (w_bulk - w_wall) / (bulk_c - wall_c);
    // Logarithmic slopes of line and saturation are equal where the ratio is highest.
    let difference = |t_c: f64| {
        let (saturation, saturation_slope) = over_water(curve, t_c);
        slope / line(wall_c, w_wall, bulk_c, w_bulk, t_c) - saturation_slope / saturation
    };
    match itp(difference, wall_c, bulk_c, TOLERANCE_K) {
        Ok(t_c) => ends.max(ratio(t_c)),
        Err(_) => ends,
    }
}

/// No more mist than this forms in the film, per metre of tube [kg/(s m)].
///
/// In the film model the fog fills the part of the film next to the wall; its edge is where the line from the bulk touches saturation.
/// What the bulk gives up to that edge, less what saturation's slope at the wall carries off, is fog.
/// Heat set free by the fog warms the film and leaves less of it: so this is a bound.
///
/// Arguments: curve of the pressure, coefficient of vapour [kg/(s m)], temperature of the wall and the bulk [°C], humidity ratio of the bulk.
///
/// # Range
/// A wet wall (saturated at its own temperature), -60 to 95 °C.
///
/// # Accuracy
/// An upper bound; Lewis number 1 is assumed, as in the source.
///
/// # Errors
/// None; 0 where the line does not cross saturation.
///
/// # Source
/// Brouwers, Film models for transport phenomena with fog formation: the fog film model, Int. J. Heat Mass Transfer 35 (1992) 13 (from memory): tangency of the fog film.
///
/// ```
/// use dewrun_moist_air::fast::SaturationCurve;
/// let curve = SaturationCurve::at(101_325.0);
/// assert_eq!(dewrun_tube::fog_film_1992_bound_kg_sm(&curve, 1e-5, 20.0, 25.0, 0.0148), 0.0);
/// assert!(0.0 < dewrun_tube::fog_film_1992_bound_kg_sm(&curve, 1e-5, -10.0, 30.0, 0.01603));
/// ```
#[must_use]
pub fn fog_film_1992_bound_kg_sm(
    curve: &SaturationCurve,
    vapour_kg_sm: f64,
    wall_c: f64,
    bulk_c: f64,
    w_bulk: f64,
) -> f64 {
    let (w_wall, wall_slope) = over_water(curve, wall_c);
    let width = bulk_c - wall_c;
    if width.is_nan() || width <= 0.0 || w_bulk - w_wall <= wall_slope * width {
        return 0.0;
    }
    // Above zero where the tangent at t passes below the bulk.
    let above = |t_c: f64| {
        let (saturation, slope) = over_water(curve, t_c);
        w_bulk - saturation - slope * (bulk_c - t_c)
    };
    let touch = itp(above, wall_c, bulk_c, TOLERANCE_K).unwrap_or(bulk_c);
    let (_, touch_slope) = over_water(curve, touch);
    vapour_kg_sm * (touch_slope - wall_slope) * width / (1.0 + w_wall)
}

fn line(wall_c: f64, w_wall: f64, bulk_c: f64, w_bulk: f64, t_c: f64) -> f64 {
    w_wall + (w_bulk - w_wall) * (t_c - wall_c) / (bulk_c - wall_c)
}

fn over_water(curve: &SaturationCurve, t_c: f64) -> (f64, f64) {
    let (x, slope) = curve.mole_fraction_over_water(t_c);
    if x.is_nan() || BOILING <= x {
        return (f64::INFINITY, f64::INFINITY);
    }
    let air = 1.0 - x;
    (
        humidity_ratio(x),
        dewrun_moist_air::mixture::MOLAR_MASS_RATIO * slope / (air * air),
    )
}
