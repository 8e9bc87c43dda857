//! What a pick writes into the project: the usual values of the row, each with the row's name.

use dewrun_document::{AirPair, Input, Leg, Origin, Route, Space};
use dewrun_run::library::{self, InsulationRow, Row, TubeRow};

use super::{NONE, Pick, ROW};
use crate::field::{TubeName, leg, leg_mut, route_mut, run_mut};
use crate::{OpenProject, rows};

/// The row of a bare surface that nobody has named.
const SURFACE: &str = "tube-rigid-plastic-19";

impl Pick {
    /// Writes what was picked; none where it is no row of the library any more.
    pub fn take(self, project: &mut OpenProject, value: &str) -> Option<()> {
        match self {
            Self::DuctAir => {
                let row = library::find(library::duct_air(), value)?;
                run_mut(project)?.duct.air = AirPair::Temperature {
                    temperature_c: rows::usual(row, "temperature_c")?,
                    humidity: rows::duct_humidity(row)?,
                };
            }
            Self::Detector => {
                let row = library::find(library::detectors(), value)?;
                let run = run_mut(project)?;
                run.detector.heat_w = rows::usual(row, "heat_w")?;
                run.detector.humidity_rating_percent = rows::usual(row, "humidity_rating_percent");
                // A flow that somebody knows is worth more than that of no device.
                if is_assumed(&run.flow.volume_l_min) {
                    run.flow.volume_l_min = rows::usual(row, "volume_l_min")?;
                }
            }
            Self::Tube(tube, at) => {
                let row = library::find(library::tubes(), value)?;
                make_of(leg_mut(project, tube, at)?, row)?;
            }
            Self::Insulation(tube, at) => insulate(leg_mut(project, tube, at)?, value)?,
            Self::Space(tube, at) => put_in_space(project, tube, at, value)?,
        }
        Some(())
    }
}

fn make_of(leg: &mut Leg, row: &TubeRow) -> Option<()> {
    leg.tube.bore_mm = rows::usual(row, "bore_mm")?;
    leg.tube.outside_diameter_mm = rows::usual(row, "outside_diameter_mm")?;
    leg.tube.conductivity_w_mk = rows::usual(row, "conductivity_w_mk")?;
    if leg.insulation.is_none() {
        leg.emissivity = rows::usual(row, "emissivity")?;
    }
    Some(())
}

fn insulate(leg: &mut Leg, value: &str) -> Option<()> {
    if value == NONE {
        leg.insulation = None;
        bare(leg);
        return Some(());
    }
    let (id, place) = value.split_once(':')?;
    let row = library::find(library::insulation(), id)?;
    let place: usize = place.parse().ok()?;
    let thickness = row.thicknesses.get(place)?.to_millimetres();
    // As a person would write it: 13, not 13 and the dust of the way through metres.
    let thickness = (thickness * 1e3).round() / 1e3;
    let (layer, emissivity) = rows::insulation(row, thickness)?;
    leg.insulation = Some(layer);
    cover(leg, emissivity);
    Some(())
}

/// The outermost surface of a leg is that of its tube again, where it was assumed as that of insulation.
pub(crate) fn bare(leg: &mut Leg) {
    let is_of_insulation = rows::row_of(&leg.emissivity).is_some_and(|row| {
        library::find::<InsulationRow>(library::insulation(), row.id()).is_some()
    });
    if !is_of_insulation {
        return;
    }
    let tube = rows::row_of(&leg.tube.bore_mm).map_or(SURFACE, Row::id);
    if let Some(emissivity) = rows::usual_of(tube, "emissivity") {
        leg.emissivity = emissivity;
    }
}

/// The outermost surface of a leg is that of insulation, unless somebody knows better.
pub(crate) fn cover(leg: &mut Leg, emissivity: Input<f64>) {
    if is_assumed(&leg.emissivity) {
        leg.emissivity = emissivity;
    }
}

/// Lays a leg into a space of the project, or into one of the library, which then becomes one of the project.
fn put_in_space(project: &mut OpenProject, tube: TubeName, at: usize, value: &str) -> Option<()> {
    let before = leg(project, tube, at)?.space.clone();
    let id = match value.strip_prefix(ROW) {
        Some(row) => {
            let row = library::find(library::spaces(), row)?;
            let mut space = rows::space(row)?;
            space.id = free_id(&project.spaces, row.id);
            let id = space.id.clone();
            project.spaces.push(space);
            id
        }
        None => value.to_owned(),
    };
    leg_mut(project, tube, at)?.space = id;
    leave(project, &before);
    Some(())
}

/// Takes a space away that no leg lies in any more, unless somebody entered something of it.
fn leave(project: &mut OpenProject, id: &str) {
    let lies_in = |route: &Route| route.legs.iter().any(|leg| leg.space == id);
    let is_used = project
        .runs
        .iter()
        .any(|run| lies_in(&run.intake) || run.exhaust.as_ref().is_some_and(lies_in));
    if !is_used {
        let stays = |space: &Space| space.id != id || !is_assumed(&space.temperature_c);
        project.spaces.retain(stays);
    }
}

/// An id like that one that no space bears.
fn free_id(spaces: &[Space], wanted: &str) -> String {
    let is_free = |id: &str| spaces.iter().all(|space| space.id != id);
    if is_free(wanted) {
        return wanted.to_owned();
    }
    let mut number = 2;
    loop {
        let id = format!("{wanted}-{number}");
        if is_free(&id) {
            return id;
        }
        number += 1;
    }
}

/// Makes all legs of both tubes of the tube of one.
pub fn same_tube_everywhere(project: &mut OpenProject, tube: TubeName, at: usize) -> Option<()> {
    let model = leg(project, tube, at)?.clone();
    for tube in [TubeName::Intake, TubeName::Exhaust] {
        let Some(route) = route_mut(project, tube) else {
            continue;
        };
        for leg in &mut route.legs {
            leg.tube = model.tube.clone();
            if leg.insulation.is_none() && model.insulation.is_none() {
                leg.emissivity = model.emissivity.clone();
            }
        }
    }
    Some(())
}

fn is_assumed(input: &Input<f64>) -> bool {
    matches!(input.origin, Origin::Assumed { .. })
}
