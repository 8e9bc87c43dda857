//! What is expected of readings on site, and what a reading says against it.

use std::fs;

use dewrun_document::{read, to_installation, to_run};
use dewrun_quantity::{Length, Pressure, Time, VolumeFlow};
use dewrun_run::told::{CoursePoint, Expected, Side};
use dewrun_run::{
    AirflowOutcome, ExpectedOnSite, FilterOnSite, Finding, StateKind, evaluate, on_site,
    water_and_air,
};

fn make_up_air() -> AirflowOutcome {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo/make-up-air.json");
    let project = read(&fs::read_to_string(path).expect("it is there")).expect("a project");
    let (run, _) = to_run(&project, 0).expect("it has a run");
    let (installation, _) = to_installation(&project, 0).expect("it is installed");
    let outcome = evaluate(&run).expect("it has an answer").value;
    let whole = water_and_air(&run, &installation, &outcome);
    whole.expect("water and air too").airflow
}

/// The states of the example with flows that are easy to add, 30 L/min as fitted.
fn with_flows() -> AirflowOutcome {
    let mut airflow = make_up_air();
    let flow = VolumeFlow::litres_per_minute;
    airflow.fitted.sensor = flow(30.0);
    for state in &mut airflow.states {
        state.airflow.sensor = flow(match state.state {
            StateKind::Usual(Expected::AsFitted) => 30.0,
            StateKind::Usual(Expected::FanSpeed(speed)) if speed < 1.0 => 27.5,
            StateKind::Usual(Expected::FanSpeed(_)) => 32.0,
            StateKind::Usual(Expected::FilterAfter(months)) => 30.0 - months / 3.0,
            StateKind::Usual(Expected::DuctFanOff) => 10.0,
            StateKind::Cold => 30.5,
            StateKind::Warm => 29.0,
        });
    }
    airflow
}

#[track_caller]
fn close(found: ExpectedOnSite<f64>, [low, usual, high]: [f64; 3]) {
    let pairs = [(found.low, low), (found.usual, usual), (found.high, high)];
    let is_close = pairs.iter().all(|(one, other)| (one - other).abs() < 1e-9);
    assert!(is_close, "{found:?} is not {low} to {usual} to {high}");
}

/// By hand: the fan takes 2.5 and the warm air 1.0 off, the fan gives 2.0 and the cold air 0.5; a filter of 12 months takes 4 more.
/// The duct's own fan runs while somebody measures, so that its standing still does not count.
#[test]
fn steps_of_fan_season_and_filter_add_up() {
    let airflow = with_flows();
    let flow = |filter| {
        let expected = on_site(&airflow, filter, None).airflow;
        expected.map(VolumeFlow::to_litres_per_minute)
    };
    close(flow(FilterOnSite::New), [26.5, 30.0, 32.5]);
    close(flow(FilterOnSite::InUse), [22.5, 30.0, 32.5]);
}

/// A straight line between the points of the course: -40 Pa at the duct, -100 Pa at the end, 12.1 m on; 5.2 m are 52/121 of it.
#[test]
fn suction_is_read_where_it_is_measured() {
    let mut airflow = make_up_air();
    let point = |at, pressure| CoursePoint {
        side: Side::Intake,
        at: Length::metres(at),
        pressure: Pressure::pascals(pressure),
    };
    airflow.fitted.course = vec![point(0.0, -40.0), point(12.1, -100.0)];
    airflow.states.clear();
    let suction = |at: Option<f64>| {
        let found = on_site(&airflow, FilterOnSite::New, at.map(Length::metres));
        found.suction.usual.to_pascals()
    };
    let by_hand = 40.0 + 60.0 * 52.0 / 121.0;
    assert!((suction(Some(5.2)) - by_hand).abs() < 1e-9, "{by_hand} Pa");
    assert_eq!(suction(None), 100.0, "at the detector");
    assert_eq!(suction(Some(50.0)), 100.0, "a tube ends at its end");
}

#[test]
fn transport_is_expected_within_what_faster_and_slower_air_take() {
    let airflow = make_up_air();
    let found = on_site(&airflow, FilterOnSite::InUse, None);
    let first = found.first_smoke.expect("smoke arrives");
    let ninety = found.ninety_percent.expect("and most of it");
    let fitted = airflow.fitted.transport.expect("as fitted");
    assert_eq!(first.usual, fitted.first, "as fitted");
    assert_eq!(ninety.usual, fitted.ninety_percent, "as fitted");
    for state in &airflow.states {
        if state.state == StateKind::Usual(Expected::DuctFanOff) {
            continue;
        }
        let time = state.airflow.transport.expect("each lets smoke through");
        assert_eq!(
            [
                first.finding(time.first),
                ninety.finding(time.ninety_percent)
            ],
            [Finding::Within; 2],
            "{:?} is a state of a good installation",
            state.state
        );
    }
}

#[test]
fn no_time_is_expected_where_no_smoke_arrives() {
    let mut airflow = make_up_air();
    airflow.fitted.transport = None;
    let found = on_site(&airflow, FilterOnSite::New, None);
    assert_eq!(
        (found.first_smoke, found.ninety_percent),
        (None, None),
        "no number stands for none"
    );
}

#[test]
fn both_ends_of_a_span_are_within() {
    let [low, usual, high] = [4.4, 5.1, 6.0].map(Time::seconds);
    let expected = ExpectedOnSite { low, usual, high };
    for (reading, finding) in [
        (4.399, Finding::Below),
        (4.4, Finding::Within),
        (6.0, Finding::Within),
        (6.001, Finding::Above),
    ] {
        let found = expected.finding(Time::seconds(reading));
        assert_eq!(found, finding, "{reading} s");
    }
}
