//! Any bytes as a weather or logger file, in pieces: no panic, bounded memory, and what is read holds together.

#![no_main]

use dewrun_weather::{Form, Reader, Understanding, design_conditions};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    // The first byte says in which form the rest is read, and in pieces of which size.
    let Some((first, bytes)) = bytes.split_first() else {
        return;
    };
    let form = match first & 7 {
        0 => Some(Form::Epw),
        1 => Some(Form::Tm2),
        2 => Some(Form::Table),
        3 => Some(Form::Tmy3),
        _ => None,
    };
    let size = usize::from(first >> 3) * 16 + 1;
    let mut reader = Reader::new(Understanding { form, ..Understanding::default() });
    for piece in bytes.chunks(size) {
        if reader.push(piece).is_err() {
            return;
        }
    }
    let Ok(weather) = reader.finish() else {
        return;
    };
    let series = &weather.series;
    let rows = series.len();
    assert!(rows <= bytes.len(), "no row from nothing");
    for column in [&series.temperature_c, &series.dew_point_c, &series.relative_percent, &series.pressure_pa] {
        assert_eq!(column.len(), rows, "columns are as long as the rows");
    }
    assert!(series.start_s.windows(2).all(|pair| pair[0] < pair[1]), "times rise");
    for row in 0..rows {
        let (t_c, point_c) = (series.temperature_c[row], series.dew_point_c[row]);
        assert!(!(t_c < point_c), "no dew point above the air: {t_c} {point_c}");
        assert!(!(100.0 < series.relative_percent[row]), "nothing over saturation");
    }
    let _ = (design_conditions(series), series.covered_hours(), series.warmest_and_coldest_month());
    // What was understood reads the same again.
    let mut reader = Reader::new(weather.understood.clone());
    let again = reader.push(bytes).and_then(|()| reader.finish());
    if let Ok(again) = again {
        assert_eq!(again.series.len(), rows, "as many rows again");
    }
});
