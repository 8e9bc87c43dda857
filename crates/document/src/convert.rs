//! From the project file's types to the engine's, by hand.

use dewrun_quantity::{
    Conductivity, Fall, HumidityRatio, Length, Power, PowerPerLength, Pressure, RelativeHumidity,
    SpecificEnthalpy, Speed, Temperature, VolumeFlow,
};
use dewrun_run as engine;
use dewrun_run::air;

use crate::v1::check;
use crate::{
    AirPair, Detector, DocumentError, FallForm, FieldPath, Flow, FlowAt, Humidity, Insulation, Leg,
    Names, Over, Project, Relative, Route, Space, TubeWall, v1,
};

/// A run of a project that lies within all limits, and where it stands.
///
/// # Errors
/// [`DocumentError`] where the project has no such run or leaves a limit.
pub(crate) fn checked_run(
    project: &Project,
    run_index: usize,
) -> Result<(&crate::Run, FieldPath), DocumentError> {
    check(project)?;
    let run = project
        .runs
        .get(run_index)
        .ok_or(DocumentError::NoSuchRun {
            index: run_index,
            count: project.runs.len(),
        })?;
    Ok((run, FieldPath::root().field("runs").index(run_index)))
}

/// The engine's run and the names of its parts.
///
/// # Errors
/// [`DocumentError`] where the project has no such run, leaves a limit, or names a space that is not there.
pub fn to_run(project: &Project, run_index: usize) -> Result<(engine::Run, Names), DocumentError> {
    let (run, here) = checked_run(project, run_index)?;
    let intake = legs(project, &run.intake, &here.clone().field("intake"))?;
    let exhaust = match &run.exhaust {
        Some(route) => legs(project, route, &here.field("exhaust"))?,
        None => Vec::new(),
    };
    let converted = engine::Run {
        pressure: pressure(&project.pressure)?,
        duct_air: pair(&run.duct.air),
        flow: flow(&run.flow),
        spaces: project.spaces.iter().map(space).collect(),
        intake,
        detector: detector(&run.detector),
        exhaust,
    };
    Ok((converted, Names::of(project, run)))
}

fn pressure(pressure: &v1::Pressure) -> Result<Pressure, DocumentError> {
    match pressure {
        v1::Pressure::AbsolutePa(value) => Ok(Pressure::pascals(value.value)),
        v1::Pressure::AltitudeM(value) => air::standard_pressure(Length::metres(value.value))
            .map_err(|source| DocumentError::Pressure {
                path: FieldPath::root().field("pressure.altitude_m"),
                source,
            }),
    }
}

fn pair(pair: &AirPair) -> air::Pair {
    match pair {
        AirPair::Temperature {
            temperature_c,
            humidity: wet,
        } => air::Pair::Temperature(Temperature::celsius(temperature_c.value), humidity(wet)),
        AirPair::DewPointAndRelative {
            dew_point_c,
            relative: wet,
        } => air::Pair::DewPointAndRelative {
            dew_point: Temperature::celsius(dew_point_c.value),
            value: relative(wet),
            over: over(wet.over),
        },
        AirPair::FrostPointAndRelative {
            frost_point_c,
            relative: wet,
        } => air::Pair::FrostPointAndRelative {
            frost_point: Temperature::celsius(frost_point_c.value),
            value: relative(wet),
            over: over(wet.over),
        },
        AirPair::RatioAndRelative {
            ratio_kg_kg,
            relative: wet,
        } => air::Pair::RatioAndRelative {
            ratio: HumidityRatio::kilograms_per_kilogram(ratio_kg_kg.value),
            value: relative(wet),
            over: over(wet.over),
        },
    }
}

fn humidity(humidity: &Humidity) -> air::Humidity {
    match humidity {
        Humidity::Relative(wet) => air::Humidity::Relative {
            value: relative(wet),
            over: over(wet.over),
        },
        Humidity::DewPoint(value) => air::Humidity::DewPoint(Temperature::celsius(value.value)),
        Humidity::FrostPoint(value) => air::Humidity::FrostPoint(Temperature::celsius(value.value)),
        Humidity::Ratio(value) => {
            air::Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(value.value))
        }
        Humidity::WetBulb(value) => air::Humidity::WetBulb(Temperature::celsius(value.value)),
        Humidity::Enthalpy(value) => {
            air::Humidity::Enthalpy(SpecificEnthalpy::kilojoules_per_kilogram(value.value))
        }
    }
}

fn relative(relative: &Relative) -> RelativeHumidity {
    RelativeHumidity::percent(relative.percent.value)
}

const fn over(over: Over) -> air::Over {
    match over {
        Over::Water => air::Over::Water,
        Over::Ice => air::Over::Ice,
    }
}

fn flow(flow: &Flow) -> engine::Flow {
    engine::Flow {
        volume: VolumeFlow::litres_per_minute(flow.volume_l_min.value),
        at: match flow.at {
            FlowAt::Intake => engine::FlowAt::Intake,
            FlowAt::Sensor => engine::FlowAt::Sensor,
        },
    }
}

fn space(space: &Space) -> engine::Space {
    engine::Space {
        temperature: Temperature::celsius(space.temperature_c.value),
        humidity: humidity(&space.humidity),
        radiant: space
            .radiant_c
            .as_ref()
            .map(|radiant| Temperature::celsius(radiant.value)),
        wind: Speed::metres_per_second(space.wind_m_s.value),
    }
}

fn legs(
    project: &Project,
    route: &Route,
    here: &FieldPath,
) -> Result<Vec<engine::Leg>, DocumentError> {
    let position_of = |id: &str| project.spaces.iter().position(|space| space.id == id);
    let convert = |(at, one): (usize, &Leg)| {
        let space = position_of(&one.space).ok_or_else(|| DocumentError::NoSuchSpace {
            path: here.clone().field("legs").index(at).field("space"),
            id: one.space.clone(),
            known: ids_of(&project.spaces),
        })?;
        Ok(leg(one, space))
    };
    route.legs.iter().enumerate().map(convert).collect()
}

fn ids_of(spaces: &[Space]) -> String {
    let ids: Vec<&str> = spaces.iter().map(|space| space.id.as_str()).collect();
    ids.join(", ")
}

fn leg(leg: &Leg, space: usize) -> engine::Leg {
    let tracing = leg.heat_tracing_w_m.as_ref();
    engine::Leg {
        space,
        length: Length::metres(leg.length_m.value),
        rise: Length::metres(leg.rise_m.value),
        tube: tube_wall(&leg.tube),
        insulation: leg.insulation.as_ref().map(insulation),
        emissivity: leg.emissivity.value,
        tracing: tracing.map_or(PowerPerLength::ZERO, |heat| {
            PowerPerLength::watts_per_metre(heat.value)
        }),
    }
}

fn tube_wall(tube: &TubeWall) -> engine::TubeWall {
    engine::TubeWall {
        bore: Length::millimetres(tube.bore_mm.value),
        outside_diameter: Length::millimetres(tube.outside_diameter_mm.value),
        conductivity: Conductivity::watts_per_metre_kelvin(tube.conductivity_w_mk.value),
    }
}

fn insulation(insulation: &Insulation) -> engine::Insulation {
    engine::Insulation {
        thickness: Length::millimetres(insulation.thickness_mm.value),
        conductivity: Conductivity::watts_per_metre_kelvin(insulation.conductivity_w_mk.value),
    }
}

fn detector(detector: &Detector) -> engine::Detector {
    let rating = detector.humidity_rating_percent.as_ref();
    engine::Detector {
        heat: Power::watts(detector.heat_w.value),
        humidity_rating: rating.map(|rating| RelativeHumidity::percent(rating.value)),
    }
}

impl From<FallForm> for dewrun_quantity::FallForm {
    fn from(form: FallForm) -> Self {
        match form {
            FallForm::Ratio => Self::Ratio,
            FallForm::Percent => Self::Percent,
            FallForm::MmPerM => Self::MillimetresPerMetre,
            FallForm::InPerFt => Self::InchesPerFoot,
        }
    }
}

impl From<dewrun_quantity::FallForm> for FallForm {
    fn from(form: dewrun_quantity::FallForm) -> Self {
        use dewrun_quantity::FallForm as Typed;
        match form {
            Typed::Ratio => Self::Ratio,
            Typed::Percent => Self::Percent,
            Typed::MillimetresPerMetre => Self::MmPerM,
            Typed::InchesPerFoot => Self::InPerFt,
        }
    }
}

impl Leg {
    /// Its fall in the form in which it was typed; none where it is upright.
    #[must_use]
    pub fn fall(&self) -> Option<Fall> {
        let length = Length::metres(self.length_m.value);
        let rise = Length::metres(self.rise_m.value);
        Fall::of(length, rise, self.fall_as.into())
    }
}
