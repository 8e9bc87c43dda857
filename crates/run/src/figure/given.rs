//! The inputs of a run as they were given: value, place and where each came from.

use dewrun_moist_air::{Humidity, Pair, standard_pressure};
use dewrun_quantity::{
    Conductivity, HumidityRatio, Length, Power, PowerPerLength, Pressure, RelativeHumidity,
    SpecificEnthalpy, Speed, Temperature, VolumeFlow,
};

use super::Figure;
use crate::error::{Place, Tube};
use crate::input::{Insulation, Leg, Run, Space};

/// An input of a run and where it came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Given {
    /// What it is.
    pub figure: Figure,
    /// The part of the run that it belongs to.
    pub place: Place,
    /// The value, in the unit of the figure's [`kind`](Figure::kind).
    pub value: f64,
    /// Where it came from.
    pub origin: Origin,
}

/// Where the value of an input came from.
#[derive(Debug, Clone, PartialEq)]
pub enum Origin {
    /// Somebody typed it.
    Typed,
    /// Taken from a row of the library.
    Assumed {
        /// The row, by its id.
        row: String,
        /// The lowest value that is plausible, in the unit of the value.
        low: f64,
        /// The highest.
        high: f64,
    },
    /// Somebody measured it on site.
    Measured {
        /// The day, as 2026-08-30.
        on: String,
        /// Who measured it.
        by: String,
    },
}

/// Puts another value, in the unit of the figure's kind, into a run; none where the run has no such input.
#[must_use = "none tells that nothing was changed"]
pub fn set(run: &mut Run, figure: Figure, place: Place, value: f64) -> Option<()> {
    match place {
        Place::Run => {
            run.pressure = match figure {
                Figure::Pressure => Pressure::pascals(value),
                Figure::Altitude => standard_pressure(Length::metres(value)).ok()?,
                _ => return None,
            };
            Some(())
        }
        Place::DuctAir => set_duct(&mut run.duct_air, figure, value),
        Place::Flow if figure == Figure::Flow => {
            run.flow.volume = VolumeFlow::litres_per_minute(value);
            Some(())
        }
        Place::Detector => set_detector(run, figure, value),
        Place::Space(at) => set_space(run.spaces.get_mut(at)?, figure, value),
        Place::Leg(Tube::Intake, at) => set_leg(run.intake.get_mut(at)?, figure, value),
        Place::Leg(Tube::Exhaust, at) => set_leg(run.exhaust.get_mut(at)?, figure, value),
        Place::Flow | Place::Duct(_) | Place::Trap(..) => None,
    }
}

fn set_duct(pair: &mut Pair, figure: Figure, number: f64) -> Option<()> {
    match (pair, figure) {
        (Pair::Temperature(t, _), Figure::DuctTemperature) => *t = Temperature::celsius(number),
        (Pair::Temperature(_, humidity), _) => {
            let figure = match figure {
                Figure::DuctRelative => Figure::SpaceRelative,
                Figure::DuctDewPoint => Figure::SpaceDewPoint,
                Figure::DuctFrostPoint => Figure::SpaceFrostPoint,
                Figure::DuctRatio => Figure::SpaceRatio,
                Figure::DuctWetBulb => Figure::SpaceWetBulb,
                Figure::DuctEnthalpy => Figure::SpaceEnthalpy,
                _ => return None,
            };
            return set_humidity(humidity, figure, number);
        }
        (
            Pair::DewPointAndRelative { value, .. }
            | Pair::FrostPointAndRelative { value, .. }
            | Pair::RatioAndRelative { value, .. },
            Figure::DuctRelative,
        ) => *value = RelativeHumidity::percent(number),
        (Pair::DewPointAndRelative { dew_point, .. }, Figure::DuctDewPoint) => {
            *dew_point = Temperature::celsius(number);
        }
        (Pair::FrostPointAndRelative { frost_point, .. }, Figure::DuctFrostPoint) => {
            *frost_point = Temperature::celsius(number);
        }
        (Pair::RatioAndRelative { ratio, .. }, Figure::DuctRatio) => {
            *ratio = HumidityRatio::kilograms_per_kilogram(number);
        }
        _ => return None,
    }
    Some(())
}

/// The humidity of an air of known temperature, in the quantity that it is said in.
fn set_humidity(humidity: &mut Humidity, figure: Figure, number: f64) -> Option<()> {
    match (humidity, figure) {
        (Humidity::Relative { value, .. }, Figure::SpaceRelative) => {
            *value = RelativeHumidity::percent(number);
        }
        (Humidity::DewPoint(t), Figure::SpaceDewPoint)
        | (Humidity::FrostPoint(t), Figure::SpaceFrostPoint)
        | (Humidity::WetBulb(t), Figure::SpaceWetBulb) => *t = Temperature::celsius(number),
        (Humidity::Ratio(ratio), Figure::SpaceRatio) => {
            *ratio = HumidityRatio::kilograms_per_kilogram(number);
        }
        (Humidity::Enthalpy(enthalpy), Figure::SpaceEnthalpy) => {
            *enthalpy = SpecificEnthalpy::kilojoules_per_kilogram(number);
        }
        _ => return None,
    }
    Some(())
}

fn set_detector(run: &mut Run, figure: Figure, value: f64) -> Option<()> {
    match figure {
        Figure::DetectorHeat => run.detector.heat = Power::watts(value),
        Figure::HumidityRating => {
            run.detector.humidity_rating = Some(RelativeHumidity::percent(value));
        }
        _ => return None,
    }
    Some(())
}

fn set_space(space: &mut Space, figure: Figure, value: f64) -> Option<()> {
    match figure {
        Figure::SpaceTemperature => space.temperature = Temperature::celsius(value),
        Figure::RadiantTemperature => space.radiant = Some(Temperature::celsius(value)),
        Figure::Wind => space.wind = Speed::metres_per_second(value),
        _ => return set_humidity(&mut space.humidity, figure, value),
    }
    Some(())
}

fn set_leg(leg: &mut Leg, figure: Figure, value: f64) -> Option<()> {
    match figure {
        Figure::Length => leg.length = Length::metres(value),
        Figure::Rise => leg.rise = Length::metres(value),
        Figure::Bore => leg.tube.bore = Length::millimetres(value),
        Figure::OutsideDiameter => leg.tube.outside_diameter = Length::millimetres(value),
        Figure::TubeConductivity => {
            leg.tube.conductivity = Conductivity::watts_per_metre_kelvin(value);
        }
        Figure::Emissivity => leg.emissivity = value,
        Figure::InsulationThickness => {
            let thickness = Length::millimetres(value);
            leg.insulation = Some(Insulation {
                thickness,
                ..leg.insulation?
            });
        }
        Figure::InsulationConductivity => {
            let conductivity = Conductivity::watts_per_metre_kelvin(value);
            leg.insulation = Some(Insulation {
                conductivity,
                ..leg.insulation?
            });
        }
        Figure::Tracing => leg.tracing = PowerPerLength::watts_per_metre(value),
        _ => return None,
    }
    Some(())
}
