//! What fields are called, and what is said of a fall.

use dewrun_document::Leg;
use dewrun_quantity::Style;
use dewrun_quantity::parse::ParseError;

use super::{Field, Refused, TubeName, place};
use crate::OpenProject;
use crate::kind::Kind;

impl Field {
    /// Its name within its row or group.
    pub fn name(self, project: &OpenProject) -> &'static str {
        match self {
            Self::DuctFirst | Self::DuctSecond | Self::SpaceHumidity(_) => {
                self.kind(project).map_or("", kind_name)
            }
            Self::Pressure => self.kind(project).map_or("", kind_name),
            Self::Flow => "Flow",
            Self::DetectorHeat => "Heat",
            Self::DetectorRating => "Rated humidity",
            Self::SpaceTemperature(_) => "Temperature",
            Self::SpaceWind(_) => "Air speed",
            Self::LegLength(..) => "Length",
            Self::LegFall(..) => "Fall",
            Self::LegBore(..) => "Bore",
            Self::LegOutside(..) => "Outside diameter",
            Self::LegInsulation(..) => "Insulation",
            Self::LegTracing(..) => "Heat tracing",
            Self::LegHangers(..) => "Hanger spacing",
            Self::LegConductivity(..) => "Conductivity",
            Self::LegEmissivity(..) => "Emissivity",
            Self::InsulationConductivity(..) => "Conductivity of insulation",
            Self::First(blank) => blank.name(),
        }
    }

    /// Its name where nothing around says whose it is.
    pub fn full_name(self, project: &OpenProject) -> String {
        let name = self.name(project);
        match self {
            Self::DuctFirst | Self::DuctSecond => {
                format!("{name} of the duct air")
            }
            Self::Pressure | Self::Flow => name.to_owned(),
            Self::DetectorHeat | Self::DetectorRating => format!("{name} of the detector"),
            Self::SpaceTemperature(at) | Self::SpaceHumidity(at) | Self::SpaceWind(at) => {
                let space = project.spaces.get(at).map_or("", |space| &space.name);
                format!("{name}, {space}")
            }
            Self::LegLength(tube, at)
            | Self::LegFall(tube, at)
            | Self::LegBore(tube, at)
            | Self::LegOutside(tube, at)
            | Self::LegInsulation(tube, at)
            | Self::LegTracing(tube, at)
            | Self::LegHangers(tube, at)
            | Self::LegConductivity(tube, at)
            | Self::LegEmissivity(tube, at)
            | Self::InsulationConductivity(tube, at) => {
                format!("{name} of leg {}", leg_number(project, tube, at))
            }
            Self::First(blank) => blank.full_name().to_owned(),
        }
    }
}

/// The number that a leg goes by: those of the exhaust tube go on where the intake tube ends.
pub fn leg_number(project: &OpenProject, tube: TubeName, at: usize) -> usize {
    let before = match tube {
        TubeName::Intake => 0,
        TubeName::Exhaust => {
            place::route(project, TubeName::Intake).map_or(0, |route| route.legs.len())
        }
    };
    before + at + 1
}

/// Which way water runs in a leg, in words.
pub fn leg_way(project: &OpenProject, tube: TubeName, at: usize) -> &'static str {
    match place::leg(project, tube, at).map(|leg| leg.rise_m.value) {
        Some(rise) if rise < 0.0 => "with the air",
        Some(rise) if 0.0 < rise => "against the air",
        _ => "nowhere",
    }
}

/// The fall of a leg as it was typed.
pub(super) fn fall(leg: &Leg, style: Style) -> String {
    let upright = if leg.rise_m.value < 0.0 {
        "drop"
    } else {
        "riser"
    };
    leg.fall()
        .map_or_else(|| upright.to_owned(), |fall| fall.show(style.mark))
}

/// That a text is no fall, and what would be one.
pub(super) fn no_fall(text: &str, error: &ParseError) -> Refused {
    Refused {
        sentence: format!(
            "\u{201c}{}\u{201d} is not a fall. Write 1:50, 2 %, 20 mm/m, 1/4 in/ft, level, drop or riser; a minus where the leg rises.",
            text.trim()
        ),
        is_unfinished: matches!(error, ParseError::Empty | ParseError::Incomplete { .. }),
    }
}

fn kind_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Temperature => "Temperature",
        Kind::DewPoint => "Dew point",
        Kind::FrostPoint => "Frost point",
        Kind::WetBulb => "Wet bulb",
        Kind::Relative => "Relative humidity",
        Kind::Ratio => "Humidity ratio",
        Kind::Enthalpy => "Enthalpy",
        Kind::Pressure => "Air pressure",
        Kind::Altitude => "Altitude",
        _ => "",
    }
}
