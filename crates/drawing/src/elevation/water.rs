//! The elevation with its water: where it stands, where a trap belongs, how legs must be hung.

mod detail;
mod enlarged;
mod hung;
mod ice;
mod pool;
mod told;
mod traps;

use dewrun_run::{LowPoint, Tube, TubeWater, Whole};

use super::fitted::covers;
use super::labels::Labels;
use super::layout::{self, Held, Plan};
use super::{Elevation, Standing, drawn};
use crate::block::Line;
use crate::frame::Room;
use crate::geometry::Rect;
use crate::place::Board;
use crate::pointer::flag_height;
use crate::scene::Scene;
use crate::view::View;
use pool::Pool;

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

impl Water<'_> {
    /// All low points with the water that stands there; those that two or more pools have run together in come after them.
    fn pools<'b>(&'b self, plan: &'b Plan) -> impl Iterator<Item = (usize, &'b LowPoint, Pool)> {
        let all = self.water.low_points.iter().enumerate();
        all.filter_map(|(number, low)| {
            let told = self.water.drainage.pools.get(low.pool)?;
            Some((number, low, Pool::of(plan, low, told.catchment)?))
        })
    }

    /// Says what stands at all low points but the one that is enlarged.
    fn label_pools(&self, labels: &mut Labels<'_>, plan: &Plan, enlarged: Option<usize>) {
        for (number, low, pool) in self.pools(plan) {
            if Some(number) != enlarged {
                let has_trap = plan.frame.narrow && traps::is_at(self.water, low);
                pool.label(labels, plan, (number, low), (self.view.style, has_trap));
            }
        }
    }
}

impl Standing for Water<'_> {
    fn draw(&self, scene: &mut Scene, board: &mut Board, plan: &Plan) {
        ice::draw(scene, self.view, plan, self.water);
        for (_, low, pool) in self.pools(plan) {
            pool.draw(scene, plan, ice::is_frozen(low));
        }
        for drawn in traps::draw(scene, plan, self.water) {
            board.keep_off(covers(plan, &drawn));
        }
    }

    fn first(&self, labels: &mut Labels<'_>, plan: &Plan) {
        if let Some(rows) = plan.rows {
            let (from, to) = (plan.start().x, plan.end().x);
            for y in [Some(rows.bar), rows.dimensions].into_iter().flatten() {
                let row = Rect::new(from.min(to), y - 3.0, (to - from).abs(), 6.0);
                labels.board.keep_off(row);
            }
        }
        if plan.frame.narrow {
            self.label_pools(labels, plan, None);
        }
        traps::label(labels, plan, self.water, self.view.style);
    }

    fn label(&self, scene: &mut Scene, labels: &mut Labels<'_>, plan: &Plan) {
        if !plan.frame.narrow {
            let enlarged = detail::place(scene, labels, plan, self);
            self.label_pools(labels, plan, enlarged);
        }
        ice::label(labels, self.view, plan, self.water);
    }

    fn note(&self, labels: &mut Labels<'_>, plan: &Plan) {
        traps::note_ends(labels, self.view, plan, self.water);
        if !plan.frame.narrow {
            hung::note(labels, self.view, plan, self.water);
        }
    }

    fn trap(&self, trap: usize) -> Vec<Line> {
        let found = self.water.traps.get(trap);
        found.map_or_else(Vec::new, |found| traps::lines(found, self.view.style))
    }

    fn tell(&self) -> String {
        told::sentences(self.water, self.view.style)
    }
}
