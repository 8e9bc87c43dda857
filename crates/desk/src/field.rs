//! Every number of a run that the page lets a person edit, by name.

mod place;
mod shown;
mod wording;

use dewrun_document::{Input, Origin};
use dewrun_quantity::parse::ParseError;
use dewrun_quantity::{Fall, Length, Style};

pub use place::route;
pub(crate) use place::{leg, leg_mut, route_mut, run_mut};
pub use shown::FieldShown;
pub use wording::{leg_number, leg_way};

use super::OpenProject;
pub use super::first_visit::Blank;
/// Which tube a leg belongs to.
pub use dewrun_run::Tube as TubeName;

/// A number that can be edited.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Field {
    /// The first quantity of the pair that makes the duct air.
    DuctFirst,
    /// The second one.
    DuctSecond,
    /// Pressure or altitude.
    Pressure,
    /// The flow through the tubes.
    Flow,
    /// Heat of the detector.
    DetectorHeat,
    /// Humidity that the detector is rated for.
    DetectorRating,
    /// Temperature of a space, by its position.
    SpaceTemperature(usize),
    /// Humidity of a space.
    SpaceHumidity(usize),
    /// Air speed in a space.
    SpaceWind(usize),
    /// Length of a leg, by its tube and position.
    LegLength(TubeName, usize),
    /// Fall of a leg.
    LegFall(TubeName, usize),
    /// Bore of a leg.
    LegBore(TubeName, usize),
    /// Outside diameter of a leg.
    LegOutside(TubeName, usize),
    /// Insulation of a leg, 0 where it is bare.
    LegInsulation(TubeName, usize),
    /// Heat tracing of a leg, 0 where it has none.
    LegTracing(TubeName, usize),
    /// Between the hangers of a leg, 0 where that is not known.
    LegHangers(TubeName, usize),
    /// Conductivity of a leg's tube.
    LegConductivity(TubeName, usize),
    /// Emissivity of a leg's outermost surface.
    LegEmissivity(TubeName, usize),
    /// Conductivity of a leg's insulation.
    InsulationConductivity(TubeName, usize),
    /// A blank of the sentence with which the empty page begins.
    First(Blank),
}

/// Why a text can't be taken into the project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// What, and what would be right.
    pub sentence: String,
    /// The number has only begun: nothing to complain of while it is being typed.
    pub is_unfinished: bool,
}

impl Field {
    /// The text of its value and the unit after it; none where the project has no such number.
    pub fn show(self, project: &OpenProject, style: Style) -> Option<(String, &'static str)> {
        if let Self::LegFall(tube, at) = self {
            let leg = leg(project, tube, at)?;
            return Some((wording::fall(leg, style), ""));
        }
        let value = self.input(project)?.value;
        let written = self.kind(project)?.show(value, style);
        Some((written.number, written.unit))
    }

    /// Where its value came from.
    pub fn origin(self, project: &OpenProject) -> Option<Origin> {
        Some(self.input(project)?.origin)
    }

    /// Takes a typed text into the project.
    pub fn take(self, project: &mut OpenProject, text: &str, style: Style) -> Result<(), Refused> {
        if let Self::LegFall(tube, at) = self {
            return take_fall(project, tube, at, text);
        }
        let gone = || Refused {
            sentence: "this is no part of the project any more".to_owned(),
            is_unfinished: false,
        };
        let kind = self.kind(project).ok_or_else(gone)?;
        let value = kind
            .parse(text, style.units)
            .map_err(|error| refused(text, &error))?;
        let value = kind.check(value, style).map_err(|sentence| Refused {
            sentence,
            is_unfinished: false,
        })?;
        if let Self::First(blank) = self {
            blank
                .refuse(project, value, style)
                .map_err(|sentence| Refused {
                    sentence,
                    // On the way to 12 somebody types 1.
                    is_unfinished: true,
                })?;
        }
        place::set(self, project, value).ok_or_else(gone)
    }

    /// The id of its input on the page, the same for all runs.
    pub fn id(self) -> String {
        self.path(0).replace(['.', '[', ']'], "-")
    }

    /// The id of the sentence at it.
    pub fn note_id(self) -> String {
        format!("{}-fault", self.id())
    }

    /// Whether a keypad of digits and a decimal mark is enough to type it.
    pub fn is_plain_number(self, project: &OpenProject) -> bool {
        self.kind(project)
            .is_some_and(|kind| !kind.may_be_negative())
    }
}

fn take_fall(
    project: &mut OpenProject,
    tube: TubeName,
    at: usize,
    text: &str,
) -> Result<(), Refused> {
    let Some(leg) = leg_mut(project, tube, at) else {
        return Ok(());
    };
    let length = Length::metres(leg.length_m.value);
    let upright = match text.trim().to_ascii_lowercase().as_str() {
        "drop" => Some(-length),
        "riser" => Some(length),
        _ => None,
    };
    let (rise, form) = match upright {
        Some(rise) => (rise, leg.fall_as.into()),
        None => {
            let fall = Fall::parse(text, leg.fall_as.into())
                .map_err(|error| wording::no_fall(text, &error))?;
            (fall.rise(length), fall.form)
        }
    };
    leg.rise_m = Input::typed(rise.to_metres());
    leg.fall_as = form.into();
    Ok(())
}

fn refused(text: &str, error: &ParseError) -> Refused {
    let is_unfinished = matches!(error, ParseError::Empty | ParseError::Incomplete { .. });
    let sentence = match error {
        ParseError::Empty => "nothing is typed. A number such as 12.5 would be right.".to_owned(),
        ParseError::Incomplete { .. } | ParseError::Unexpected { .. } => {
            format!(
                "\u{201c}{}\u{201d} is not a number. One such as 12.5 or 12,5 would be right.",
                text.trim()
            )
        }
        other => format!("{other}."),
    };
    Refused {
        sentence,
        is_unfinished,
    }
}
