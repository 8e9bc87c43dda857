//! A run without a weather file: a year that is made of what it does in a few named weathers.

use dewrun_ensemble::Plan;
use dewrun_weather::Civil;

use crate::groups::Group;
use crate::modelled::{DAMP_FROM, Modelled, Sum, has_trap, low_point};
use crate::signs::FaultSigns;

/// Each weather holds on one day of so many in its season, and the others are without any water: common practice, no source.
const EVERY: i64 = 10;
/// Hours of a year.
const HOURS: i64 = 8760;
/// Seconds of an hour.
const HOUR_S: i64 = 3600;

/// What a run does in a named weather.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct InWeather {
    /// Water that deposits as liquid, g/h.
    pub water_g_h: f64,
    /// Mist reaches the sensor.
    pub is_misty: bool,
    /// Relative humidity in the chamber, 0 to 1.
    pub humidity: f64,
    /// Ice lies on a wall.
    pub is_icy: bool,
}

impl Modelled {
    /// Of a run in a summer's day, a summer's night, a morning of spring or autumn and a winter's night, where nothing is known of the hours of a year: what it can do at all, and in which season.
    #[must_use]
    pub fn in_weathers(plan: &Plan, weathers: [InWeather; 4]) -> Self {
        let starts = (0..HOURS).map(|hour| hour * HOUR_S);
        let start_s: Vec<i64> = starts.collect();
        let hours = start_s.iter().map(|start_s| {
            let weather = Civil::of(*start_s).and_then(|civil| {
                let holds = start_s.div_euclid(24 * HOUR_S).rem_euclid(EVERY) == 0;
                let is_day = (8..20).contains(&civil.hour);
                let place = match civil.month {
                    6..=8 if is_day => 0,
                    6..=8 => 1,
                    12 | 1 | 2 => 3,
                    _ => 2,
                };
                weathers.get(place).filter(|_| holds)
            });
            weather.map_or_else(Sum::without_water, Sum::of_weather)
        });
        let year: Vec<Sum> = hours.collect();
        let (signs, faults) = FaultSigns::with_readings(plan);
        Self {
            groups: vec![Group::of_sums(&year)],
            year,
            start_s,
            signs,
            faults,
            has_trap: has_trap(plan),
            low_point: low_point(plan),
            switching_hours: Vec::new(),
        }
    }
}

impl Sum {
    fn without_water() -> Self {
        Self {
            dry: 1.0,
            ..Self::default()
        }
    }

    fn of_weather(weather: &InWeather) -> Self {
        let of = |is: bool| if is { 1.0 } else { 0.0 };
        let mut sum = Self {
            icy: of(weather.is_icy),
            water_g: if weather.is_icy {
                0.0
            } else {
                weather.water_g_h
            },
            dry: of(weather.water_g_h <= 0.0 && !weather.is_icy),
            ..Self::default()
        };
        for (damp, from) in sum.mist.iter_mut().zip(DAMP_FROM) {
            let over = ((weather.humidity - from) / (1.0 - from)).clamp(0.0, 1.0);
            *damp = if weather.is_misty { 1.0 } else { over * over };
        }
        sum
    }
}
