//! The elevation with its water: the drawing, to what scale it is, and where its labels lie.

use std::cell::Ref;

use dewrun_desk::{Answered, ElevationAsked, OpenProject};
use dewrun_drawing::{
    Elevation, compare_elevation, elevation_of_whole, elevation_of_whole_on_paper,
};

use crate::asked::Asked;
use crate::open::Open;

/// The drawing asked for; the last one where it is that.
///
/// # Errors
/// The numbers ask for no drawing.
pub(super) fn drawn<'a>(asked: &'a Asked<'_>) -> Result<Ref<'a, Elevation>, String> {
    asked.open.elevation.of(asked.numbers, || {
        let asked_for = ElevationAsked::of(asked.numbers);
        Ok(draw(&asked.open, &asked_for.ok_or("that is no drawing")?))
    })
}

fn draw(open: &Open, asked: &ElevationAsked) -> Elevation {
    let view = open.answered.view(asked.tube, asked.style);
    let (sheet, whole) = (&asked.sheet, open.whole().ok());
    let mut drawn = if sheet.on_paper {
        elevation_of_whole_on_paper(&view, whole)
    } else {
        elevation_of_whole(&view, whole, sheet.room, sheet.held.as_ref())
    };
    let other = asked.compared.map(|run| OpenProject {
        project: open.answered.project.project.clone(),
        run,
    });
    if let Some(other) = other.and_then(|other| Answered::unranked(&other).ok()) {
        compare_elevation(&mut drawn, &other.view(asked.tube, asked.style));
    }
    drawn
}
