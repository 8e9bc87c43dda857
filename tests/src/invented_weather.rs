//! The invented year of `demo/gull-harbour.csv`: a humid temperate coast that lies nowhere, made of a few waves and drawn numbers.
//!
//! Nothing in it was measured. It has what a year must have to show what the product does: frost nights, fog, muggy
//! weeks, quick changes of weather.

use core::f64::consts::TAU;
use std::fmt::Write as _;

use dewrun_numeric::elementary::sin;

/// Hours of a year without leap day.
const HOURS: u32 = 8760;
/// Where the draws begin; the year of the file.
const SEED: u64 = 2001;
/// What stands above the readings.
const HEAD: &str = "\
Place: Gull Harbour
Note: invented from end to end; this place does not exist and nothing here was measured
Latitude: 51.5
Longitude: 4.0
Elevation (m): 8
Time zone: 1
Time,Temperature (°C),Dew point (°C),Wind (m/s),Global radiation (W/m2),Sky infrared (W/m2)
";

/// Numbers between -1 and 1, the same on every machine.
struct Draws(u64);

impl Draws {
    /// Knuth's multiplicative congruential step; the upper bits alone are used.
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let upper = u32::try_from(self.0 >> 40).unwrap_or(0);
        f64::from(upper) / f64::from(1_u32 << 23) - 1.0
    }
}

/// A wave of so many hours, at its top at an hour.
fn wave(hour: f64, period_h: f64, top_h: f64) -> f64 {
    sin(TAU * (hour - top_h) / period_h + 0.25 * TAU)
}

/// What carries over from hour to hour.
#[derive(Default)]
struct Sky {
    /// Warm and humid air masses against cold and dry ones, -1 to 1 and a little beyond.
    air_mass: f64,
    /// Share of the sky that is covered, before it is cut to 0 and 1.
    cover: f64,
}

/// One row.
struct Hour {
    t_c: f64,
    dew_point_c: f64,
    wind_m_s: f64,
    global_w_m2: f64,
    infrared_w_m2: f64,
}

impl Sky {
    fn hour(&mut self, hour: f64, draws: &mut Draws) -> Hour {
        self.air_mass = 0.985 * self.air_mass + 0.12 * draws.next();
        self.cover = 0.93 * self.cover + 0.22 * draws.next();
        let cover = (0.6 + self.cover).clamp(0.0, 1.0);
        let season = wave(hour, f64::from(HOURS), 4950.0);
        let fronts = 0.6 * wave(hour, 151.0, 20.0) + 0.4 * wave(hour, 83.0, 11.0) + self.air_mass;
        // The sun's height, roughly: long days in summer, none at night.
        let sun = (0.35 + 0.3 * season + 0.55 * wave(hour, 24.0, 12.0)).max(0.0);
        let clear = 1.0 - 0.75 * cover;
        let swing = (2.0 + 2.5 * (season + 1.0)) * (1.2 - cover) * wave(hour, 24.0, 15.0);
        let t_c = 10.5 + 7.5 * season + 3.5 * fronts + swing;
        let spread = (0.7 - 0.9 * fronts + 2.0 * (1.0 - cover) + 0.5 * swing.max(0.0)).max(0.0);
        Hour {
            t_c,
            dew_point_c: t_c - spread,
            wind_m_s: (3.0 + 2.0 * fronts.abs() + draws.next()).max(0.0),
            global_w_m2: 800.0 * sun * clear,
            infrared_w_m2: 250.0 + 4.5 * t_c + 60.0 * cover,
        }
    }
}

/// Tenths, so that every machine writes the same digits.
fn tenths(value: f64) -> String {
    format!("{:.1}", (10.0 * value).round() / 10.0).replace("-0.0", "0.0")
}

/// The whole file.
#[must_use]
pub fn text() -> String {
    let mut text = HEAD.to_owned();
    let (mut draws, mut sky) = (Draws(SEED), Sky::default());
    for hour in 0..HOURS {
        let row = sky.hour(f64::from(hour), &mut draws);
        let stamp = dewrun_weather::Civil::of((11_323 * 24 + i64::from(hour)) * 3600)
            .map_or_else(String::new, |civil| civil.to_string());
        let _ = writeln!(
            text,
            "{stamp},{},{},{},{:.0},{:.0}",
            tenths(row.t_c),
            tenths(row.dew_point_c),
            tenths(row.wind_m_s),
            row.global_w_m2,
            row.infrared_w_m2
        );
    }
    text
}
