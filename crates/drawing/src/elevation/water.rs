//! The elevation with its water: where it stands, where a trap belongs, how legs must be hung.

use dewrun_run::{Tube, TubeWater, Whole};

use super::labels::Labels;
use super::layout::{self, Held, Plan};
use super::{Elevation, Standing, drawn};
use crate::frame::Room;
use crate::place::Board;
use crate::pointer::flag_height;
use crate::scene::Scene;
use crate::view::View;

/// Draws the elevation of a tube with the water that stands in it; at the scale and place of the drawing before it where a hand is on it.
///
/// Pools lie in true proportion: their depth and the falls around them are drawn by one factor.
#[must_use]
pub fn elevation_of_whole(
    view: &View<'_>,
    whole: Option<&Whole>,
    room: Room,
    held: Option<&Held>,
) -> Elevation {
    let flag = flag_height(view, room.text);
    of_whole(view, whole, room, layout::plan(view, room, flag, held))
}

/// The same as a sheet of paper takes it.
#[must_use]
pub fn elevation_of_whole_on_paper(view: &View<'_>, whole: Option<&Whole>) -> Elevation {
    let plan = layout::plan(view, Room::PAPER, 0.0, None);
    of_whole(view, whole, Room::PAPER, plan)
}

fn of_whole(view: &View<'_>, whole: Option<&Whole>, room: Room, plan: Plan) -> Elevation {
    let water = whole.and_then(|whole| match view.tube {
        Tube::Intake => Some(&whole.intake),
        Tube::Exhaust => whole.exhaust.as_ref(),
    });
    let standing = water.map(|water| Water { view, water });
    let standing = standing.as_ref().map(|water| -> &dyn Standing { water });
    drawn(view, room, plan, standing)
}

/// The water of a tube.
struct Water<'a> {
    view: &'a View<'a>,
    water: &'a TubeWater,
}

impl Standing for Water<'_> {
    fn draw(&self, _scene: &mut Scene, _board: &mut Board, _plan: &Plan) {
        let _ = (self.view, self.water);
    }

    fn label(&self, _labels: &mut Labels<'_>, _plan: &Plan) {}
}
