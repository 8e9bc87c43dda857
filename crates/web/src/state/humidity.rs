//! The ways to say how humid an air is, and changing from one to another without changing the air.

use dewrun_document::{AirPair, Humidity, Input, Over, Project, Relative, to_run};
use dewrun_quantity::RelativeHumidity;
use dewrun_run::air::{self, MoistAir, Pair};

use super::field::{RUN, run_mut};

/// A way to say how humid an air of known temperature is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum HumidityKind {
    DewPoint,
    Relative,
    WetBulb,
    Ratio,
    FrostPoint,
    Enthalpy,
}

impl HumidityKind {
    /// Those that are offered.
    pub(crate) const OFFERED: [Self; 4] =
        [Self::DewPoint, Self::Relative, Self::WetBulb, Self::Ratio];

    pub(crate) fn of(humidity: &Humidity) -> Self {
        match humidity {
            Humidity::Relative(_) => Self::Relative,
            Humidity::DewPoint(_) => Self::DewPoint,
            Humidity::FrostPoint(_) => Self::FrostPoint,
            Humidity::Ratio(_) => Self::Ratio,
            Humidity::WetBulb(_) => Self::WetBulb,
            Humidity::Enthalpy(_) => Self::Enthalpy,
        }
    }

    /// The duct air's, where its pair begins with the temperature.
    pub(crate) fn of_duct(project: &Project) -> Option<Self> {
        match &project.runs.get(RUN)?.duct.air {
            AirPair::Temperature { humidity, .. } => Some(Self::of(humidity)),
            _ => None,
        }
    }

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::DewPoint => "Dew point",
            Self::Relative => "Relative humidity",
            Self::WetBulb => "Wet bulb",
            Self::Ratio => "Humidity ratio",
            Self::FrostPoint => "Frost point",
            Self::Enthalpy => "Enthalpy",
        }
    }
}

/// Says the duct air's humidity in another way; the air stays the same to the digits that are worth typing.
pub(crate) fn say_duct_humidity_as(project: &mut Project, kind: HumidityKind) -> Option<()> {
    let (run, _) = to_run(project, RUN).ok()?;
    let state = MoistAir::new(run.duct_air, run.pressure).ok()?.value;
    let said = said(&state, kind)?;
    if let AirPair::Temperature { humidity, .. } = &mut run_mut(project)?.duct.air {
        *humidity = said;
    }
    Some(())
}

/// Says a space's humidity in another way.
pub(crate) fn say_space_humidity_as(
    project: &mut Project,
    at: usize,
    kind: HumidityKind,
) -> Option<()> {
    let (run, _) = to_run(project, RUN).ok()?;
    let space = run.spaces.get(at)?;
    let pair = Pair::Temperature(space.temperature, space.humidity);
    let state = MoistAir::new(pair, run.pressure).ok()?.value;
    project.spaces.get_mut(at)?.humidity = said(&state, kind)?;
    Some(())
}

fn said(state: &MoistAir, kind: HumidityKind) -> Option<Humidity> {
    let tenths = |value: f64| Input::typed((value * 10.0).round() / 10.0);
    Some(match kind {
        HumidityKind::DewPoint => Humidity::DewPoint(tenths(state.dew_point()?.to_celsius())),
        HumidityKind::FrostPoint => Humidity::FrostPoint(tenths(state.frost_point()?.to_celsius())),
        HumidityKind::WetBulb => Humidity::WetBulb(tenths(state.wet_bulb().value.to_celsius())),
        HumidityKind::Relative => Humidity::Relative(Relative {
            percent: tenths(RelativeHumidity::to_percent(
                state.relative_humidity(air::Over::Water),
            )),
            over: Over::Water,
        }),
        HumidityKind::Ratio => {
            let grams = state.humidity_ratio().to_grams_per_kilogram();
            Humidity::Ratio(Input::typed((grams * 100.0).round() / 100_000.0))
        }
        HumidityKind::Enthalpy => {
            Humidity::Enthalpy(tenths(state.enthalpy().to_kilojoules_per_kilogram()))
        }
    })
}
