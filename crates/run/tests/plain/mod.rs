//! The plain leg and space that the tests of this crate begin with, invented.

use dewrun_quantity::{Conductivity, Length, PowerPerLength, RelativeHumidity, Speed, Temperature};
use dewrun_run::air::{Humidity, Over};
use dewrun_run::{Leg, Space, TubeWall};

/// Still air, half saturated.
pub(crate) fn space(celsius: f64) -> Space {
    Space {
        temperature: Temperature::celsius(celsius),
        humidity: Humidity::Relative {
            value: RelativeHumidity::percent(50.0),
            over: Over::Water,
        },
        radiant: None,
        wind: Speed::ZERO,
    }
}

/// A level, bare plastic tube of 19 mm bore.
pub(crate) fn leg(space: usize, metres: f64) -> Leg {
    Leg {
        space,
        length: Length::metres(metres),
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
