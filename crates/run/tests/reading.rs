//! A reading at any place agrees with the march, with what is drawn, and with a run cut at that place.

mod plain;

use dewrun_quantity::{Length, Power, Pressure, Temperature, VolumeFlow};
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::{Detector, Flow, FlowAt, Reading, Run, TubeOutcome, course, evaluate, reading};
use plain::{leg, space};
use proptest::prelude::{prop_assert, proptest};

const PRESSURE: Pressure = Pressure::pascals(98_000.0);

fn tube(spaces: &[f64], legs: &[(usize, f64)]) -> TubeOutcome {
    let run = Run {
        pressure: PRESSURE,
        duct_air: Pair::Temperature(
            Temperature::celsius(32.0),
            Humidity::DewPoint(Temperature::celsius(24.0)),
        ),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(30.0),
            at: FlowAt::Intake,
        },
        spaces: spaces.iter().copied().map(space).collect(),
        intake: legs
            .iter()
            .map(|&(space, metres)| leg(space, metres))
            .collect(),
        detector: Detector {
            heat: Power::watts(3.0),
            humidity_rating: None,
        },
        exhaust: Vec::new(),
    };
    evaluate(&run).expect("the run is sound").value.intake
}

/// Warm, cold with frost, warm again.
fn frosty() -> TubeOutcome {
    tube(&[28.0, -12.0, 23.0], &[(0, 1.0), (1, 7.0), (2, 3.0)])
}

fn read(tube: &TubeOutcome, x: f64) -> Reading {
    reading(tube, PRESSURE, Length::metres(x)).expect("the place lies in the tube")
}

#[test]
fn the_places_of_the_march_are_read_as_they_are() {
    let tube = frosty();
    let joints: Vec<f64> = tube.legs.iter().map(|leg| leg.from.to_metres()).collect();
    for place in &tube.profile {
        let x = place.x.to_metres();
        let next = tube.legs.get(place.leg + 1);
        // A joint is read as the leg that begins there.
        if next.is_some_and(|next| next.from.to_metres() == x) {
            assert_eq!(read(&tube, x).point.leg, place.leg + 1, "joint at {x} m");
            continue;
        }
        assert_eq!(read(&tube, x).point, *place, "at {x} m");
    }
    assert_eq!(joints.len(), 3, "the joints are those of three legs");
}

#[test]
fn what_is_drawn_is_what_is_read() {
    let tube = frosty();
    for drawn in course(&tube.profile, 8) {
        let read = read(&tube, drawn.x.to_metres());
        if read.point.leg == drawn.leg {
            assert_eq!(read.point, drawn, "at {:?}", drawn.x);
        }
    }
}

#[test]
fn sums_begin_at_nothing_and_end_at_those_of_the_tube() {
    let tube = frosty();
    let (first, last) = (read(&tube, 0.0), read(&tube, 11.0));
    assert_eq!(first.deposited.to_grams_per_hour(), 0.0, "at the inlet");
    let frost: f64 = tube
        .legs
        .iter()
        .map(|leg| leg.frost.to_grams_per_hour())
        .sum();
    assert!(1.0 < frost, "the tube frosts: {frost} g/h");
    for (what, found, expected) in [
        (
            "all",
            last.deposited.to_grams_per_hour(),
            tube.condensate.to_grams_per_hour(),
        ),
        ("frost", last.frozen.to_grams_per_hour(), frost),
    ] {
        let off = (found - expected).abs() / expected;
        assert!(off < 1e-12, "{what}: {found} g/h, expected {expected}");
    }
    let joint = read(&tube, 8.0);
    let before: f64 = tube.legs[..2]
        .iter()
        .map(|leg| leg.condensate.to_grams_per_hour())
        .sum();
    let off = (joint.deposited.to_grams_per_hour() - before).abs() / before;
    assert!(off < 1e-12, "at a joint, the legs before it");
}

#[test]
fn humidity_at_the_outlet_is_that_of_the_outlet() {
    let tube = frosty();
    let found = read(&tube, 11.0).relative_humidity.to_percent();
    let expected = tube.outlet.relative_humidity.to_percent();
    assert!(
        (found - expected).abs() < 1e-9,
        "{found} %, expected {expected}"
    );
}

/// The same tube with a joint at the place, marched anew: what has formed before the joint is what was read there.
#[test]
fn what_has_formed_is_what_a_tube_cut_there_forms() {
    let whole = tube(&[28.0, 8.0, 23.0], &[(0, 1.0), (1, 8.0), (2, 3.0)]);
    for cut in [0.3, 1.7, 3.45, 6.0] {
        let parted = tube(
            &[28.0, 8.0, 23.0],
            &[(0, 1.0), (1, cut), (1, 8.0 - cut), (2, 3.0)],
        );
        let expected: f64 = parted.legs[..2]
            .iter()
            .map(|leg| leg.condensate.to_grams_per_hour())
            .sum();
        let found = read(&whole, 1.0 + cut).deposited.to_grams_per_hour();
        // 0.3 % is what the march claims for its condensate, a hundredth of a gram what a drawing could show.
        let allowed = 0.003 * expected + 0.01;
        assert!(
            (found - expected).abs() <= allowed,
            "{found} g/h up to {cut} m into the leg, expected {expected}"
        );
    }
}

#[test]
fn there_is_nothing_to_read_past_the_ends() {
    let tube = frosty();
    for x in [-0.001, 11.001, f64::NAN] {
        assert_eq!(
            reading(&tube, PRESSURE, Length::metres(x)),
            None,
            "at {x} m"
        );
    }
}

proptest! {
    #[test]
    fn readings_are_between_their_neighbours(a in 0.0..11.0_f64, b in 0.0..11.0_f64) {
        let tube = frosty();
        let (a, b) = (read(&tube, a.min(b)), read(&tube, a.max(b)));
        let sums = (a.deposited.to_grams_per_hour(), b.deposited.to_grams_per_hour());
        prop_assert!(sums.0 <= sums.1, "what has formed only grows: {sums:?}");
        prop_assert!(a.frozen.to_grams_per_hour() <= b.frozen.to_grams_per_hour(), "so does the frost");
        prop_assert!(a.frozen.to_grams_per_hour() <= sums.0 + 1e-12, "frost is a part of it");
        let share = (a.point.frozen_share, a.relative_humidity.to_percent());
        prop_assert!((0.0..=1.0).contains(&share.0) && (0.0..=101.0).contains(&share.1), "share and humidity in bounds: {share:?}");
        // In one leg air and dew point go one way, since one space surrounds it.
        if a.point.leg == b.point.leg && a.point.leg == 1 {
            prop_assert!(b.point.air.to_celsius() <= a.point.air.to_celsius(), "the air cools");
            prop_assert!(b.point.humidity_ratio.to_kilograms_per_kilogram() <= a.point.humidity_ratio.to_kilograms_per_kilogram(), "and dries");
        }
    }
}

/// Below 0 °C all of what forms freezes, above it nothing does, between two places of the march as at them.
#[test]
fn what_freezes_is_told_by_the_wall() {
    let tube = frosty();
    for point in course(&tube.profile, 8) {
        let wall = point.inner_wall.to_celsius();
        if 0.01 < wall.abs() {
            let expected = if wall < 0.0 { 1.0 } else { 0.0 };
            assert_eq!(point.frozen_share, expected, "at {wall} °C, {:?}", point.x);
        }
    }
}
