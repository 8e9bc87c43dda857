//! The invented weather file through the almanac, as its worker asks for it.

use dewrun_almanac::{Almanac, Place, Told};
use dewrun_document::{read, to_run};
use dewrun_moist_air::Over;
use dewrun_run::air::Pair;

const PROJECT: &str = include_str!("../../../demo/make-up-air.json");
const GULL_HARBOUR: &[u8] = include_bytes!("../../../demo/gull-harbour.csv");

/// SI and a point; 1392 px at the usual size of text.
const NUMBERS: [f64; 4] = [0.0, 0.0, 1392.0, 1.0];

fn with_file() -> Almanac {
    let mut almanac = Almanac::default();
    almanac
        .begin_reading(("", 0), Place::Weather, None)
        .expect("nothing is said");
    for piece in GULL_HARBOUR.chunks(7001) {
        almanac.take_piece(piece).expect("a piece of a table");
    }
    almanac.end_reading("gull-harbour.csv").expect("a table");
    almanac
}

/// Whether all that the year goes by is held as the project says.
fn holds(almanac: &Almanac, project: &str) -> bool {
    almanac.lacks(project, 0).expect("a project").is_empty()
}

fn marched(almanac: &mut Almanac, project: &str) {
    let is_known = almanac.begin_year(project, 0).expect("a year");
    assert!(!is_known, "it is another one");
    let mut last = 0.0;
    while let Told::Going(share) = almanac.turn() {
        assert!(last < share && share < 1.0, "{last} then {share}");
        last = share;
    }
}

#[test]
fn a_file_becomes_the_weather_of_a_project_and_the_year_of_its_run() {
    let mut almanac = with_file();
    let project = almanac.with_weather(PROJECT).expect("a project");
    let kept = read(&project)
        .expect("a project")
        .weather
        .expect("its weather");
    let file = kept.get().expect("a reference");
    let lacks = Almanac::default().lacks(&project, 0);
    let wanted = vec![(Place::Weather, file.sha256)];
    assert_eq!(lacks, Ok(wanted), "the file is found by its hash");
    marched(&mut almanac, &project);
    assert_eq!(
        almanac.begin_year(&project, 0),
        Ok(true),
        "the year is known now"
    );
    let sentence = almanac.shown("sentence", &NUMBERS);
    assert!(sentence.contains("wet hours"), "{sentence}");
    assert!(
        almanac.shown("charts", &NUMBERS).contains("dw-y-m1"),
        "wet hours are drawn"
    );
    let words = almanac.shown("maps", &NUMBERS);
    assert_eq!(words.matches("aria-pressed=\"true\"").count(), 1, "{words}");
}

#[test]
fn an_hour_becomes_the_state_of_the_route() {
    let mut almanac = with_file();
    let project = almanac.with_weather(PROJECT).expect("a project");
    marched(&mut almanac, &project);
    let worst = almanac.step(&[]);
    let next = almanac.step(&[f64::from(u32::try_from(worst).expect("an hour")), 24.0]);
    assert_eq!(next, worst + 24, "a day later");
    let changed = read(&almanac.project_at(worst).expect("an hour")).expect("a project");
    let (before, _) = to_run(&read(&project).expect("a project"), 0).expect("a run");
    let (after, _) = to_run(&changed, 0).expect("a run");
    assert_ne!(
        before.duct_air, after.duct_air,
        "the duct has the air of that hour"
    );
    assert_eq!(before.intake, after.intake, "the tube is the same");
    assert!(
        almanac.project_at(1 << 20).is_err(),
        "there is no such hour"
    );
}

#[test]
fn a_file_that_is_none_leaves_the_one_that_is_held() {
    let mut almanac = with_file();
    let project = almanac.with_weather(PROJECT).expect("a project");
    almanac
        .begin_reading(("", 0), Place::Weather, None)
        .expect("nothing is said");
    let refused = almanac.take_piece(b"PK\x03\x04");
    assert!(refused.is_err(), "a workbook");
    assert!(
        almanac.end_reading("book.xlsx").is_err(),
        "nothing is read any more"
    );
    assert!(holds(&almanac, &project), "the other one is still there");
}

#[test]
fn what_is_said_of_humidities_below_freezing_stands_in_the_project() {
    let mut almanac = with_file();
    let found = almanac.with_weather(PROJECT).expect("a project");
    assert!(holds(&almanac, &found), "it is held as it was found");
    almanac
        .begin_reading((&found, 0), Place::Weather, Some(Some(Over::Ice)))
        .expect("it is said");
    almanac.take_piece(GULL_HARBOUR).expect("a table");
    almanac.end_reading("gull-harbour.csv").expect("a table");
    let said = almanac.with_weather(&found).expect("a project");
    assert_ne!(said, found, "the project says it");
    assert!(holds(&almanac, &said), "and it is held so");
    assert!(!holds(&almanac, &found), "not as it was found");
    let mut elsewhere = Almanac::default();
    elsewhere
        .begin_reading((&said, 0), Place::Weather, None)
        .expect("as is said");
    elsewhere.take_piece(GULL_HARBOUR).expect("a table");
    elsewhere.end_reading("gull-harbour.csv").expect("a table");
    assert!(holds(&elsewhere, &said), "another device reads it alike");
    assert!(
        elsewhere
            .files_told(&said, 0, &NUMBERS)
            .contains("as said here"),
        "and says so"
    );
}

/// Every hour of the year has its place in the dew square, and what is taken for granted is told.
#[test]
fn the_square_holds_all_hours_and_what_is_assumed_is_told() {
    let mut almanac = with_file();
    let project = almanac.with_weather(PROJECT).expect("a project");
    marched(&mut almanac, &project);
    let hours: f64 = almanac.square().chunks(4).map(|square| square[2]).sum();
    assert_eq!(hours, 8760.0, "hours of the file");
    let granted = almanac.shown("granted", &NUMBERS);
    assert!(
        granted.contains("Nothing says where the air of the duct comes from"),
        "{granted}"
    );
    let opened = almanac.shown("opened year-wet-hours", &NUMBERS);
    assert!(opened.contains("more than 0.01 g an hour"), "{opened}");
}

/// Dry as entered, no more than 70 wet hours, never blind; nothing else is asked.
const TARGET: &str =
    r#""target": {"dry_in": "entered", "wet_hours": 70, "blind_hours": 0}, "spaces": ["#;

#[test]
fn remedies_are_sought_in_turns_and_one_of_them_is_made() {
    let mut almanac = with_file();
    assert!(almanac.begin_cures().is_err(), "there is no year yet");
    let aimed = PROJECT.replacen("\"spaces\": [", TARGET, 1);
    let project = almanac.with_weather(&aimed).expect("a project");
    marched(&mut almanac, &project);
    almanac.begin_cures().expect("remedies");
    let mut known = 0;
    loop {
        let (share, now) = almanac.cure_turn();
        assert!(known <= now && share <= 1.0, "{known}, then {now}");
        known = now;
        // What is found is shown before all are known.
        if almanac.cures_told(&NUMBERS).contains("data-cure") {
            assert!(share < 1.0, "some are still sought");
            break;
        }
        assert!(share < 1.0, "none meets the target");
    }
    let told = almanac.cures_told(&NUMBERS);
    let number = told.split("data-cure=\"").nth(1);
    let number = number.and_then(|rest| rest.split('"').next()?.parse().ok());
    let cured = almanac
        .cured(number.expect("its number"))
        .expect("a project");
    assert_ne!(cured, project, "something is changed");
    marched(&mut almanac, &cured);
    almanac.begin_cures().expect("remedies");
    assert_eq!(almanac.cure_turn().1, 0, "none is sought");
    let told = almanac.cures_told(&NUMBERS);
    assert!(told.contains("nothing has to be done"), "{told}");
    assert!(almanac.cured(0).is_err(), "there is none");
}

/// Warm and humid at the end of July, every ten minutes from three minutes past midnight on, and nothing else of the year.
fn in_duct() -> String {
    let rows = (0..3 * 144).map(|at| {
        let minutes = 3 + 10 * at;
        let (day, hour, minute) = (10 + minutes / 1440, minutes / 60 % 24, minutes % 60);
        format!("2001-07-{day} {hour:02}:{minute:02},32,26\n")
    });
    let head = "time,temperature [C],dew point [C]\n".to_owned();
    head + &rows.collect::<String>()
}

#[test]
fn what_was_measured_in_the_duct_is_its_air_and_its_hours_are_the_year() {
    let mut almanac = with_file();
    let outdoors = almanac.with_weather(PROJECT).expect("a project");
    let read_in = |almanac: &mut Almanac, project: &str| {
        almanac
            .begin_reading((project, 0), Place::InDuct, None)
            .expect("nothing is said");
        almanac.take_piece(in_duct().as_bytes()).expect("a table");
        almanac.end_reading("duct.csv").expect("a table")
    };
    let hash = read_in(&mut almanac, "");
    let project = almanac.with_air_in_duct(&outdoors, 0).expect("a project");
    assert!(holds(&almanac, &project), "both files are held");
    let told = almanac.files_told(&project, 0, &NUMBERS);
    assert!(told.contains("Measured in the duct: "), "{told}");
    assert!(
        !almanac
            .files_told(&outdoors, 0, &NUMBERS)
            .contains("duct.csv"),
        "of the project that does not go by it nothing is told of it"
    );
    marched(&mut almanac, &project);
    let hours: f64 = almanac.square().chunks(4).map(|square| square[2]).sum();
    assert_eq!(hours, 72.0, "the hours that were measured");
    let then = read(&almanac.project_at(30).expect("an hour")).expect("a project");
    let (then, _) = to_run(&then, 0).expect("a run");
    let Pair::Temperature(air, _) = then.duct_air else {
        panic!(
            "the air of an hour is told by its temperature: {:?}",
            then.duct_air
        );
    };
    let air = air.to_celsius();
    assert!(
        (air - 32.0).abs() < 0.006,
        "{air} °C in the duct, as measured"
    );
    let mut elsewhere = with_file();
    assert_eq!(
        elsewhere.lacks(&project, 0),
        Ok(vec![(Place::InDuct, hash.clone())]),
        "another device lacks what was measured"
    );
    let refused = elsewhere.begin_year(&project, 0).expect_err("a file lacks");
    assert!(refused.contains("measured in the duct"), "{refused}");
    assert_eq!(read_in(&mut elsewhere, &project), hash, "it is that file");
    assert!(holds(&elsewhere, &project), "and is held there now");
    marched(&mut almanac, &outdoors);
    let hours: f64 = almanac.square().chunks(4).map(|square| square[2]).sum();
    assert_eq!(hours, 8760.0, "without it all hours of the weather");
}

/// The worker that shows the year lends it to those that march plausible ones.
#[test]
fn the_year_as_entered_is_the_one_that_was_found() {
    let mut almanac = with_file();
    let project = almanac.with_weather(PROJECT).expect("a project");
    assert_eq!(
        almanac.entered_member(&project, 0),
        None,
        "none is found yet"
    );
    marched(&mut almanac, &project);
    let lent = almanac.entered_member(&project, 0).expect("a year");
    assert_eq!(
        almanac.begin_year(&project, 0),
        Ok(true),
        "it is still known"
    );
    assert_eq!(
        almanac.begin_member(&project, 0, None),
        Ok(true),
        "it has an answer"
    );
    while !almanac.member_turn() {}
    assert_eq!(almanac.member(), lent, "the same, marched by itself");
    let other = project.replace("\"value\": 4.2", "\"value\": 4.5");
    assert!(other != project, "a leg is longer");
    assert_eq!(
        almanac.entered_member(&other, 0),
        None,
        "of another project none is found"
    );
}
