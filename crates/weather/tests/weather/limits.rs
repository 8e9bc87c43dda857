//! What is refused, with a sentence; what is large is bounded.

use crate::reading::try_read;
use dewrun_weather::{Reader, Understanding, WeatherError};

#[track_caller]
fn refused(bytes: &[u8], sentence: &str) {
    match try_read(bytes, Understanding::default()) {
        Err(error) => assert_eq!(
            error.to_string(),
            sentence,
            "{}",
            String::from_utf8_lossy(bytes)
        ),
        Ok(weather) => panic!("read as {:?}", weather.understood),
    }
}

#[test]
fn what_is_no_weather_file_is_refused_with_a_sentence() {
    refused(b"", "the file is empty");
    refused(
        b"\n\n",
        "no line with a date, a time and a number was found in the first 2 lines: a weather or logger file has one reading a line",
    );
    refused(
        b"\x1f\x8b\x08 and so on",
        "this is a gzip archive, not a text file: unpack it and open the file inside",
    );
    refused(
        &[1, 0, 2, 3, 0, 0, 7, 0, 0, 0, 9, 9, 0, 1],
        "this is a file of bytes that are no letters, not a text file: export the readings as CSV and open that",
    );
    refused(
        b"time,battery (V)\n2024-06-01 00:00,3.5\n",
        "no column of temperature or humidity was found among: time, battery (V)",
    );
    refused(
        b"LOCATION,A,-,-,-,-,0,0,0,0\n",
        "no line with a date, a time and a number was found in the first 1 lines: a weather or logger file has one reading a line",
    );
}

#[test]
fn a_line_without_end_is_refused_before_memory_is_full() {
    let mut reader = Reader::new(Understanding::default());
    let piece = vec![b'7'; 1 << 16];
    let refused = (0..100).find_map(|_| reader.push(&piece).err());
    assert!(
        matches!(refused, Some(WeatherError::LineTooLong { line: 1, .. })),
        "{refused:?}"
    );
}

#[test]
fn a_station_that_is_not_there_is_named_with_those_that_are() {
    let text = b"station,time,temp,rh\nA,2024-06-01 00:00,21.5,70\nB,2024-06-01 00:00,20,71\n";
    let given = Understanding {
        station: Some("C".to_owned()),
        ..Understanding::default()
    };
    let refused = try_read(text, given)
        .map(|_| ())
        .map_err(|error| error.to_string());
    assert_eq!(
        refused,
        Err("there is no station `C`, the file has: A, B".to_owned()),
        "named"
    );
}
