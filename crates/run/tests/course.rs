//! The smooth course between the march's places is where a fine march goes.

mod plain;

use dewrun_quantity::{Length, Power, Pressure, Temperature, VolumeFlow};
use dewrun_run::air::{Humidity, Pair};
use dewrun_run::{Detector, Flow, FlowAt, ProfilePoint, Run, course, evaluate, evaluate_fine};
use plain::{leg, space};

fn run() -> Run {
    Run {
        pressure: Pressure::pascals(101_325.0),
        duct_air: Pair::Temperature(
            Temperature::celsius(32.0),
            Humidity::DewPoint(Temperature::celsius(26.0)),
        ),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(30.0),
            at: FlowAt::Intake,
        },
        spaces: vec![space(28.0), space(12.0), space(23.0)],
        intake: vec![leg(0, 1.0), leg(1, 9.0), leg(2, 4.0)],
        detector: Detector {
            heat: Power::watts(3.0),
            humidity_rating: None,
        },
        exhaust: Vec::new(),
    }
}

fn nearest(points: &[ProfilePoint], x: Length, leg: usize) -> ProfilePoint {
    let off = |point: &ProfilePoint| (point.x - x).to_metres().abs();
    let here = points.iter().filter(|point| point.leg == leg);
    *here
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .expect("every leg has points")
}

/// Held to a sixth of a kelvin, what a line of the drawing is wide, from one bore behind the inlet on: at the inlet itself the film is singular.
#[test]
fn the_course_follows_a_fine_march() {
    let drawn = evaluate(&run()).expect("the run is sound").value;
    let course = course(&drawn.intake.profile, 64);
    let fine = evaluate_fine(&run()).expect("the run is sound").value;
    let past_inlet = fine
        .intake
        .profile
        .iter()
        .filter(|place| Length::millimetres(19.0) < place.x);
    for place in past_inlet {
        let here = nearest(&course, place.x, place.leg);
        for (what, a, b) in [
            ("air", here.air, place.air),
            ("wall", here.inner_wall, place.inner_wall),
            (
                "dew point",
                here.dew_point.unwrap_or(here.air),
                place.dew_point.unwrap_or(place.air),
            ),
        ] {
            let off = (a - b).to_kelvins().abs();
            assert!(off < 0.17, "{what} is {off} K off at {:?}", place.x);
        }
    }
}

#[test]
fn the_places_of_the_march_are_kept_and_rise() {
    let profile = evaluate(&run())
        .expect("the run is sound")
        .value
        .intake
        .profile;
    let course = course(&profile, 8);
    assert!(
        profile.iter().all(|point| course.contains(point)),
        "every place is kept"
    );
    let rises = course.windows(2).all(|pair| pair[0].x <= pair[1].x);
    assert!(rises, "in flow order");
}
