//! A run as it stands in one hour of its year, for the steady view.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::process::relative_humidity;
use dewrun_duct_air::schedule::Moment;
use dewrun_duct_air::space::Outdoors;
use dewrun_quantity::{Pressure, RelativeHumidity, Speed, Temperature};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{Run, Space};

use crate::season::Season;

/// The run in the air and the spaces of one moment; mist that enters is left out, as a steady answer has none.
///
/// # Range
/// Outdoor air from -60 to 95 °C.
#[must_use]
pub fn run_at(
    run: &Run,
    season: &Season,
    moment: Moment,
    outdoors: &Outdoors,
    measured: Option<FogAir>,
) -> Run {
    let p_pa = outdoors.p_pa;
    let duct = season.duct_air(moment, outdoors, measured);
    let spaces = season.spaces.iter().map(|space| {
        let air = space.at(moment, outdoors);
        let within = FogAir {
            t_c: air.air_c,
            w: air.w,
            mist: 0.0,
        };
        Space {
            temperature: Temperature::celsius(air.air_c),
            humidity: humidity(within, p_pa),
            radiant: Some(Temperature::celsius(air.radiant_c)),
            wind: Speed::metres_per_second(air.wind_m_s),
        }
    });
    Run {
        pressure: Pressure::pascals(p_pa),
        duct_air: Pair::Temperature(Temperature::celsius(duct.t_c), humidity(duct, p_pa)),
        spaces: spaces.collect(),
        ..run.clone()
    }
}

fn humidity(air: FogAir, p_pa: f64) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::fraction(relative_humidity(air, p_pa).min(1.0)),
        over: if air.t_c < 0.0 {
            Over::Ice
        } else {
            Over::Water
        },
    }
}
