//! Stamps: forms, offsets, repeats, summer time, gaps, counts of days.

use crate::reading::{check, read, read_as, rows, says, try_read};
use dewrun_weather::{DateOrder, Stamps, Understanding, WeatherError};

const TWO: &[(&str, f64, f64)] = &[
    ("2024-06-13T00:00", 21.5, 70.0),
    ("2024-06-13T13:00", 20.25, 71.5),
];

#[track_caller]
fn stamps(one: &str, other: &str) {
    check(
        &format!("time;temp;rh\n{one};21.5;70\n{other};20.25;71.5\n"),
        TWO,
    );
}

#[test]
fn stamps_of_many_forms() {
    stamps("2024-06-13 00:00", "2024-06-13 13:00");
    stamps("2024-06-13T00:00:00Z", "2024-06-13T13:00:00Z");
    stamps(
        "2024-06-13T00:00:00.000+02:00",
        "2024-06-13T13:00:00.000+02:00",
    );
    stamps("13.06.2024 00:00", "13.06.2024 13:00");
    stamps("13.6.24 0:00", "13.6.24 13:00");
    stamps("06/13/2024 12:00 AM", "06/13/2024 1:00 PM");
    stamps("06/13/24 12:00:00 a.m.", "06/13/24 01:00:00 p.m.");
    stamps("13-Jun-2024 00:00", "13-Jun-2024 13:00");
    stamps("Jun 13, 2024 12:00 AM", "Jun 13, 2024 1:00 PM");
    stamps("00:00:00 13/Jun/2024", "13:00:00 13/Jun/2024");
    stamps("13 juin 2024 00:00", "13 juin 2024 13:00");
    stamps("Thu 13 Jun 2024 00:00", "Thu 13 Jun 2024 13:00");
    stamps("20240613 0000", "20240613 1300");
    stamps("202406130000", "202406131300");
    stamps("2024/06/13 00:00:00", "2024/06/13 13:00:00");
    stamps("13.06.2024 0.00", "13.06.2024 13.00");
    stamps("13/06/2024 0h00", "13/06/2024 13h00");
    stamps("2024-06-13 00:00 CEST", "2024-06-13 13:00 CEST");
    stamps("45456", "45456.541666666664");
    stamps("1718236800", "1718283600");
    stamps("1718236800000", "1718283600000");
}

#[test]
fn date_and_time_apart() {
    check(
        "date,time,temp,rh\n2024-06-13,00:00,21.5,70\n2024-06-13,13:00,20.25,71.5\n",
        TWO,
    );
    check(
        "time,date,temp,rh\n00:00:00,13.06.2024,21.5,70\n13:00:00,13.06.2024,20.25,71.5\n",
        TWO,
    );
    check(
        "Date,Hour,temp,rh\n06/13/2024,0,21.5,70\n06/13/2024,13,20.25,71.5\n",
        TWO,
    );
    check(
        "Date;Heure;Température;Humidité\n13/06/2024;00:00;21,5;70\n13/06/2024;13:00;20,25;71,5\n",
        TWO,
    );
    check(
        "Date,Time,AM/PM,temp,rh\n06/13/2024,12:00 AM,,21.5,70\n06/13/2024,1:00 PM,,20.25,71.5\n",
        TWO,
    );
    check(
        "YEAR,MO,DY,HR,T2M,RH2M\n2024,6,13,0,21.5,70\n2024,6,13,13,20.25,71.5\n",
        TWO,
    );
    check(
        "Year,DOY,Hour,Temp,RH\n2024,165,0,21.5,70\n2024,165,13,20.25,71.5\n",
        TWO,
    );
}

#[test]
fn midnight_of_either_kind() {
    check(
        "date,time,temp,rh\n2024-06-13,23:00,21,70\n2024-06-13,24:00,20,71\n2024-06-14,01:00,19,72\n",
        &[
            ("2024-06-13T23:00", 21.0, 70.0),
            ("2024-06-14T00:00", 20.0, 71.0),
            ("2024-06-14T01:00", 19.0, 72.0),
        ],
    );
}

#[test]
fn an_order_can_be_said() {
    let text = b"time,temp,rh\n03/04/2024 10:00,21.5,70\n03/04/2024 11:00,20,71\n";
    let open = read_as(text, Understanding::default());
    says(&open, "more than one order");
    assert_eq!(rows(&open)[0].0, "2024-04-03T10:00", "day first");
    let said = read_as(
        text,
        Understanding {
            date_order: Some(DateOrder::MonthDayYear),
            ..Understanding::default()
        },
    );
    assert_eq!(rows(&said)[0].0, "2024-03-04T10:00", "month first");
    let mixed = try_read(
        b"time,temp,rh\n13/04/2024 10:00,21.5,70\n04/14/2024 11:00,20,71\n",
        Understanding::default(),
    );
    assert!(
        matches!(mixed, Err(WeatherError::Dates { line: 3, .. })),
        "{mixed:?}"
    );
}

#[test]
fn repeats_and_rows_out_of_order() {
    let weather = check(
        "time,temp,rh\n2024-06-13 00:00,1,70\n2024-06-13 02:00,3,70\n2024-06-13 01:00,2,70\n2024-06-13 01:00,9,70\n2024-06-13 03:00,4,70\n",
        &[
            ("2024-06-13T00:00", 1.0, 70.0),
            ("2024-06-13T01:00", 2.0, 70.0),
            ("2024-06-13T02:00", 3.0, 70.0),
            ("2024-06-13T03:00", 4.0, 70.0),
        ],
    );
    assert_eq!(
        (
            weather.series.timing.repeated,
            weather.series.timing.backward
        ),
        (1, 1),
        "counted"
    );
    says(&weather, "put in the order of time");
    says(&weather, "the first of each is kept");
}

#[test]
fn a_file_written_backwards_is_turned() {
    let weather =
        read("time,temp,rh\n2024-06-13 02:00,3,70\n2024-06-13 01:00,2,70\n2024-06-13 00:00,1,70\n");
    assert_eq!(
        weather.series.temperature_c,
        [1.0, 2.0, 3.0],
        "oldest first"
    );
    assert_eq!(weather.series.timing.step_s, 3600, "by the hour");
}

#[test]
fn summer_time_is_taken_out() {
    // Readings every half hour across the end of summer time: 02:30 comes twice.
    let mut text = "time,temp,rh\n".to_owned();
    for clock in [
        "01:30", "02:00", "02:30", "02:00", "02:30", "03:00", "03:30",
    ] {
        text.push_str(&format!("2024-10-27 {clock},10,80\n"));
    }
    let weather = read(&text);
    says(&weather, "the clock goes back by an hour");
    assert_eq!(weather.series.len(), 7, "no row is lost");
    assert_eq!(weather.series.timing.irregular_steps, 0, "every half hour");
    assert_eq!(rows(&weather)[0].0, "2024-10-27T00:30", "standard time");
}

#[test]
fn offsets_that_change_are_brought_onto_one_clock() {
    let weather = check(
        "time,temp,rh\n2024-10-27T02:00:00+02:00,10,80\n2024-10-27T02:00:00+01:00,11,80\n2024-10-27T03:00:00+01:00,12,80\n",
        &[
            ("2024-10-27T02:00", 10.0, 80.0),
            ("2024-10-27T03:00", 11.0, 80.0),
            ("2024-10-27T04:00", 12.0, 80.0),
        ],
    );
    assert_eq!(
        weather.series.timing.utc_offset_h,
        Some(2.0),
        "the first one's"
    );
    says(&weather, "another offset from UTC");
}

#[test]
fn gaps_are_told_with_their_ends() {
    let weather = read(
        "time,temp,rh\n2024-06-13 00:00,1,70\n2024-06-13 00:10,1,70\n2024-06-13 00:20,1,70\n2024-06-13 02:20,1,70\n2024-06-13 02:30,1,70\n",
    );
    says(
        &weather,
        "1 gap without usable readings, the longest from 2024-06-13 00:20 to 2024-06-13 02:20 (120 min)",
    );
    assert_eq!(weather.series.timing.gaps.len(), 1, "one");
}

#[test]
fn what_stamps_mean_can_be_said() {
    let text = b"time,temp,rh\n2024-06-13 01:00,1,70\n2024-06-13 02:00,1,70\n";
    let end = read_as(
        text,
        Understanding {
            stamps: Some(Stamps::End),
            ..Understanding::default()
        },
    );
    assert_eq!(rows(&end)[0].0, "2024-06-13T01:00", "told as written");
    let start = read_as(
        text,
        Understanding {
            stamps: Some(Stamps::Start),
            ..Understanding::default()
        },
    );
    assert_eq!(
        start.series.start_s[0] - end.series.start_s[0],
        3600,
        "an hour apart"
    );
}

#[test]
fn a_single_row_and_days_without_times() {
    assert_eq!(
        read("time,temp,rh\n2024-06-13 00:00,1,70\n").series.len(),
        1,
        "one row"
    );
    let days = read("date,temp,rh\n2024-06-13,12,70\n2024-06-14,60,71\n2024-06-15,13,71\n");
    assert_eq!(
        days.series.timing.step_s, 86_400,
        "a whole number beside a date is no hour"
    );
}

#[test]
fn a_clock_that_was_set_anew_is_a_gap_and_no_typical_year() {
    let weather = read(
        "time,temp,rh\n2000-01-01 00:00,1,70\n2000-01-01 01:00,2,70\n2024-06-01 00:00,3,70\n2024-06-01 01:00,4,70\n2024-06-01 02:00,5,70\n",
    );
    assert!(!weather.series.timing.is_typical_year, "real years");
    assert_eq!(weather.series.timing.gaps.len(), 1, "one gap of 24 years");
}

#[test]
fn an_hour_ending_is_the_end_of_its_step() {
    let weather = read(
        "Date,Hour Ending,temp,rh\n06/13/2024,1,1,70\n06/13/2024,2,2,70\n06/13/2024,24,3,70\n",
    );
    assert_eq!(weather.series.timing.stamps, Stamps::End, "by its heading");
    assert_eq!(rows(&weather)[2].0, "2024-06-14T00:00", "midnight");
    assert_eq!(
        weather.series.start_s[0] % 86_400,
        0,
        "the first begins at midnight"
    );
}

#[test]
fn stamps_with_both_ends_of_a_step() {
    let weather = check(
        "time,temp,rh\n2024-06-01 00:00-01:00,1,70\n2024-06-01 01:00-02:00,2,70\n2024-06-01 02:00-03:00,3,70\n2024-06-01 23:00-24:00,4,70\n",
        &[
            ("2024-06-01T00:00", 1.0, 70.0),
            ("2024-06-01T01:00", 2.0, 70.0),
            ("2024-06-01T02:00", 3.0, 70.0),
            ("2024-06-01T23:00", 4.0, 70.0),
        ],
    );
    says(&weather, "two times stand in each stamp");
}
