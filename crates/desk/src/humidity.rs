//! The ways to say how humid an air is, and changing from one to another without changing the air.

use dewrun_document::{AirPair, Humidity, Input, Over, Relative, to_run};
use dewrun_quantity::RelativeHumidity;
use dewrun_run::air::{self, MoistAir, Pair};

use super::OpenProject;
use super::field::run_mut;

/// A way to say how humid an air of known temperature is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HumidityKind {
    /// Dew point.
    DewPoint,
    /// Relative humidity.
    Relative,
    /// Wet-bulb temperature.
    WetBulb,
    /// Vapour per dry air.
    Ratio,
    /// Frost point.
    FrostPoint,
    /// Enthalpy.
    Enthalpy,
}

impl HumidityKind {
    /// Those that are offered.
    pub const OFFERED: [Self; 4] = [Self::DewPoint, Self::Relative, Self::WetBulb, Self::Ratio];

    /// How a humidity is said.
    #[must_use]
    pub fn of(humidity: &Humidity) -> Self {
        match humidity {
            Humidity::Relative(_) => Self::Relative,
            Humidity::DewPoint(_) => Self::DewPoint,
            Humidity::FrostPoint(_) => Self::FrostPoint,
            Humidity::Ratio(_) => Self::Ratio,
            Humidity::WetBulb(_) => Self::WetBulb,
            Humidity::Enthalpy(_) => Self::Enthalpy,
        }
    }

    /// What the quantity is called.
    #[must_use]
    pub fn name(self) -> &'static str {
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

/// What is humid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HumidOf {
    /// The duct air.
    Duct,
    /// A space, by its position.
    Space(usize),
}

impl HumidOf {
    /// In which quantity its humidity is said; none where its pair lacks the temperature.
    pub fn kind(self, project: &OpenProject) -> Option<HumidityKind> {
        match self {
            Self::Duct => match &project.open_run()?.duct.air {
                AirPair::Temperature { humidity, .. } => Some(HumidityKind::of(humidity)),
                _ => None,
            },
            Self::Space(at) => Some(HumidityKind::of(&project.spaces.get(at)?.humidity)),
        }
    }

    /// Says its humidity in another way; the air stays the same to the digits that are worth typing.
    pub fn say_as(self, project: &mut OpenProject, kind: HumidityKind) -> Option<()> {
        let (run, _) = to_run(project, project.run).ok()?;
        let pair = match self {
            Self::Duct => run.duct_air,
            Self::Space(at) => {
                let space = run.spaces.get(at)?;
                Pair::Temperature(space.temperature, space.humidity)
            }
        };
        let said = said(&MoistAir::new(pair, run.pressure).ok()?.value, kind)?;
        match self {
            Self::Duct => {
                if let AirPair::Temperature { humidity, .. } = &mut run_mut(project)?.duct.air {
                    *humidity = said;
                }
            }
            Self::Space(at) => project.spaces.get_mut(at)?.humidity = said,
        }
        Some(())
    }

    /// Whose it is, spoken after the name of the choice.
    pub fn whose(self, project: &OpenProject) -> String {
        match self {
            Self::Duct => ", duct air".to_owned(),
            Self::Space(at) => {
                let name = project.spaces.get(at).map_or("", |space| &space.name);
                format!(", {name}")
            }
        }
    }

    /// The id of the choice.
    pub fn id(self) -> String {
        match self {
            Self::Duct => "humidity-of-duct".to_owned(),
            Self::Space(at) => format!("humidity-of-space-{at}"),
        }
    }
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
