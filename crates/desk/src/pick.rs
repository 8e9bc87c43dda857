//! Picking rows of the library: what can be picked, what is picked, and what a pick writes into the project.

mod take;
mod told;

use dewrun_document::{AirPair, Humidity, Input, Leg};
use dewrun_quantity::{Length, format};
use dewrun_run::library::{self, Row};

use super::field::{TubeName, leg, leg_number};
use super::{OpenProject, rows};

pub use take::same_tube_everywhere;
pub(crate) use take::{bare, cover};

/// The value of a leg without insulation.
const NONE: &str = "none";
/// Marks a row of the library among the spaces of a project.
const ROW: &str = "row:";

/// A part of the project that a row may stand for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pick {
    /// The air in the duct.
    DuctAir,
    /// The detector.
    Detector,
    /// The tube of a leg.
    Tube(TubeName, usize),
    /// The insulation of a leg.
    Insulation(TubeName, usize),
    /// The space of a leg: one of the project's, or a new one from the library.
    Space(TubeName, usize),
}

/// One that can be picked.
#[derive(Debug)]
pub struct PickOption {
    /// The head over it and its neighbours; empty for none.
    pub group: String,
    /// What the choice says when it is picked.
    pub value: String,
    /// What it is called.
    pub name: String,
}

impl PickOption {
    fn new(group: &str, value: &str, name: &str) -> Self {
        Self {
            group: group.to_owned(),
            value: value.to_owned(),
            name: name.to_owned(),
        }
    }
}

impl Pick {
    /// What is picked.
    pub const fn name(self) -> &'static str {
        match self {
            Self::DuctAir => "Kind of air",
            Self::Detector => "Detector",
            Self::Tube(..) => "Tube",
            Self::Insulation(..) => "Insulation",
            Self::Space(..) => "Space",
        }
    }

    /// Whose, spoken after the name.
    pub fn whose(self, project: &OpenProject) -> String {
        match self {
            Self::DuctAir => ", duct air".to_owned(),
            Self::Detector => " from the library".to_owned(),
            Self::Tube(tube, at) | Self::Insulation(tube, at) | Self::Space(tube, at) => {
                format!(" of leg {}", leg_number(project, tube, at))
            }
        }
    }

    /// The id of its control on the page.
    pub fn id(self) -> String {
        let name = self.name().to_ascii_lowercase().replace(' ', "-");
        match self {
            Self::DuctAir | Self::Detector => format!("pick-{name}"),
            Self::Tube(tube, at) | Self::Insulation(tube, at) | Self::Space(tube, at) => {
                format!("pick-{name}-{tube:?}-{at}")
            }
        }
    }

    /// The value that is picked; empty where what is entered is of no row.
    pub fn picked(self, project: &OpenProject) -> String {
        self.found(project).unwrap_or_default()
    }

    fn found(self, project: &OpenProject) -> Option<String> {
        let run = project.open_run()?;
        match self {
            Self::DuctAir => {
                let AirPair::Temperature {
                    temperature_c,
                    humidity,
                } = &run.duct.air
                else {
                    return None;
                };
                let humidity = match humidity {
                    Humidity::Relative(relative) => &relative.percent,
                    Humidity::DewPoint(dew_point) => dew_point,
                    _ => return None,
                };
                shared_row(&[temperature_c, humidity])
            }
            Self::Detector => shared_row(&[&run.detector.heat_w]),
            Self::Tube(tube, at) => {
                let wall = &leg(project, tube, at)?.tube;
                shared_row(&[
                    &wall.bore_mm,
                    &wall.outside_diameter_mm,
                    &wall.conductivity_w_mk,
                ])
            }
            Self::Insulation(tube, at) => insulation(leg(project, tube, at)?),
            Self::Space(tube, at) => Some(leg(project, tube, at)?.space.clone()),
        }
    }

    /// What can be picked.
    pub fn options(self, project: &OpenProject) -> Vec<PickOption> {
        let mut options = Vec::new();
        // A value that is of no row shows as such; nobody can pick it.
        if self.found(project).is_none() {
            options.push(PickOption::new("", "", "own values"));
        }
        match self {
            Self::DuctAir => {
                options.extend(library::duct_air().iter().map(|row| {
                    PickOption::new(
                        duct_group(row.id),
                        row.id,
                        &situated(row.name, row.situation),
                    )
                }));
            }
            Self::Detector => {
                let rows = library::detectors().iter();
                options.extend(rows.map(|row| PickOption::new("", row.id, row.name)));
            }
            Self::Tube(..) => {
                let rows = library::tubes().iter();
                options.extend(rows.map(|row| PickOption::new(row.material, row.id, row.name)));
            }
            Self::Insulation(..) => {
                options.push(PickOption::new("", NONE, "none"));
                options.extend(library::insulation().iter().flat_map(|row| {
                    row.thicknesses
                        .iter()
                        .enumerate()
                        .map(|(place, thickness)| {
                            let mm = format::entered(thickness.to_millimetres());
                            let value = sold(row.id, place);
                            PickOption::new(row.name, &value, &format!("{mm} mm {}", row.name))
                        })
                }));
            }
            Self::Space(..) => {
                options.extend(
                    project
                        .spaces
                        .iter()
                        .map(|space| PickOption::new("In this project", &space.id, &space.name)),
                );
                options.extend(library::spaces().iter().map(|row| {
                    let value = format!("{ROW}{}", row.id);
                    PickOption::new(
                        "From the library",
                        &value,
                        &situated(row.name, row.situation),
                    )
                }));
            }
        }
        options
    }
}

/// Where an air of the library comes from.
fn duct_group(id: &str) -> &'static str {
    if id.starts_with("make-up") {
        "Outdoor air"
    } else if id.starts_with("after") {
        "Behind a device"
    } else {
        "Air of rooms"
    }
}

fn situated(name: &str, situation: &str) -> String {
    format!("{name}: {situation}")
}

/// The row that all of the values are assumed from.
fn shared_row(inputs: &[&Input<f64>]) -> Option<String> {
    let mut ids = inputs.iter().map(|input| rows::row_of(input).map(Row::id));
    let first = ids.next()??;
    ids.all(|id| id == Some(first)).then(|| first.to_owned())
}

fn insulation(leg: &Leg) -> Option<String> {
    let Some(layer) = &leg.insulation else {
        return Some(NONE.to_owned());
    };
    let row = rows::row_of(&layer.conductivity_w_mk)?;
    let row = library::find(library::insulation(), row.id())?;
    let mm = layer.thickness_mm.value;
    let is_it = |sold: &Length| (sold.to_millimetres() - mm).abs() < 1e-9;
    let place = row.thicknesses.iter().position(is_it)?;
    Some(sold(row.id, place))
}

/// The value of an insulation in one of the thicknesses in which it is sold.
fn sold(id: &str, place: usize) -> String {
    format!("{id}:{place}")
}
