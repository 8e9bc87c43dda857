//! The traps of real exports, each in a small file of our own.

use crate::reading::{MISSING, check, read, read_as, says};
use dewrun_weather::{ColumnChoice, Role, Understanding};

#[test]
fn a_mark_a_title_quoted_headings_and_a_pinned_sensor() {
    let weather = check(
        "\u{feff}\"Plot Title: cellar\"\r\n\"#\",\"Date Time, GMT-08:00\",\"Temp, °F (S/N: 0)\",\"RH, % (S/N: 0)\",\"DewPt, °F\",\"Stopped\"\r\n1,01/13/17 11:00:00 PM,50.0,80.0,44.0,Logged\r\n2,01/14/17 12:00:00 AM,50.0,100.000,50.0,\r\n3,01/14/17 01:00:00 AM,50.0,100.000,50.0,\r\n",
        &[
            ("2017-01-13T23:00", 10.0, 80.0),
            ("2017-01-14T00:00", 10.0, 100.0),
            ("2017-01-14T01:00", 10.0, 100.0),
        ],
    );
    assert_eq!(
        weather.series.timing.utc_offset_h,
        Some(-8.0),
        "from the heading"
    );
    assert_eq!(weather.event_rows, 0, "an event beside a reading");
    says(&weather, "at exactly 100 %");
}

#[test]
fn a_preamble_the_time_first_and_a_trailing_comma() {
    check(
        "\nDatabase Valid\n  Sensor:,Thermistor/RH\n  Data Starts:,00:00 21/Nov/2025\n  Data Ends:,00:30 21/Nov/2025\n\n  No. of Readings:,2\n\n\nTime, Temperature (C),Humidity (RH(%)),\n00:00:00 21/Nov/2025,18.5,40.5,\n00:30:00 21/Nov/2025,18.4,40.4,\n",
        &[
            ("2025-11-21T00:00", 18.5, 40.5),
            ("2025-11-21T00:30", 18.4, 40.4),
        ],
    );
}

#[test]
fn headings_that_are_read_downwards() {
    let weather = check(
        ",Time,1,2\r\nS/N,,000001,000001\r\nType,,TYPE-1,TYPE-1\r\nDescription,,Loft,Loft\r\nProperty,,Temperature,Humidity\r\n1,2021-07-26 14:26:00,20.87,53.4\r\n2,2021-07-26 14:56:00,20.88,53.2",
        &[
            ("2021-07-26T14:26", 20.87, 53.4),
            ("2021-07-26T14:56", 20.88, 53.2),
        ],
    );
    says(&weather, "line 5 names the columns");
}

#[test]
fn one_variable_a_file() {
    let weather = check(
        "\u{feff}Timestamp,P0025_[Space Temp 1][Space Temp 1] [P25] [Synchronized@1800](°C)\n01-Sep-21 12:30:00 am,20.6\n01-Sep-21 1:00:00 am,20.5\n",
        &[
            ("2021-09-01T00:30", 20.6, MISSING),
            ("2021-09-01T01:00", 20.5, MISSING),
        ],
    );
    says(
        &weather,
        "temperature and no humidity: no row is usable alone",
    );
    let partner = check(
        "Timestamp,P0026_[Space Humidity 1](%RH)\n01-Jun-22 12:00:00 am,45.2\n01-Jun-22 1:00:00 am,45.0\n",
        &[
            ("2022-06-01T00:00", MISSING, 45.2),
            ("2022-06-01T01:00", MISSING, 45.0),
        ],
    );
    says(&partner, "humidity and no temperature");
}

#[test]
fn receivers_and_a_gap() {
    let weather = read(
        "RECEIVER,TRANSMITTER,DATE,TEMPERATURE,HUMIDITY\n\"A house\",\"Loft\",\"2025-11-06 15:59\",23.06,54.91\n\"A house\",\"Loft\",\"2025-11-06 16:49\",21.38,55.14\n\"A house\",\"Loft\",\"2025-11-06 16:59\",21.32,55.25\n\"A house\",\"Loft\",\"2025-11-06 17:09\",21.32,55.25\n",
    );
    assert_eq!(
        (
            weather.series.usable(),
            weather.series.timing.step_s,
            weather.series.timing.longest_step_s
        ),
        (4, 600, 3000),
        "four rows"
    );
    says(&weather, "(50 min)");
}

#[test]
fn two_stations_and_two_pressures() {
    let text = "Datum;Tijd (UTC);Temperatuur;Vochtigheid;Luchtdruk;Neerslagsom;Windsnelheid;Rukwind;Luchtdruk_Zeeniveau;Globe Temperatuur;Station\n2022-09-01;00:00:00;18.8;65;101739;0.0;5.6;11.3;102005.0;30.1;s1\n2022-09-01;00:05:00;18.7;66;101731;0.0;5.5;12.9;101997.0;;s1\n2022-09-01;00:00:00;21.1;61;101800;0.0;1.0;2.0;101900.0;;s2\n";
    let weather = check(
        text,
        &[
            ("2022-09-01T00:00", 18.8, 65.0),
            ("2022-09-01T00:05", 18.7, 66.0),
        ],
    );
    assert_eq!(
        weather.series.pressure_pa,
        [101_739.0, 101_731.0],
        "the station's"
    );
    assert_eq!(
        weather.series.wind_m_s.as_deref(),
        Some(&[5.6, 5.5][..]),
        "no gusts"
    );
    let second = Understanding {
        station: Some("s2".to_owned()),
        ..Understanding::default()
    };
    assert_eq!(
        read_as(text.as_bytes(), second).series.temperature_c,
        [21.1],
        "the other station"
    );
}

#[test]
fn columns_without_names_that_are_known() {
    let row = |time: &str, t: &str| {
        format!(
            "92821 20200706 {time} 20200706 0700  2.623  -80.69   28.62    {t}     0.0 -99999 0    25.5 C 0    93 0 -99.000 -9999.0   990 0   1.57 0\n"
        )
    };
    let padding = " ".repeat(1700);
    let text = format!(
        "{}{padding}{}{}",
        row("1200", "24.9"),
        row("1305", "26.8"),
        row("1310", "26.9")
    );
    let weather = check(
        &text,
        &[
            ("2020-07-06T12:00", 24.9, 93.0),
            ("2020-07-06T13:05", 26.8, 93.0),
            ("2020-07-06T13:10", 26.9, 93.0),
        ],
    );
    assert_eq!(
        weather.series.timing.utc_offset_h,
        Some(0.0),
        "the first of two clocks"
    );
    assert!(
        weather.series.global_w_m2.is_none(),
        "nothing but fillers: {:?}",
        weather.series.global_w_m2
    );
    let surface = ColumnChoice {
        column: 13,
        role: Role::Temperature,
        unit: None,
    };
    let given = Understanding {
        columns: vec![surface],
        ..Understanding::default()
    };
    assert_eq!(
        read_as(text.as_bytes(), given).series.temperature_c,
        [25.5; 3],
        "another column said"
    );
}
