//! The weather of a row, as spaces and ducts meet it.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::schedule::Moment;
use dewrun_duct_air::space::Outdoors;
use dewrun_weather::{Civil, Series};

/// Stefan and Boltzmann's constant, W/(m2 K4): CODATA 2018.
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// 0 °C on the thermodynamic scale, K.
const ZERO_CELSIUS_K: f64 = 273.15;
/// What the relations of the air hold for, °C.
pub(crate) const AIR_C: (f64, f64) = (-60.0, 95.0);
/// Seconds of a day.
const DAY_S: i64 = 86_400;
/// 1 January 1970 was a Thursday, Monday being 0.
const FIRST_WEEKDAY: i64 = 3;

/// The weather of a row; none where it is not usable.
///
/// The sky is known where the file tells its radiation; else it is as warm as the air.
///
/// # Range
/// Air from -60 to 95 °C.
/// # Source
/// The sky's temperature from its radiation by Stefan and Boltzmann's law.
#[must_use]
pub fn outdoors(series: &Series, row: usize) -> Option<Outdoors> {
    let of = |column: &Option<Vec<f64>>| {
        let value = column.as_ref().and_then(|column| column.get(row)).copied();
        value.filter(|value| value.is_finite())
    };
    let t_c = series.temperature_c.get(row).copied()?;
    if !series.is_usable(row) || !(AIR_C.0..=AIR_C.1).contains(&t_c) {
        return None;
    }
    let air = FogAir {
        t_c,
        w: series.humidity_ratio(row)?,
        mist: 0.0,
    };
    let sky_c = |radiation: f64| (radiation / STEFAN_BOLTZMANN).sqrt().sqrt() - ZERO_CELSIUS_K;
    Some(Outdoors {
        air,
        p_pa: series.pressure_pa.get(row).copied()?,
        wind_m_s: of(&series.wind_m_s).unwrap_or(0.0),
        sky_c: of(&series.infrared_w_m2)
            .filter(|radiation| 0.0 < *radiation)
            .map(sky_c),
        sun_w_m2: of(&series.global_w_m2).map_or(0.0, |sun| sun.max(0.0)),
    })
}

/// The moment of a time in seconds since 1970 on the file's own clock; none beyond year 9999.
///
/// ```
/// use dewrun_season::moment;
/// let at = moment(1_782_777_600 + 3600 * 13).unwrap(); // Tuesday, 30 June 2026
/// assert_eq!((at.month, at.weekday, at.hour), (6, 1, 13));
/// ```
#[must_use]
pub fn moment(seconds: i64) -> Option<Moment> {
    let civil = Civil::of(seconds)?;
    let weekday = (seconds.div_euclid(DAY_S) + FIRST_WEEKDAY).rem_euclid(7);
    Some(Moment {
        month: civil.month,
        weekday: u8::try_from(weekday).ok()?,
        hour: civil.hour,
    })
}
