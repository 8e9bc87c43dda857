//! Reading a text, and saying what came of it.

use dewrun_weather::{Reader, Understanding, Weather, WeatherError};

/// What a text holds.
pub(crate) fn try_read(bytes: &[u8], given: Understanding) -> Result<Weather, WeatherError> {
    let mut reader = Reader::new(given);
    reader.push(bytes)?;
    reader.finish()
}

/// What a text holds that is read.
#[track_caller]
pub(crate) fn read(text: &str) -> Weather {
    read_as(text.as_bytes(), Understanding::default())
}

/// What bytes hold that are read as they are said to be.
#[track_caller]
pub(crate) fn read_as(bytes: &[u8], given: Understanding) -> Weather {
    match try_read(bytes, given) {
        Ok(weather) => weather,
        Err(error) => panic!("{error}\n{}", String::from_utf8_lossy(bytes)),
    }
}

/// What stands for a reading that is missing: no air is that cold or that dry.
pub(crate) const MISSING: f64 = -1000.0;

/// Stamps, temperatures and relative humidities of the rows.
pub(crate) fn rows(weather: &Weather) -> Vec<(String, f64, f64)> {
    let series = &weather.series;
    let hundredths = |value: f64| {
        if value.is_nan() {
            MISSING
        } else {
            (value * 100.0).round() / 100.0
        }
    };
    (0..series.len())
        .map(|row| {
            let stamp = series
                .stamp(row)
                .map_or_else(String::new, |stamp| stamp.to_string());
            (
                stamp,
                hundredths(series.temperature_c[row]),
                hundredths(series.relative_percent[row]),
            )
        })
        .collect()
}

/// A text has these rows.
#[track_caller]
pub(crate) fn check(text: &str, expected: &[(&str, f64, f64)]) -> Weather {
    let weather = read(text);
    let found = rows(&weather);
    let expected: Vec<(String, f64, f64)> = expected
        .iter()
        .map(|(stamp, t, rh)| ((*stamp).to_owned(), *t, *rh))
        .collect();
    assert_eq!(found, expected, "{text}\n{:#?}", weather.notes);
    weather
}

/// One of the notes holds these words.
#[track_caller]
pub(crate) fn says(weather: &Weather, words: &str) {
    let said = weather
        .notes
        .iter()
        .any(|note| note.sentence.contains(words));
    assert!(said, "`{words}` in {:#?}", weather.notes);
}
