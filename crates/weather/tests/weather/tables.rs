//! Logger exports: delimiters, marks, headings, units, placeholders, columns.

use crate::reading::{MISSING, check, read, read_as, rows, says, try_read};
use dewrun_weather::{ColumnChoice, Role, Understanding, Unit, WeatherError};

const TWO: &[(&str, f64, f64)] = &[
    ("2024-06-01T00:00", 21.5, 70.0),
    ("2024-06-01T01:00", 20.25, 71.5),
];

#[test]
fn every_delimiter_and_mark() {
    check(
        "time,temp,rh\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    check(
        "time;temp;rh\n2024-06-01 00:00;21,5;70\n2024-06-01 01:00;20,25;71,5\n",
        TWO,
    );
    check(
        "time\ttemp\trh\n2024-06-01 00:00\t21,5\t70\n2024-06-01 01:00\t20,25\t71,5\n",
        TWO,
    );
    check(
        "time|temp|rh\n2024-06-01 00:00|21.5|70\n2024-06-01 01:00|20.25|71.5\n",
        TWO,
    );
    check(
        "date time temp rh\n2024-06-01 00:00 21.5 70\n2024-06-01 01:00 20.25 71.5\n",
        TWO,
    );
    check(
        "time,temp,rh\n2024-06-01 00:00,\"21,5\",\"70,0\"\n2024-06-01 01:00,\"20,25\",\"71,5\"\n",
        TWO,
    );
    check(
        "\"time\",\"temp\",\"rh\"\n\"2024-06-01 00:00\",\"21.5\",\"70\"\n\"2024-06-01 01:00\",\"20.25\",\"71.5\"\n",
        TWO,
    );
}

#[test]
fn every_line_end() {
    for end in ["\n", "\r\n", "\r"] {
        let text = [
            "time,temp,rh",
            "2024-06-01 00:00,21.5,70",
            "2024-06-01 01:00,20.25,71.5",
            "",
        ]
        .join(end);
        check(&text, TWO);
    }
}

#[test]
fn utf_16_with_and_without_a_mark() {
    let text = "time\tTemp (°C)\tRH\n2024-06-01 00:00\t21.5\t70\n2024-06-01 01:00\t20.25\t71.5\n";
    let little: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let marked = [b"\xff\xfe".to_vec(), little.clone()].concat();
    for bytes in [little, marked] {
        let weather = read_as(&bytes, Understanding::default());
        assert_eq!(rows(&weather).len(), 2, "two rows");
        assert_eq!(
            weather.understood.encoding.map(|encoding| encoding.name()),
            Some("UTF-16 LE"),
            "told"
        );
    }
}

#[test]
fn headings_anywhere() {
    // A preamble with a table of its own, a blank line, then the readings.
    check(
        "Serial no;12\nInterval;60 min\nDate;2024-05-31\n\nZeitpunkt;Temperatur °C;rel. Feuchte %\n01.06.2024 00:00;21,5;70\n01.06.2024 01:00;20,25;71,5\n",
        TWO,
    );
    // Units below the names, kinds of mean below the units.
    check(
        "Timestamp,T,RH\n,Deg F,%\n,Avg,Avg\n2024-06-01 00:00,70.7,70\n2024-06-01 01:00,68.45,71.5\n",
        TWO,
    );
    // Names again in the middle.
    let again = check(
        "time,temp,rh\n2024-06-01 00:00,21.5,70\ntime,temp,rh\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    says(&again, "1 line after the first reading without a time");
    // A comment sign before the names.
    check(
        "# made somewhere\n# time,temp,rh\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    // One name fewer than columns: the first has none.
    check(
        "temp,rh\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
}

#[test]
fn without_headings_the_numbers_tell() {
    let weather = check(
        "2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    says(&weather, "column 2 is taken for temperature by its numbers");
    check(
        "1;2024-06-01 00:00;70;21,5\n2;2024-06-01 01:00;71,5;20,25\n",
        TWO,
    );
}

#[test]
fn units_by_name_and_by_number() {
    check(
        "time,Temp (K),RH\n2024-06-01 00:00,294.65,0.70\n2024-06-01 01:00,293.4,0.715\n",
        TWO,
    );
    check(
        "time,T [°F],RH\n2024-06-01 00:00,70.7 F,70 %\n2024-06-01 01:00,68.45 F,71.5 %\n",
        TWO,
    );
    let guessed = check(
        "time,Temp,Humidity\n2024-06-01 00:00,70.7,70\n2024-06-01 01:00,68.45,71.5\n",
        TWO,
    );
    says(&guessed, "shows °F");
    for (heading, values) in [
        ("Pressure (hPa)", "1013.25"),
        ("Pressure", "1013.25"),
        ("Baro in inHg", "29.921"),
        ("Pressure kPa", "101.325"),
        ("Pressure [mmHg]", "760"),
        ("Pressure (Pa)", "101325"),
        ("Pressure (Pa)", "1013.25"),
        ("Pressure (psi)", "14.696"),
        ("Pressure", "\"1,013.25\""),
    ] {
        let text = format!(
            "time,temp,rh,{heading}\n2024-06-01 00:00,21.5,70,{values}\n2024-06-01 01:00,20.25,71.5,{values}\n"
        );
        let weather = check(&text, TWO);
        let p_pa = weather.series.pressure_pa[0];
        assert!((p_pa - 101_325.0).abs() < 10.0, "{heading}: {p_pa}");
    }
}

#[test]
fn placeholders_are_missing_and_events_are_no_rows() {
    for word in [
        "", "-", "--", "----", "NaN", "\"NAN\"", "N/A", "#N/A", "null", "MM", "-9999", "-999.9",
        "9999", "32767", "*", "error", "Inf",
    ] {
        let text = format!(
            "time,temp,rh\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,{word},71\n2024-06-01 02:00,20,{word}\n"
        );
        let weather = read(&text);
        assert_eq!(
            (weather.series.len(), weather.series.usable()),
            (3, 1),
            "`{word}`"
        );
    }
    let weather = read(
        "time,temp,rh,note\n2024-06-01 00:00,21.5,70,\n2024-06-01 00:10,,,Host connected\n2024-06-01 01:00,20.25,71.5,\n",
    );
    assert_eq!(
        (weather.series.len(), weather.event_rows),
        (2, 1),
        "an event"
    );
    let weather = read("time,temp,rh\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,warm,71\n");
    says(&weather, "a text where a number should stand");
}

#[test]
fn a_file_that_begins_without_readings() {
    let weather = check(
        "time,temp,rh\n2024-06-01 00:00,,\n2024-06-01 01:00,,\n2024-06-01 02:00,20,70\n2024-06-01 03:00,21,71\n",
        &[
            ("2024-06-01T00:00", MISSING, MISSING),
            ("2024-06-01T01:00", MISSING, MISSING),
            ("2024-06-01T02:00", 20.0, 70.0),
            ("2024-06-01T03:00", 21.0, 71.0),
        ],
    );
    assert_eq!(weather.series.usable(), 2, "two rows hold readings");
}

#[test]
fn relative_humidity_around_saturation() {
    let weather = read(
        "time,temp,rh\n2024-06-01 00:00,20,101\n2024-06-01 01:00,20,104.1\n2024-06-01 02:00,20,120\n2024-06-01 03:00,20,0\n2024-06-01 04:00,20,50\n",
    );
    let series = &weather.series;
    assert_eq!(
        (weather.clipped, series.usable()),
        (2, 3),
        "two are clipped, two are no readings"
    );
    assert_eq!(series.dew_point_c[..2], [20.0, 20.0], "as warm as the air");
    says(&weather, "over 105 %: the sensor is at fault");
    says(&weather, "0 % or less");
}

#[test]
fn the_better_of_two_columns_can_be_said() {
    let text =
        "time,Temp 1,Temp 2,RH\n2024-06-01 00:00,21.5,15,70\n2024-06-01 01:00,20.25,16,71.5\n";
    let weather = check(text, TWO);
    says(&weather, "column 3 `Temp 2` holds temperature too");
    let columns = vec![ColumnChoice {
        column: 3,
        role: Role::Temperature,
        unit: None,
    }];
    let said = read_as(
        text.as_bytes(),
        Understanding {
            columns,
            ..Understanding::default()
        },
    );
    assert_eq!(said.series.temperature_c, [15.0, 16.0], "the other one");
    let columns = vec![ColumnChoice {
        column: 9,
        role: Role::Temperature,
        unit: Some(Unit::Celsius),
    }];
    let none = try_read(
        text.as_bytes(),
        Understanding {
            columns,
            ..Understanding::default()
        },
    );
    assert_eq!(
        none.err(),
        Some(WeatherError::NoColumn {
            column: 9,
            count: 4
        }),
        "there are four"
    );
}

/// Lines above the first reading have a say in where the date stands; they are left out once that reading is said.
#[test]
fn a_first_reading_that_was_found_is_found_again() {
    let text = "2025-01-01,5\n2025-01-02,6\nTime,Temp (C),RH (%),a,b\n\
        2025-01-05 01:00,1.0,80,1,1\n2025-01-05 02:00,1.1,80,1,1\n2025-01-05 03:00,1.2,80,1,1\n\
        x,y,2025-02-01 01:00,20.1,50\nx,y,2025-02-01 02:00,20.2,50\n\
        x,y,2025-02-01 03:00,20.3,50\nx,y,2025-02-01 04:00,20.4,50\n";
    let first = read_as(text.as_bytes(), Understanding::default());
    assert_eq!(first.series.temperature_c, [1.0, 1.1, 1.2]);
    let again = read_as(text.as_bytes(), first.understood.clone());
    assert_eq!(again.series, first.series);
}

#[test]
fn what_was_understood_reads_the_same_again() {
    for text in [
        "time,Temp °F,rh,p\n03/04/2024 01:00 PM,70.7,70,1013\n03/04/2024 02:00 PM,68.45,71.5,1013\n",
        "site;Datum;Uhrzeit;Temp;Feuchte\nA;01.06.2024;00:00;21,5;70\nB;01.06.2024;00:00;1,5;80\nA;01.06.2024;01:00;20,25;71,5\n",
        "Year,Month,Day,Hour,Temperature,Relative Humidity\n2024,6,1,0,21.5,70\n2024,6,1,1,20.25,71.5\n",
    ] {
        let first = read(text);
        let again = read_as(text.as_bytes(), first.understood.clone());
        assert_eq!(first.series, again.series, "{text}");
    }
}

#[test]
fn humidity_by_other_quantities() {
    // ASHRAE Fundamentals 2017, ch. 1, table 2: 0.014758 kg/kg saturates air at 20 °C and 101 325 Pa.
    let ratio = read(
        "time,temp (C),mixing ratio (g/kg)\n2024-06-01 00:00,25,14.758\n2024-06-01 01:00,25,14.758\n",
    );
    assert!(
        (ratio.series.dew_point_c[0] - 20.0).abs() < 0.02,
        "{}",
        ratio.series.dew_point_c[0]
    );
    // CoolProp 8: 25 °C dry and 17.94 °C wet bulb at 101 325 Pa hold 0.010 kg/kg, dew point 13.98 °C.
    let wet = read(
        "time,dry bulb (C),wet bulb (C)\n2024-06-01 00:00,25,17.94\n2024-06-01 01:00,25,17.94\n",
    );
    assert!(
        (wet.series.dew_point_c[0] - 13.98).abs() < 0.03,
        "{}",
        wet.series.dew_point_c[0]
    );
    let dew =
        read("time,temp (C),Taupunkt\n2024-06-01 00:00,25,13.98\n2024-06-01 01:00,25,13.98\n");
    assert!(
        (dew.series.relative_percent[0] - 50.37).abs() < 0.05,
        "{}",
        dew.series.relative_percent[0]
    );
}

#[test]
fn pressures_at_sea_level_are_brought_up() {
    let text = "Elevation (m): 1000\ntime,temp,rh,sea level pressure (hPa)\n2024-06-01 00:00,21.5,70,1013.25\n2024-06-01 01:00,20.25,71.5,1013.25\n";
    let weather = check(text, TWO);
    // ISO 2533: 89 874.6 Pa at 1000 m.
    assert!(
        (weather.series.pressure_pa[0] - 89_874.6).abs() < 1.0,
        "{}",
        weather.series.pressure_pa[0]
    );
    says(&weather, "those at sea level");
}

#[test]
fn columns_that_only_a_unit_names() {
    check(
        "Zeit;Kanal 1 [°C];Kanal 2 [%rF]\n01.06.2024 00:00;21,5;70\n01.06.2024 01:00;20,25;71,5\n",
        TWO,
    );
    check(
        "No,Time,Celsius(°C),Humidity(%rh),Dew Point(°C)\n1,2024-06-01 00:00:00,21.5,70,15.8\n2,2024-06-01 01:00:00,20.25,71.5,15\n",
        TWO,
    );
}

#[test]
fn commas_for_cells_and_digits_alike_are_refused() {
    let text = b"time,temp,rh\n2024-06-01 00:00,21,5,70,0\n2024-06-01 01:00,20,25,71,5\n";
    let refused = try_read(text, Understanding::default());
    let expected = WeatherError::CommasInNumbers {
        line: 2,
        cells: 5,
        names: 3,
    };
    assert_eq!(refused.err(), Some(expected), "not 21 °C and 5 %");
}

#[test]
fn a_unit_that_the_numbers_deny_is_told() {
    let weather = read("time,temp (C),rh\n2024-06-01 00:00,68,70\n2024-06-01 01:00,69,71\n");
    says(&weather, "looks like °F");
}

#[test]
fn rooms_are_not_mixed_and_row_numbers_are_no_rooms() {
    let text = "Room,time,temp,rh\nloft,2024-06-01 00:00,21.5,70\ncellar,2024-06-01 00:01,12,90\nloft,2024-06-01 01:00,20.25,71.5\ncellar,2024-06-01 01:01,12,90\n";
    let weather = check(text, TWO);
    says(&weather, "2 stations: loft, cellar; `loft` is read");
    let given = Understanding {
        station: Some("cellar".to_owned()),
        ..Understanding::default()
    };
    assert_eq!(
        read_as(text.as_bytes(), given).series.temperature_c,
        [12.0, 12.0],
        "the other"
    );
    let numbered = "Sensor,time,temp,rh\n1,2024-06-01 00:00,21.5,70\n2,2024-06-01 01:00,20.25,71.5\n3,2024-06-01 02:00,20,71\n";
    assert_eq!(read(numbered).series.len(), 3, "a number for each row");
}

#[test]
fn headings_of_other_tongues_and_short_ones() {
    check(
        "Zaman,Sıcaklık (°C),Nem (%)\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    check(
        "время;температура;влажность\n01.06.2024 00:00;21,5;70\n01.06.2024 01:00;20,25;71,5\n",
        TWO,
    );
    check(
        "时间,温度(°C),湿度(%)\n2024-06-01 00:00,21.5,70\n2024-06-01 01:00,20.25,71.5\n",
        TWO,
    );
    check(
        "Index,Date,Time,T1(C),RH1(%)\n1,2024-06-01,00:00:00,21.5,70\n2,2024-06-01,01:00:00,20.25,71.5\n",
        TWO,
    );
    check(
        "station,valid,tmpf,dwpf,relh\nA,2024-06-01 00:00,70.7,M,70\nA,2024-06-01 01:00,68.45,M,71.5\n",
        TWO,
    );
    check(
        "Date,Time,Temp(F),Humi(%)\n6/1/2024,12:00:00 AM,70.7,70\n6/1/2024,1:00:00 AM,68.45,71.5\n"
            .replace("6/1", "06/01")
            .as_str(),
        &[
            ("2024-06-01T00:00", 21.5, 70.0),
            ("2024-06-01T01:00", 20.25, 71.5),
        ],
    );
    check(
        "2024-06-01 00:00\t21.5\t70\n2024-06-01 01:00\t20.25\t71.5\n",
        TWO,
    );
}
