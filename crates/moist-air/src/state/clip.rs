//! What lies a little over saturation is clipped to it with a note; what lies far over it is a fault.

use super::saturated;
use crate::error::AirNote;
use crate::humidity::saturated_over_water;
use crate::pair::Over;
use crate::saturation::TRIPLE_POINT_C;

/// Relative humidity that is clipped without doubt in the sensor, as a fraction of saturation.
const CLIPPED: f64 = 1.02;
/// Relative humidity that is still clipped; more is a fault of the sensor.
pub(super) const FAULT: f64 = 1.05;
/// Excess over saturation that no sensor reads, 0.02 %: the dust of conversions and fits, and the step from ice to water at the triple point.
const DUST: f64 = 2.0e-4;

/// Notes on a state while it is made.
pub(super) type Notes = Vec<AirNote>;

/// The vapour that stands: clipped to saturation over water with a note, or none where it is too far over it.
pub(super) fn clipped(t_c: f64, x: f64, over: Over, p_pa: f64, notes: &mut Notes) -> Option<f64> {
    let most = saturated_over_water(t_c, p_pa);
    let over_water = x / most;
    notes.extend(clip_note(over_water)?);
    let x = x.min(most);
    let over_ice = x / saturated(t_c, p_pa, over);
    if over == Over::Ice && t_c < TRIPLE_POINT_C && 1.0 + DUST < over_ice {
        notes.push(AirNote::AboveIceSaturation {
            percent: 100.0 * over_ice,
        });
    }
    Some(x)
}

/// What has to be said of a relative humidity, or none where it is a fault.
pub(super) fn clip_note(fraction: f64) -> Option<Option<AirNote>> {
    let percent = 100.0 * fraction;
    if fraction <= 1.0 + DUST {
        Some(None)
    } else if fraction <= CLIPPED + DUST {
        Some(Some(AirNote::Clipped { percent }))
    } else if fraction <= FAULT + DUST {
        Some(Some(AirNote::SaturatedSensor { percent }))
    } else {
        None
    }
}
