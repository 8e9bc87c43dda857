//! Where in the project each editable number stands.

use dewrun_document::{
    AirPair, FieldPath, Humidity, Input, Leg, Origin, Pressure, Route, Run, Space,
};
use dewrun_run::library;

use super::{Field, TubeName};
use crate::kind::Kind;
use crate::{OpenProject, pick, rows};

/// The row of insulation whose material nobody has named.
const INSULATION: &str = "insulation-closed-cell";

impl Field {
    /// Its value and origin; 0 and typed for what a leg may lack.
    pub fn input(self, project: &OpenProject) -> Option<Input<f64>> {
        match self {
            Self::LegInsulation(tube, at)
            | Self::LegTracing(tube, at)
            | Self::LegHangers(tube, at) => {
                leg(project, tube, at)?;
                Some(
                    input_ref(self, project)
                        .cloned()
                        .unwrap_or(Input::typed(0.0)),
                )
            }
            Self::First(blank) => blank.input(project),
            _ => input_ref(self, project).cloned(),
        }
    }

    /// What it is.
    pub(crate) fn kind(self, project: &OpenProject) -> Option<Kind> {
        Some(match self {
            Self::DuctFirst => match run(project)?.duct.air {
                AirPair::Temperature { .. } => Kind::Temperature,
                AirPair::DewPointAndRelative { .. } => Kind::DewPoint,
                AirPair::FrostPointAndRelative { .. } => Kind::FrostPoint,
                AirPair::RatioAndRelative { .. } => Kind::Ratio,
            },
            Self::DuctSecond => match &run(project)?.duct.air {
                AirPair::Temperature { humidity, .. } => humidity_kind(humidity),
                _ => Kind::Relative,
            },
            Self::Pressure => match project.pressure {
                Pressure::AbsolutePa(_) => Kind::Pressure,
                Pressure::AltitudeM(_) => Kind::Altitude,
            },
            Self::Flow => Kind::Flow,
            Self::DetectorHeat => Kind::Heat,
            Self::DetectorRating => Kind::Rating,
            Self::SpaceTemperature(_) => Kind::Temperature,
            Self::SpaceHumidity(at) => humidity_kind(&project.spaces.get(at)?.humidity),
            Self::SpaceWind(_) => Kind::Wind,
            Self::LegLength(..) | Self::LegFall(..) => Kind::Length,
            Self::LegBore(..) => Kind::Bore,
            Self::LegOutside(..) => Kind::Outside,
            Self::LegInsulation(..) => Kind::Thickness,
            Self::LegTracing(..) => Kind::Tracing,
            Self::LegHangers(..) => Kind::Hangers,
            Self::LegConductivity(..) => Kind::TubeConductivity,
            Self::LegEmissivity(..) => Kind::Emissivity,
            Self::InsulationConductivity(..) => Kind::InsulationConductivity,
            Self::First(blank) => blank.kind(),
        })
    }

    /// Its name in that run as the project's errors write it, or that of the part that holds it.
    pub fn path(self, run: usize) -> String {
        let run = FieldPath::root().field("runs").index(run);
        let space = |at| FieldPath::root().field("spaces").index(at);
        let leg = |tube, at| {
            let route = match tube {
                TubeName::Intake => "intake.legs",
                TubeName::Exhaust => "exhaust.legs",
            };
            run.clone().field(route).index(at)
        };
        let path = match self {
            Self::DuctFirst => run.field("duct.air.first"),
            Self::DuctSecond => run.field("duct.air.second"),
            Self::Pressure => FieldPath::root().field("pressure"),
            Self::Flow => run.field("flow.volume_l_min"),
            Self::DetectorHeat => run.field("detector.heat_w"),
            Self::DetectorRating => run.field("detector.humidity_rating_percent"),
            Self::SpaceTemperature(at) => space(at).field("temperature_c"),
            Self::SpaceHumidity(at) => space(at).field("humidity"),
            Self::SpaceWind(at) => space(at).field("wind_m_s"),
            Self::LegLength(tube, at) => leg(tube, at).field("length_m"),
            Self::LegFall(tube, at) => leg(tube, at).field("rise_m"),
            Self::LegBore(tube, at) => leg(tube, at).field("tube.bore_mm"),
            Self::LegOutside(tube, at) => leg(tube, at).field("tube.outside_diameter_mm"),
            Self::LegInsulation(tube, at) => leg(tube, at).field("insulation.thickness_mm"),
            Self::LegTracing(tube, at) => leg(tube, at).field("heat_tracing_w_m"),
            Self::LegHangers(tube, at) => leg(tube, at).field("hanger_spacing_m"),
            Self::LegConductivity(tube, at) => leg(tube, at).field("tube.conductivity_w_mk"),
            Self::LegEmissivity(tube, at) => leg(tube, at).field("emissivity"),
            Self::InsulationConductivity(tube, at) => {
                leg(tube, at).field("insulation.conductivity_w_mk")
            }
            Self::First(blank) => FieldPath::root().field("first").field(blank.name()),
        };
        path.as_str().to_owned()
    }
}

/// Writes a number that somebody typed.
pub(super) fn set(field: Field, project: &mut OpenProject, value: f64) -> Option<()> {
    match field {
        Field::LegInsulation(tube, at) => insulate(leg_mut(project, tube, at)?, value),
        Field::LegTracing(tube, at) => {
            leg_mut(project, tube, at)?.heat_tracing_w_m =
                (value != 0.0).then(|| Input::typed(value));
        }
        Field::LegHangers(tube, at) => {
            leg_mut(project, tube, at)?.hanger_spacing_m =
                (value != 0.0).then(|| Input::typed(value));
        }
        Field::LegLength(tube, at) => {
            let leg = leg_mut(project, tube, at)?;
            // A longer leg keeps its slope.
            leg.rise_m = rows::scaled(&leg.rise_m, value / leg.length_m.value);
            leg.length_m = Input::typed(value);
        }
        Field::SpaceTemperature(at) => {
            let space = space_mut(project, at)?;
            // Surfaces that are assumed so much colder or warmer than the air stay so.
            let by = value - space.temperature_c.value;
            if let Some(radiant) = space.radiant_c.as_mut().filter(|input| is_assumed(input)) {
                *radiant = rows::shifted(radiant, by);
            }
            space.temperature_c = Input::typed(value);
        }
        Field::First(blank) => return blank.set(project, value),
        _ => *input_mut(field, project)? = Input::typed(value),
    }
    Some(())
}

fn is_assumed(input: &Input<f64>) -> bool {
    matches!(input.origin, Origin::Assumed { .. })
}

/// Wraps a leg, or bares it; what the outermost surface is made of changes with that where it is assumed.
fn insulate(leg: &mut Leg, thickness_mm: f64) {
    if thickness_mm == 0.0 {
        leg.insulation = None;
        pick::bare(leg);
        return;
    }
    if let Some(layer) = &mut leg.insulation {
        layer.thickness_mm = Input::typed(thickness_mm);
        return;
    }
    let row = library::find(library::insulation(), INSULATION);
    if let Some((layer, emissivity)) = row.and_then(|row| rows::insulation(row, thickness_mm)) {
        leg.insulation = Some(layer);
        pick::cover(leg, emissivity);
    }
}

/// Makes the two ways to the number of a field: one to read it, one to write it.
macro_rules! way_to_input {
    ($name:ident, $run:ident, $space:ident, $leg:ident, $humidity:ident, $reference:ident, [$($mutable:tt)?]) => {
        fn $name(field: Field, project: &$($mutable)? OpenProject) -> Option<&$($mutable)? Input<f64>> {
            match field {
                Field::DuctFirst => match &$($mutable)? $run(project)?.duct.air {
                    AirPair::Temperature { temperature_c, .. } => Some(temperature_c),
                    AirPair::DewPointAndRelative { dew_point_c, .. } => Some(dew_point_c),
                    AirPair::FrostPointAndRelative { frost_point_c, .. } => Some(frost_point_c),
                    AirPair::RatioAndRelative { ratio_kg_kg, .. } => Some(ratio_kg_kg),
                },
                Field::DuctSecond => match &$($mutable)? $run(project)?.duct.air {
                    AirPair::Temperature { humidity, .. } => Some($humidity(humidity)),
                    AirPair::DewPointAndRelative { relative, .. }
                    | AirPair::FrostPointAndRelative { relative, .. }
                    | AirPair::RatioAndRelative { relative, .. } => {
                        Some(&$($mutable)? relative.percent)
                    }
                },
                Field::Pressure => match &$($mutable)? project.pressure {
                    Pressure::AbsolutePa(input) | Pressure::AltitudeM(input) => Some(input),
                },
                Field::Flow => Some(&$($mutable)? $run(project)?.flow.volume_l_min),
                Field::DetectorHeat => Some(&$($mutable)? $run(project)?.detector.heat_w),
                Field::DetectorRating => {
                    $run(project)?.detector.humidity_rating_percent.$reference()
                }
                Field::SpaceTemperature(at) => Some(&$($mutable)? $space(project, at)?.temperature_c),
                Field::SpaceHumidity(at) => {
                    Some($humidity(&$($mutable)? $space(project, at)?.humidity))
                }
                Field::SpaceWind(at) => Some(&$($mutable)? $space(project, at)?.wind_m_s),
                Field::LegLength(tube, at) => Some(&$($mutable)? $leg(project, tube, at)?.length_m),
                Field::LegFall(tube, at) => Some(&$($mutable)? $leg(project, tube, at)?.rise_m),
                Field::LegBore(tube, at) => Some(&$($mutable)? $leg(project, tube, at)?.tube.bore_mm),
                Field::LegOutside(tube, at) => {
                    Some(&$($mutable)? $leg(project, tube, at)?.tube.outside_diameter_mm)
                }
                Field::LegInsulation(tube, at) => {
                    let layer = $leg(project, tube, at)?.insulation.$reference()?;
                    Some(&$($mutable)? layer.thickness_mm)
                }
                Field::LegTracing(tube, at) => {
                    $leg(project, tube, at)?.heat_tracing_w_m.$reference()
                }
                Field::LegHangers(tube, at) => {
                    $leg(project, tube, at)?.hanger_spacing_m.$reference()
                }
                Field::LegConductivity(tube, at) => {
                    Some(&$($mutable)? $leg(project, tube, at)?.tube.conductivity_w_mk)
                }
                Field::LegEmissivity(tube, at) => {
                    Some(&$($mutable)? $leg(project, tube, at)?.emissivity)
                }
                Field::InsulationConductivity(tube, at) => {
                    let layer = $leg(project, tube, at)?.insulation.$reference()?;
                    Some(&$($mutable)? layer.conductivity_w_mk)
                }
                // It is made of several numbers.
                Field::First(_) => None,
            }
        }

        fn $humidity(humidity: &$($mutable)? Humidity) -> &$($mutable)? Input<f64> {
            match humidity {
                Humidity::Relative(relative) => &$($mutable)? relative.percent,
                Humidity::DewPoint(input)
                | Humidity::FrostPoint(input)
                | Humidity::Ratio(input)
                | Humidity::WetBulb(input)
                | Humidity::Enthalpy(input) => input,
            }
        }
    };
}

way_to_input!(input_ref, run, space, leg, humidity_ref, as_ref, []);
way_to_input!(input_mut, run_mut, space_mut, leg_mut, humidity_mut, as_mut, [mut]);

fn humidity_kind(humidity: &Humidity) -> Kind {
    match humidity {
        Humidity::Relative(_) => Kind::Relative,
        Humidity::DewPoint(_) => Kind::DewPoint,
        Humidity::FrostPoint(_) => Kind::FrostPoint,
        Humidity::Ratio(_) => Kind::Ratio,
        Humidity::WetBulb(_) => Kind::WetBulb,
        Humidity::Enthalpy(_) => Kind::Enthalpy,
    }
}

fn run(project: &OpenProject) -> Option<&Run> {
    project.open_run()
}

pub(crate) fn run_mut(project: &mut OpenProject) -> Option<&mut Run> {
    project.open_run_mut()
}

fn space(project: &OpenProject, at: usize) -> Option<&Space> {
    project.spaces.get(at)
}

fn space_mut(project: &mut OpenProject, at: usize) -> Option<&mut Space> {
    project.spaces.get_mut(at)
}

/// The route of a tube.
pub fn route(project: &OpenProject, tube: TubeName) -> Option<&Route> {
    let run = run(project)?;
    match tube {
        TubeName::Intake => Some(&run.intake),
        TubeName::Exhaust => run.exhaust.as_ref(),
    }
}

/// The route of a tube, to change it.
pub(crate) fn route_mut(project: &mut OpenProject, tube: TubeName) -> Option<&mut Route> {
    let run = run_mut(project)?;
    match tube {
        TubeName::Intake => Some(&mut run.intake),
        TubeName::Exhaust => run.exhaust.as_mut(),
    }
}

pub(crate) fn leg(project: &OpenProject, tube: TubeName, at: usize) -> Option<&Leg> {
    route(project, tube)?.legs.get(at)
}

pub(crate) fn leg_mut(project: &mut OpenProject, tube: TubeName, at: usize) -> Option<&mut Leg> {
    route_mut(project, tube)?.legs.get_mut(at)
}
