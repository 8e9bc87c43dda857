//! Tables of weather services and reanalyses, each rebuilt with invented numbers.

use crate::reading::{MISSING, check, read, says};

#[test]
fn names_above_values_above_names() {
    let weather = check(
        "Source,Location ID,City,State,Country,Latitude,Longitude,Time Zone,Elevation,Local Time Zone\n\
         Model,1,Testville,-,-,45.5,-120.25,-8,320,-8\n\
         Year,Month,Day,Hour,Minute,DHI,DNI,GHI,Dew Point,Temperature,Pressure,Relative Humidity,Wind Speed,,\n\
         2019,1,1,0,30,0,0,0,1.1,3.0,975,87,2.5,,\n\
         2019,1,1,1,30,0,0,0,1.0,2.5,975,90,2.4,,\n",
        &[
            ("2019-01-01T00:30", 3.0, 87.0),
            ("2019-01-01T01:30", 2.5, 90.0),
        ],
    );
    let place = &weather.place;
    assert_eq!(
        (place.latitude_deg, place.longitude_deg, place.elevation_m),
        (Some(45.5), Some(-120.25), Some(320.0)),
        "where"
    );
    assert_eq!(place.name.as_deref(), Some("Testville"), "its name");
    assert_eq!(weather.series.timing.utc_offset_h, Some(-8.0), "its clock");
    assert_eq!(
        weather.series.pressure_pa[0], 97_500.0,
        "hectopascals by their size"
    );
    assert_eq!(
        weather.series.wind_m_s.as_deref(),
        Some(&[2.5, 2.4][..]),
        "wind"
    );
}

#[test]
fn a_header_between_marks() {
    let weather = check(
        "-BEGIN HEADER-\nHourly data\nLocation: Latitude  45.25   Longitude 8.5 \nElevation: average over the region = 247.52 meters\nMissing data: -999\n-END HEADER-\n\
         YEAR,MO,DY,HR,T2M,T2MDEW,RH2M,PS,WS10M\n2024,1,1,0,3.0,1.1,87.0,97.5,2.5\n2024,1,1,1,-999,1.0,90.0,97.5,2.4\n2024,1,1,2,2.5,1.0,90.0,97.5,2.4\n",
        &[
            ("2024-01-01T00:00", 3.0, 87.0),
            ("2024-01-01T01:00", MISSING, 90.0),
            ("2024-01-01T02:00", 2.5, 90.0),
        ],
    );
    assert_eq!(
        weather.series.pressure_pa[0], 97_500.0,
        "kilopascals by their size"
    );
}

#[test]
fn a_place_then_a_blank_line_then_readings() {
    let weather = check(
        "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n52.52,13.42,38.0,7200,Europe/Somewhere,CEST\n\n\
         time,temperature_2m (°C),relative_humidity_2m (%),dew_point_2m (°C),surface_pressure (hPa),pressure_msl (hPa)\n\
         2024-06-01T00:00,21.5,70,15.8,1008.9,1013.2\n2024-06-01T01:00,20.25,71.5,15.0,1008.8,1013.1\n",
        &[
            ("2024-06-01T00:00", 21.5, 70.0),
            ("2024-06-01T01:00", 20.25, 71.5),
        ],
    );
    assert_eq!(
        weather.series.timing.utc_offset_h,
        Some(2.0),
        "from seconds"
    );
    assert!(
        (weather.series.pressure_pa[0] - 100_890.0).abs() < 1.0e-6,
        "the station's"
    );
    assert_eq!(weather.place.elevation_m, Some(38.0), "where");
}

#[test]
fn semicolons_and_ten_digits() {
    check(
        "STATIONS_ID;MESS_DATUM;QN_9;TT_TU;RF_TU;eor\n      44;2024060100;    3;  21.5;  70.0;eor\n      44;2024060101;    3;  20.25;  71.5;eor\n      44;2024060102;    3;  -999;  -999;eor\n",
        &[
            ("2024-06-01T00:00", 21.5, 70.0),
            ("2024-06-01T01:00", 20.25, 71.5),
            ("2024-06-01T02:00", MISSING, MISSING),
        ],
    );
}

/// Four months of hours with the sun around one hour of the clock, at a longitude of 0.
fn sun_around(noon: i64) -> String {
    let mut text = "Latitude: 50\nLongitude: 0\ntime (UTC),temp,rh,global radiation\n".to_owned();
    for hour in 0..120 * 24_i64 {
        let stamp = dewrun_weather::Civil::of((19_723 * 24 + hour) * 3600).expect("a date");
        // An hour stands for its middle.
        let sun = (600 - 50 * (2 * (hour % 24) + 1 - 2 * noon).abs()).max(0);
        text.push_str(&format!("{stamp},20,50,{sun}\n"));
    }
    text
}

#[test]
fn a_clock_that_the_sun_denies_is_told() {
    says(&read(&sun_around(14)), "they look like UTC+2.0");
    let right = read(&sun_around(12));
    let told = right
        .notes
        .iter()
        .any(|note| note.sentence.contains("sun stands"));
    assert!(!told, "noon at noon: {:#?}", right.notes);
}
