//! Random years of a project, and a year that is read and written.

use dewrun_document::{
    AirFrom, AirSource, AirStep, AirStepKind, DesignBy, DesignState, FileColumn, FileDates,
    FileDelimiter, FileForm, FileHumidity, FileMark, FileReading, FileStamps, Follows, Kept,
    MonthName, Over, Period, Setting, SpaceYear, WeatherReference, Weekday, limits, read,
    read_keeping_years, write,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::{BoxedStrategy, Just, Strategy, prop_oneof};
use proptest::sample::select;

use crate::DEMOS;
use crate::generator::{input, number, text};

pub(crate) fn file() -> impl Strategy<Value = WeatherReference> {
    let state = (
        select(vec![DesignBy::DewPoint, DesignBy::Temperature]),
        number(limits::EXCEEDED_PERCENT),
        number(limits::TEMPERATURE_C),
        number(limits::DEW_POINT_C),
    )
        .prop_map(
            |(by, exceeded_percent, outdoor_c, outdoor_dew_point_c)| DesignState {
                by,
                exceeded_percent,
                outdoor_c,
                outdoor_dew_point_c,
                month: MonthName::Aug,
            },
        );
    (
        text(),
        number(limits::ROWS),
        number(limits::STEP_S),
        vec(state, 0..3),
        option::of(reading()),
    )
        .prop_map(|(place, rows, step_s, design, reading)| WeatherReference {
            file: "gull-harbour.csv".to_owned(),
            place,
            rows,
            step_s,
            sha256: "0123456789abcdef".repeat(4),
            reading,
            design,
        })
}

/// What may be said of a file; half of it at a time is left out.
fn reading() -> BoxedStrategy<FileReading> {
    let form = select(vec![
        FileForm::Epw,
        FileForm::Tmy3,
        FileForm::Tm2,
        FileForm::Table,
    ]);
    let delimiter = select(vec![
        FileDelimiter::Comma,
        FileDelimiter::Semicolon,
        FileDelimiter::Tab,
        FileDelimiter::Bar,
        FileDelimiter::Spaces,
    ]);
    let mark = select(vec![FileMark::Point, FileMark::Comma]);
    let dates = select(vec![
        FileDates::DayMonthYear,
        FileDates::MonthDayYear,
        FileDates::YearMonthDay,
    ]);
    let stamps = select(vec![FileStamps::Start, FileStamps::End, FileStamps::Moment]);
    let leads = select(vec![FileHumidity::DewPoint, FileHumidity::RelativeHumidity]);
    let over = || select(vec![Over::Water, Over::Ice]);
    let column = (
        1_u16..500,
        select(vec!["temperature", "dew point", "other"]),
        text(),
    )
        .prop_map(|(number, holds, unit)| FileColumn {
            number: f64::from(number),
            holds: holds.to_owned(),
            unit: Some(unit),
        });
    let words = (
        option::of(form),
        option::of(delimiter),
        option::of(mark),
        option::of(dates),
        option::of(stamps),
        option::of(leads),
        option::of(over()),
        option::of(over()),
    );
    let numbers = (
        option::of((1_u32..1_000_000).prop_map(f64::from)),
        option::of(number(limits::UTC_OFFSET_H)),
        option::of(number(limits::ALTITUDE_M)),
        option::of(number(limits::ABSOLUTE_PA)),
    );
    (words, numbers, vec(column, 0..3), option::of(text()))
        .prop_map(|(words, numbers, columns, station)| FileReading {
            form: words.0,
            delimiter: words.1,
            decimal_mark: words.2,
            first_reading: numbers.0,
            date_order: words.3,
            columns,
            station,
            stamps: words.4,
            utc_offset_h: numbers.1,
            elevation_m: numbers.2,
            pressure_pa: numbers.3,
            dew_points_over: words.6,
            relative_humidities_over: words.7,
            leads: words.5,
        })
        .boxed()
}

pub(crate) fn period() -> impl Strategy<Value = Period> {
    let hour = || option::of((0_u8..24).prop_map(f64::from));
    let days = vec(select(vec![Weekday::Mon, Weekday::Sat, Weekday::Sun]), 0..3);
    let months = vec(select(vec![MonthName::Jan, MonthName::Dec]), 0..3);
    (hour(), hour(), option::of(days), option::of(months)).prop_map(
        |(from_h, until_h, days, months)| Period {
            from_h,
            until_h,
            days,
            months,
        },
    )
}

fn setting() -> impl Strategy<Value = Setting> {
    let temperature_c = option::of(input(limits::TEMPERATURE_C));
    let percent = option::of(input(limits::RELATIVE_PERCENT));
    (period(), temperature_c, percent).prop_map(|(when, temperature_c, percent)| Setting {
        when,
        temperature_c,
        percent,
    })
}

pub(crate) fn source() -> impl Strategy<Value = AirSource> {
    let from = prop_oneof![
        Just((AirFrom::Outdoors, None)),
        option::of(file()).prop_map(|file| (AirFrom::Room, file)),
        file().prop_map(|file| (AirFrom::Measured, Some(file))),
    ];
    (
        from,
        option::of(input(limits::TEMPERATURE_C)),
        option::of(input(limits::RELATIVE_PERCENT)),
        vec(setting(), 0..3),
        vec(step(), 0..3),
    )
        .prop_map(
            |((from, file), temperature_c, percent, settings, steps)| AirSource {
                from,
                temperature_c,
                percent,
                settings,
                file,
                steps,
            },
        )
}

fn step() -> impl Strategy<Value = AirStep> {
    let kind = select(vec![
        AirStepKind::Heated,
        AirStepKind::Cooled,
        AirStepKind::Mixed,
        AirStepKind::Humidified,
        AirStepKind::Recovered,
    ]);
    (
        kind,
        input(limits::TEMPERATURE_C),
        input(limits::RELATIVE_PERCENT),
        input(limits::SHARE),
        input(limits::SHARE),
        vec(period(), 0..3),
    )
        .prop_map(
            |(kind, temperature_c, percent, share, moisture_share, when)| AirStep {
                kind,
                temperature_c: (kind != AirStepKind::Humidified).then_some(temperature_c),
                percent: Some(percent),
                share: Some(share),
                moisture_share: Some(moisture_share),
                when,
            },
        )
}

pub(crate) fn space() -> impl Strategy<Value = SpaceYear> {
    let share = || option::of(input(limits::SHARE));
    let follows = prop_oneof![
        share().prop_map(|share| (Follows::Settings, share)),
        share().prop_map(|share| (Follows::Outdoors, share)),
        input(limits::SHARE).prop_map(|share| (Follows::Partly, Some(share))),
    ];
    let room = (
        option::of(input(limits::TEMPERATURE_C)),
        option::of(input(limits::RELATIVE_PERCENT)),
    );
    (
        follows,
        room,
        share(),
        share(),
        share(),
        vec(setting(), 0..3),
    )
        .prop_map(
            |(
                (follows, share),
                (room_c, room_percent),
                roof_absorbs,
                sky_share,
                wind_share,
                settings,
            )| SpaceYear {
                follows,
                share,
                room_c,
                room_percent,
                roof_absorbs,
                sky_share,
                wind_share,
                settings,
            },
        )
}

#[test]
fn a_year_is_read_and_written() {
    let weather = format!(
        r#""weather": {{"file": "gull-harbour.csv", "place": "Gull Harbour", "rows": 8760, "step_s": 3600,
        "sha256": "{}", "design": [{{"by": "dew_point", "exceeded_percent": 1, "outdoor_c": 27.1, "outdoor_dew_point_c": 23.4, "month": "jul"}}]}},
        "spaces": ["#,
        "0a".repeat(32)
    );
    let source = r#""source": {"from": "outdoors", "steps": [
        {"kind": "cooled", "temperature_c": {"value": 10, "origin": "typed"}, "share": {"value": 0.12, "origin": "typed"},
         "when": [{"months": ["jun", "jul", "aug"]}]}]},
        "fan_off": [{"from_h": 20, "until_h": 6}, {"days": ["sat", "sun"]}], "static_pa": "#;
    let year = r#""year": {"follows": "partly", "share": {"value": 0.7, "origin": "typed"}}, "wind_m_s": "#;
    let text = DEMOS[0]
        .1
        .replacen("\"spaces\": [", &weather, 1)
        .replacen("\"static_pa\": ", source, 1)
        .replacen("\"wind_m_s\": ", year, 1);
    let project = read(&text).expect("a year with what must be said of it");
    let file = project.weather.as_ref().map(Kept::<WeatherReference>::get);
    let design = file.expect("its file").expect("a file").design;
    assert_eq!(design[0].outdoor_dew_point_c, 23.4, "{design:?}");
    let duct = &project.runs[0].duct;
    let off = duct.fan_off.as_ref().map(Kept::<Vec<Period>>::get);
    let days = off.expect("it is off").expect("periods")[1].days.clone();
    assert_eq!(days, Some(vec![Weekday::Sat, Weekday::Sun]), "at weekends");
    let source = duct.source.as_ref().map(Kept::<AirSource>::get);
    let months = source.expect("its source").expect("a source").steps[0].when[0]
        .months
        .clone();
    let summer = vec![MonthName::Jun, MonthName::Jul, MonthName::Aug];
    assert_eq!(months, Some(summer), "in its season");
    let year = project.spaces[0].year.as_ref().map(Kept::<SpaceYear>::get);
    let follows = year.expect("a year").expect("a space's year").follows;
    assert_eq!(follows, Follows::Partly, "with its share");
    let unseen = read_keeping_years(&text);
    assert_eq!(unseen.as_ref(), Ok(&project), "looked at or not");
    let written = write(&project).and_then(|text| read(&text));
    assert_eq!(written, Ok(project), "as it was");
}
