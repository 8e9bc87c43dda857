//! A humid duct's tube through a cool corridor and a freezing loft, invented.

use dewrun_quantity::{
    Conductivity, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature,
    VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{
    Detector, Flow, FlowAt, Insulation, Leg, Outcome, Run, Space, TubeWall, evaluate,
};

fn space(celsius: f64, percent: f64) -> Space {
    Space {
        temperature: Temperature::celsius(celsius),
        humidity: Humidity::Relative {
            value: RelativeHumidity::percent(percent),
            over: Over::Water,
        },
        radiant: None,
        wind: Speed::ZERO,
    }
}

fn leg(space: usize, length_m: f64, insulation_mm: f64) -> Leg {
    Leg {
        space,
        length: Length::metres(length_m),
        rise: Length::metres(-0.02 * length_m),
        tube: TubeWall {
            bore: Length::millimetres(19.0),
            outside_diameter: Length::millimetres(22.0),
            conductivity: Conductivity::watts_per_metre_kelvin(0.19),
        },
        insulation: (0.0 < insulation_mm).then_some(Insulation {
            thickness: Length::millimetres(insulation_mm),
            conductivity: Conductivity::watts_per_metre_kelvin(0.036),
        }),
        emissivity: 0.9,
        tracing: PowerPerLength::ZERO,
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
