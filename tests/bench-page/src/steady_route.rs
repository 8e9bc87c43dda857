//! The route of the figure `steady`: 25 m to the detector and 25 m back, through four spaces, half of it wet.

use dewrun_quantity::{
    Conductivity, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature,
    VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{Detector, Flow, FlowAt, Leg, Run, Space, TubeWall};

/// Temperatures of the spaces in flow order, °C; the detector stands between the second and the third.
const SPACES_C: [f64; 4] = [20.0, 12.0, 12.0, 20.0];

/// A bare plastic tube of 19 mm bore under a humid duct.
#[must_use]
pub fn steady_route() -> Run {
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
        spaces: SPACES_C.map(space).to_vec(),
        intake: vec![leg(0), leg(1)],
        detector: Detector {
            heat: Power::watts(3.0),
            humidity_rating: None,
        },
        exhaust: vec![leg(2), leg(3)],
    }
}

pub(crate) fn space(t_c: f64) -> Space {
    Space {
        temperature: Temperature::celsius(t_c),
        humidity: Humidity::Relative {
            value: RelativeHumidity::percent(50.0),
            over: Over::Water,
        },
        radiant: None,
        wind: Speed::ZERO,
    }
}

pub(crate) fn leg(space: usize) -> Leg {
    Leg {
        space,
        length: Length::metres(12.5),
        rise: Length::ZERO,
        tube: TubeWall {
            bore: Length::millimetres(19.0),
            outside_diameter: Length::millimetres(22.0),
            conductivity: Conductivity::watts_per_metre_kelvin(0.19),
        },
        insulation: None,
        emissivity: 0.9,
        tracing: PowerPerLength::ZERO,
    }
}

#[cfg(test)]
mod tests {
    use dewrun_run::{Verdict, evaluate};

    use super::*;

    #[test]
    fn route_is_wet() {
        let outcome = evaluate(&steady_route())
            .expect("the route can be evaluated")
            .value;
        assert_eq!(
            outcome.verdict,
            Verdict::Wet,
            "a dry route would measure the easy half only"
        );
    }
}
