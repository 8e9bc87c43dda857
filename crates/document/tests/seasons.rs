//! What a project says of its year, what stands in where it says nothing, and what the invented weather makes of it.

use dewrun_document::{
    AirFrom, AirSource, AirStep, AirStepKind, Follows, Input, Kept, Origin, Period, Project,
    Setting, SpaceYear, read, to_installation, to_run, to_season, weather_reference,
};
use dewrun_season::told::Moment;
use dewrun_season::{Harder, Hourly, hours_of, moment, outdoors, run_at, year_of};
use dewrun_weather::{Reader, Understanding, Weather};

const DEMO: &str = include_str!("../../../demo/make-up-air.json");
const HARBOUR: &[u8] = include_bytes!("../../../demo/gull-harbour.csv");
/// Hour of the year that begins at 13:00 on 15 July: 195 whole days and 13 hours; its row reads 26.5 °C, dew point 20.5 °C, wind 3.1 m/s, 941 W/m2, sky 369 W/m2.
const JULY: usize = 195 * 24 + 13;

fn harbour() -> Weather {
    let mut reader = Reader::new(Understanding::default());
    reader.push(HARBOUR).expect("it is a table");
    reader.finish().expect("it is weather")
}

fn demo() -> Project {
    read(DEMO).expect("the example opens")
}

fn hourly(project: &Project) -> Hourly {
    let (run, _) = to_run(project, 0).expect("a run");
    let year = to_season(project, 0).expect("a year");
    hours_of(&run, &year.season, &harbour().series, None).expect("hours")
}

fn source(from: AirFrom, steps: Vec<AirStep>) -> AirSource {
    AirSource {
        from,
        temperature_c: None,
        percent: None,
        settings: Vec::new(),
        file: None,
        steps,
    }
}

#[test]
fn a_project_that_says_nothing_has_outdoor_air_and_spaces_as_entered() {
    let project = demo();
    let year = to_season(&project, 0).expect("a year");
    assert_eq!(year.said.len(), 1 + project.spaces.len(), "{:?}", year.said);
    let hourly = hourly(&project);
    assert_eq!(
        (hourly.hours.len(), hourly.left_out),
        (8760, 0),
        "every row"
    );
    let hour = hourly.hours.hour(JULY).expect("an hour in July");
    assert_eq!(hour.air_c, 26.5, "the air of its row");
    let around = hourly.hours.around(JULY, 0).expect("a space");
    assert_eq!(around.air_c, project.spaces[0].temperature_c.value);
    assert_eq!(hourly.month(JULY), Some(7));
    let at = moment(hourly.start_s[JULY]).expect("a moment");
    assert_eq!((at.month, at.hour), (7, 13), "{at:?}");
}

/// By hand, 30 L/min at the intake, 26.5 °C, dew point 20.5 °C where vapour saturates at 2412 Pa (ASHRAE Handbook Fundamentals 2017, ch. 1, table 3), 101 229 Pa at 8 m (eq. 3):
/// dry air has 98 817 Pa of it, so 0.0005 m3/s · 98 817 / (287.04 · 299.65) = 5.744e-4 kg/s.
#[test]
fn the_flow_is_counted_where_the_run_says() {
    let mut project = demo();
    let flow = &mut project.runs[0].flow;
    flow.at = dewrun_document::FlowAt::Intake;
    flow.volume_l_min = Input::typed(30.0);
    let hourly = hourly(&project);
    let hour = hourly.hours.hour(JULY).expect("an hour in July");
    assert!(
        (hour.dry_air_kg_s / 5.744e-4 - 1.0).abs() < 2e-3,
        "{hour:?}"
    );
}

/// By hand for 13:00 on 15 July: the roof is at 26.5 + 0.8 · 941/17 − 4 = 66.78 °C, and 0.7 of the way from 20 °C is 52.75 °C.
#[test]
fn a_space_follows_what_is_said_of_it() {
    let mut project = demo();
    let partly = SpaceYear {
        share: Some(Input::typed(0.7)),
        roof_absorbs: Some(Input::typed(0.8)),
        ..SpaceYear::following(Follows::Partly)
    };
    let night = Setting {
        when: Period {
            from_h: Some(20.0),
            until_h: Some(6.0),
            ..Period::default()
        },
        temperature_c: Some(Input::typed(12.0)),
        percent: None,
    };
    let set = SpaceYear {
        settings: vec![night],
        ..SpaceYear::following(Follows::Settings)
    };
    let open = SpaceYear {
        wind_share: Some(Input::typed(0.5)),
        ..SpaceYear::following(Follows::Outdoors)
    };
    for (space, year) in project.spaces.iter_mut().zip([partly, set, open]) {
        space.year = Some(Kept::<SpaceYear>::of(&year).expect("within limits"));
        space.wind_m_s = Input::typed(0.0);
    }
    let hourly = hourly(&project);
    let at = |hour, space| *hourly.hours.around(hour, space).expect("a space");
    assert!(
        (at(JULY, 0).air_c - 52.75).abs() < 0.01,
        "{:?}",
        at(JULY, 0)
    );
    let entered = project.spaces[1].temperature_c.value;
    assert_eq!((at(JULY, 1).air_c, at(JULY + 9, 1).air_c), (entered, 12.0));
    assert_eq!(at(JULY, 2).wind_m_s, 0.5 * 3.1, "half the wind");
    // The sky of 369 W/m2 is at (369 / 5.670374e-8)^(1/4) = 284.02 K, or 10.87 °C; half of it and half of 299.65 K is 292.17 K.
    assert!(
        (at(JULY, 2).radiant_c - 19.02).abs() < 0.05,
        "{:?}",
        at(JULY, 2)
    );
    let assumed = to_season(&project, 0).expect("a year").assumed;
    let rows: Vec<&str> = assumed.iter().map(|one| one.row).collect();
    assert_eq!(
        rows,
        [
            "year-room-humidity",
            "year-room-temperature",
            "year-sky-share"
        ],
        "what stands in, with its span"
    );
}

#[test]
fn a_loft_of_the_library_follows_outdoors_and_a_corridor_does_not() {
    let mut project = demo();
    let rows = [
        ("loft-ventilated", -8.0),
        ("corridor", 20.0),
        ("roof-fog", 8.0),
    ];
    for (space, (row, value)) in project.spaces.iter_mut().zip(rows) {
        space.temperature_c = Input {
            value,
            origin: Origin::Assumed {
                row: row.to_owned(),
                low: value,
                high: value,
            },
        };
        space.humidity = dewrun_document::Humidity::DewPoint(Input::typed(value - 5.0));
    }
    let hourly = hourly(&project);
    let air_c = |space| hourly.hours.around(JULY, space).expect("a space").air_c;
    assert!(
        (air_c(0) - 26.5).abs() < 1e-9,
        "a ventilated loft is as warm as outdoors"
    );
    assert!((air_c(1) - 20.0).abs() < 1e-9, "a corridor is as entered");
    assert!((air_c(2) - 26.5).abs() < 1e-9, "a roof lies outdoors");
}

/// At night the duct's air stands at what surrounds the first leg.
#[test]
fn a_fan_that_is_off_leaves_the_air_standing() {
    let mut project = demo();
    let off = vec![Period {
        from_h: Some(20.0),
        until_h: Some(6.0),
        ..Period::default()
    }];
    project.runs[0].duct.fan_off = Some(Kept::<Vec<Period>>::of(&off).expect("within limits"));
    let hourly = hourly(&project);
    let (run, _) = to_run(&project, 0).expect("a run");
    let space = run.intake[0].space;
    for (hour, is_off) in [
        (JULY, false),
        (JULY + 7, true),
        (JULY + 16, true),
        (JULY + 17, false),
    ] {
        assert_eq!(!hourly.hours.duct_runs(hour), is_off, "{hour}");
        let air = hourly.hours.hour(hour).expect("an hour").air_c;
        let around = hourly.hours.around(hour, space).expect("a space").air_c;
        assert_eq!(air == around, is_off, "{hour}: {air} among {around}");
    }
}

#[test]
fn a_coil_and_a_room_are_where_the_air_comes_from() {
    let mut project = demo();
    let coil = AirStep {
        kind: AirStepKind::Cooled,
        temperature_c: Some(Input::typed(10.0)),
        percent: None,
        share: Some(Input::typed(0.0)),
        moisture_share: None,
        when: Vec::new(),
    };
    let keep = |source: &AirSource| Some(Kept::<AirSource>::of(source).expect("within limits"));
    project.runs[0].duct.source = keep(&source(AirFrom::Outdoors, vec![coil]));
    let air = |project: &Project| *hourly(project).hours.hour(JULY).expect("an hour");
    assert!(
        (air(&project).air_c - 10.0).abs() < 1e-6,
        "nothing passes it by"
    );
    project.runs[0].duct.source = keep(&source(AirFrom::Room, Vec::new()));
    let (run, _) = to_run(&project, 0).expect("a run");
    let entered = dewrun_run::air::MoistAir::new(run.duct_air, run.pressure).expect("an air");
    let entered_c = entered.value.temperature().to_celsius();
    assert!((air(&project).air_c - entered_c).abs() < 1e-9, "as entered");
}

#[test]
fn what_was_measured_in_the_duct_needs_its_file() {
    let mut project = demo();
    let weather = harbour();
    let measured = AirSource {
        file: Some(weather_reference("duct.csv", &weather)),
        ..source(AirFrom::Measured, Vec::new())
    };
    project.runs[0].duct.source = Some(Kept::<AirSource>::of(&measured).expect("within limits"));
    let (run, _) = to_run(&project, 0).expect("a run");
    let year = to_season(&project, 0).expect("a year");
    assert_eq!(
        year.measured.map(|file| file.file),
        Some("duct.csv".to_owned())
    );
    let none = hours_of(&run, &year.season, &weather.series, None);
    assert!(
        none.is_err_and(|error| error.to_string().contains("open it too")),
        "said"
    );
    let hours = hours_of(&run, &year.season, &weather.series, Some(&weather.series));
    assert_eq!(hours.expect("hours").hours.len(), 8760, "row by row");
}

/// Water in is water out, drained and left on the walls; harder weather is no drier; design states are those of the file.
#[test]
fn a_year_closes_and_harder_years_are_wetter() {
    let project = demo();
    let (run, _) = to_run(&project, 0).expect("a run");
    let (installation, _) = to_installation(&project, 0).expect("installed");
    let season = to_season(&project, 0).expect("a year").season;
    let weather = harbour();
    let year = |harder| {
        let hourly = dewrun_season::harder_hours_of(&run, &season, &weather.series, None, harder);
        year_of(&run, &installation, hourly.expect("hours")).expect("a year")
    };
    let usual = year(Harder::AsItIs);
    assert!(
        usual.balance.off_kg.abs() < 1e-9 * usual.sum.condensed_kg.max(1.0),
        "{usual:?}"
    );
    assert!(0.0 < usual.sum.wet_hours, "{:?}", usual.sum);
    let humid = year(Harder::MoreHumid);
    assert!(
        usual.sum.condensed_kg < humid.sum.condensed_kg,
        "{:?}",
        humid.sum
    );
    let months: f64 = usual.months.iter().map(|month| month.condensed_kg).sum();
    assert!(
        (months / usual.sum.condensed_kg - 1.0).abs() < 1e-12,
        "months are the year"
    );
    let reference = weather_reference("gull-harbour.csv", &weather);
    let [first, ..] = reference.design.as_slice() else {
        panic!("a whole year has design states");
    };
    let humid = dewrun_weather::design_conditions(&weather.series)
        .expect("a year")
        .humid[0];
    assert!(
        (first.outdoor_dew_point_c - humid.dew_point.to_celsius()).abs() < 0.006,
        "{first:?} and {humid:?}"
    );
    let state = dewrun_season::DesignState::from(first);
    let (noon, outside) = state.outdoors(101_325.0);
    let then = run_at(&run, &season, noon, &outside, None);
    let wet = dewrun_run::evaluate(&then).expect("an answer").value;
    assert!(
        wet.intake.first_wet().is_some(),
        "the most humid hours are wet"
    );
}

#[test]
fn a_steady_run_of_an_hour_has_the_air_of_that_hour() {
    let project = demo();
    let (run, _) = to_run(&project, 0).expect("a run");
    let season = to_season(&project, 0).expect("a year").season;
    let series = harbour().series;
    let outside = outdoors(&series, JULY).expect("a row");
    let at: Moment = moment(series.start_s[JULY]).expect("a moment");
    let then = run_at(&run, &season, at, &outside, None);
    let air = dewrun_run::air::MoistAir::new(then.duct_air, then.pressure)
        .expect("an air")
        .value;
    let dew_point = air.dew_point().expect("it is humid").to_celsius();
    assert!(
        (dew_point - 20.5).abs() < 0.01,
        "dew point of its row: {dew_point}"
    );
}
