//! Heat tracing that keeps a tube at a temperature, and the temperature that a tracing keeps.

use dewrun_moist_air::fast::SaturationCurve;
use dewrun_numeric::itp;
use dewrun_quantity::{PowerPerLength, Temperature};
use dewrun_tube::film_outside::{FilmOutside, OuterSurface, Surroundings};
use dewrun_tube::layers::cylinder_resistance_mk_w;

use super::StillTube;

/// No tube gets hotter by its tracing than this, °C: the film's relations end there.
const HOTTEST_C: f64 = 150.0;
/// Nobody measures finer, K.
const FINE_K: f64 = 1e-6;

/// The heat tracing that keeps a tube at a temperature, its air as warm; below zero where it has to be cooled.
///
/// # Range
/// Still air; surfaces from -40 to 150 °C. None where the tube is colder than that.
///
/// # Accuracy
/// That of the outside film, 20 % of its coefficient.
///
/// # Errors
/// None.
///
/// # Source
/// Balance of the outer surface, `(t - t_s)/R = (h_c + h_r) pi D (t_s - t_a)`; the film is that of [`dewrun_tube::film_outside`].
///
/// ```
/// use dewrun_quantity::{Conductivity, Length, Pressure, Temperature};
/// use dewrun_remedies::inverse::{StillTube, trace_power};
/// let tube = StillTube {
///     outside_diameter: Length::millimetres(16.0), insulation: Length::millimetres(13.0),
///     conductivity: Conductivity::watts_per_metre_kelvin(0.036), emissivity: 0.9,
///     around: Temperature::celsius(-10.0), pressure: Pressure::pascals(101_325.0),
/// };
/// let power = trace_power(&tube, Temperature::celsius(8.0)).unwrap();
/// assert!((power.to_watts_per_metre() - 3.396).abs() < 0.04);
/// ```
#[must_use]
pub fn trace_power(tube: &StillTube, kept: Temperature) -> Option<PowerPerLength> {
    let kept_c = kept.to_celsius();
    let outside_m = tube.outside_diameter.to_metres();
    let outer_m = outside_m + 2.0 * tube.insulation.to_metres();
    if tube.insulation.to_metres() <= 0.0 {
        return Some(PowerPerLength::watts_per_metre(
            tube.loss_w_m(outer_m, kept_c),
        ));
    }
    let k_w_mk = tube.conductivity.to_watts_per_metre_kelvin();
    let resistance = cylinder_resistance_mk_w(outside_m, outer_m, k_w_mk);
    let around_c = tube.around.to_celsius();
    let excess =
        |surface_c: f64| (kept_c - surface_c) - resistance * tube.loss_w_m(outer_m, surface_c);
    let (low, high) = (kept_c.min(around_c), kept_c.max(around_c));
    let surface_c = itp(excess, low, high, FINE_K).ok()?;
    Some(PowerPerLength::watts_per_metre(
        tube.loss_w_m(outer_m, surface_c),
    ))
}

/// How hot a tube gets in which the air stands, by its tracing alone; none beyond 150 °C.
///
/// # Range
/// As [`trace_power`].
///
/// # Accuracy
/// As [`trace_power`].
///
/// # Errors
/// None.
///
/// # Source
/// [`trace_power`], turned round.
///
/// ```
/// use dewrun_quantity::{Conductivity, Length, PowerPerLength, Pressure, Temperature};
/// use dewrun_remedies::inverse::{StillTube, kept_temperature};
/// let tube = StillTube {
///     outside_diameter: Length::millimetres(16.0), insulation: Length::millimetres(13.0),
///     conductivity: Conductivity::watts_per_metre_kelvin(0.036), emissivity: 0.9,
///     around: Temperature::celsius(-10.0), pressure: Pressure::pascals(101_325.0),
/// };
/// let kept = kept_temperature(&tube, PowerPerLength::watts_per_metre(3.396)).unwrap();
/// assert!((kept.to_celsius() - 8.0).abs() < 0.2);
/// ```
#[must_use]
pub fn kept_temperature(tube: &StillTube, power: PowerPerLength) -> Option<Temperature> {
    let wanted = power.to_watts_per_metre();
    let excess = |kept_c: f64| {
        let needed = trace_power(tube, Temperature::celsius(kept_c));
        needed.map_or(f64::NAN, |needed| needed.to_watts_per_metre() - wanted)
    };
    let around_c = tube.around.to_celsius();
    itp(excess, around_c, HOTTEST_C, FINE_K)
        .ok()
        .map(Temperature::celsius)
}

impl StillTube {
    /// Heat that the outermost surface gives to its surroundings at a temperature, W/m; sweat is not counted.
    pub(super) fn loss_w_m(&self, diameter_m: f64, surface_c: f64) -> f64 {
        let p_pa = self.pressure.to_pascals();
        let around_c = self.around.to_celsius();
        let surface = OuterSurface {
            diameter_m,
            emissivity: self.emissivity,
            riser_m: None,
        };
        let surroundings = Surroundings {
            air_c: around_c,
            w: 0.0,
            radiant_c: around_c,
            wind_m_s: 0.0,
            p_pa,
        };
        let curve = SaturationCurve::at(p_pa);
        FilmOutside::new(&curve, surface, surroundings)
            .at(surface_c)
            .loss_w_m
    }
}
