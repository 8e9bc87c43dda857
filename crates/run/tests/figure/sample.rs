//! A humid duct's tube through a cool corridor and a freezing loft, invented.

use crate::plain;
use dewrun_quantity::{
    Conductivity, Length, Power, Pressure, RelativeHumidity, Temperature, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{Detector, Flow, FlowAt, Insulation, Leg, Outcome, Run, Space, evaluate};

fn space(celsius: f64, percent: f64) -> Space {
    Space {
        humidity: Humidity::Relative {
            value: RelativeHumidity::percent(percent),
            over: Over::Water,
        },
        ..plain::space(celsius)
    }
}

fn leg(space: usize, length_m: f64, insulation_mm: f64) -> Leg {
    Leg {
        rise: Length::metres(-0.02 * length_m),
        insulation: (0.0 < insulation_mm).then_some(Insulation {
            thickness: Length::millimetres(insulation_mm),
            conductivity: Conductivity::watts_per_metre_kelvin(0.036),
        }),
        ..plain::leg(space, length_m)
    }
}

pub(crate) fn run() -> Run {
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
        spaces: vec![space(20.0, 50.0), space(-8.0, 80.0)],
        intake: vec![leg(0, 5.0, 0.0), leg(1, 4.0, 0.0), leg(0, 2.0, 13.0)],
        detector: Detector {
            heat: Power::watts(3.0),
            humidity_rating: Some(RelativeHumidity::percent(95.0)),
        },
        exhaust: vec![leg(0, 3.0, 0.0)],
    }
}

pub(crate) fn outcome(run: &Run) -> Outcome {
    evaluate(run).expect("the run has an answer").value
}
