//! How long the air takes from the holes to the sensor.

use dewrun_quantity::{Density, MassFlow, Time, Volume};

/// Up to this Reynolds number the velocity profile is a parabola.
const LAMINAR: f64 = 2300.0;
/// From this one on it is flat.
const TURBULENT: f64 = 4000.0;
/// The share of the smoke that counts as arrived.
const NINE_TENTHS: f64 = 0.9;

/// Transport time as a band: smoke drawn out by the velocity profile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TransportTime {
    /// The first trace arrives.
    pub first: Time,
    /// As if all of it moved at one speed.
    pub plug: Time,
    /// Nine tenths of it have arrived.
    pub ninety_percent: Time,
}

/// Time to fill a volume: `V rho / m`.
///
/// Arguments: volume, density of the air in it, mass flow through it.
///
/// # Range
/// A mass flow above zero.
///
/// # Accuracy
/// Exact.
///
/// # Errors
/// None; infinite where nothing flows.
///
/// # Source
/// Continuity.
///
/// ```
/// use dewrun_airflow::fill_time;
/// use dewrun_quantity::{Density, MassFlow, Volume};
/// let air = Density::kilograms_per_cubic_metre(1.2);
/// let time = fill_time(Volume::litres(7.0), air, MassFlow::kilograms_per_second(6e-4));
/// assert!((time.to_seconds() - 14.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn fill_time(volume: Volume, density: Density, mass_flow: MassFlow) -> Time {
    let air_kg = volume.to_cubic_metres() * density.to_kilograms_per_cubic_metre();
    Time::seconds(air_kg / mass_flow.to_kilograms_per_second())
}

/// When a share of the smoke has come through a tube, as a part of its volume over the flow.
///
/// Laminar `1/(2 sqrt(1 - share))` up to Re 2300, 1 from Re 4000, linear in Re between.
///
/// Arguments: share that has arrived (-), Reynolds number of the tube (-).
///
/// # Range
/// Straight tubes in which diffusion across the profile and secondary flow in bends do not even it out; shares from 0 to below 1.
///
/// # Accuracy
/// Exact for a parabola; bends and diffusion bring the first smoke later and the last one earlier.
///
/// # Errors
/// None; infinite at a share of 1.
///
/// # Source
/// Hagen and Poiseuille's profile: `share = 1 - (V/q)^2/(4 t^2)` from `t = V/(2 q)` on; Levenspiel, Chemical Reaction Engineering, 3rd ed. (1999), chapter 15.
///
/// ```
/// use dewrun_airflow::arrival;
/// assert_eq!(arrival(0.0, 1500.0), 0.5);
/// assert!((arrival(0.9, 1500.0) - 1.581_14).abs() < 1e-5);
/// assert_eq!(arrival(0.9, 9000.0), 1.0);
/// ```
#[must_use]
pub fn arrival(share: f64, reynolds: f64) -> f64 {
    let laminar = 0.5 / (1.0 - share).sqrt();
    let flat = ((reynolds - LAMINAR) / (TURBULENT - LAMINAR)).clamp(0.0, 1.0);
    laminar + (1.0 - laminar) * flat
}

/// A transport time under way.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Elapsed {
    first_s: f64,
    plug_s: f64,
    ninety_s: f64,
}

impl Elapsed {
    /// Goes on by a volume's time; with a Reynolds number the velocity profile spreads it.
    pub(crate) fn pass(&mut self, plug_s: f64, reynolds: Option<f64>) {
        let spread = |share: f64| reynolds.map_or(1.0, |reynolds| arrival(share, reynolds));
        self.first_s += plug_s * spread(0.0);
        self.plug_s += plug_s;
        self.ninety_s += plug_s * spread(NINE_TENTHS);
    }

    pub(crate) const fn time(self) -> TransportTime {
        TransportTime {
            first: Time::seconds(self.first_s),
            plug: Time::seconds(self.plug_s),
            ninety_percent: Time::seconds(self.ninety_s),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_way_between_laminar_and_turbulent() {
        assert!((arrival(0.0, 3150.0) - 0.75).abs() < 1e-12, "0.5 and 1");
        assert_eq!(arrival(0.0, 4000.0), 1.0, "flat from here on");
        assert_eq!(arrival(0.0, 2300.0), 0.5, "a parabola to here");
    }

    /// Smoke of a tube of 10 s: first after 5 s, half after 7.07 s, nine tenths after 15.8 s.
    #[test]
    fn laminar_spread() {
        for (share, seconds) in [(0.0, 5.0), (0.5, 7.071_07), (0.9, 15.811_39)] {
            let got = 10.0 * arrival(share, 1000.0);
            assert!((got - seconds).abs() < 1e-5, "{got} for {share}");
        }
    }
}
