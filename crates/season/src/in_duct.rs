//! The air of a duct as a logger in it has read it, brought to the steps of the weather.

use dewrun_duct_air::FogAir;
use dewrun_weather::Series;

use crate::outdoors::AIR_C;

/// Air that was measured in a duct in a step, which is given by its start and its length, s; none where nothing usable was read then.
///
/// The mean of the readings that fall into the step; where readings stand further apart, the last one, where it stands for the middle of the step.
/// Dew points stay what they are at another pressure: the humidity ratio is that at `p_pa`, whatever pressure the logger's file was read with.
///
/// # Range
/// Pressures from 50 to 120 kPa; readings from -60 to 95 °C, others are left out.
///
/// ```
/// use dewrun_season::air_in_duct;
/// use dewrun_weather::{Reader, Understanding};
/// let mut reader = Reader::new(Understanding::default());
/// reader.push(b"time,temperature [C],dew point [C]\n2026-03-01 00:10,20,10\n2026-03-01 00:40,22,10\n").unwrap();
/// let read = reader.finish().unwrap().series;
/// let midnight = read.start_s[0] - 600;
/// let air = air_in_duct(&read, (midnight, 3600), 101_325.0).unwrap();
/// assert!((air.t_c - 21.0).abs() < 1e-9 && (air.w - 0.0077).abs() < 1e-4);
/// ```
#[must_use]
pub fn air_in_duct(measured: &Series, (start_s, step_s): (i64, i64), p_pa: f64) -> Option<FogAir> {
    let starts = &measured.start_s;
    let before = |time_s: i64| starts.partition_point(|start| *start < time_s);
    let within = before(start_s)..before(start_s.saturating_add(step_s));
    let last = within.start.checked_sub(1).filter(|&row| {
        let ends = starts.get(row).map(|start| start + measured.timing.step_s);
        ends.is_some_and(|ends| start_s + step_s / 2 < ends)
    });
    let (mut count, mut t_c, mut w) = (0.0, 0.0, 0.0);
    for air in within.filter_map(|row| read(measured, row, p_pa)) {
        count += 1.0;
        t_c += air.t_c;
        w += air.w;
    }
    if count == 0.0 {
        return read(measured, last?, p_pa);
    }
    Some(FogAir {
        t_c: t_c / count,
        w: w / count,
        mist: 0.0,
    })
}

/// One reading.
fn read(measured: &Series, row: usize, p_pa: f64) -> Option<FogAir> {
    let t_c = measured.temperature_c.get(row).copied()?;
    (AIR_C.0..=AIR_C.1).contains(&t_c).then_some(())?;
    Some(FogAir {
        t_c,
        w: measured.humidity_ratio_at(row, p_pa)?,
        mist: 0.0,
    })
}

#[cfg(test)]
mod tests {
    use dewrun_moist_air::fast::dew_or_frost_point_of_c;
    use dewrun_moist_air::mixture::mole_fraction;
    use dewrun_weather::{Reader, Understanding};

    use super::*;

    const P_PA: f64 = 101_325.0;
    const HOUR_S: i64 = 3600;

    fn logger(rows: &str) -> Series {
        let mut reader = Reader::new(Understanding::default());
        let text = format!("time,temperature [C],dew point [C]\n{rows}");
        reader.push(text.as_bytes()).expect("a table");
        reader.finish().expect("a table").series
    }

    /// Ten minutes from reading to reading, three minutes past the hours of the weather.
    #[test]
    fn an_hour_has_the_mean_of_its_readings() {
        let rows: Vec<String> = (0..12)
            .map(|at| {
                let minutes = 3 + 10 * at;
                let (hour, minute) = (minutes / 60, minutes % 60);
                format!("2026-03-01 {hour:02}:{minute:02},{},8\n", 20 + at)
            })
            .collect();
        let read = logger(&rows.concat());
        let midnight = read.start_s[0] - 180;
        let first = air_in_duct(&read, (midnight, HOUR_S), P_PA).expect("readings");
        let second = air_in_duct(&read, (midnight + HOUR_S, HOUR_S), P_PA).expect("readings");
        // (20 + .. + 25) / 6 and (26 + .. + 31) / 6.
        assert!((first.t_c - 22.5).abs() < 1e-9, "{first:?}");
        assert!((second.t_c - 28.5).abs() < 1e-9, "{second:?}");
        let later = air_in_duct(&read, (midnight + 3 * HOUR_S, HOUR_S), P_PA);
        assert_eq!(later, None, "nothing was read any more");
    }

    #[test]
    fn quarters_have_the_reading_of_their_hour() {
        let read = logger("2026-03-01 00:00,20,8\n2026-03-01 01:00,24,8\n2026-03-01 02:00,24,8\n");
        let start_s = read.start_s[0];
        let at = |quarter: i64| {
            air_in_duct(&read, (start_s + quarter * 900, 900), P_PA).map(|air| air.t_c)
        };
        assert_eq!([at(0), at(3), at(4)], [Some(20.0), Some(20.0), Some(24.0)]);
        assert_eq!(at(-1), None, "nothing was read before");
        assert_eq!(at(12), None, "the last reading stands for its hour");
    }

    /// High up the same dew point is more vapour per kilogram of air.
    #[test]
    fn a_dew_point_is_kept_at_another_pressure() {
        let read = logger("2026-03-01 00:00,20,8\n2026-03-01 01:00,24,8\n");
        for p_pa in [83_000.0, P_PA] {
            let air = air_in_duct(&read, (read.start_s[0], HOUR_S), p_pa).expect("a reading");
            let point_c = dew_or_frost_point_of_c(mole_fraction(air.w), p_pa).expect("vapour");
            assert!((point_c - 8.0).abs() < 0.01, "{point_c} °C at {p_pa} Pa");
        }
    }
}
