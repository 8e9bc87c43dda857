//! Another value goes to its own place in the run and nowhere else.

use dewrun_quantity::{Length, RelativeHumidity, Temperature};
use dewrun_run::air::Pair;
use dewrun_run::figure::{Figure, Spot, set};
use dewrun_run::{Place, Run, Tube};

use crate::sample;

#[track_caller]
fn check(figure: Figure, place: Place, value: f64, expected: impl Fn(&mut Run)) {
    let (mut found, mut wanted) = (sample::run(), sample::run());
    assert_eq!(
        set(&mut found, figure, place, value),
        Some(()),
        "{}",
        figure.id()
    );
    expected(&mut wanted);
    assert_eq!(found, wanted, "{} alone is changed", figure.id());
}

#[test]
fn a_value_goes_to_its_place() {
    check(Figure::SpaceTemperature, Place::Space(1), -3.0, |run| {
        run.spaces[1].temperature = Temperature::celsius(-3.0);
    });
    check(Figure::Bore, Place::Leg(Tube::Intake, 2), 16.8, |run| {
        run.intake[2].tube.bore = Length::millimetres(16.8);
    });
    check(
        Figure::Emissivity,
        Place::Leg(Tube::Exhaust, 0),
        0.1,
        |run| {
            run.exhaust[0].emissivity = 0.1;
        },
    );
    check(Figure::HumidityRating, Place::Detector, 85.0, |run| {
        run.detector.humidity_rating = Some(RelativeHumidity::percent(85.0));
    });
    check(Figure::DuctTemperature, Place::DuctAir, 30.0, |run| {
        if let Pair::Temperature(t, _) = &mut run.duct_air {
            *t = Temperature::celsius(30.0);
        }
    });
}

/// ISO 2533:1975, geopotential altitude 1000 m: 898.746 hPa.
#[test]
fn an_altitude_is_a_pressure() {
    let mut run = sample::run();
    assert_eq!(
        set(&mut run, Figure::Altitude, Place::Run, 1000.0),
        Some(()),
        "it is set"
    );
    assert!(
        (run.pressure.to_pascals() - 89_874.6).abs() < 0.1,
        "{:?}",
        run.pressure
    );
}

#[test]
fn what_a_run_lacks_is_not_set() {
    let before = sample::run();
    for (figure, place) in [
        (Figure::DuctRelative, Place::DuctAir),
        (Figure::SpaceDewPoint, Place::Space(0)),
        (Figure::SpaceTemperature, Place::Space(7)),
        (Figure::InsulationThickness, Place::Leg(Tube::Intake, 0)),
        (Figure::LegWater, Place::Leg(Tube::Intake, 0)),
        (Figure::Bore, Place::Flow),
    ] {
        let mut run = sample::run();
        assert_eq!(set(&mut run, figure, place, 1.0), None, "{}", figure.id());
        assert_eq!(run, before, "{} changed nothing", figure.id());
    }
}

/// Every input that a chain leads to can be set, or the run has none of the kind.
#[test]
fn an_input_belongs_to_the_part_that_the_spot_meets() {
    let run = sample::run();
    let loft = Spot::leg(Tube::Intake, 1);
    for (figure, place) in [
        (Figure::SpaceTemperature, Place::Space(1)),
        (Figure::Wind, Place::Space(1)),
        (Figure::DuctDewPoint, Place::DuctAir),
        (Figure::Bore, Place::Leg(Tube::Intake, 1)),
        (Figure::Pressure, Place::Run),
        (Figure::Flow, Place::Flow),
        (Figure::DetectorHeat, Place::Detector),
    ] {
        assert_eq!(loft.place(figure, &run), Some(place), "{}", figure.id());
        let seen = Spot::of_place(place, &run).expect("a spot sees it");
        assert_eq!(
            seen.place(figure, &run),
            Some(place),
            "{} from there",
            figure.id()
        );
    }
    assert_eq!(loft.place(Figure::LegWater, &run), None, "no input");
}
